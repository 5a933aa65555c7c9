package png

import (
	"image"
	"math"

	"github.com/srwiley/rasterx"
	"golang.org/x/image/math/fixed"

	"longhand/render/scene"
)

// pen is how a stroke is drawn, in pixels.
type pen struct {
	width float64
	dash  []float64
	cap   scene.Cap
	join  scene.Join
}

// miterLimit is how far a sharp corner may reach, in stroke widths: the default
// of SVG.
const miterLimit = 4

// windMask is what all contours together wind around.
func windMask(f figure, within image.Rectangle) *image.Alpha {
	return mask(f, 1, within, func(w, h int, s rasterx.Scanner) rasterx.Adder {
		return rasterx.NewFiller(w, h, s)
	})
}

// fillMask is what lies inside an odd number of contours. The rasteriser knows
// only winding, so contours are done one by one: a point covered a by one and b
// by another is covered a + b - 2ab by exactly one of them.
func fillMask(f figure, within image.Rectangle) *image.Alpha {
	if len(f) <= 1 {
		return windMask(f, within)
	}
	box := bounds(f, 1, within)
	if box.Empty() {
		return nil
	}
	out := image.NewAlpha(box)
	for i := range f {
		m := windMask(f[i:i+1], within)
		if m == nil {
			continue
		}
		for y := m.Rect.Min.Y; y < m.Rect.Max.Y; y++ {
			from := m.Pix[m.PixOffset(m.Rect.Min.X, y):][:m.Rect.Dx()]
			to := out.Pix[out.PixOffset(m.Rect.Min.X, y):][:m.Rect.Dx()]
			for x, b := range from {
				a := int(to[x])
				to[x] = uint8((255*(a+int(b)) - 2*a*int(b) + 127) / 255)
			}
		}
	}
	return out
}

// strokeMask is what a pen covers along the contours.
func strokeMask(f figure, p pen, within image.Rectangle) *image.Alpha {
	if !(p.width > 0) {
		return nil
	}
	reach := p.width*miterLimit/2 + 1
	return mask(f, reach, within, func(w, h int, s rasterx.Scanner) rasterx.Adder {
		d := rasterx.NewDasher(w, h, s)
		ends := rasterx.ButtCap
		switch p.cap {
		case scene.RoundCap:
			ends = rasterx.RoundCap
		case scene.Square:
			ends = rasterx.SquareCap
		}
		join := rasterx.Miter
		switch p.join {
		case scene.RoundJoin:
			join = rasterx.Round
		case scene.Bevel:
			join = rasterx.Bevel
		}
		d.SetStroke(fix(p.width), fixed.I(miterLimit), ends, ends, nil, join, p.dash, 0)
		return d
	})
}

// mask paints contours with an adder on a piece of the picture just large
// enough.
func mask(f figure, reach float64, within image.Rectangle, adder func(w, h int, s rasterx.Scanner) rasterx.Adder) *image.Alpha {
	box := bounds(f, reach, within)
	if box.Empty() {
		return nil
	}
	out := image.NewAlpha(box)
	local := &image.Alpha{Pix: out.Pix, Stride: out.Stride, Rect: image.Rect(0, 0, box.Dx(), box.Dy())}
	scanner := rasterx.NewScannerGV(box.Dx(), box.Dy(), local, local.Rect)
	scanner.SetColor(image.Opaque.C)
	a := adder(box.Dx(), box.Dy(), scanner)
	dx, dy := float64(box.Min.X), float64(box.Min.Y)
	at := func(p pixel) fixed.Point26_6 { return fixed.Point26_6{X: fix(p.x - dx), Y: fix(p.y - dy)} }
	for _, c := range f {
		if len(c.steps) == 0 {
			continue
		}
		a.Start(at(c.start))
		for _, s := range c.steps {
			switch s.n {
			case 1:
				a.Line(at(s.points[0]))
			case 2:
				a.QuadBezier(at(s.points[0]), at(s.points[1]))
			case 3:
				a.CubeBezier(at(s.points[0]), at(s.points[1]), at(s.points[2]))
			}
		}
		a.Stop(c.closed)
	}
	scanner.Draw()
	return out
}

// bounds is the part of the picture that contours can reach.
func bounds(f figure, reach float64, within image.Rectangle) image.Rectangle {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	take := func(p pixel) {
		x0, y0, x1, y1 = math.Min(x0, p.x), math.Min(y0, p.y), math.Max(x1, p.x), math.Max(y1, p.y)
	}
	for _, c := range f {
		take(c.start)
		for _, s := range c.steps {
			for _, p := range s.points[:s.n] {
				take(p)
			}
		}
	}
	const far = 1e6 // pixels; beyond it the rasteriser's fixed point overflows
	if !(x0 > -far && y0 > -far && x1 < far && y1 < far) {
		return image.Rectangle{}
	}
	return image.Rect(int(math.Floor(x0-reach)), int(math.Floor(y0-reach)), int(math.Ceil(x1+reach)), int(math.Ceil(y1+reach))).Intersect(within)
}

func fix(v float64) fixed.Int26_6 { return fixed.Int26_6(math.Round(v * 64)) }
