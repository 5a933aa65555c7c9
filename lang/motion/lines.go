package motion

import (
	"fmt"
	"math"

	"longhand/lang/geom"
	"longhand/lang/pace"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// move goes along a path.
func (l *lane) move(e *event, d *plan.Move) {
	l.disembark(e.start)
	lim := l.b.limits(l.t.Thing, e.start, d.Run)
	start := l.here()
	if from := d.Path.From; from != nil && from.Point.Dist(start.Floor()) > nearEnough {
		start = from.Point.At(l.b.placeZ(from))
		l.jump(e.action, start, lim)
		l.still = nil
		l.t.add(Segment{Kind: Resting, Start: units.Seconds(l.done), End: units.Seconds(l.done), way: l.wrap(rest{start})})
	}
	radius := 0.0
	if _, person := l.t.Thing.(*plan.Person); !person && !d.Path.Backwards {
		radius = float64(lim.Radius.Typical)
	}
	r, err := l.b.r.route(e.action, start.Floor(), l.heading(), radius, d)
	if err != nil {
		l.b.problem(Problem{Kind: NoWay, Subject: l.t.Thing, Action: e.action, Note: err.Error()})
		return
	}
	m := moverFor(lim, &d.Path, e.action.Timing)
	l.b.lengths.move(e.action, m, r)
	profile := m.in(r, units.Seconds(e.end-e.start))
	var end *plan.Place
	if d.Path.To != nil {
		end = d.Path.To
	}
	l.walk(e, r, m, profile, end)
	l.passes(e, r, d.Path.Via)
	if d.Path.Facing != nil {
		l.faceTarget(*d.Path.Facing, l.t.Segments[len(l.t.Segments)-1], lim)
	}
}

// walk adds a path in time, its heading and its demands.
func (l *lane) walk(e *event, r route, m mover, profile *pace.Profile, end *plan.Place) {
	if r.path.Length() == 0 || profile.Duration() <= 0 {
		return
	}
	start := l.done
	z := l.here().Z
	// A height that nothing holds, as of who was told to stand on it, is left.
	l.tooSteep(e, l.done, l.here(), min(z, l.b.g.under(l.here().Floor(), z)))
	lv := l.b.g.along(r.path, z)
	if end != nil {
		lv = l.arriveAt(e, lv, r.path, end)
	}
	w := walk{r.path, profile, start, lv}
	var way way = w
	if l.still != nil && l.still.Len() > 1e-3 { // takes over from a relation without a jerk
		gap := closeGap(geom.Vec{}, *l.still, start, l.still.Len(), max(float64(m.limits.Accel.Typical), 0.5))
		if gap.time < 0.8*float64(profile.Duration()) {
			way = faded{w, gap}
		}
	}
	l.still = nil
	if l.boom != nil {
		flat := func(t float64) geom.Vec { return w.at(t).Floor() }
		way = levelled{l.boom.swinging(flat, m.limits, start, start+float64(profile.Duration())), level{step: 1, z: []float64{z}}}
	}
	l.push(Segment{
		Kind: Moving, Action: e.action, End: units.Seconds(start) + profile.Duration(),
		Path: r.path, Profile: profile, Backwards: m.back, Limits: m.limits,
		way: l.wrap(way), bends: r.bends,
	})
	l.t.face(start, w.facing(r, m.back), m.limits, -1, false)
	l.b.demandMove(l.t.Thing, e, &l.t.Segments[len(l.t.Segments)-1])
}

// passes tells of places on a way whose height, where it is said, isn't that of
// the floor the way has there.
func (l *lane) passes(e *event, r route, via []plan.Place) {
	s := &l.t.Segments[len(l.t.Segments)-1]
	if s.Action != e.action || s.Profile == nil {
		return
	}
	for i := range via {
		want, stated := statedZ(&via[i])
		if !stated || i >= len(r.stops) {
			continue
		}
		at := float64(s.Start + s.Profile.TimeAt(units.Metres(r.stops[i])))
		l.tooSteep(e, at, s.way.at(at), want)
	}
}

// tooSteep tells of another height, at the same place, that no step leads to.
func (l *lane) tooSteep(e *event, at float64, from geom.Vec3, z float64) bool {
	gap := math.Abs(z - from.Z)
	if gap <= climb {
		return false
	}
	l.b.facts.Jumps = append(l.b.facts.Jumps, Jump{
		Subject: l.t.Thing, Action: e.action, At: units.Seconds(at), From: from, To: from.Floor().At(z), Gap: units.Metres(gap),
		Needs: naturalTime(gap, l.b.limits(l.t.Thing, e.start, false)),
	})
	return true
}

// arriveAt ends a way at the height of the place it goes to. What no stairs or
// step leads to is a jump, at its end.
func (l *lane) arriveAt(e *event, lv level, path *geom.Path, end *plan.Place) level {
	got := lv.at(path.Length())
	want, stated := statedZ(end)
	if !stated {
		if want = l.b.g.stand(path.End()); want <= got+climb {
			return lv
		}
	}
	if math.Abs(want-got) <= 1e-6 {
		return lv
	}
	if l.tooSteep(e, e.end, path.End().At(got), want) {
		return lv.raised(path.Length(), want)
	}
	return lv.tilted(path.Length(), want)
}

// climb is the height that somebody takes without stairs, metres.
const climb = 0.4

// faceTarget looks at something all along the segment just added.
func (l *lane) faceTarget(to plan.Target, s Segment, lim Limits) {
	g, ok := l.b.target(to)
	if !ok {
		return
	}
	l.t.heads = l.t.heads[:len(l.t.heads)-1]
	towards := func(t float64) float64 { return g.point(t).Sub(s.way.at(t).Floor()).Angle() }
	rate := lim.swayRate() // no faster where the target is walked past
	from, end := s.span()
	turn := newSway(towards, rate, 3*rate, from, end)
	l.t.face(from, turning(turn.at), lim, -1, false)
}

// stand stays, at a place it should already be at, and keeps facing what the
// line says until its feet are needed for something else.
func (l *lane) stand(e *event, d *plan.Stand, until float64) {
	l.stay(e, d)
	if d.Facing != nil {
		l.watch(e, *d.Facing, until)
	}
}

func (l *lane) stay(e *event, d *plan.Stand) {
	if d.At == nil || l.aboard != nil {
		return
	}
	to := d.At.Point.At(l.b.placeZ(d.At))
	from := l.here()
	if from.Floor().Dist(to.Floor()) <= nearEnough {
		return
	}
	l.jump(e.action, to, l.b.limits(l.t.Thing, e.start, false))
	l.still = nil
	l.t.add(Segment{Kind: Resting, Action: e.action, Start: units.Seconds(l.done), End: units.Seconds(l.done), way: l.wrap(rest{to})})
}

// watch turns to something and goes on facing it, wherever it goes. What has
// wheels or legs of its own is only set down that way.
func (l *lane) watch(e *event, to plan.Target, until float64) {
	g, ok := l.b.target(to)
	if !ok {
		l.b.problem(Problem{Kind: NoTarget, Subject: l.t.Thing, Other: to.Thing, Action: e.action, Note: "it is nowhere"})
		return
	}
	var stays way = rest{l.here()}
	if l.aboard != nil {
		stays = l.wrap(held{l.aboard.on, l.aboard.by})
	}
	towards := func(t float64) float64 { return g.point(t).Sub(stays.at(t).Floor()).Angle() }
	if g.point(e.start).Dist(stays.at(e.start).Floor()) < 1e-6 {
		return // nothing to face where one stands oneself
	}
	lim := l.b.limits(l.t.Thing, e.start, false)
	dir := fixed(towards(e.start))
	if _, person := l.t.Thing.(*plan.Person); person && (g.moves() || l.aboard != nil) {
		rate := lim.swayRate() // no faster where it passes close by
		dir = turning(newSway(towards, rate, 3*rate, e.start, until).at)
	}
	l.t.face(e.start, dir, lim, -1, true)
}

// turn faces a direction or a target, where that is when the turn is over.
func (l *lane) turn(e *event, d *plan.Turn) {
	angle := 0.0
	switch {
	case d.Angle != nil:
		angle = d.Angle.Radians()
	case d.To != nil:
		g, ok := l.b.target(*d.To)
		if !ok {
			l.b.problem(Problem{Kind: NoTarget, Subject: l.t.Thing, Other: d.To.Thing, Action: e.action, Note: "it is nowhere"})
			return
		}
		to := g.point(e.end).Sub(l.t.point(min(e.end, l.t.end())).Floor())
		if to.Len() < 1e-6 {
			return
		}
		angle = to.Angle()
	default:
		return
	}
	lim := l.b.limits(l.t.Thing, e.start, false)
	off := 0.0
	if len(l.t.heads) > 0 {
		off = geom.AngleDiff(l.t.headed(e.start, len(l.t.heads)), angle)
	}
	l.b.lengths.natural[e.action] = units.Seconds(lim.turnTime(off))
	l.t.face(e.start, fixed(angle), lim, e.end-e.start, true)
	l.b.demandTurn(l.t.Thing, e, off, lim)
}

// pose changes posture.
func (l *lane) pose(e *event, d *plan.Pose) {
	to, _ := postureOf(d.Posture)
	l.t.poses = append(l.t.poses, pose{e.start, e.end, to, l.t.tall(e.start)})
}

// naturalTime is how long a straight way takes at the usual pace.
func naturalTime(length float64, lim Limits) units.Seconds {
	v, a := lim.Forward.Typical, lim.Accel.Typical
	if v <= 0 || a <= 0 {
		return units.Seconds(math.Inf(1))
	}
	return pace.NaturalTime(units.Metres(length), pace.Pace{Speed: v, Accel: a})
}

func nowhere(t plan.Target) string { return fmt.Sprintf("%s is nowhere", t.Name()) }
