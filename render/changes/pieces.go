package changes

import (
	"fmt"

	"longhand/lang/compile"
	"longhand/lang/geom"
	"longhand/lang/solid"
	"longhand/render/scene"
)

// cut is the height over the floor at which walls are cut open to be drawn (1.2 m:
// common practice, no source).
const cut = 1.2

// piece is a part of the set as it is drawn.
type piece struct {
	solid.Piece
	same bool // in both plans
}

// pieces are the parts of the set in either plan, with those that are in both once.
func pieces(old, new *compile.Result) (was, is []piece) {
	key := func(p solid.Piece) string {
		s := fmt.Sprintf("%.3f %.3f", p.Z[0], p.Z[1])
		for _, v := range p.Polygon {
			s += fmt.Sprintf(" %.3f,%.3f", v.X, v.Y)
		}
		return s
	}
	in := func(list []solid.Piece) map[string]bool {
		out := map[string]bool{}
		for _, p := range list {
			out[key(p)] = true
		}
		return out
	}
	a, b := solid.Of(&old.Plan.Set), solid.Of(&new.Plan.Set)
	ina, inb := in(a), in(b)
	for _, p := range b {
		is = append(is, piece{p, ina[key(p)]})
	}
	for _, p := range a {
		if !inb[key(p)] {
			was = append(was, piece{p, false})
		}
	}
	return was, is
}

// draw is a piece cut open at breast height: solid where it is cut, an outline
// where it is low, dashed where it hangs overhead.
func (p piece) draw(v scene.View) scene.Item {
	ring := v.Points(p.Polygon)
	class := "stands"
	switch {
	case p.Z[0] >= cut:
		class = "hangs"
	case p.Z[1] <= cut, p.Door != nil, p.Hole != nil:
		class = "low"
	}
	if !p.same {
		class += " new-piece"
	}
	return &scene.Polygon{Class: class, Points: ring}
}

// extent is a box on the floor.
type extent struct {
	low, high geom.Vec
	any       bool
}

func (e *extent) add(points ...geom.Vec) {
	for _, p := range points {
		if !e.any {
			e.low, e.high, e.any = p, p, true
			continue
		}
		e.low = geom.Vec{X: min(e.low.X, p.X), Y: min(e.low.Y, p.Y)}
		e.high = geom.Vec{X: max(e.high.X, p.X), Y: max(e.high.Y, p.Y)}
	}
}

func (e *extent) grow(by float64) {
	e.low, e.high = e.low.Sub(geom.Vec{X: by, Y: by}), e.high.Add(geom.Vec{X: by, Y: by})
}
