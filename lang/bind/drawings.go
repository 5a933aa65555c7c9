package bind

import (
	"strconv"
	"strings"

	"longhand/lang/plan"
	"longhand/lang/syntax"
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
	if !l.bad {
		l.plan.Set.Drawings = append(l.plan.Set.Drawings, d)
	}
}
