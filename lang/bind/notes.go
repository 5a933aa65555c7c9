package bind

import (
	"strings"

	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// departmentWords are the words for a department in a note; some have more than one.
var departmentWords = map[string]departments.Name{
	"camera": departments.Camera, "grip": departments.Grip, "electric": departments.Electric, "lighting": departments.Electric, "art": departments.Art, "sound": departments.Sound,
	"effects": departments.Effects, "vfx": departments.Effects, "visual-effects": departments.Effects, "directors": departments.Ads, "assistant-directors": departments.Ads,
	"ad": departments.Ads, "movement": departments.Movement, "dance": departments.Movement, "vehicles": departments.Vehicles, "stunts": departments.Vehicles,
	"script": departments.Script, "edit": departments.Script,
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
