package sheets

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// still is the speed, m/s, below which a thing does not count as moving.
const still = 0.02

// near is how close a moving thing comes to something, and when.
type near struct {
	what  string
	thing plan.Thing // nil for a part of the set
	gap   float64
	at    units.Seconds
	speed units.MetresPerSecond // of the mover, then
	// ahead is the least that is left of the gap beyond the stopping distance
	// while the person is in the mover's lane ahead; +Inf where they never are.
	ahead   float64
	aheadAt units.Seconds
}

// outlineOf is the footprint of a track at a time.
func outlineOf(tr *motion.Track, at units.Seconds) outline {
	pose := tr.At(at)
	o := outline{centre: pose.Point(), radius: float64(tr.Radius)}
	if tr.Length > 0 && tr.Width > 0 {
		l, w := float64(tr.Length)/2, float64(tr.Width)/2
		o.poly = geom.Polygon{{X: l, Y: -w}, {X: l, Y: w}, {X: -l, Y: w}, {X: -l, Y: -w}}.Placed(pose.Point(), pose.Heading)
	}
	return o
}

// clearances is how close each moving rig, and each operator with one, comes to
// people and to the set.
func (m *maker) clearances() *Table {
	t := table("clearances", "Clearances", col("who", "who", "the rig that moves, or who carries one"), col("what", "closest to", "a person, or a part of the set"),
		measure("gap", "gap", "m", "between the outlines on the floor"), clockColumns(), beatColumn(), measure("speed", "at", "m/s", "speed of who moves, then"),
		measure("keep", "keep", "m", "usual least gap; none printed: no more than not touching"))
	t.Columns[t.Column("beat")].Group = false
	t.Empty = "Nothing that carries a camera moves over the floor in this plan."
	p := m.take
	for _, tr := range p.tracks.Bodies {
		rolling := func(units.Seconds) bool { return true }
		switch who := tr.Thing.(type) {
		case *plan.Rig:
			if m.worn(who) {
				continue
			}
		case *plan.Person:
			rolling = func(at units.Seconds) bool { return m.carrying(p, who, at) }
		default:
			continue
		}
		people, set := m.closest(p, tr, rolling)
		for k, list := range [][]near{people, set} {
			if len(list) == 0 {
				continue
			}
			keep := word("")
			if _, person := tr.Thing.(*plan.Person); person && k == 0 {
				keep = m.length(body.OperatorGap.Typical)
			}
			n := list[0] // the closest
			t.add(nil, cells(word(tr.Thing.ID().Name), word(n.what), m.length(units.Metres(n.gap))), m.clock(n.at), p.beatAt(n.at), cells(m.speed(n.speed), keep))
		}
	}
	if len(t.Rows) > 0 {
		t.note("gaps are between outlines on the floor while the first of the two moves; arms, cables and doors that swing are not in them")
	}
	return t
}

func (m *maker) worn(r *plan.Rig) bool {
	class, err := body.ParseClass(r.Class)
	return err == nil && body.RigOf(class).Crewing == body.Worn
}

func (m *maker) carrying(p *part, who *plan.Person, at units.Seconds) bool {
	for _, ct := range p.cameras() {
		if h := ct.Hold(at); h != nil && h.Worn && h.Operator == who {
			return true
		}
	}
	return false
}

