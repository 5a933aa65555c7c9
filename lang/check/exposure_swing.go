package check

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// swingLook is the time between two looks at the light on a face: at a walk they
// are a hand's breadth apart, and light changes little over that.
const swingLook = 0.125 // s

// lightSlop is by how much a limit may be passed: no meter shows it.
const lightSlop = 0.02 // stops

// lightLooks is the frames from one look at the light on a face to the next.
func (p *Pass) lightLooks() units.Frame {
	return max(1, units.Frame(p.Tracks.Rate.PerSecond()*swingLook))
}

var exposureSwing = &Rule{
	Entry: diag.Entry{
		Code:     "exposure-swing",
		Title:    "a face that goes from bright to dark with the stop left alone",
		Severity: diag.Error,
		At:       these(beingThere, "beat sees", "beat cue", "look exposure"),
		Explain: `The look says within how many stops a face may change ("exposure within 1 stops"),
and from one place to another on its way it changes more. Without such a line it
is a warning from 2.5 stops on, which is common practice.

The light on the face is the sum over all lamps whose candela the kit gives:
candela over distance squared, at their levels, each where the set leaves the line
from lamp to face free. The lamps of a wash are spread evenly over its grid. The
face is turned to each lamp; daylight and bounce are left out, and so is every
moment in which no lamp reaches the face: what lights it then is not in the plan.

Counted is the first one whom the camera sees, between one light cue and the next,
so that a cue may change the light as it is meant to. Going to another stop while
rolling ("A takes w35 T4") is a pull of the iris, and is counted: what must hold is
light over stop squared. The stop printed is N² = E·S·t/C, E in lux, S the
sensitivity, t the time the shutter is open, C = 250 (ISO 2720). Real bodies differ
by most of a stop.

To mend it: more and weaker lamps, farther from the way; a net or a dimmer for the
one that is too near; another way; or a pull of the iris.`,
		Bad: `take "Near the lamp"
  rate 24 fps
  sensitivity 800
set "Hall"
  mark M1 (1, 2)
  mark M2 (9, 2)
  mark L1 (-3, 3)
  place globe at L1 up 2.5 m aims M1
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  rig legs sticks
  lamp globe 500 W 4000 cd
people
  performer mina
  crew ida
look
  exposure within 2 stops
beat "Away"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (-2, 1)
  A on legs with ida
  A takes w24 T2.8
  A sees mina
`,
		Good: `take "Far from the lamp"
  rate 24 fps
  sensitivity 800
set "Hall"
  mark M1 (1, 2)
  mark M2 (9, 2)
  mark L1 (-14, 3)
  place globe at L1 up 2.5 m aims M1
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  rig legs sticks
  lamp globe 500 W 40000 cd
people
  performer mina
  crew ida
look
  exposure within 2 stops
beat "Away"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (-2, 1)
  A on legs with ida
  A takes w24 T2.8
  A sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesSubjects,
	Run: func(p *Pass) {
		if !p.lighting().Measured() {
			return
		}
		var looks []looking // one for each person whom a camera sees first, over all its lines
		for _, l := range p.lookings() {
			known := false
			for i := range looks {
				if k := &looks[i]; k.camera == l.camera && firstPerson(*k) == firstPerson(l) {
					k.frames, known = tidy(append(k.frames, l.frames...)), true
				}
			}
			if !known {
				looks = append(looks, l)
			}
		}
		steady := p.steadyLight()
		for _, l := range looks {
			for _, s := range steady {
				p.exposureSwing(l, s)
			}
		}
	},
}

// firstPerson is the first one whom a line sees; nil where it sees nobody.
func firstPerson(l looking) *plan.Person {
	for _, t := range l.aim.See.Targets {
		if who := personOf(t.Thing); who != nil {
			return who
		}
	}
	return nil
}

// steadyLight is the stretches in which no cue moves a lamp.
func (p *Pass) steadyLight() []diag.Frames {
	l := p.lighting()
	times := l.Moves()
	var out []diag.Frames
	for i := 0; i+1 < len(times); i++ {
		a, b := times[i], times[i+1]
		still := true
		for k := range l.Units {
			early, late := l.Units[k].Level(a+(b-a)/4), l.Units[k].Level(a+3*(b-a)/4)
			still = still && math.Abs(float64(early-late)) < 1e-9
		}
		if r := (diag.Frames{From: p.Tracks.Rate.From(a), To: p.Tracks.Rate.From(b) - 1}); still && r.From <= r.To {
			out = append(out, r)
		}
	}
	return out
}

// faceLight is the light on a person's face at a frame, past what the set puts in
// the way.
func (p *Pass) faceLight(who *plan.Person, f units.Frame) units.Lux {
	face := p.facePoint(who, f)
	return p.lighting().Reaching(face, p.Tracks.Rate.Time(f), func(lamp geom.Vec3) bool {
		return p.sightlines().blocked(lamp, face, f, false) == nil
	})
}

// headMid is the height of the middle of the head, of stature.
const headMid = 0.935

// lightAt is a look at a face: what falls on it and what the lens makes of it.
type lightAt struct {
	frame units.Frame
	lux   units.Lux
	stop  units.Stop // 0 where nothing says
	value float64    // stops: the light as exposed, from an arbitrary zero
}

func (p *Pass) exposureSwing(l looking, steady diag.Frames) {
	who := firstPerson(l)
	if who == nil || len(p.Stage.Body(who)) == 0 {
		return
	}
	every := p.lightLooks()
	var looks []lightAt
	dark := 0
	at := func(f units.Frame) (lightAt, bool) {
		e := p.faceLight(who, f)
		if e <= 0 {
			return lightAt{}, false
		}
		out := lightAt{frame: f, lux: e, stop: l.track.Stop(p.Tracks.Rate.Time(f)), value: math.Log2(float64(e))}
		if out.stop > 0 {
			out.value -= 2 * math.Log2(float64(out.stop))
		}
		return out, true
	}
	for _, r := range meet(l.frames, []diag.Frames{steady}) {
		for f := r.From; ; f = min(f+every, r.To) {
			if v, ok := at(f); ok {
				looks = append(looks, v)
			} else {
				dark++
			}
			if f == r.To {
				break
			}
		}
	}
	if len(looks) == 0 {
		return
	}
	low, high := looks[0], looks[0]
	for _, v := range looks {
		if v.value < low.value {
			low = v
		}
		if v.value > high.value {
			high = v
		}
	}
	limit, severity, source := optics.SwingStopsHard, diag.Warning, "common practice, no source"
	rule := p.Plan.Look.ExposureStops
	if rule != nil {
		limit, severity, source = rule.Limit, diag.Error, "the look"
	}
	if high.value-low.value <= limit+lightSlop {
		return
	}
	p.saySwing(l, who, low, high, limit, severity, source, dark)
}

func (p *Pass) saySwing(l looking, who *plan.Person, low, high lightAt, limit float64, severity diag.Severity, source string, dark int) {
	first, last := high, low
	word := "darker"
	if low.frame < high.frame {
		first, last, word = low, high, "brighter"
	}
	from, to := p.Tracks.Rate.Time(first.frame), p.Tracks.Rate.Time(last.frame)
	a := p.putThere(who, to)
	span := l.aim.Action.Span
	if a != nil {
		span = a.Span
	}
	frames := []diag.Frames{{From: first.frame, To: last.frame}}
	d := p.Report(span, "%s gets %s %s in %s's frame from %s to %s: %s, then %s; %s is the most, by %s", who.Name, stopsText(high.value-low.value), word,
		l.track.Camera.Name, from.Clock(), to.Clock(), p.luxAt(first), p.luxAt(last), stopsText(limit), source)
	d.Severity = severity
	p.found(d, l.track.Camera, who.Name, frames, low.frame)
	if r := p.Plan.Look.ExposureStops; r != nil {
		d.Relate(r.Span, "the look: exposure within %s", stopsText(r.Limit))
	}
	if a != nil && a.Span != l.aim.Action.Span {
		d.Relate(l.aim.Action.Span, "%s looks there: %s", l.track.Camera.Name, clock.Describe(l.aim.Action))
	}
	lighted := p.lighting()
	at := p.Tracks.Rate.Time(high.frame)
	if most := p.brightest(p.facePoint(who, high.frame), at); most != nil {
		d.Note("at the brightest most of it is of %s", ofLamps(most, at))
	}
	if first.stop > 0 && first.stop == last.stop {
		pull := units.Seconds(math.Abs(high.value-low.value)) * optics.StopPull
		d.Note("a pull of the iris over that way would take %s so as not to show; it has %s", pull, to-from)
	}
	for _, u := range lighted.Blind() {
		d.Note("%s is left out: the kit gives no candela for %s", u.Name, u.Lamp.Name)
	}
	if dark > 0 {
		d.Note("moments in which no lamp reaches the face are left out; daylight and bounce are, too")
	}
}

func (p *Pass) facePoint(who *plan.Person, f units.Frame) geom.Vec3 {
	pose := p.Stage.Scene.Bodies[p.Stage.Body(who)[0]].At(f)
	return geom.Vec3{X: pose.X, Y: pose.Y, Z: pose.Z + pose.Height - (1-headMid)*float64(who.Height)}
}

// luxAt says the light at a moment and the stop that it asks for.
func (p *Pass) luxAt(v lightAt) string {
	s := p.light(v.lux)
	t := &p.Plan.Take
	if t.Sensitivity <= 0 {
		return s
	}
	n := optics.StopFor(v.lux, float64(t.Sensitivity), optics.ShutterTime(t.Shutter, t.Rate), optics.IncidentC)
	return s + ", which takes T" + units.Number(float64(n), 1)
}
