package bind

import (
	"strings"

	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// departmentWords are the words for a department in a note; some have more than one.
var departmentWords = map[string]string{
	"camera": "camera", "grip": "grip", "electric": "electric", "lighting": "electric", "art": "art", "sound": "sound",
	"effects": "effects", "vfx": "effects", "visual-effects": "effects", "directors": "directors", "assistant-directors": "directors",
	"ad": "directors", "movement": "movement", "dance": "movement", "vehicles": "vehicles", "stunts": "vehicles",
	"script": "script", "edit": "script",
}

func (l *line) note(s *syntax.DeptNote) {
	name := departmentWords[s.Department.Text]
	if name == "" {
		l.knownWord(s.Department, s.Department.Text, "department", departments.Noted())
	}
	text := s.Text.Value()
	l.need(strings.TrimSpace(text) != "", s.Text, "the note is empty")
	if !l.bad {
		l.plan.Notes = append(l.plan.Notes, &plan.Note{Department: name, Text: text, Beat: l.beat, Span: l.span})
	}
}