// closest is what a thing comes closest to while it moves: each person not with
// it, and each part of the set, the closest first.
func (m *maker) closest(p *part, tr *motion.Track, counts func(units.Seconds) bool) (people, set []near) {
	pieces := m.pieces()
	bestPeople := make([]near, len(p.tracks.Bodies))
	bestSet := near{gap: math.Inf(1)}
	for i := range bestPeople {
		bestPeople[i].gap, bestPeople[i].ahead = math.Inf(1), math.Inf(1)
	}
	for k := units.Frame(0); int(k) < p.tracks.Frames; k++ {
		at := m.rate.Time(k)
		v := tr.Speed(at)
		if float64(v) < still || !counts(at) || tr.Carrier(at) != nil {
			continue
		}
		o := outlineOf(tr, at)
		pose := tr.At(at)
		for i, other := range p.tracks.Bodies {
			who, ok := other.Thing.(*plan.Person)
			if !ok || other == tr || other.Carrier(at) == tr.Thing || m.with(p, tr.Thing, who, at) || p.spotting(who, tr.Thing, at) || stepping(other, at) {
				continue
			}
			if c := other.Carrier(at); c != nil && c != tr.Thing {
				continue // aboard something else, which has its own row
			}
			b := &bestPeople[i]
			to := outlineOf(other, at)
			g := o.between(to)
			if g < b.gap-1e-9 {
				b.what, b.thing, b.gap, b.at, b.speed = who.Name, who, g, at, v
			}
			if left := g - float64(safety.StoppingDistance(v, safety.Dry)); left < b.ahead-1e-9 && ahead(tr, to, at) {
				b.ahead, b.aheadAt = left, at
			}
		}
		for _, q := range pieces {
			if !q.stands(k) || q.Z[0] > float64(pose.Z+pose.Height)-1e-3 || q.Z[1] < float64(pose.Z)+0.1 {
				continue
			}
			if g := o.between(outline{poly: q.Polygon}); g < bestSet.gap-1e-9 {
				bestSet = near{what: string(q.Thing.Kind()) + " " + q.Name, gap: g, at: at, speed: v}
			}
		}
	}
	for _, n := range bestPeople {
		if !math.IsInf(n.gap, 1) {
			people = append(people, n)
		}
	}
	sortNear(people)
	if !math.IsInf(bestSet.gap, 1) {
		set = append(set, bestSet)
	}
	return people, set
}

func sortNear(list []near) {
	for i := 1; i < len(list); i++ {
		for k := i; k > 0 && list[k].gap < list[k-1].gap; k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
}

// stepping says whether somebody is on their way on or off a carrier.
func stepping(tr *motion.Track, at units.Seconds) bool {
	s := tr.Segment(at)
	return s != nil && s.Kind == motion.Stepping
}

// with says whether somebody works the camera on a rig, or is the one who wears
// it.
func (m *maker) with(p *part, thing plan.Thing, who *plan.Person, at units.Seconds) bool {
	if thing == plan.Thing(who) {
		return true
	}
	for _, ct := range p.cameras() {
		if h := ct.Hold(at); h != nil && h.Operator == who && h.Rig != nil && plan.Thing(h.Rig) == thing {
			return true
		}
	}
	return false
}

// spotting says whether somebody is at another's back at a time, as they should.
func (p *part) spotting(who *plan.Person, whom plan.Thing, at units.Seconds) bool {
	for _, a := range p.actions {
		if d, ok := a.Deed.(*plan.Spot); ok && a.Subject == plan.Thing(who) && plan.Thing(d.Whom) == whom {
			if i := p.clock.Of(a); at >= i.Start && at <= i.End {
				return true
			}
		}
	}
	return false
}

// wall is a piece of the set and when it is there.
type wall struct {
	solid.Piece
	shut   [][2]units.Frame // of a door
	always bool
}

func (w *wall) stands(f units.Frame) bool {
	if w.always {
		return true
	}
	for _, s := range w.shut {
		if f >= s[0] && f <= s[1] {
			return true
		}
	}
	return false
}

// pieces are the parts of the set that stop a body, with when doors are shut.
func (m *maker) pieces() []wall {
	var out []wall
	for i, q := range m.r.Stage.Pieces {
		if q.Thing == nil {
			continue
		}
		switch q.Thing.(type) {
		case *plan.Platform, *plan.Stairs:
			continue // one walks on them
		}
		w := wall{Piece: q, always: q.Door == nil}
		if q.Door != nil && i < len(m.r.Stage.Scene.Solids) {
			for _, s := range m.r.Stage.Scene.Solids {
				if s.Name == q.Name && s.Kind == "door" {
					for _, f := range s.Shut {
						w.shut = append(w.shut, [2]units.Frame{f.From, f.To})
					}
				}
			}
		}
		out = append(out, w)
	}
	return out
}
