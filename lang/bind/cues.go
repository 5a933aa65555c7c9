package bind

import (
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// nameCue takes a cue's name, which no other cue may have.
func (b *binder) nameCue(l *line, s *syntax.Cue) {
	if first, again := b.cues[s.Name.Text]; again {
		l.errorf(CodeNameTwice, l.at(s.Name), "two cues are called `%s`; each needs its own name, for others to wait for it", s.Name.Text).Relate(first, "the first")
		return
	}
	b.cues[s.Name.Text] = l.at(s.Name)
}

// cueCalled reports whether there is a cue of a name, and if not says so.
func (l *line) cueCalled(n *syntax.Name) bool {
	if _, ok := l.cues[n.Text]; ok {
		return true
	}
	l.bad = true
	if l.lost[n.Text] {
		return false
	}
	var names []string
	for name := range l.cues {
		names = append(names, name)
	}
	d := l.errorf(CodeUnknownName, l.at(n), "no cue is called `%s`", n.Text)
	if !suggest(d, l.at(n), n.Text, names) && len(names) > 0 && len(names) <= listed {
		d.Note("the cues are %s", and(sorted(names)))
	}
	return false
}

func (l *line) cue(s *syntax.Cue) {
	deed := &plan.Cue{Name: s.Name.Text}
	for _, v := range s.Levels {
		level := l.level(v)
		for _, other := range deed.Levels {
			if !l.bad && other.Wash == level.Wash && other.Lamp == level.Lamp {
				l.errorf(CodeSaidTwice, l.at(v.Wash), "`%s` is brought to a level twice in this cue", v.Wash.Text)
			}
		}
		deed.Levels = append(deed.Levels, level)
	}
	if s.Over != nil {
		deed.Over, _ = l.seconds(s.Over, "over", limits{0, 86400, false})
	}
	l.add(action{nil, "cue", deed, &s.Timed, phrases{over: true}})
}

// level is what one wash, or one lamp that stands in the set, goes to.
func (l *line) level(v *syntax.CueLevel) plan.Level {
	out := plan.Level{}
	switch t := l.find(v.Wash, "a cue brings washes, and lamps placed in the set, to a level", plan.KindWash, plan.KindLamp).(type) {
	case *plan.Wash:
		out.Wash = t
	case *plan.Lamp:
		out.Lamp = t
		if !l.standsIn(t) {
			l.errorf(CodeWrongKind, l.at(v.Wash), "`%s` is a lamp that stands nowhere; place it in the set, or cue a wash of it", t.Name).Relate(t.At, "declared here")
		}
	}
	per, _ := l.quantity(v.Level, units.Share, v.Wash.Text, percentage)
	out.Per = units.Percent(per)
	return out
}

// standsIn reports whether a lamp is placed in the set, or was to be by a line
// with a mistake.
func (l *line) standsIn(lamp *plan.Lamp) bool {
	for _, p := range l.plan.Set.Placed {
		if p.Lamp == lamp {
			return true
		}
	}
	return lamp.Bad || l.lost[lamp.Name] || l.misplaced[lamp.Name]
}
