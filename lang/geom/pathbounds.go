package geom

import "math"

// Bounds is the box round the path.
func (p *Path) Bounds() (low, high Vec) {
	var points []Vec
	for i := range p.pieces {
		piece := &p.pieces[i]
		points = append(points, piece.a, piece.b)
		switch piece.kind {
		case arcPiece:
			for k := range 4 { // the quarters that the arc passes
				into := math.Mod((float64(k)*math.Pi/2-piece.start)*math.Copysign(1, piece.arc), 2*math.Pi)
				if into < 0 {
					into += 2 * math.Pi
				}
				if into <= math.Abs(piece.arc) {
					points = append(points, piece.centre.Add(Polar(piece.radius, float64(k)*math.Pi/2)))
				}
			}
		case cubicPiece:
			c := &piece.cubic
			for _, u := range unitRoots(0, 3*c.d.X, 2*c.c.X, c.b.X) {
				points = append(points, c.at(u))
			}
			for _, u := range unitRoots(0, 3*c.d.Y, 2*c.c.Y, c.b.Y) {
				points = append(points, c.at(u))
			}
		}
	}
	return Bounds(points)
}
