package overhead

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/scene"
)

// extent is a box on the floor.
type extent struct {
	low, high geom.Vec
	any       bool
}

func (e *extent) add(p geom.Vec, around float64) {
	if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) {
		return
	}
	a, b := p.Sub(geom.Vec{X: around, Y: around}), p.Add(geom.Vec{X: around, Y: around})
	if !e.any {
		e.low, e.high, e.any = a, b, true
		return
	}
	e.low = geom.Vec{X: math.Min(e.low.X, a.X), Y: math.Min(e.low.Y, a.Y)}
	e.high = geom.Vec{X: math.Max(e.high.X, b.X), Y: math.Max(e.high.Y, b.Y)}
}

func (e *extent) join(o extent) {
	if o.any {
		e.add(o.low, 0)
		e.add(o.high, 0)
	}
}

func (e extent) size() geom.Vec { return e.high.Sub(e.low) }

func (e extent) centre() geom.Vec { return e.low.Lerp(e.high, 0.5) }

// setExtent is the box round everything that stands still.
func (m *material) setExtent() extent {
	var e extent
	for _, p := range m.pieces {
		for _, q := range p.Polygon {
			e.add(q, 0)
		}
	}
	return e
}

// happening is the box round everything that happens in a stretch: whoever moves
// or is told something, every rolling camera, every place that is named. What
// only stands about counts for nothing. Machines is false to leave out vehicles
// and rigs, and who they carry, for a detail of the rest.
func (m *material) happening(s span, beat *plan.Beat, machines bool) extent {
	var e extent
	told := m.told(s, beat)
	for _, b := range m.tracks.Bodies {
		_, person := b.Thing.(*plan.Person)
		if !person && !machines {
			continue
		}
		around := float64(b.Radius)
		if b.Length > 0 {
			around = math.Hypot(float64(b.Length), float64(b.Width)) / 2
		}
		first := b.At(s.from).Point()
		moved := told[b.Thing]
		var own extent
		m.each(s, func(t units.Seconds) {
			if !machines && b.Carrier(t) != nil {
				return
			}
			p := b.At(t).Point()
			moved = moved || p.Dist(first) > 0.1
			own.add(p, around)
		})
		if moved {
			e.join(own)
		}
	}
	for _, c := range m.tracks.Cameras {
		if from, to, ok := m.rolling(c, s); ok {
			m.each(span{from, to}, func(t units.Seconds) {
				if !machines && c.Rig(t) != nil && !c.Hold(t).Worn {
					return
				}
				v := c.At(t)
				e.add(geom.Vec{X: v.X, Y: v.Y}, 0.3)
			})
		}
	}
	return e
}

// told is everybody whom a line of the stretch has do something there, and whom a
// rolling camera is told to see; lines that only say what is on what count for
// nothing.
func (m *material) told(s span, beat *plan.Beat) map[plan.Thing]bool {
	out := map[plan.Thing]bool{}
	for _, a := range m.plan.Actions {
		if a.Beat != beat && beat != nil || !s.holds(m.tracks.Clock.Of(a).Start) {
			continue
		}
		switch v := a.Deed.(type) {
		case *plan.Move, *plan.Turn, *plan.Spin, *plan.Leave, *plan.Pose, *plan.Operate, *plan.Say:
			out[a.Subject] = true
		case *plan.Stand:
			out[a.Subject] = a.Subject != nil && a.Subject.Kind() == plan.KindPerformer
		case *plan.Handoff:
			for _, r := range []*plan.Rig{v.From, v.To} {
				if r != nil {
					out[r] = true
				}
			}
		}
	}
	for _, c := range m.tracks.Cameras {
		if from, _, ok := m.rolling(c, s); ok {
			for _, t := range c.Targets(from) {
				if who, ok := t.Thing.(*plan.Person); ok {
					out[who] = true
				}
			}
		}
	}
	delete(out, nil)
	return out
}

// each calls for moments a quarter of a second apart, both ends included.
func (m *material) each(s span, do func(units.Seconds)) {
	last := m.lastOf(s)
	n := max(1, int(math.Ceil(float64(last-s.from)*4)))
	for i := range n + 1 {
		do(s.from + (last-s.from)*units.Seconds(i)/units.Seconds(n))
	}
}

// room is the paper kept free round what happens, for labels, in millimetres.
const room = 6.0

// fit is the largest of the scales at which an extent and the room around it fit
// a box; the last one where none does.
func fit(e extent, box scene.Box, scales []float64) float64 {
	for _, s := range scales {
		if fits(e, box, s) {
			return s
		}
	}
	return scales[len(scales)-1]
}

func fits(e extent, box scene.Box, scale float64) bool {
	d := e.size().Mul(1000 / scale)
	return d.X+2*room <= box.Width() && d.Y+2*room <= box.Height()
}

// centred is the view that shows an extent in the middle of a box, moved as far
// as the room allows to show more of the set.
func centred(e, set extent, box scene.Box, scale float64) scene.View {
	all := e
	all.join(set)
	axis := func(low, high, allLow, allHigh, paper float64) float64 {
		mid := (low + high) / 2
		half := (paper/2 - room) * scale / 1000
		if allHigh-allLow <= 2*half {
			return (allLow + allHigh) / 2
		}
		mid = math.Min(math.Max(mid, allLow+half), allHigh-half)
		// What happens must stay inside whatever the set does.
		if high-low <= 2*half {
			mid = math.Min(math.Max(mid, high-half), low+half)
		} else {
			mid = (low + high) / 2
		}
		return mid
	}
	at := geom.Vec{
		X: axis(e.low.X, e.high.X, all.low.X, all.high.X, box.Width()),
		Y: axis(e.low.Y, e.high.Y, all.low.Y, all.high.Y, box.Height()),
	}
	return scene.View{Scale: scale, Plan: at, Paper: box.Center()}
}
