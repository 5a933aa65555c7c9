package pdf

import (
	"strings"

	"longhand/render/fonts"
	"longhand/render/scene"
)

// state is what the page's graphics state is known to hold; the zero value is
// "not known", so everything is said before it is first needed.
type state struct {
	stroke, fill scene.Paint
	width        float64
	dash         string
	cap          scene.Cap
	join         scene.Join
	alpha        float64
	face         fonts.Face
	size         float64 // of the font; 0 while none was said
}

type painter struct {
	w     *writer
	now   state
	saved []state // one for each clip that is open
	layer int     // how many groups deep the open layer is, 0 for none
}

func newPainter(w *writer) *painter { return &painter{w: w} }

func (p *painter) Begin(g *scene.Group) {
	if p.layer > 0 {
		p.layer++
	} else if name := p.layerOf(g); name != "" {
		p.w.f.BeginLayer(p.w.layerID(name))
		p.layer = 1
	}
	if g.Clip != nil {
		p.saved = append(p.saved, p.now)
		p.w.f.RawWriteStr("q")
		var ring scene.Path
		for _, r := range g.Clip {
			if len(r) > 2 {
				ring.Ring(r...)
			}
		}
		if len(ring.Cmds) == 0 {
			ring.Ring(scene.Point{}, scene.Point{}, scene.Point{}) // lets nothing through
		}
		p.trace(ring.Cmds)
		p.w.f.RawWriteStr("W* n")
	}
}

func (p *painter) End(g *scene.Group) {
	if g.Clip != nil {
		p.w.f.RawWriteStr("Q")
		last := len(p.saved) - 1
		p.now, p.saved = p.saved[last], p.saved[:last]
	}
	if p.layer > 0 {
		if p.layer--; p.layer == 0 {
			p.w.f.EndLayer()
		}
	}
}

func (p *painter) layerOf(g *scene.Group) string {
	if p.w.doc.Layer == nil {
		return ""
	}
	return plain(p.w.doc.Layer(g))
}

func (w *writer) layerID(name string) int {
	id, ok := w.layers[name]
	if !ok {
		id = w.f.AddLayer(name, true)
		w.layers[name] = id
	}
	return id
}

func (p *painter) Path(path *scene.Path, s scene.Style) {
	op := ""
	switch {
	case s.Fill.Visible() && s.Stroke.Visible():
		op = "B*"
	case s.Fill.Visible():
		op = "f*"
	case s.Stroke.Visible():
		op = "S"
	default:
		return
	}
	p.alpha(s.Opacity)
	if s.Fill.Visible() {
		p.fill(s.Fill)
	}
	if s.Stroke.Visible() {
		p.stroke(s.Stroke, s.Width, s.Dash, s.Cap, s.Join)
	}
	p.trace(path.Cubics())
	p.w.f.RawWriteStr(op)
}

// trace writes path steps; arcs must be cubics by now.
func (p *painter) trace(cmds []scene.Cmd) {
	f := p.w.f
	for i, c := range cmds {
		if i == 0 && c.Op != scene.Move {
			f.MoveTo(c.At.X, c.At.Y)
		}
		switch c.Op {
		case scene.Move:
			f.MoveTo(c.At.X, c.At.Y)
		case scene.Draw:
			f.LineTo(c.At.X, c.At.Y)
		case scene.Curve:
			f.CurveBezierCubicTo(c.C1.X, c.C1.Y, c.C2.X, c.C2.Y, c.At.X, c.At.Y)
		case scene.Close:
			f.ClosePath()
		}
	}
}

func (p *painter) Text(t *scene.Text, s scene.Style) {
	text := plain(t.Text)
	if strings.TrimSpace(text) == "" || !s.Fill.Visible() || !(t.Size > 0) {
		return
	}
	f := p.w.f
	if p.now.size != t.Size || p.now.face != t.Face {
		f.SetFont(family+t.Face.String(), "", t.Size)
		p.now.size, p.now.face = t.Size, t.Face
	}
	p.alpha(s.Opacity)
	p.fill(s.Fill)
	f.SetTextColor(int(s.Fill.R), int(s.Fill.G), int(s.Fill.B))
	if t.Halo > 0 {
		p.stroke(scene.White, 2*t.Halo, nil, scene.Butt, scene.RoundJoin)
	}
	at := t.Origin()
	if t.Turn != 0 {
		f.TransformBegin()
		f.TransformRotate(t.Turn, at.X, at.Y)
	}
	if t.Halo > 0 {
		// The halo is no text of its own to whoever copies or searches.
		f.RawWriteStr("/Span <</ActualText ()>> BDC")
		f.SetTextRenderingMode(1)
		f.Text(at.X, at.Y, text)
		f.SetTextRenderingMode(0)
		f.RawWriteStr("EMC")
	}
	f.Text(at.X, at.Y, text)
	if t.Turn != 0 {
		f.TransformEnd()
	}
}

func (p *painter) fill(c scene.Paint) {
	if p.now.fill != c {
		p.w.f.SetFillColor(int(c.R), int(c.G), int(c.B))
		p.now.fill = c
	}
}

func (p *painter) alpha(a float64) {
	if p.now.alpha != a {
		p.w.f.SetAlpha(max(0, min(1, a)), "Normal")
		p.now.alpha = a
	}
}

func (p *painter) stroke(c scene.Paint, width float64, dash []float64, ends scene.Cap, join scene.Join) {
	f := p.w.f
	if p.now.stroke != c {
		f.SetDrawColor(int(c.R), int(c.G), int(c.B))
		p.now.stroke = c
	}
	if p.now.width != width {
		f.SetLineWidth(width)
		p.now.width = width
	}
	if d := dashKey(dash); p.now.dash != d {
		f.SetDashPattern(dash, 0)
		p.now.dash = d
	}
	if p.now.cap != ends {
		f.SetLineCapStyle(map[scene.Cap]string{scene.RoundCap: "round", scene.Square: "square"}[ends])
		p.now.cap = ends
	}
	if p.now.join != join {
		f.SetLineJoinStyle(map[scene.Join]string{scene.RoundJoin: "round", scene.Bevel: "bevel"}[join])
		p.now.join = join
	}
}

// dashKey names a dash; it is never empty, so that the first one is written.
func dashKey(dash []float64) string {
	var b strings.Builder
	b.WriteByte('[')
	for _, d := range dash {
		b.WriteString(scene.Number(d))
		b.WriteByte(' ')
	}
	return b.String()
}
