package frames

import (
	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/sight"
)

// Piece is a convex-cut piece of the set with the lines it is drawn with, for
// whoever draws frames by other means.
type Piece struct {
	Polygon geom.Polygon   // counter-clockwise
	Parts   []geom.Polygon // convex; one that equals Polygon where it is convex itself
	Z       [2]float64
	Solid   *sight.Solid // nil for glass, which hides nothing
	Lines   []Line
}

// Line is a line of the set with the outward directions of the two faces that
// meet in it: it shows where one of them is turned to the lens, one of a curved
// surface only where the other is turned away.
type Line struct {
	A, B   geom.Vec3
	N1, N2 geom.Vec3
	Round  bool
}

// Pieces is the set as frames draw it, without seams, and the lines in which its
// pieces meet or that hang on its walls.
func (d *Drawer) Pieces() (pieces []Piece, meeting []Line) {
	for i := range d.set {
		f := &d.set[i]
		p := Piece{Polygon: f.prism.polygon, Parts: f.prism.parts, Z: f.prism.z, Solid: f.solid}
		for _, e := range f.edges {
			p.Lines = append(p.Lines, e.line())
		}
		pieces = append(pieces, p)
	}
	for _, r := range d.rules {
		meeting = append(meeting, r.edge.line())
	}
	return pieces, meeting
}

func (e edge) line() Line { return Line{e.a, e.b, e.n1, e.n2, e.round} }

// Limb is a part of the stand-in person: the hull of level ellipses, each as x
// ahead, y to its left, z up, and the half axes along x and y, in parts of the
// stature.
type Limb struct {
	Rings       [][5]float64
	Head, Trunk bool
}

// Trait is a line on the stand-in's head or trunk that tells front from back, as
// x, y, z and the way the surface faces there.
type Trait struct {
	Points [][6]float64
	Hair   bool
	Head   bool
}

// StandIn is the figure that stands for a person in a posture.
func StandIn(p body.Posture) (limbs []Limb, traits []Trait) {
	s := stanceOf(p)
	for _, l := range s.limbs() {
		out := Limb{Head: l.head, Trunk: l.trunk}
		for _, r := range l.rings {
			out.Rings = append(out.Rings, [5]float64{r.at.x, r.at.y, r.at.z, r.rx, r.ry})
		}
		limbs = append(limbs, out)
	}
	for _, m := range s.features() {
		t := Trait{Hair: m.hair, Head: len(m.points) == arcPoints}
		for i, j := range m.points {
			n := m.normals[i]
			t.Points = append(t.Points, [6]float64{j.x, j.y, j.z, n.x, n.y, n.z})
		}
		traits = append(traits, t)
	}
	return limbs, traits
}
