package bind

import (
	"strconv"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// Codes of what is wrong with when a line happens.
const (
	CodeTwoTimings  diag.Code = "two-timings"
	CodeWrongPhrase diag.Code = "wrong-phrase"
)

// phrases are what a kind of line takes of the phrases that any line may have.
type phrases struct {
	paced  bool // at SPEED
	fixed  bool // at SPEED, and a way whose length is fixed
	atOnce bool // it takes no time: no in, for, until
	over   bool // its length is said with `over`
}

// said is one phrase of a timing.
type said struct {
	word string
	at   source.Span
}

func (l *line) timing(t *syntax.Timed, act *plan.Action, allowed phrases) plan.Timing {
	g := &t.Timing
	out := plan.Timing{}
	var starts, lengths []said
	say := func(list *[]said, word string, part syntax.Spanned) {
		s := said{word, l.at(part)}
		*list = append(*list, s)
		out.Span = out.Span.Join(s.at)
	}
	if g.Starting != nil {
		say(&starts, "starting", g.Starting)
		out.Start = l.time(g.Starting)
	}
	if g.When != nil {
		say(&starts, "when", g.When)
		out.Start = l.trigger(g.When)
	}
	if g.With != nil {
		say(&starts, "with", g.With)
		l.startsWith(g.With, act)
	}
	for _, q := range []struct {
		word   string
		amount *syntax.Quantity
	}{{"in", g.In}, {"for", g.For}} {
		if q.amount == nil {
			continue
		}
		say(&lengths, q.word, q.amount)
		if v, ok := l.seconds(q.amount, q.word, day); ok {
			out.In, out.InSpan = &v, l.at(q.amount)
		}
	}
	if g.Until != nil {
		say(&lengths, "until", g.Until)
		out.Until = l.until(g.Until)
	}
	if g.By != nil {
		out.Span = out.Span.Join(l.at(g.By))
		out.By = l.time(g.By)
	}
	l.allowedLength(lengths, act, allowed)
	if g.Speed != nil {
		l.timedSpeed(g.Speed, act, allowed, &out)
		if allowed.fixed {
			say(&lengths, "at", g.Speed)
		}
	}
	l.oneOf(starts, "when it starts")
	l.oneOf(lengths, "how long it takes")
	return out
}

func (l *line) timedSpeed(q *syntax.Quantity, act *plan.Action, allowed phrases, out *plan.Timing) {
	out.Span = out.Span.Join(l.at(q))
	if !allowed.paced {
		l.errorf(CodeWrongPhrase, l.at(q), "`%s` is not done at a speed; say how long it takes: in 4 s", act.Verb)
		return
	}
	if v := l.speed(q, "at"); v > 0 {
		out.At, out.AtSpan = &v, l.at(q)
	}
}

func (l *line) allowedLength(lengths []said, act *plan.Action, allowed phrases) {
	if len(lengths) == 0 {
		return
	}
	switch s := lengths[0]; {
	case allowed.over:
		l.errorf(CodeWrongPhrase, s.at, "how long a cue takes is said with `over`, not with `%s`", s.word)
	case allowed.atOnce:
		l.errorf(CodeWrongPhrase, s.at, "`%s` takes no time and cannot have `%s`; say when it happens: when ..., starting ...", act.Verb, s.word)
	}
}

// oneOf reports a second phrase that says the same in another way.
func (l *line) oneOf(list []said, what string) {
	if len(list) < 2 || l.bad {
		return
	}
	first, second := list[0], list[1]
	if second.at.Start < first.at.Start {
		first, second = second, first
	}
	l.errorf(CodeTwoTimings, second.at, "`%s` and `%s` both say %s; keep one", first.word, second.word, what).Relate(first.at, "said here first")
}

// startsWith checks that there is a line before for `with` to start a line
// together with.
func (l *line) startsWith(w *syntax.With, act *plan.Action) {
	subject := act.Subject
	if h, ok := act.Deed.(*plan.Handoff); ok && h.Camera != nil {
		subject = h.Camera
	}
	if subject == nil {
		if !l.bad {
			l.errorf(CodeWrongPhrase, l.at(w), "`with` starts a line with its subject's line before it, and this line has no subject; say when ...")
		}
		return
	}
	name := subject.ID().Name
	for _, other := range l.lines() {
		h, ok := other.Deed.(*plan.Handoff)
		if other.Subject == subject || ok && plan.Thing(h.Camera) == subject {
			return
		}
	}
	if !l.mayHave(name, l.section) {
		l.errorf(CodeNoSuchLine, l.at(w), "`with` starts this with the line before it of `%s`, and there is none in this beat", name)
	}
}

// time is a moment since the beat began, or on the take's clock.
func (l *line) time(t *syntax.Time) *plan.Moment {
	if t == nil {
		return nil
	}
	m := &plan.Moment{Span: l.at(t), Text: tidy(l.at(t).Text())}
	if t.Bar != nil {
		m.Kind = plan.OnClock
		offset, ok := l.bar(t)
		m.Offset = offset
		if !ok {
			return nil
		}
		return m
	}
	if strings.HasPrefix(m.Text, "-") {
		l.errorf(CodeOutOfRange, m.Span, "`%s` is before the beat begins; a time is 0 or later", m.Text)
		return nil
	}
	v, ok := l.seconds(t.Amount, "", limits{0, 86400, false})
	if !ok {
		return nil
	}
	m.Offset = v
	switch {
	case strings.HasPrefix(m.Text, "+"):
		m.Kind = plan.SinceBeat
	case t.Amount.IsClock():
		m.Kind = plan.OnClock
	default:
		l.errorf(CodeTwoTimings, m.Span, "`%s` could be since the beat began or since the take did; write +%s, or %s on the take's clock", m.Text, m.Text, v.Clock()).
			Fix("write +"+m.Text, diag.Edit{Span: m.Span, Text: "+" + m.Text})
		return nil
	}
	return m
}

// bar is when a bar, and a count in it, begins: bar 12.3 is the third count of
// the twelfth bar.
func (l *line) bar(t *syntax.Time) (units.Seconds, bool) {
	tempo := l.tempo(t)
	if tempo == nil {
		return 0, false
	}
	barText, countText, hasCount := strings.Cut(t.Bar.Text, ".")
	bar, err := strconv.Atoi(strings.TrimPrefix(barText, "+"))
	count := 1
	var err2 error
	if hasCount {
		count, err2 = strconv.Atoi(countText)
	}
	if err != nil || err2 != nil || bar < 1 || bar > 100000 || count < 1 || count > tempo.In {
		l.errorf(CodeOutOfRange, l.at(t), "there is no `bar %s`; bars count from 1 and have %d counts, so that bar 2.1 begins the second", t.Bar.Text, tempo.In).
			Relate(tempo.Span, "the tempo")
		return 0, false
	}
	return units.Seconds(float64((bar-1)*tempo.In+count-1) * 60 / tempo.BPM), true
}

func (l *line) trigger(t *syntax.Trigger) *plan.Moment {
	m := &plan.Moment{Kind: plan.OnEvent, Span: l.at(t), Text: tidy(l.at(t).Text())}
	m.Event = l.event(t.Event)
	length := limits{0, 86400, false}
	if v, ok := l.seconds(t.Plus, "plus", length); ok {
		m.Offset = v
	}
	if v, ok := l.seconds(t.Minus, "minus", length); ok {
		m.Offset = -v
	}
	if m.Event == nil {
		return nil
	}
	return m
}

func (l *line) until(u *syntax.Moment) *plan.Moment {
	if u.Time != nil {
		return l.time(u.Time)
	}
	e := l.event(u.Event)
	if e == nil {
		return nil
	}
	return &plan.Moment{Kind: plan.OnEvent, Event: e, Span: l.at(u), Text: tidy(l.at(u).Text())}
}
