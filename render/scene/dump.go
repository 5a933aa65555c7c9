package scene

import (
	"fmt"
	"strings"

	"longhand/render/fonts"
)

// Dump is the sheet as text, a line for each thing, rounded like every output.
// Tests compare it instead of a format's bytes, so that a failure says what
// moved.
func (s *Sheet) Dump() string {
	var d dumper
	d.line("sheet %s x %s %q", Number(s.Width), Number(s.Height), s.Title)
	if s.Desc != "" {
		d.line("desc %q", s.Desc)
	}
	d.items(s.Items)
	return d.b.String()
}

type dumper struct {
	b    strings.Builder
	deep int
}

func (d *dumper) line(format string, args ...any) {
	d.b.WriteString(strings.Repeat("  ", d.deep))
	d.b.WriteString(strings.TrimRight(fmt.Sprintf(format, args...), " "))
	d.b.WriteByte('\n')
}

func (d *dumper) items(items []Item) {
	for _, it := range items {
		switch v := it.(type) {
		case *Group:
			d.group(v)
		case *Path:
			d.line("path%s %s", dots(v.Class), steps(v.Cmds))
		case *Polyline:
			d.line("polyline%s %s", dots(v.Class), list(v.Points))
		case *Polygon:
			d.line("polygon%s %s", dots(v.Class), list(v.Points))
		case *Circle:
			d.line("circle%s %s r %s", dots(v.Class), pair(v.Center), Number(v.Radius))
		case *Rect:
			d.line("rect%s %s to %s%s", dots(v.Class), pair(v.Box.Min), pair(v.Box.Max), also(" corner ", v.Corner))
		case *Text:
			d.line("text%s %s %s pt%s %q", dots(v.Class), pair(v.At), Number(v.Size), manner(v), v.Text)
		}
	}
}

func (d *dumper) group(g *Group) {
	id := ""
	if g.ID != "" {
		id = " #" + g.ID
	}
	title := ""
	if g.Title != "" {
		title = fmt.Sprintf(" %q", g.Title)
	}
	d.line("group%s%s%s", id, dots(g.Class), title)
	d.deep++
	if g.Desc != "" {
		d.line("desc %q", g.Desc)
	}
	for _, r := range g.Clip {
		d.line("clip %s", list(r))
	}
	d.items(g.Items)
	d.deep--
}

// manner is what a text is besides its place, its size and its words.
func manner(t *Text) string {
	out := ""
	if t.Face != fonts.Regular {
		out += " " + t.Face.String()
	}
	out += [...]string{"", " middle", " end"}[t.Anchor]
	out += [...]string{"", " center", " top"}[t.Level]
	return out + also(" turn ", t.Turn) + also(" halo ", t.Halo)
}

func also(what string, v float64) string {
	if v == 0 {
		return ""
	}
	return what + Number(v)
}

func dots(classes string) string {
	out := ""
	for c := range strings.FieldsSeq(classes) {
		out += " ." + c
	}
	return out
}

func pair(p Point) string { return Number(p.X) + "," + Number(p.Y) }

func list(points []Point) string {
	parts := make([]string, len(points))
	for i, p := range points {
		parts[i] = pair(p)
	}
	return strings.Join(parts, " ")
}

func steps(cmds []Cmd) string {
	parts := make([]string, len(cmds))
	for i, c := range cmds {
		switch c.Op {
		case Move:
			parts[i] = "move " + pair(c.At)
		case Draw:
			parts[i] = "line " + pair(c.At)
		case Curve:
			parts[i] = "curve " + list([]Point{c.C1, c.C2, c.At})
		case Turn:
			parts[i] = "arc about " + pair(c.C1) + " r " + Number(c.Radius) + " from " + Number(c.From) + " by " + Number(c.Sweep)
		case Close:
			parts[i] = "close"
		}
	}
	return strings.Join(parts, " ")
}
