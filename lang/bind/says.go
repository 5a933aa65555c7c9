package bind

import (
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/timecode"
)

func (l *line) say(s *syntax.Say) {
	who := l.find(s.Who, "only a person says something", people...)
	text := s.Line.Value()
	words := timecode.Words(text)
	l.need(words > 0, s.Line, "the line of `%s` is empty; how long it takes comes from its words", s.Who.Text)
	l.add(action{who, s.Verb, &plan.Say{Text: text, Words: words}, &s.Timed, phrases{}})
}
