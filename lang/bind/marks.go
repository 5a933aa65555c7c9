package bind

import (
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// markText is how a mark is told, for it to be worked out when it is needed.
type markText struct {
	line  *line
	at    *syntax.Place
	state int // of the working out: not begun, begun, done
}

const (
	markUnknown = iota
	markAsked
	markSettled
)

// mark declares a mark; it is worked out when somebody asks for it.
func (l *line) mark(s *syntax.Mark) {
	m := &plan.Mark{}
	l.declare(s.Name, m)
	l.plan.Set.Marks = append(l.plan.Set.Marks, m)
	l.marks[m] = &markText{line: l, at: s.At}
	l.fills = append(l.fills, func() { l.settle(m) })
}

// settle works out where a mark lies, after the marks it is told from. It
// reports whether that is known.
func (b *binder) settle(m *plan.Mark) bool {
	t := b.marks[m]
	switch t.state {
	case markAsked:
		if !t.line.bad {
			t.line.errorf(CodeMarkLoop, m.At, "where `%s` lies is told from itself: %s", m.Name, b.around(m)).
				Note("give one of these marks a point: mark %s (4, 2)", m.Name)
		}
		return false
	case markSettled:
		return t.at != nil
	}
	t.state = markAsked
	s, _, ok := t.line.somewhere(t.at, false)
	if ok {
		m.Point, m.Z = s.Vec, s.z
	} else {
		t.at = nil // there is no telling
	}
	m.Bad = m.Bad || !ok || t.line.bad
	t.state = markSettled
	return ok
}

// around lists the marks of a circle, from one of them back to it.
func (b *binder) around(m *plan.Mark) string {
	text := m.Name
	for at := b.marks[m].at; at != nil && at.Name != nil; {
		next, _ := b.names[at.Name.Text].(*plan.Mark)
		if next == nil {
			break
		}
		text += " from " + next.Name
		if next == m {
			break
		}
		at = b.marks[next].at
	}
	return text
}
