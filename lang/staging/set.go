package staging

import (
	"sort"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// set turns the set's pieces into solids. Glass stops bodies, not looks, so it
// isn't among them. A lens hole is really cut through its wall; what fills it
// for everybody but its own camera is a body, so that it can be that camera's
// own, and so that it can be seen by others.
func (b *builder) set() {
	s := b.stage
	s.Pieces = solid.Of(&b.plan.Set)
	for _, p := range s.Pieces {
		switch {
		case p.Glass, p.Hole != nil:
			continue
		}
		out := sight.Solid{Name: p.Name, Kind: string(p.Thing.Kind()), Polygon: p.Polygon, Z: p.Z}
		if p.Door != nil {
			out.Shut = b.shut(p.Door)
		}
		s.Scene.Solids = append(s.Scene.Solids, out)
	}
	for _, m := range b.plan.Set.Mirrors {
		if m.Bad || m.Wall == nil {
			continue
		}
		// A mirror hangs on both faces of its wall: one reflecting rectangle each,
		// just clear of it.
		for _, left := range []bool{true, false} {
			a, c := m.Face(left)
			s.Scene.Mirrors = append(s.Scene.Mirrors, sight.Mirror{Name: m.Name, A: a, B: c, Z: [2]float64{float64(m.High.Low), float64(m.High.High)}})
		}
	}
	for _, g := range b.plan.Set.Glows {
		if g.Bad || g.Wall == nil {
			continue
		}
		for _, left := range []bool{true, false} {
			a, c := g.Face(left)
			s.Scene.Glows = append(s.Scene.Glows, sight.Glow{Name: g.Name, A: a, B: c, Z: [2]float64{float64(g.High.Low), float64(g.High.High)}, Nits: g.Nits})
		}
	}
}

// shut lists when a door stands in its opening. A door that is opening has left
// it: what it may show is held against the plan from its first moment. One that
// is shutting stands in it when it is shut.
func (b *builder) shut(d *plan.Door) []sight.Frames {
	type change struct {
		at   units.Seconds
		open bool
	}
	var changes []change
	for _, a := range b.plan.Actions {
		if op, ok := a.Deed.(*plan.Operate); ok && op.Door == d {
			i := b.tracks.Clock.Of(a)
			at := i.Start
			if !op.Open {
				at = i.End
			}
			changes = append(changes, change{at, op.Open})
		}
	}
	sort.SliceStable(changes, func(i, j int) bool { return changes[i].at < changes[j].at })
	out := []sight.Frames{}
	last := units.Frame(b.tracks.Frames - 1)
	shut, since := !d.Open, units.Frame(0)
	for _, c := range changes {
		f := max(0, min(b.tracks.Rate.From(c.at), last+1))
		if shut == !c.open {
			continue
		}
		if shut && f > since {
			out = append(out, sight.Frames{From: since, To: f - 1})
		}
		shut, since = !c.open, f
	}
	if shut && since <= last {
		out = append(out, sight.Frames{From: since, To: last})
	}
	return out
}

// box is a footprint about the origin, length ahead and width across.
func box(length, width float64) []geom.Vec {
	l, w := length/2, width/2
	return []geom.Vec{{X: l, Y: -w}, {X: l, Y: w}, {X: -l, Y: w}, {X: -l, Y: -w}}
}

// boxAt is a footprint whose middle lies ahead of and to the left of the origin.
func boxAt(x, y, length, width float64) []geom.Vec {
	out := box(length, width)
	for i := range out {
		out[i] = out[i].Add(geom.Vec{X: x, Y: y})
	}
	return out
}
