package bind

import (
	"slices"
	"strings"

	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/timecode"
)

// gauges are the gauges a plan can name; timecode knows how much film they take.
var gauges = []string{"35mm-4perf", "35mm-3perf", "35mm-2perf", "35mm-8perf", "65mm-5perf", "16mm"}

func (l *line) film(s *syntax.Film, t *plan.Take) {
	length := l.length(s.Length, "film", limits{0, 3000, true})
	gauge := strings.Join(strings.Fields(s.Gauge), "")
	film, err := timecode.ParseGauge(gauge)
	if err != nil || !slices.Contains(gauges, gauge) {
		at := gaugeSpan(l.span, s.Gauge)
		d := l.errorf(CodeUnknownWord, at, "there is no film gauge `%s`", gauge)
		if !suggest(d, at, gauge, gauges) {
			d.Note("there are %s", and(gauges))
		}
	}
	if !l.once("film", "a take has one") || l.bad {
		return
	}
	if t.Record != nil {
		l.errorf(CodeSaidTwice, l.span, "both `record` and `film` say how long a roll is; keep one").Relate(t.Record.Span, "also said here")
		return
	}
	t.Record = &plan.Record{Duration: film.Runs(length, t.Rate), Gauge: gauge, Length: length, Span: l.span}
}

func gaugeSpan(stmt source.Span, gauge string) source.Span {
	if i := strings.Index(stmt.Text(), gauge); i >= 0 {
		return source.Span{File: stmt.File, Start: stmt.Start + i, End: stmt.Start + i + len(gauge)}
	}
	return stmt
}
