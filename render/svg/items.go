package svg

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"longhand/render/fonts"
	"longhand/render/scene"
)

func (w *writer) items(items []scene.Item) {
	for _, it := range items {
		switch v := it.(type) {
		case *scene.Group:
			w.group(v)
		case *scene.Path:
			if d := pathData(v.Cmds); d != "" {
				w.c.Path(d, class(v.Class)...)
			}
		case *scene.Polyline:
			if len(v.Points) > 1 {
				x, y := columns(v.Points)
				w.c.Polyline(x, y, class(v.Class)...)
			}
		case *scene.Polygon:
			if len(v.Points) > 1 {
				x, y := columns(v.Points)
				w.c.Polygon(x, y, class(v.Class)...)
			}
		case *scene.Circle:
			w.c.Circle(round(v.Center.X), round(v.Center.Y), round(v.Radius), class(v.Class)...)
		case *scene.Rect:
			w.rect(v)
		case *scene.Text:
			w.text(v)
		}
	}
}

func (w *writer) group(g *scene.Group) {
	clip := ""
	if g.Clip != nil {
		w.clips++
		clip = w.id("clip--" + strconv.Itoa(w.clips))
		w.c.Def()
		w.c.ClipPath(attr("id", clip))
		var p scene.Path
		for _, ring := range g.Clip {
			p.Ring(ring...)
		}
		w.c.Path(pathData(p.Cmds), attr("clip-rule", "evenodd"))
		w.c.ClipEnd()
		w.c.DefEnd()
	}
	var attrs []string
	if id := w.ids[g]; id != "" {
		attrs = append(attrs, attr("id", w.id(id)))
	}
	attrs = append(attrs, class(g.Class)...)
	if clip != "" {
		attrs = append(attrs, attr("clip-path", "url(#"+clip+")"))
	}
	if g.Title != "" {
		attrs = append(attrs, attr("role", "graphics-object group"))
	}
	w.c.Group(attrs...)
	if g.Title != "" {
		w.c.Title(g.Title)
	}
	if g.Desc != "" {
		w.c.Desc(g.Desc)
	}
	w.items(g.Items)
	w.c.Gend()
}

func (w *writer) rect(r *scene.Rect) {
	b := r.Box
	x, y, width, height := round(b.Min.X), round(b.Min.Y), round(b.Width()), round(b.Height())
	if r.Corner > 0 {
		c := round(r.Corner)
		w.c.Roundrect(x, y, width, height, c, c, class(r.Class)...)
		return
	}
	w.c.Rect(x, y, width, height, class(r.Class)...)
}

func (w *writer) text(t *scene.Text) {
	clean := t.Clean()
	if strings.TrimSpace(clean) == "" {
		return
	}
	down := *t
	down.Anchor = scene.Start // the viewer places the line across, in its own font
	at := down.Origin()

	list := t.Class
	if t.Face != fonts.Regular {
		list += " " + faceClass(t.Face)
	}
	attrs := append(class(list), attr("font-size", scene.Number(t.Size*fonts.MMPerPoint)))
	switch t.Anchor {
	case scene.Middle:
		attrs = append(attrs, attr("text-anchor", "middle"))
	case scene.End:
		attrs = append(attrs, attr("text-anchor", "end"))
	}
	if !w.o.EmbedFonts {
		// A viewer without the font still keeps the line in its place.
		attrs = append(attrs, attr("textLength", scene.Number(t.Width())), attr("lengthAdjust", "spacingAndGlyphs"))
	}
	if turn := math.Mod(t.Turn, 360); round(turn) != 0 {
		attrs = append(attrs, attr("transform",
			"rotate("+scene.Number(-turn)+" "+scene.Number(at.X)+" "+scene.Number(at.Y)+")"))
	}
	switch {
	case t.Halo > 0:
		attrs = append(attrs, attr("style", "stroke:#ffffff;stroke-width:"+scene.Number(2*t.Halo)+
			";stroke-dasharray:none;stroke-linejoin:round;paint-order:stroke"))
	case w.strokes(t.Class):
		attrs = append(attrs, attr("style", "stroke:none"))
	}
	if strings.Contains(clean, "  ") || strings.TrimSpace(clean) != clean {
		attrs = append(attrs, attr("xml:space", "preserve"))
	}
	w.c.Text(round(at.X), round(at.Y), clean, attrs...)
}

// strokes is whether a rule would outline text of these classes.
func (w *writer) strokes(list string) bool {
	for _, r := range w.sheet.Styles {
		if r.Stroke.IsSet() && slices.Contains(strings.Fields(list), r.Class) {
			return true
		}
	}
	return false
}

// pathData is the d attribute. A full circle becomes two half arcs, since an
// SVG arc that ends where it starts is nothing.
func pathData(cmds []scene.Cmd) string {
	b := make([]byte, 0, 16*len(cmds))
	num := func(vs ...float64) {
		for _, v := range vs {
			if last := len(b) - 1; last >= 0 && b[last] >= '0' && b[last] <= '9' {
				b = append(b, ' ')
			}
			b = scene.AppendNumber(b, v)
		}
	}
	for _, c := range cmds {
		switch c.Op {
		case scene.Move:
			b = append(b, 'M')
			num(c.At.X, c.At.Y)
		case scene.Draw:
			b = append(b, 'L')
			num(c.At.X, c.At.Y)
		case scene.Curve:
			b = append(b, 'C')
			num(c.C1.X, c.C1.Y, c.C2.X, c.C2.Y, c.At.X, c.At.Y)
		case scene.Turn:
			n, clockwise := 1, 0.0 // as seen, which SVG counts as positive
			if c.Sweep < 0 {
				clockwise = 1
			}
			if math.Abs(c.Sweep) > 180 {
				n = 2
			}
			for i := 1; i <= n; i++ {
				at := c.C1.Polar(c.Radius, c.From+c.Sweep*float64(i)/float64(n))
				b = append(b, 'A')
				num(c.Radius, c.Radius, 0, 0, clockwise, at.X, at.Y)
			}
		case scene.Close:
			b = append(b, 'Z')
		}
	}
	return string(b)
}

func columns(points []scene.Point) (x, y []float64) {
	x, y = make([]float64, len(points)), make([]float64, len(points))
	for i, p := range points {
		x[i], y[i] = round(p.X), round(p.Y)
	}
	return x, y
}

// round is scene.Round, and 0 for what is no number: the file must still open.
func round(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return scene.Round(v)
}

// class is the class attribute, or nothing.
func class(list string) []string {
	if c := classes(list); c != "" {
		return []string{attr("class", c)}
	}
	return nil
}

// classes is the list with single spaces.
func classes(list string) string { return strings.Join(strings.Fields(list), " ") }
