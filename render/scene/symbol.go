package scene

import (
	"math"

	"longhand/render/fonts"
)

// Badge is a short text, such as a number, in a circle just large enough; it
// tells the radius. The ring class draws the circle; text classes may colour the
// text.
func Badge(ring, text string, at Point, label string, points float64, face fonts.Face) (items []Item, radius float64) {
	radius = BadgeRadius(label, points, face)
	return []Item{
		&Circle{Class: ring, Center: at, Radius: radius},
		&Text{Class: text, At: at, Text: label, Size: points, Face: face, Anchor: Middle, Level: Center},
	}, radius
}

// BadgeRadius is the radius of a badge's circle. One and two digits have the
// same, so that a row of numbers looks even.
func BadgeRadius(label string, points float64, face fonts.Face) float64 {
	w := math.Max(face.Width(points, "00"), face.Width(points, fonts.Clean(label)))
	return math.Hypot(w, face.CapHeight(points))/2 + 0.3
}

// Signs that the faces lack are drawn as paths, each within a circle of a radius
// about its point.

// Cross is two strokes.
func Cross(class string, at Point, r float64) *Path {
	k := r * math.Sqrt2 / 2
	return NewPath(class).
		MoveTo(at.Add(Pt(-k, -k))).LineTo(at.Add(Pt(k, k))).
		MoveTo(at.Add(Pt(-k, k))).LineTo(at.Add(Pt(k, -k)))
}

// RegularPolygon is a polygon of equal sides with a corner in a direction: three corners at 90
// make a triangle that stands, four a diamond.
func RegularPolygon(class string, at Point, r float64, corners int, degrees float64) *Polygon {
	p := &Polygon{Class: class}
	for i := range max(3, corners) {
		p.Points = append(p.Points, at.Polar(r, degrees+360*float64(i)/float64(max(3, corners))))
	}
	return p
}
