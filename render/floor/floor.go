// Package floor hands the marks of a set on to whoever tapes the floor: as a DXF
// drawing (R12, which everything reads) over the outlines of the set, and as a
// table with the tape's lengths from two corners each.
//
// It knows the plan and nothing of its clock.
package floor

import (
	"math"
	"sort"
	"strings"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/solid"
)

// Mark is a mark on the floor.
type Mark struct {
	Name string
	At   geom.Vec
	Z    float64  // of the floor it is on, metres
	Who  []string // in the order of the text: who starts, stops or passes there
	// Tape is two corners to measure from; fewer where the set has none that
	// cross well.
	Tape []Tape
}

// Tape is a length from a corner.
type Tape struct {
	Corner string
	From   geom.Vec
	Length float64 // along the floor, metres
}

// Marks lists the marks of a plan in the order of the text.
func Marks(p *plan.Plan) []Mark {
	who := users(p)
	corners := corners(&p.Set)
	floors := solid.NewFloors(&p.Set)
	var out []Mark
	for _, m := range p.Set.Marks {
		if m.Bad {
			continue
		}
		z := floors.Stand(m.Point)
		if m.Z != nil {
			z = float64(*m.Z)
		}
		out = append(out, Mark{m.Name, m.Point, z, who[m], tape(m.Point, z, corners)})
	}
	return out
}

// users are who goes to each mark, in the take and its pickups.
func users(p *plan.Plan) map[*plan.Mark][]string {
	out := map[*plan.Mark][]string{}
	add := func(a *plan.Action, places ...*plan.Place) {
		name := a.Who()
		if h, ok := a.Deed.(*plan.Handoff); ok {
			name = h.Camera.Name
		}
		for _, at := range places {
			if at == nil || !at.Exact() || at.Before != 0 || name == "" {
				continue
			}
			list := out[at.Mark]
			known := false
			for _, n := range list {
				known = known || n == name
			}
			if !known {
				out[at.Mark] = append(list, name)
			}
		}
	}
	lines := append([]*plan.Action(nil), p.Actions...)
	for _, u := range p.Pickups {
		lines = append(lines, u.Actions...)
	}
	for _, a := range lines {
		switch d := a.Deed.(type) {
		case *plan.Move:
			add(a, d.Path.From)
			for _, s := range d.Path.Stops() {
				add(a, &s)
			}
		case *plan.Stand:
			add(a, d.At)
		case *plan.Leave:
			add(a, d.To)
		case *plan.Handoff:
			if d.Camera != nil {
				add(a, d.At)
			}
		}
	}
	return out
}

// corner is a point of the set that a tape can be held to.
type corner struct {
	name string
	at   geom.Vec
	low  float64 // where it stands, metres
}

// corners are the ends and bends of walls and the corners of blocks, named by
// their number along the wall or round the block, from 1.
func corners(set *plan.Set) []corner {
	var out []corner
	add := func(name string, points []geom.Vec, low float64) {
		for i, p := range points {
			out = append(out, corner{name + " " + number(i+1), p, low})
		}
	}
	for _, w := range set.Walls {
		if !w.Bad {
			add(w.Name, w.Line, float64(w.High.Low))
		}
	}
	for _, b := range set.Blocks {
		if !b.Bad {
			add(b.Name, b.Polygon, float64(b.High.Low))
		}
	}
	return out
}

// Tapes that cross too flat make a mark of a pencil's width a hand wide: between
// 30 and 150 degrees the error is at most doubled (surveying by two distances;
// it grows as one over the sine).
const flattest = 30 * math.Pi / 180

// longest is how long a tape is, metres (common practice, no source).
const longest = 30

// nearest is how many corners are tried for pairs.
const nearest = 12

// tape picks the two corners on the mark's own floor that need the shortest
// tapes and cross well.
func tape(p geom.Vec, z float64, all []corner) []Tape {
	var near []corner
	for _, c := range all {
		if d := c.at.Dist(p); d > 0.02 && d <= longest && math.Abs(c.low-z) < 0.01 {
			near = append(near, c)
		}
	}
	sort.SliceStable(near, func(i, j int) bool { return near[i].at.Dist(p) < near[j].at.Dist(p) })
	near = near[:min(len(near), nearest)]
	best, pick := math.Inf(1), [2]int{-1, -1}
	for i, a := range near {
		for j := i + 1; j < len(near); j++ {
			b := near[j]
			u, v := a.at.Sub(p), b.at.Sub(p)
			angle := math.Abs(math.Atan2(u.Cross(v), u.Dot(v)))
			if l := u.Len() + v.Len(); angle >= flattest && angle <= math.Pi-flattest && l < best-1e-9 {
				best, pick = l, [2]int{i, j}
			}
		}
	}
	if pick[0] < 0 {
		return nil
	}
	var out []Tape
	for _, i := range pick {
		out = append(out, Tape{near[i].name, near[i].at, near[i].at.Dist(p)})
	}
	return out
}

func joined(names []string) string { return strings.Join(names, ", ") }
