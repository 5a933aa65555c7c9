package check

import (
	"strings"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
)

var unmatchedCue = &Rule{
	Entry: diag.Entry{
		Code:     "no-such-cue",
		Title:    "a cue that nothing in the plan gives",
		Severity: diag.Error,
		At:       []string{"beat"},
		Explain: `A line waits for something that never happens: somebody to reach a place that
no line takes them to, words that nobody says, a light cue of another name.

To mend it: name what does happen. The finding lists the nearest.`,
		Bad: `take "Waiting"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (0, 3)
  mark M4 (6, 3)
people
  performer mina
  performer otto
beat "Waiting"
  mina walks from M1 to M2
  otto walks from M3 to M4 when mina reaches M3
`,
		Good: `take "Waiting"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (0, 3)
  mark M4 (6, 3)
people
  performer mina
  performer otto
beat "Waiting"
  mina walks from M1 to M2
  otto walks from M3 to M4 when mina reaches M2
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, u := range p.Clock.Unmatched {
			span := u.Event.Span
			if u.Moment != nil {
				span = u.Moment.Span
			}
			d := p.Report(span, "nothing in the plan gives the cue %q", strings.TrimSpace(u.Event.Span.Text()))
			if len(u.Suggest) > 0 {
				d.Note("what does happen: %s", strings.Join(u.Suggest, ", "))
			}
		}
	},
}

func (p *Pass) stepSpan(a *plan.Action, b *plan.Beat) source.Span {
	switch {
	case a != nil:
		return a.Span
	case b != nil:
		return b.Span
	}
	return source.Span{}
}
