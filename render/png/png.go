// Package png paints a scene into a picture, for previews and for tests that
// compare what the outputs show.
//
// Fills are even-odd between the rings of a path; a single ring that crosses
// itself fills where it winds. It may import render/scene and render/fonts.
package png

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"

	"longhand/render/fonts"
	"longhand/render/scene"
)

// largest is the most pixels a picture may have: A3 at 600 dots an inch is 70
// million.
const largest = 100_000_000

// Write gives the sheet as a PNG file at a resolution in dots an inch.
func Write(s *scene.Sheet, dpi float64) ([]byte, error) {
	img, err := Image(s, dpi)
	if err != nil {
		return nil, err
	}
	var buf bytes.Buffer
	if err := png.Encode(&buf, img); err != nil {
		return nil, fmt.Errorf("writing the picture: %w", err)
	}
	return buf.Bytes(), nil
}

// Image paints the sheet on white paper.
func Image(s *scene.Sheet, dpi float64) (*image.RGBA, error) {
	k := dpi / 25.4
	w, h := math.Round(s.Width*k), math.Round(s.Height*k)
	if !(w >= 1) || !(h >= 1) || w*h > largest {
		return nil, fmt.Errorf("a picture of %s x %s mm at %s dots an inch would be %s x %s pixels",
			scene.Number(s.Width), scene.Number(s.Height), scene.Number(dpi), scene.Number(w), scene.Number(h))
	}
	img := image.NewRGBA(image.Rect(0, 0, int(w), int(h)))
	draw.Draw(img, img.Bounds(), image.White, image.Point{}, draw.Src)
	s.Paint(&painter{k: k, layers: []*image.RGBA{img}})
	return img, nil
}

// painter paints on the topmost layer. A clipped group has a layer of its own,
// which is put through its mask when the group ends.
type painter struct {
	k      float64 // pixels a millimetre
	layers []*image.RGBA
}

func (p *painter) top() *image.RGBA { return p.layers[len(p.layers)-1] }

func (p *painter) Begin(g *scene.Group) {
	if g.Clip != nil {
		p.layers = append(p.layers, image.NewRGBA(p.top().Bounds()))
	}
}

func (p *painter) End(g *scene.Group) {
	if g.Clip == nil {
		return
	}
	layer := p.top()
	p.layers = p.layers[:len(p.layers)-1]
	var path scene.Path
	for _, ring := range g.Clip {
		path.Ring(ring...)
	}
	if m := fillMask(p.figure(path.Cmds), layer.Bounds()); m != nil {
		draw.DrawMask(p.top(), m.Rect, layer, m.Rect.Min, m, m.Rect.Min, draw.Over)
	}
}

func (p *painter) Path(path *scene.Path, s scene.Style) {
	if !s.Fill.Visible() && !s.Stroke.Visible() {
		return
	}
	fig := p.figure(path.Cubics())
	if s.Fill.Visible() {
		p.stamp(fillMask(fig, p.top().Bounds()), s.Fill, s.Opacity)
	}
	if s.Stroke.Visible() {
		p.stamp(strokeMask(fig, p.pen(s), p.top().Bounds()), s.Stroke, s.Opacity)
	}
}

func (p *painter) Text(t *scene.Text, s scene.Style) {
	if !s.Fill.Visible() || !(t.Size > 0) {
		return
	}
	o := t.Origin()
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	g := &glyphPen{place: func(x, y float64) pixel {
		return pixel{(o.X + x*cos - y*sin) * p.k, (o.Y - x*sin - y*cos) * p.k}
	}}
	t.Face.Outline(t.Size, t.Clean(), g)
	if t.Halo > 0 {
		halo := pen{width: 2 * t.Halo * p.k, join: scene.RoundJoin}
		p.stamp(strokeMask(g.figure, halo, p.top().Bounds()), scene.White, s.Opacity)
	}
	p.stamp(windMask(g.figure, p.top().Bounds()), s.Fill, s.Opacity)
}

// stamp lays a colour through a mask.
func (p *painter) stamp(m *image.Alpha, c scene.Paint, opacity float64) {
	if m == nil {
		return
	}
	a := uint8(math.Round(255 * max(0, min(1, opacity))))
	src := image.NewUniform(color.NRGBA{c.R, c.G, c.B, a})
	draw.DrawMask(p.top(), m.Rect, src, image.Point{}, m, m.Rect.Min, draw.Over)
}

func (p *painter) pen(s scene.Style) pen {
	q := pen{width: s.Width * p.k, cap: s.Cap, join: s.Join}
	for _, d := range s.Dash {
		q.dash = append(q.dash, d*p.k)
	}
	return q
}

var _ fonts.Pen = (*glyphPen)(nil)
