package scene

import (
	"math"
	"slices"
)

// Pattern is a hatching: parallel lines in a direction.
type Pattern struct {
	Angle   float64 // degrees counter-clockwise as seen
	Spacing float64 // mm between lines, at least 0.2
	Cross   bool    // a second set of lines across the first
}

// Hatch fills rings (even-odd, so an inner ring is a hole) with true lines, cut
// at the rings. Being lines and not a format's fill pattern, they look the same
// in every output, scale with the paper and survive a photocopier. Lines keep
// step with the sheet, not with the area, so that areas that touch hatch as one.
func Hatch(class string, rings [][]Point, p Pattern) *Path {
	path := NewPath(class)
	hatch(path, rings, p.Angle, p.Spacing)
	if p.Cross {
		hatch(path, rings, p.Angle+90, p.Spacing)
	}
	return path
}

func hatch(path *Path, rings [][]Point, angle, spacing float64) {
	spacing = math.Max(spacing, 0.2)
	// Turned by minus the angle, the hatch lines are level and a line is a y.
	sin, cos := math.Sincos(angle * math.Pi / 180)
	level := func(p Point) Point { return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos} }
	back := func(p Point) Point { return Point{p.X*cos + p.Y*sin, -p.X*sin + p.Y*cos} }

	var edges [][2]Point
	low, high := math.Inf(1), math.Inf(-1)
	for _, ring := range rings {
		for i, p := range ring {
			if !p.finite() {
				return
			}
			a, b := level(p), level(ring[(i+1)%len(ring)])
			low, high = math.Min(low, a.Y), math.Max(high, a.Y)
			edges = append(edges, [2]Point{a, b})
		}
	}
	if len(edges) == 0 || (high-low)/spacing > maxHatchLines {
		return
	}
	var xs []float64
	for k := math.Ceil(low / spacing); k*spacing <= high; k++ {
		y := k * spacing
		xs = xs[:0]
		for _, e := range edges {
			// Half-open in y: a corner on the line counts once where the ring
			// crosses it and twice or never where it only touches.
			if (e[0].Y <= y) != (e[1].Y <= y) {
				xs = append(xs, e[0].X+(e[1].X-e[0].X)*(y-e[0].Y)/(e[1].Y-e[0].Y))
			}
		}
		slices.Sort(xs)
		for i := 0; i+1 < len(xs); i += 2 {
			if xs[i+1]-xs[i] > 0.01 { // shorter than a printer's dot
				path.MoveTo(back(Point{xs[i], y})).LineTo(back(Point{xs[i+1], y}))
			}
		}
	}
}

// maxHatchLines keeps a wild coordinate from filling the memory; the largest
// sheet at the finest spacing needs some 2,600.
const maxHatchLines = 20000
