package backdrop

import (
	"longhand/lang/geom"
	"longhand/render/scene"
)

// Extent is a box on the floor; the zero value holds nothing.
type Extent struct {
	Low, High geom.Vec
	Any       bool
}

// Add makes it hold points.
func (e *Extent) Add(points ...geom.Vec) {
	for _, p := range points {
		if !e.Any {
			e.Low, e.High, e.Any = p, p, true
			continue
		}
		e.Low = geom.Vec{X: min(e.Low.X, p.X), Y: min(e.Low.Y, p.Y)}
		e.High = geom.Vec{X: max(e.High.X, p.X), Y: max(e.High.Y, p.Y)}
	}
}

// scales a drawing may have (ISO 5455, and 1:25).
var scales = []float64{10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000, 10000}

// View lays an extent, and a margin of so many metres round it, into a box at the
// largest scale that has room.
func (e Extent) View(box scene.Box, margin float64) scene.View {
	size := e.High.Sub(e.Low)
	v := scene.View{Scale: scales[len(scales)-1], Plan: e.Low.Lerp(e.High, 0.5), Paper: box.Center()}
	for _, k := range scales {
		if (size.X+2*margin)*1000/k <= box.Width() && (size.Y+2*margin)*1000/k <= box.Height() {
			v.Scale = k
			break
		}
	}
	return v
}
