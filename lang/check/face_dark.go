package check

import (
	"fmt"
	"math"

	"longhand/lang/clock"
	"longhand/lang/daylight"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/lighting"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sky"
	"longhand/lang/units"
)

// A face may be too dark for as long as faceDarkFor, as when it goes through a shadow
// (common practice, no source).
const faceDarkFor units.Seconds = 1

var faceDark = &Rule{
	Entry: diag.Entry{
		Code:     "face-dark",
		Title:    "a face too dark for the stop of the lens",
		Severity: diag.Error,
		At:       these(beingThere, "beat sees", "beat cue", "kit lamp", "look exposure", "look faces"),
		Explain: `A line says whom a camera sees, and for longer than a second the light on their
face is farther under the stop of the lens than the look allows ("faces at most 2
stops under"). Without such a line it is a warning from 3 stops on, which is common
practice: farther under, a face is hardly told from the dark behind it.

The stop that the light asks for is N² = E·S·t/C: E in lux on the face, S the
sensitivity of the take, t the time the shutter is open, C = 250 (ISO 2720). The
light is the sum over all lamps whose candela the kit gives, candela over distance
squared, at their levels, each where the set leaves the line from lamp to face
free; the face is turned to each lamp. Where the take is rolled in a part of the
day, the light of the clear sky at its darkest comes on top, as in the open. Bounce
is left out, and real bodies differ by most of a stop.

Nothing is said where the plan does not say enough: without a sensitivity or a
stop, where no lamp of known candela reaches the face, while a lamp burns whose
candela the kit does not give, and while a cue moves the light.

To mend it: open up; bring the lamp nearer, a stronger one, or a higher level; let
the face be nearer to the light; raise the sensitivity. Where it is meant to be
dark, say so with "allow face-dark".`,
		Bad: `take "Into the dark"
  rate 24 fps
  sensitivity 800
set "Hall"
  mark M1 (4, 2)
  mark L1 (-10, 3)
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
  faces at most 2 stops under
beat "Far from the lamp"
  mina stands at M1 in 4 s
  legs stands at (0, 1)
  A on legs with ida
  A takes w24 T5.6
  A sees mina
`,
		Good: `take "In the light"
  rate 24 fps
  sensitivity 800
set "Hall"
  mark M1 (4, 2)
  mark L1 (0, 3)
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
  faces at most 2 stops under
beat "Near the lamp"
  mina stands at M1 in 4 s
  legs stands at (0, 1)
  A on legs with ida
  A takes w24 T5.6
  A sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesSubjects,
	Run: func(p *Pass) {
		take := &p.Plan.Take
		if !p.lighting().Measured() || take.Sensitivity <= 0 || take.Shutter <= 0 {
			return
		}
		// One look for each person and camera over all its lines, so that a stretch in
		// the dark is one finding.
		type pair struct {
			camera int
			thing  plan.Thing
			glass  *plan.Mirror
		}
		var order []pair
		steady := tidy(p.steadyLight())
		frames := map[pair][]diag.Frames{}
		looks := map[pair]looking{}
		for _, l := range p.lookings() {
			for _, s := range p.persons(&l) {
				k := pair{l.camera, s.thing, s.glass}
				if _, ok := looks[k]; !ok {
					order, looks[k] = append(order, k), l
				}
				frames[k] = tidy(append(frames[k], meet(l.frames, steady)...))
			}
		}
		m := &meter{Pass: p, blind: p.lighting().Blind(), sky: p.leastSky()}
		for _, k := range order {
			l := looks[k]
			l.frames = frames[k]
			m.faceDark(l, subject{k.thing, p.Stage.Body(k.thing), k.glass})
		}
	},
}

// meter reads the light on faces.
type meter struct {
	*Pass
	blind []*lighting.Unit // lamps whose light the plan doesn't say
	sky   units.Lux        // on top of the lamps
}

// shortOf is how far a face is lit below the stop of a lens at a frame.
type shortOf struct {
	stops float64
	lux   units.Lux // on the face
	asks  units.Stop
	set   units.Stop
}

func (m *meter) faceDark(l looking, s subject) {
	limit, severity, source := optics.FaceUnder, diag.Warning, "common practice, no source"
	rule := m.Plan.Look.UnderStops
	if rule != nil {
		limit, severity, source = rule.Limit, diag.Error, "the look"
	}
	known := map[units.Frame]float64{}
	measure := func(f units.Frame) float64 {
		v, ok := known[f]
		if !ok {
			v = m.under(&l, s, f).stops
			known[f] = v
		}
		return v
	}
	bad := m.longer(sampled(l.frames, m.lightLooks(), func(f units.Frame) bool { return measure(f) > limit+lightSlop }), faceDarkFor)
	if len(bad) == 0 {
		return
	}
	m.tell([]part{{s.thing, s.bodies, bad}}, telling{rule: m.rule, camera: l.track.Camera, say: func(parts []part) {
		for _, run := range joined(parts[0].frames, units.Frame(m.Tracks.Rate.PerSecond()*float64(faceDarkFor))) {
			within := meet(parts[0].frames, []diag.Frames{run})
			worst, most := within[0].From, math.Inf(-1)
			for _, r := range within {
				for f := r.From; f <= r.To; f++ {
					if v, ok := known[f]; ok && v > most {
						worst, most = f, v
					}
				}
			}
			m.sayFaceDark(&l, s, run, worst, limit, severity, source)
		}
	}})
}

// under is how far under the stop a face is; 0 where it isn't, where nothing of it
// shows, and where the plan doesn't say what lights it.
func (m *meter) under(l *looking, s subject, f units.Frame) shortOf {
	at := m.Tracks.Rate.Time(f)
	out := shortOf{set: l.track.Stop(at)}
	if out.set <= 0 || !m.shows(l.camera, s, f) {
		return out
	}
	if fr := m.framing(l.camera, s, f); !fr.headIn() {
		return out
	}
	for _, u := range m.blind {
		if u.Level(at) > 0 {
			return out
		}
	}
	lamps := m.faceLight(s.person(), f)
	if lamps <= 0 {
		return out
	}
	out.lux = lamps + m.sky
	take := &m.Plan.Take
	open := optics.ShutterTime(take.Shutter, take.Rate)
	out.asks = optics.StopFor(out.lux, float64(take.Sensitivity), open, optics.IncidentC)
	out.stops = optics.StopsBetween(out.lux, optics.LightFor(out.set, float64(take.Sensitivity), open, optics.IncidentC))
	return out
}

// leastSky is the light of the clear sky when it is darkest in the part of the day in
// which the take is rolled; 0 where the plan says nothing of it.
func (p *Pass) leastSky() units.Lux {
	place, _, ok := daylight.WhereAndWhen(&p.Plan.Take)
	w, _, timed := daylight.Window(&p.Plan.Take, p.Plan.Take.Roll)
	if !ok || !timed || w.State == sky.Never {
		return 0
	}
	return min(sky.Bright(sky.At(place, w.Start).Elevation), sky.Bright(sky.At(place, w.End).Elevation))
}

func (m *meter) sayFaceDark(l *looking, s subject, run diag.Frames, worst units.Frame, limit float64, severity diag.Severity, source string) {
	v := m.under(l, s, worst)
	at := m.Tracks.Rate.Time(worst)
	who, cam := s.person(), l.track.Camera
	aim := l.track.Aim(at)
	opens := optics.OpenBy(v.set, v.stops-limit)
	d := m.Report(aim.Action.Span, "%s is too dark in %s's frame %s: at %s %s on the face take T%s, and the lens is at %s, %s under; %s is the most, by %s",
		s.called(), cam.Name, m.When(run), at.Clock(), m.light(v.lux), units.Number(float64(v.asks), 1), stopText(v.set), stopsText(v.stops), stopsText(limit), source)
	d.Severity = severity
	m.found(d, cam, who.Name, []diag.Frames{run}, worst)
	if r := m.Plan.Look.UnderStops; r != nil {
		d.Relate(r.Span, "the look: faces at most %s under", stopsText(r.Limit))
	}
	if a := m.putThere(who, at); a != nil {
		d.Relate(a.Span, "%s is there: %s", who.Name, clock.Describe(a))
	}
	fit := l.track.Fit(at)
	if fit != nil && fit.Action != nil && fit.Action.Span != aim.Action.Span {
		d.Relate(fit.Action.Span, "the stop: %s", clock.Describe(fit.Action))
	}
	d.Note("T%s keeps the face within %s, T%s exposes it in full; so does %s times the light", units.Number(float64(opens), 1), stopsText(limit), units.Number(float64(v.asks), 1),
		units.Number(math.Exp2(v.stops), 1))
	if u := m.brightest(m.facePoint(who, worst), at); u != nil {
		d.Note("most of the light is of %s", ofLamps(u, at))
	}
	d.Note("by N² = E·S·t/C, S %d, C %d (ISO 2720); bounce is left out%s", m.Plan.Take.Sensitivity, optics.IncidentC, m.skySaid())
	m.offerOpen(d, l, s, run, limit)
}

// light says an amount of light in the plan's units.
func (p *Pass) light(e units.Lux) string {
	if p.Plan.Take.Units == units.Feet {
		return e.Footcandles()
	}
	return e.String()
}

func (m *meter) skySaid() string {
	if m.sky > 0 {
		return fmt.Sprintf(", and the sky counts with %s, when it is darkest in the window", m.light(m.sky))
	}
	return ", and so is daylight"
}

// brightest is the lamps that most of the light on a face is of; nil for none.
func (p *Pass) brightest(face geom.Vec3, at units.Seconds) *lighting.Unit {
	var best *lighting.Unit
	lux := units.Lux(0)
	all := p.lighting().Units
	for i := range all {
		if e := all[i].Lux(face, at); e > lux {
			best, lux = &all[i], e
		}
	}
	return best
}

// ofLamps says what the lamps of a unit give at a time.
func ofLamps(u *lighting.Unit, at units.Seconds) string {
	return fmt.Sprintf("%s: %d x %s at %s", u.Name, u.Count, u.Lamp.Candela, u.Level(at))
}

// offerOpen offers the stop at which a face is no longer too dark over all of the
// frames of a line's stop, where the lens opens so far.
func (m *meter) offerOpen(d *diag.Diagnostic, l *looking, s subject, run diag.Frames, limit float64) {
	fit := l.track.Fit(m.Tracks.Rate.Time(run.From))
	if fit == nil || fit.Action == nil || fit.Stop <= 0 || l.track.Fit(m.Tracks.Rate.Time(run.To)) != fit {
		return
	}
	// All that is seen at this stop, of which this stretch may be a part only.
	most := 0.0
	for _, r := range l.frames {
		for f := r.From; f <= r.To; f += m.lightLooks() {
			if l.track.Fit(m.Tracks.Rate.Time(f)) == fit {
				most = math.Max(most, m.under(l, s, f).stops)
			}
		}
	}
	needs := optics.FullStopDown(optics.OpenBy(fit.Stop, most-limit))
	if w := fit.Lens.Widest; needs <= 0 || w > 0 && needs < w {
		if w > 0 {
			d.Note("%s opens to %s: it takes more light, too", fit.Lens.Name, stopText(w))
		}
		return
	}
	fixStop(d, fit, needs, "open up to "+stopText(needs)+", with less depth of field")
}
