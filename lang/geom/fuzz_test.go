package geom

import (
	"encoding/binary"
	"math"
	"testing"
)

// vectors reads points from bytes: any bit pattern, so also infinities and
// values that are no numbers.
func vectors(data []byte) []Vec {
	var out []Vec
	for ; len(data) >= 16 && len(out) < 24; data = data[16:] {
		out = append(out, Vec{
			math.Float64frombits(binary.LittleEndian.Uint64(data)),
			math.Float64frombits(binary.LittleEndian.Uint64(data[8:])),
		})
	}
	return out
}

func bytesOf(points ...Vec) []byte {
	var data []byte
	for _, p := range points {
		data = binary.LittleEndian.AppendUint64(data, math.Float64bits(p.X))
		data = binary.LittleEndian.AppendUint64(data, math.Float64bits(p.Y))
	}
	return data
}

func seeds(f *testing.F) {
	f.Add(bytesOf())
	f.Add(bytesOf(Vec{1, 2}, Vec{1, 2}, Vec{5, 3}, Vec{1, 2}))
	f.Add(bytesOf(Vec{math.NaN(), 2}, Vec{1, math.Inf(1)}, Vec{5, 3}, Vec{1e300, 2}, Vec{1e-300, 4}))
	// So far apart that the square of a speed on the way is no number here and there.
	f.Add(bytesOf(Vec{-5e153, 5e153}, Vec{-9.2e153, 0}, Vec{-9.2e153, 0}, Vec{-5e153, 9.2e153}))
	f.Add(bytesOf(Vec{0, 0}, Vec{4, 0}, Vec{4, 4}, Vec{0, 4}, Vec{1, 1}, Vec{3, 3}, Vec{2, 2}))
}

// Nothing panics or hangs, whatever the coordinates.
func FuzzPaths(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		points := vectors(data)
		paths := []*Path{NewStraight(points...), NewCurved(points...), NewRounded(1, points...)}
		if len(points) >= 3 {
			paths = append(paths, NewCurvedFrom(points[0].X, points...), NewArc(points[0], points[1].X, points[1].Y, points[2].X))
			if eight, err := NewEight(points[0], points[1], points[2], 1); err == nil {
				paths = append(paths, eight)
			}
		}
		for _, p := range paths {
			length := p.Length()
			for _, s := range []float64{0, length / 3, length, -1, length + 1, math.NaN()} {
				p.At(s)
				p.AtExtended(s)
				p.Heading(s)
				p.Curvature(s)
			}
			p.Sub(length/4, length/2).Append(p.Reverse())
			p.Corners()
			p.Points(length / 10)
			p.Bounds()
			if length < 1e6 { // a search takes time with the length
				p.Nearest(Vec{1, 1})
				p.NearestSegment(Segment{Vec{0, 1}, Vec{3, 0}})
			}
		}
	})
}

func FuzzPlane(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		points := vectors(data)
		p := Polygon(points)
		p.Clean()
		p.Area()
		p.Centroid()
		p.IsConvex()
		p.ConvexParts()
		Hull(points)
		Ribbon(points, 0.2, len(data)%2 == 0)
		if len(points) < 3 {
			return
		}
		p.DistanceTo(Polygon(points[1:]))
		p.MeetsSegment(Segment{points[0], points[2]})
		walls := NewWalls(p, Segment{points[0], points[1]}, Segment{points[2], points[0]})
		for _, eye := range points[:3] {
			walls.Visible(eye)
			walls.VisibleWithin(eye, points[0].X, points[0].Y)
		}
	})
}
