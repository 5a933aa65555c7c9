package check

import (
	"fmt"
	"math"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/units"
)

// sizeOffFor is how long a framing may be off its size: common practice, no
// source. sizeOffMost is the part of the line's steady time above which being
// off is more than a passage.
const (
	sizeOffFor  units.Seconds = 2
	sizeOffMost float64       = 0.5
)

var sizeOff = &Rule{
	Entry: diag.Entry{
		Code:     "size-off",
		Title:    "a framing isn't the size that was asked for",
		Severity: diag.Warning,
		At:       []string{"beat sees"},
		Explain: `A line says how somebody is framed ("A sees mina waist"), and what the lens and the
distance give is another size, more than one step away, for longer than two
seconds. Where that is so for less than half of the time that the line holds, it
is a note: somebody who walks up to the lens is every size in turn.

Looked at is every frame from the end of the pan to them, but for those in which
the camera is on its way to where it follows, changes hands or zooms. Of several
people, the one nearest to the size asked for decides.

The size follows from the height of frame where the person is, along the optical
axis: height of the picture on the sensor times distance over focal length;
"longhand kit" lists the sizes and the height of each.

To mend it: ask for the size it is, change the distance that the camera keeps, or
take another lens.`,
		Bad: `take "Off size"
  rate 24 fps
set "Hall"
  mark M1 (0, 0)
  mark M2 (8, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig stabilised gimbal
people
  performer mina
  crew ida
beat "Along"
  mina walks from M1 to M2 at 0.7 m/s
  A on stabilised with ida
  A takes w35 T4
  A follows mina by 3 m
  A sees mina chest
`,
		Good: `take "On size"
  rate 24 fps
set "Hall"
  mark M1 (0, 0)
  mark M2 (8, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig stabilised gimbal
people
  performer mina
  crew ida
beat "Along"
  mina walks from M1 to M2 at 0.7 m/s
  A on stabilised with ida
  A takes w35 T4
  A follows mina by 1.5 m
  A sees mina chest
`,
	},
	Needs: Seen,
	Run: func(p *Pass) {
		for _, l := range p.lookings() {
			p.sizeOff(l)
		}
	},
}

func (p *Pass) sizeOff(l looking) {
	asked := l.aim.Size
	frames := minus(l.frames, p.unsteady(l.track))
	if asked == body.NoSize || len(frames) == 0 {
		return
	}
	people := p.persons(&l)
	// off is the person nearest to the size, by how many steps they miss it, and
	// which way: above 0 too loose.
	off := func(f units.Frame) (who subject, fr framed, steps int, fit float64) {
		steps = math.MaxInt
		for _, t := range people {
			at := p.framing(l.camera, t, f)
			if at.behind || !p.shows(l.camera, t, f) {
				continue
			}
			n, miss := stepsOff(asked, at.high, t.person().Height)
			if n < steps || n == steps && math.Abs(miss) < math.Abs(fit) {
				who, fr, steps, fit = t, at, n, miss
			}
		}
		return who, fr, steps, fit
	}
	seen := 0
	bad := framesWhere(frames, func(f units.Frame) bool {
		who, _, steps, _ := off(f)
		if who.thing != nil {
			seen++
		}
		return who.thing != nil && steps > 1
	})
	if bad = p.longer(bad, sizeOffFor); len(bad) == 0 {
		return
	}
	mostly := float64(count(bad)) > sizeOffMost*float64(seen)
	worst, _ := worstOf(bad, func(f units.Frame) float64 { _, _, _, fit := off(f); return math.Abs(fit) })
	subject, fr, steps, fit := off(worst)
	who := subject.person()
	is := body.SizeOf(units.Metres(fr.high), who.Height)
	d := p.Report(l.aim.See.SizeSpan, "%s is to see %s %s, and it is %s, %d sizes %s, %s: %s, and %s takes %s",
		l.track.Camera.Name, subject.called(), asked, sizeWord(is), steps, tooWhat(fit), p.when(bad), p.frameHigh(subject, fr), asked,
		p.away(float64(asked.FrameHeight(who.Height))))
	if !d.Span.Valid() {
		d.Span = l.aim.Action.Span
	}
	if !mostly {
		d.Severity = diag.Note
	}
	p.found(d, l.track.Camera, who.Name, bad, worst)
	at := p.Tracks.Rate.Time(worst)
	line := p.putThere(l.track.Camera, at)
	if line != nil {
		d.Relate(line.Span, "%s is there: %s", l.track.Camera.Name, clock.Describe(line))
	}
	needs := fr.depth * float64(asked.FrameHeight(who.Height)) / fr.high
	d.Note("with this lens, %s is at %s", asked, p.away(needs))
	if n := usual(frames, off); mostly && n != body.NoSize && l.aim.See.SizeSpan.Valid() {
		d.Fix(fmt.Sprintf("ask for %s", n), replaced(l.aim.See.SizeSpan, n.String()))
	}
	if mostly {
		p.offerDistance(d, line, subject, needs-fr.depth)
	}
}

// usual is the size that most of the frames have.
func usual(frames []diag.Frames, off func(units.Frame) (subject, framed, int, float64)) body.Size {
	var n [body.Eyes + 1]int
	for _, r := range frames {
		for f := r.From; f <= r.To; f++ {
			if who, fr, _, _ := off(f); who.thing != nil {
				n[body.SizeOf(units.Metres(fr.high), who.person().Height)]++
			}
		}
	}
	best := body.NoSize
	for _, s := range body.Sizes() {
		if n[s] > n[best] || best == body.NoSize && n[s] > 0 {
			best = s
		}
	}
	return best
}

// stepsOff is how many sizes a framing is from the one asked for, and by how
// much it is past its border, as [body.Size.Fit] has it.
func stepsOff(asked body.Size, high float64, stature units.Metres) (int, float64) {
	fit := asked.Fit(units.Metres(high), stature)
	is := body.SizeOf(units.Metres(high), stature)
	switch {
	case fit == 0:
		return 0, 0
	case is == body.NoSize: // too small to be a shot of a person
		return int(asked), fit
	}
	return int(math.Abs(float64(is - asked))), fit
}

func sizeWord(s body.Size) string {
	if s == body.NoSize {
		return "smaller than wide"
	}
	return s.String()
}

func tooWhat(fit float64) string {
	if fit > 0 {
		return "too loose"
	}
	return "too tight"
}
