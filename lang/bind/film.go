package bind

import (
	"strings"

	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// framesAFoot says how many frames a foot of film takes. 35 mm film has 64
// perforations a foot and 16 mm film 40 (SMPTE ST 139 and ST 109, from memory), and a frame takes
// as many of them as the gauge says; 65 mm film has the pitch of 35 mm.
var framesAFoot = []struct {
	gauge  string
	frames float64
}{
	{"35mm-4perf", 64.0 / 4}, {"35mm-3perf", 64.0 / 3}, {"35mm-2perf", 64.0 / 2}, {"35mm-8perf", 64.0 / 8},
	{"65mm-5perf", 64.0 / 5}, {"16mm", 40},
}

func (l *line) film(s *syntax.Film, t *plan.Take) {
	length := l.length(s.Length, "film", limits{0, 3000, true})
	gauge, frames := strings.Join(strings.Fields(s.Gauge), ""), 0.0
	var known []string
	for _, g := range framesAFoot {
		known = append(known, g.gauge)
		if g.gauge == gauge {
			frames = g.frames
		}
	}
	if frames == 0 {
		at := gaugeSpan(l.span, s.Gauge)
		d := l.errorf(CodeUnknownWord, at, "there is no film gauge `%s`", gauge)
		if !suggest(d, at, gauge, known) {
			d.Note("there are %s", and(known))
		}
	}
	if !l.once("film", "a take has one") || l.bad {
		return
	}
	if t.Record != nil {
		l.errorf(CodeSaidTwice, l.span, "both `record` and `film` say how long a roll is; keep one").Relate(t.Record.Span, "also said here")
		return
	}
	feet := float64(length / units.Foot)
	t.Record = &plan.Record{Duration: units.Seconds(feet * frames / t.Rate.PerSecond()), Gauge: gauge, Length: length, Span: l.span}
}

func gaugeSpan(stmt source.Span, gauge string) source.Span {
	if i := strings.Index(stmt.Text(), gauge); i >= 0 {
		return source.Span{File: stmt.File, Start: stmt.Start + i, End: stmt.Start + i + len(gauge)}
	}
	return stmt
}
