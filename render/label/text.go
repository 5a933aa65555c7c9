package label

import (
	"math"

	"longhand/render/fonts"
	"longhand/render/scene"
)

// Size is how much room lines of text take, in millimetres: as wide as the
// widest, from the top of the first one's accents to the last one's descenders.
func Size(face fonts.Face, points float64, lines ...string) (w, h float64) {
	for _, l := range lines {
		w = math.Max(w, face.Width(points, fonts.Clean(l)))
	}
	if len(lines) > 0 {
		h = face.Ascent(points) + face.Descent(points) + float64(len(lines)-1)*fonts.LineHeight(points)
	}
	return w, h
}

// Lines sets lines of text into the place, which must have the room that Size
// says. The model gives class, size, face, halo and, as its anchor, to which
// edge they are set.
func (p Place) Lines(model scene.Text, lines ...string) []scene.Item {
	w, h := Size(model.Face, model.Size, lines...)
	x := map[scene.Anchor]float64{scene.Start: -w / 2, scene.Middle: 0, scene.End: w / 2}[model.Anchor]
	model.At = p.Center.Polar(x, p.Turn).Polar(h/2-model.Face.Ascent(model.Size), p.Turn+90)
	model.Level, model.Turn = scene.Baseline, p.Turn
	return scene.Lines(model, lines...)
}

// Quads lists the outlines of texts, for tests that no two of them overlap.
func Quads(texts []*scene.Text) [][4]scene.Point {
	out := make([][4]scene.Point, len(texts))
	for i, t := range texts {
		out[i] = t.Quad()
	}
	return out
}

// Overlaps lists the pairs of outlines that overlap.
func Overlaps(quads [][4]scene.Point) (pairs [][2]int) {
	boxes := make([]scene.Box, len(quads))
	for i := range quads {
		boxes[i] = boundsOf(quads[i][:])
	}
	for i := range quads {
		for j := i + 1; j < len(quads); j++ {
			if boxes[i].Overlaps(boxes[j]) && overlap(quads[i][:], quads[j][:]) {
				pairs = append(pairs, [2]int{i, j})
			}
		}
	}
	return pairs
}
