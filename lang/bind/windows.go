package bind

import (
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// rollWindow is the light something has to be shot in; nil with a mistake.
func (l *line) rollWindow(w *syntax.Window) *plan.Window {
	if w == nil {
		return nil
	}
	out := &plan.Window{Span: l.at(w)}
	if w.Name != nil {
		out.Name = w.Name.Text
		if !l.knownWord(w.Name, w.Name.Text, "part of the day", syntax.Windows) {
			return nil
		}
		return out
	}
	for i, q := range []*syntax.Quantity{w.From, w.To} {
		t, err := q.DayTime()
		if err != nil {
			l.errorf(CodeOutOfRange, l.at(q), "%s", err)
			continue
		}
		if i == 0 {
			out.From = t
		} else {
			out.To = t
		}
	}
	if l.bad {
		return nil
	}
	if out.From == out.To {
		l.errorf(CodeOutOfRange, out.Span, "the window is empty: it ends at %s, when it begins", w.To.Text)
		return nil
	}
	return out
}

// window checks that the windows by name can be told: they need a place on
// earth and a day.
func (b *binder) window() {
	b.tellable(b.plan.Take.Roll)
}

func (b *binder) tellable(w *plan.Window) {
	if w == nil || w.Name == "" || b.toldWindow {
		return
	}
	b.toldWindow = true
	t := &b.plan.Take
	var missing []string
	if t.Place == nil && !b.hasLostSetting("place") {
		missing = append(missing, "`place`")
	}
	if t.Date == nil && !b.hasLostSetting("date") {
		missing = append(missing, "`date`")
	}
	if t.Date != nil && b.noZone {
		missing = append(missing, "the `zone` of its `date`")
	}
	if len(missing) > 0 {
		b.report(CodeNoDefault, w.Span, "when %s is depends on where and on what day; the take does not say %s", w.Name, and(missing)).
			Note("say them in the take: place 56.05 N 12.69 E, date 2026-08-20 zone +02:00")
	}
}
