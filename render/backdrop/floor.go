package backdrop

import (
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/render/scene"
)

// cut is the height over the floor at which walls are cut open to be drawn (1.2 m:
// common practice, no source).
const cut = 1.2

// Piece is a part of the set cut open at breast height: solid where it is cut, an
// outline where it is low, dashed where it hangs overhead. More classes may be
// added to its own.
func Piece(p solid.Piece, v scene.View, more string) scene.Item {
	class := "stands"
	switch {
	case p.Z[0] >= cut:
		class = "hangs"
	case p.Z[1] <= cut, p.Door != nil, p.Hole != nil:
		class = "low"
	}
	if more != "" {
		class += " " + more
	}
	return &scene.Polygon{Class: class, Points: v.Points(p.Polygon)}
}

// Set is all that stands still.
func Set(pieces []solid.Piece, v scene.View) *scene.Group {
	g := &scene.Group{ID: "set", Class: "set", Title: "the set"}
	for _, p := range pieces {
		g.Add(Piece(p, v, ""))
	}
	return g
}

// Marks draws the marks in the box as small crosses, and asks for their names;
// those that skip names are left out.
func Marks(set *plan.Set, v scene.View, n *Names, skip map[string]bool) *scene.Group {
	g := &scene.Group{ID: "quiet-marks", Class: "marks", Title: "marks"}
	for _, m := range set.Marks {
		at := v.Point(m.Point)
		if skip[m.Name] || !n.On(at) {
			continue
		}
		g.Add(&scene.Group{Title: "mark " + m.Name, Items: []scene.Item{scene.Cross("quiet-mark", at, 0.9)}})
		n.Add("quiet", m.Name, 0, at)
	}
	return g
}
