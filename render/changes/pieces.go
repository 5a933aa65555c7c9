package changes

import (
	"fmt"

	"longhand/lang/compile"
	"longhand/lang/solid"
)

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
