package motion

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// sketcher guesses lengths before there is a clock: each subject's lines in the
// order of the text, carriers where they were left.
type sketcher struct {
	r       *Resolver
	out     *lengths
	here    map[plan.Thing]geom.Vec
	posture map[plan.Thing]body.Posture
	rig     map[plan.Thing]*plan.Rig // of each camera
	up      map[plan.Thing]float64   // of each lens
}

func newSketch(r *Resolver) *lengths {
	s := &sketcher{
		r: r, out: newLengths(r),
		here: make(map[plan.Thing]geom.Vec), posture: make(map[plan.Thing]body.Posture),
		rig: make(map[plan.Thing]*plan.Rig), up: make(map[plan.Thing]float64),
	}
	for _, a := range r.actions {
		s.line(a)
	}
	return s.out
}

// The times of small deeds: common practice, no source.
const (
	operateTime units.Seconds = 1.5 // opens or shuts a door
	boardTime   units.Seconds = 2
	rackTime    units.Seconds = 1
	spinRate                  = 180.0 // degrees a second
	guessedTurn               = math.Pi / 2
)

func (s *sketcher) line(a *plan.Action) {
	who := clock.SubjectOf(a)
	t := units.Seconds(0)
	switch d := a.Deed.(type) {
	case *plan.Move:
		s.move(a, d)
		return
	case *plan.Stand:
		if d.At != nil {
			s.here[who] = d.At.Point
		}
	case *plan.Ride:
		s.here[who] = s.here[d.Carrier]
	case *plan.Leave:
		s.here[who] = s.here[d.Carrier]
		t = stepTime
		if d.To != nil {
			t += naturalTime(s.here[who].Dist(d.To.Point), s.r.limitsOf(who, false))
			s.here[who] = d.To.Point
		}
	case *plan.Board:
		t = boardTime
		s.here[who] = s.here[d.Carrier]
	case *plan.Turn:
		t = units.Seconds(s.r.limitsOf(who, false).turnTime(guessedTurn))
	case *plan.Spin:
		t = units.Seconds(math.Abs(float64(d.Angle)) / spinRate)
	case *plan.Pose:
		to, _ := postureOf(d.Posture)
		t = body.Change(s.posture[who], to)
		s.posture[who] = to
	case *plan.Operate:
		t = operateTime
	case *plan.Say:
		t = clock.Spoken(d.Words, s.r.plan.Take.Pace)
	case *plan.Mount:
		s.mount(who, d.Rig)
		if d.Up != nil {
			s.up[who] = float64(*d.Up)
		}
	case *plan.Handoff:
		if d.From != nil && d.To != nil {
			from, _ := body.ParseClass(d.From.Class)
			to, _ := body.ParseClass(d.To.Class)
			t = body.HandoffBetween(from, to).Typical
		}
		s.mount(who, d.To)
	case *plan.Circle:
		t = s.round(who, d)
	case *plan.Travel:
		t = naturalTime(float64(d.By), s.limits(who))
	case *plan.Lift:
		t = s.limits(who).riseTime(math.Abs(float64(d.To) - s.up[who]))
		s.up[who] = float64(d.To)
	case *plan.Swing:
		t = units.Seconds(s.limits(who).panTime(math.Abs(d.Angle.Radians())))
	case *plan.Rack:
		t = rackTime
	}
	if math.IsInf(float64(t), 0) || math.IsNaN(float64(t)) {
		t = 1
	}
	s.out.natural[a] = t
}

func postureOf(word string) (body.Posture, bool) {
	for _, p := range body.Postures() {
		if p.String() == word {
			return p, true
		}
	}
	return body.Standing, false
}

func (s *sketcher) mount(camera plan.Thing, rig *plan.Rig) {
	if rig == nil {
		return
	}
	s.rig[camera] = rig
	s.up[camera] = float64(classOf(rig).Lens)
}

func (s *sketcher) limits(camera plan.Thing) Limits {
	if rig := s.rig[camera]; rig != nil {
		return s.r.limitsOf(rig, false)
	}
	return s.r.hide
}

func (s *sketcher) move(a *plan.Action, d *plan.Move) {
	who := a.Subject
	start, known := s.here[who]
	if d.Path.From != nil {
		start, known = d.Path.From.Point, true
	}
	if stops := d.Path.Stops(); !known && len(stops) > 0 {
		start = stops[0].Point
	}
	r, err := s.r.route(a, start, 0, 0, d)
	if err != nil {
		s.out.natural[a] = 0
		return
	}
	s.out.move(a, moverFor(s.r.limitsOf(who, d.Run), &d.Path, a.Timing), r)
	s.here[who] = r.path.End()
}

// round is how long a circle takes: of the angle at the distance given, else at
// a guess.
func (s *sketcher) round(camera plan.Thing, d *plan.Circle) units.Seconds {
	if d.Counter {
		return 2
	}
	at := float64(d.At)
	if at <= 0 {
		at = 2
	}
	return naturalTime(at*math.Abs(d.Angle.Radians()), s.limits(camera))
}

// panTime is how long a pan by an angle takes at the usual rate.
func (l Limits) panTime(angle float64) float64 {
	rate := l.Pan.Typical
	if rate <= 0 {
		rate = 45
	}
	return aimEase.Time(angle, units.Degrees(rate).Radians(), 0)
}
