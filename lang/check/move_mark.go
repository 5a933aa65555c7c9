package check

import (
	"fmt"
	"sort"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/units"
)

// markMove is a mark with a better place for it.
type markMove struct {
	mark *plan.Mark
	to   geom.Vec
}

// offerMarks offers to move marks, all at once; nothing where one of them can't
// be written.
func (p *Pass) offerMarks(d *diag.Diagnostic, moves ...markMove) {
	if len(moves) == 0 || p.Plan.Take.Units == units.Feet {
		return
	}
	var edits []diag.Edit
	var names []string
	furthest := 0.0
	for _, m := range moves {
		span, ok := pointOf(m.mark)
		if !ok {
			return
		}
		text := units.Number(m.to.X, 2) + ", " + units.Number(m.to.Y, 2)
		edits = append(edits, replaced(span, text))
		names = append(names, m.mark.Name)
		furthest = max(furthest, m.mark.Point.Dist(m.to))
	}
	sort.Slice(edits, func(i, j int) bool { return edits[i].Span.Start < edits[j].Span.Start })
	title := fmt.Sprintf("move mark %s %s", names[0], p.Length(metres(furthest)))
	if len(names) > 1 {
		title = fmt.Sprintf("move marks %s by up to %s", strings.Join(names, ", "), p.Length(metres(furthest)))
	}
	d.Fix(title, edits...)
}

// pointOf is the span of a mark's x and y where it is declared by numbers.
func pointOf(m *plan.Mark) (source.Span, bool) {
	s := m.Decl
	if !s.Valid() {
		return s, false
	}
	text := s.Text()
	open := strings.IndexByte(text, '(')
	shut := strings.IndexByte(text, ')')
	if open < 0 || shut < open || strings.Count(text, "(") != 1 {
		return s, false
	}
	parts := strings.Split(text[open+1:shut], ",")
	if len(parts) < 2 || strings.ContainsAny(parts[0]+parts[1], "'\"") {
		return s, false
	}
	start := s.Start + open + 1
	return source.Span{File: s.File, Start: start, End: start + len(parts[0]) + 1 + len(parts[1])}, true
}

// exactMarks are the marks that a line takes somebody to or from, or has them
// stand at.
func exactMarks(a *plan.Action) []*plan.Mark {
	if a == nil {
		return nil
	}
	var out []*plan.Mark
	add := func(pl *plan.Place) {
		if pl == nil || !pl.Exact() {
			return
		}
		for _, m := range out {
			if m == pl.Mark {
				return
			}
		}
		out = append(out, pl.Mark)
	}
	switch d := a.Deed.(type) {
	case *plan.Move:
		add(d.Path.From)
		for i := range d.Path.Via {
			add(&d.Path.Via[i])
		}
		add(d.Path.To)
	case *plan.Stand:
		add(d.At)
	}
	return out
}
