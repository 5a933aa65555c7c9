package bind

import (
	"fmt"
	"path"
	"strconv"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/drawing"
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// Codes of what is wrong with, or was made of, a drawing.
const (
	CodeBadDrawing  diag.Code = "bad-drawing"
	CodeDrawingNote diag.Code = "drawing-note"
)

func (l *line) drawing(s *syntax.Plan) {
	d := &plan.Drawing{Path: s.File.Value(), Span: l.span}
	if strings.TrimSpace(d.Path) == "" {
		l.errorf(CodeNoDefault, l.at(s.File), "`plan` needs the drawing's file name")
	}
	if l.need(s.Scale != nil, s, "`plan` needs the drawing's scale: scale 1:50") {
		one, rest, ok := strings.Cut(s.Scale.Text, ":")
		n, err := strconv.Atoi(rest)
		if !ok || err != nil || one != "1" || n < 1 || n > 10000 {
			l.errorf(CodeOutOfRange, l.at(s.Scale), "`%s` is no scale; it is written 1:50, at most 1:10000", s.Scale.Text)
		}
		d.Scale = n
	}
	if l.bad {
		l.blind = l.blind || l.read != nil
		return
	}
	l.plan.Set.Drawings = append(l.plan.Set.Drawings, d)
	l.draw(d, l.at(s.File))
}

// draw declares what a drawing holds, its names as the drawing has them.
func (l *line) draw(d *plan.Drawing, at source.Span) {
	if l.read == nil {
		return
	}
	name := Resolve(l.file.Name, d.Path)
	if !drawing.Known(name) {
		l.noDrawing(CodeBadDrawing, at, "%s cannot be read: its name has to end in .svg or .dxf, to say what it is", name)
		return
	}
	text, err := l.read(name)
	if err != nil {
		l.noDrawing(CodeNoFile, at, "%s cannot be read: %s", name, plain(err)).
			Note("the path is seen from the folder of %s", l.file.Name)
		return
	}
	got, err := drawing.Read(name, text, d.Scale)
	if err != nil {
		l.noDrawing(CodeBadDrawing, at, "%s cannot be read: %s", name, err)
		return
	}
	if len(got.Shapes) == 0 {
		l.leftOut(l.noDrawing(CodeBadDrawing, at, "nothing in %s can be taken for a part of the set", name), got)
		return
	}
	l.noteDrawing(got, at, name)
	for i := range got.Shapes {
		l.drawn(&got.Shapes[i], at, path.Base(name))
	}
}

// noDrawing reports a drawing without which any name may be missing.
func (l *line) noDrawing(code diag.Code, at source.Span, format string, args ...any) *diag.Diagnostic {
	l.blind = true
	return l.errorf(code, at, format, args...)
}

// drawn declares one shape.
func (l *line) drawn(s *drawing.Shape, at source.Span, file string) {
	high := plan.Range{High: wallHigh}
	if s.Kind == plan.KindPlatform {
		high.High = drawnPlatform
	}
	if s.High != nil {
		high = *s.High
	}
	id := plan.Ident{Name: s.Name, At: at, Decl: l.span}
	if first := l.names[s.Name]; first != nil {
		id.Bad = true
		was := first.ID()
		if was.At == at {
			l.errorf(CodeNameTwice, at, "%s has two shapes called `%s`; each name can stand for one thing only", file, s.Name)
			return
		}
		l.errorf(CodeNameTwice, at, "%s has a shape called `%s`, and so is something else; each name can stand for one thing only", file, s.Name).
			Relate(was.At, "first declared here, as %s", a(first.Kind()))
		return
	}
	set := &l.plan.Set
	var t plan.Thing
	switch s.Kind {
	case plan.KindWall:
		w := &plan.Wall{Ident: id, Line: s.Points, High: high, Thick: solid.WallThick}
		if s.Thick > 0 {
			w.Thick, w.ThickGiven = s.Thick, true
		}
		t, set.Walls = w, append(set.Walls, w)
	case plan.KindPillar:
		p := &plan.Pillar{Ident: id, Centre: s.Points[0], Round: s.Round, High: high}
		t, set.Pillars = p, append(set.Pillars, p)
	case plan.KindPlatform:
		p := &plan.Platform{Ident: id, Polygon: s.Points, High: high}
		t, set.Platforms = p, append(set.Platforms, p)
	default:
		b := &plan.Block{Ident: id, Polygon: s.Points, High: high}
		t, set.Blocks = b, append(set.Blocks, b)
	}
	l.names[s.Name] = t
}

// noteDrawing says what of a drawing was left out or guessed.
func (l *line) noteDrawing(got *drawing.Drawing, at source.Span, name string) {
	n := 0
	for _, o := range got.LeftOut {
		n += o.Count
	}
	d := &diag.Diagnostic{Code: CodeDrawingNote, Severity: diag.Note, Span: at}
	switch {
	case n > 0:
		d.Message = fmt.Sprintf("%s: %s taken, %d left out", name, count(len(got.Shapes), "shape"), n)
	case got.Unitless:
		d.Message = fmt.Sprintf("%s does not say what it is measured in; millimetres were taken", name)
	default:
		return
	}
	l.leftOut(d, got)
	if got.Unitless && n > 0 {
		d.Note("it does not say what it is measured in; millimetres were taken")
	}
	if got.Unitless {
		low, high := got.Bounds()
		d.Note("what was taken is %s by %s", units.Metres(high.X-low.X).Text(l.plan.Take.Units), units.Metres(high.Y-low.Y).Text(l.plan.Take.Units))
	}
	l.notes = append(l.notes, d)
}

// listedLeft is how many reasons for leaving something out are told.
const listedLeft = 8

func (l *line) leftOut(d *diag.Diagnostic, got *drawing.Drawing) {
	for i, o := range got.LeftOut {
		if i == listedLeft {
			d.Note("and more of that kind, %d reasons in all", len(got.LeftOut))
			return
		}
		if o.Count > 1 {
			d.Note("%s, %s: %s", o.What, count(o.Count, "shape"), o.Why)
			continue
		}
		d.Note("%s: %s", o.What, o.Why)
	}
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
