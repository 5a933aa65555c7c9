package geom

// Box is a part of the floor along its axes.
type Box struct{ Low, High Vec }

// BoxAt is the box of one point.
func BoxAt(p Vec) Box { return Box{p, p} }

// With is the box that holds a point, too.
func (b Box) With(p Vec) Box {
	return Box{Vec{min(b.Low.X, p.X), min(b.Low.Y, p.Y)}, Vec{max(b.High.X, p.X), max(b.High.Y, p.Y)}}
}

// Apart is how far two boxes are from each other along the axis on which they are
// furthest; negative where they overlap.
func (b Box) Apart(c Box) float64 {
	return max(c.Low.X-b.High.X, b.Low.X-c.High.X, c.Low.Y-b.High.Y, b.Low.Y-c.High.Y)
}
