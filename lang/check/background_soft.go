package check

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// A background is too soft where more than blurPart of what shows behind the
// subject is, for longer than blurFor (common practice, no source). Looks are that
// far apart, so that each such stretch has one; its ends are then found to the
// frame.
const (
	blurPart               = 0.5
	blurFor  units.Seconds = 1
)

var backgroundSoft = &Rule{
	Entry: diag.Entry{
		Code:     "background-soft",
		Title:    "a background blurred more than the look allows",
		Severity: diag.Error,
		At:       []string{"beat sees", "look blur"},
		Explain: `The look says how much the background may blur ("blur behind at most 1 %"), in per
cent of the frame's width, and for longer than a second more than half of what
stands behind the subject blurs more.

What is behind is what the lens would see were the subject gone: the wall, the
floor, another person; the open counts as infinitely far. A point at distance x
blurs to a disc of (f²/N)·|x-s|/(x·(s-f)), where s is the focus, f the focal
length and N the stop; a T-stop is taken for an f-number. Somebody whom a camera
sees in a mirror is left out: behind a reflection stands what the mirror shows.

To mend it: stop down and bring more light, take a wider lens, put the subject
nearer to the background, or go farther away.`,
		Bad: `take "Blurred away"
  rate 24 fps
set "Hall"
  wall north (-20, 30) (20, 30) high 6 m
  mark M1 (0, 3)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w50 50 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
look
  blur behind at most 1 %
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w50 T2
  A sees mina
`,
		Good: `take "The room shows"
  rate 24 fps
set "Hall"
  wall north (-20, 30) (20, 30) high 6 m
  mark M1 (0, 3)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w50 50 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
look
  blur behind at most 1 %
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w50 T4
  A sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesSubjects,
	Run: func(p *Pass) {
		if p.Plan.Look.Blur == nil {
			return
		}
		for _, l := range p.lookings() {
			p.backgroundSoft(l)
		}
	},
}

// blurLook is what stands behind a subject and how it blurs.
type blurLook struct {
	part  float64       // of what is behind that blurs more than allowed
	most  units.Percent // the blur of what blurs most
	worst sight.Backing // what is most of it
	blur  units.Percent // of that
	lens  optics.Focus
	focus float64
}

func (p *Pass) backgroundSoft(l looking) {
	who := firstPerson(l)
	if who == nil || len(p.Stage.Body(who)) == 0 || inGlass(l, who) {
		return
	}
	limit := units.Percent(p.Plan.Look.Blur.Limit)
	known := map[units.Frame]blurLook{}
	look := func(f units.Frame) blurLook {
		if b, ok := known[f]; ok {
			return b
		}
		b := p.blurBehind(l, who, f, limit)
		known[f] = b
		return b
	}
	over := func(f units.Frame) bool { return look(f).part > blurPart }
	every := max(1, units.Frame(p.Tracks.Rate.PerSecond()*float64(blurFor)))
	bad := sampled(l.frames, every, over)
	if bad = p.longer(bad, blurFor); len(bad) == 0 {
		return
	}
	var worst units.Frame
	var most blurLook
	for _, r := range bad {
		for f := r.From; f <= r.To; f++ {
			if b, ok := known[f]; ok && b.most > most.most {
				worst, most = f, b
			}
		}
	}
	p.sayBackground(l, who, bad, worst, most, limit)
}

// inGlass says whether a line sees somebody in a mirror. Behind a reflection stands
// what the mirror shows, which is not what stands behind the glass.
func inGlass(l looking, who *plan.Person) bool {
	for _, t := range l.aim.See.Targets {
		if t.Thing == plan.Thing(who) {
			return t.Glass != nil
		}
	}
	return false
}

func (p *Pass) blurBehind(l looking, who *plan.Person, f units.Frame, limit units.Percent) blurLook {
	v := p.Stage.Scene.Cameras[l.camera].At(f)
	lens, ok := p.lens(l.track, v, f)
	out := blurLook{lens: lens, focus: v.Focus}
	if !ok || math.IsInf(v.Focus, 0) || v.Focus <= 0 || l.track.Frame.Width <= 0 {
		return out
	}
	share := func(at float64) units.Percent {
		return lens.BlurShare(l.track.Frame, units.Metres(v.Focus), units.Metres(at))
	}
	// Nothing behind blurs more than what is infinitely far.
	if share(math.Inf(1)) <= limit {
		return out
	}
	body, ok := p.main(l.camera, p.Stage.Body(who), f)
	if !ok {
		return out
	}
	for _, b := range p.named(p.Sight.Behind(l.camera, body, f), map[string]bool{who.Name: true}) {
		at := b.Distance
		if b.Kind == "" {
			at = math.Inf(1)
		}
		s := share(at)
		if at <= v.Focus || s <= limit {
			continue
		}
		out.part += b.Share
		out.most = max(out.most, s)
		if out.worst.Share < b.Share {
			out.worst, out.blur = b, s
		}
	}
	return out
}

func (p *Pass) sayBackground(l looking, who *plan.Person, bad []diag.Frames, worst units.Frame, b blurLook, limit units.Percent) {
	far := "infinitely far"
	if b.worst.Kind != "" {
		far = p.away(b.worst.Distance) + " away"
	}
	d := p.Report(l.aim.Action.Span, "behind %s, %s, %s, blurs to %s of the frame's width in %s's frame %s; the look allows %s",
		who.Name, what(b.worst.Name, b.worst.Kind), far, b.blur, l.track.Camera.Name, p.when(bad), limit)
	p.found(d, l.track.Camera, who.Name, bad, worst)
	d.Relate(p.Plan.Look.Blur.Span, "the look: blur behind at most %s", limit)
	if a := p.putThere(who, p.Tracks.Rate.Time(worst)); a != nil {
		d.Relate(a.Span, "%s is there: %s", who.Name, clock.Describe(a))
	}
	d.Note("%s of what is behind is that soft: focus at %s, %s at T%s", units.Percent(math.Round(100*b.part)), p.away(b.focus), b.lens.Focal, units.Number(float64(b.lens.Stop), 1))
	fit := l.track.Fit(p.Tracks.Rate.Time(worst))
	if fit == nil || fit.Action == nil {
		return
	}
	// The disc goes with the inverse of the stop.
	needs := optics.FullStopUp(b.lens.Stop * units.Stop(b.most/limit))
	p.offerTheStop(d, fit, needs)
}
