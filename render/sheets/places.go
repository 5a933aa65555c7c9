package sheets

import (
	"math"
	"strings"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// atMark is how near a mark counts as on it; nearMark how far from one a place is
// still told from it.
const (
	atMark   = 0.3
	nearMark = 3.0
)

// spot names a place on the floor: its mark, told from a mark as the plan would
// write it, or by its coordinates.
func (m *maker) spot(p geom.Vec) string {
	var best *plan.Mark
	far := math.Inf(1)
	for _, k := range m.p.Set.Marks {
		if k.Bad {
			continue
		}
		if d := k.Point.Dist(p); d < far-1e-9 {
			best, far = k, d
		}
	}
	switch {
	case best != nil && far <= atMark:
		return best.Name
	case best != nil && far <= nearMark:
		return best.Name + " + " + m.point(p.Sub(best.Point))
	}
	return m.point(p)
}

// point prints coordinates in the plan's unit.
func (m *maker) point(p geom.Vec) string {
	return "(" + m.coordinate(p.X) + ", " + m.coordinate(p.Y) + ")"
}

func (m *maker) coordinate(v float64) string {
	if m.sys == units.Metric {
		return units.Number(v, 1)
	}
	if v < 0 {
		return "-" + units.Metres(-v).Text(m.sys)
	}
	return units.Metres(v).Text(m.sys)
}

// where is where a thing is at a time: "M1", "aboard van".
func (m *maker) where(p *part, thing plan.Thing, t units.Seconds) string {
	if c, ok := thing.(*plan.Camera); ok {
		if ct := p.tracks.Camera(c); ct != nil {
			if h := ct.Hold(t); h != nil && h.Hide != nil && h.Hide.Hole != nil {
				return "behind " + h.Hide.Hole.Name
			}
			v := ct.At(t)
			return m.spot(geom.Vec{X: v.X, Y: v.Y})
		}
		return ""
	}
	tr := p.tracks.Body(thing)
	if tr == nil {
		return ""
	}
	if c := tr.Carrier(t); c != nil {
		if _, on := c.(*plan.Person); on {
			return "on " + c.ID().Name
		}
		return "aboard " + c.ID().Name
	}
	return m.spot(tr.At(t).Point())
}

// from and to are where a line's subject is as it begins and as it ends.
func (m *maker) from(p *part, a *plan.Action) string {
	if a.Subject == nil {
		return ""
	}
	return m.where(p, a.Subject, p.clock.Of(a).Start)
}

func (m *maker) to(p *part, a *plan.Action) string {
	if d, ok := a.Deed.(*plan.Move); ok && d.Path.To != nil {
		return d.Path.To.Text
	}
	if a.Subject == nil {
		return ""
	}
	return m.where(p, a.Subject, p.clock.Of(a).End)
}

// listed lists names as one says them: "A, ida and vest".
func listed(names []string) string {
	switch n := len(names); n {
	case 0:
		return ""
	case 1:
		return names[0]
	default:
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
}

func name[T any, P interface {
	*T
	plan.Thing
}](p P) string {
	if p == nil {
		return ""
	}
	return p.ID().Name
}

func nameOf(t plan.Thing) string {
	if t == nil {
		return ""
	}
	return t.ID().Name
}
