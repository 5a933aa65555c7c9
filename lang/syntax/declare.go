package syntax

import "slices"

// Declared is the name a statement of a take, set, kit or people section gives
// to something; nil if it gives none.
func Declared(s Stmt) *Name {
	switch s := s.(type) {
	case *Wall:
		return s.Name
	case *SetDoor:
		return s.Name
	case *SetWindow:
		return s.Name
	case *Hole:
		return s.Name
	case *Pillar:
		return s.Name
	case *Block:
		return s.Name
	case *Platform:
		return s.Name
	case *Stairs:
		return s.Name
	case *Mirror:
		return s.Name
	case *Glow:
		return s.Name
	case *Mark:
		return s.Name
	case *Grid:
		return s.Name
	case *Supply:
		return s.Name
	case *Camera:
		return s.Name
	case *Lens:
		return s.Name
	case *Rig:
		return s.Name
	case *Vehicle:
		return s.Name
	case *Lamp:
		return s.Name
	case *Wash:
		return s.Name
	case *Card:
		return s.Name
	case *Performer:
		return s.Name
	case *Crew:
		return s.Name
	}
	return nil
}

// reserved reports whether a word can be no name: it starts a section or a line
// of a beat, joins the parts of a line, or stands for a direction.
func reserved(word string) bool {
	if IsSectionWord(word) || IsKeyword(word) || word == "camera-left" || word == "camera-right" {
		return true
	}
	for _, k := range byWord()[word] {
		if !k.Verb && (k.Section == "beat" || k.Section == "") {
			return true
		}
	}
	return false
}

// ReservedWords are all the words that can be no name, sorted.
func ReservedWords() []string {
	words := append([]string{"camera-left", "camera-right"}, Keywords...)
	words = append(words, SectionWords...)
	for _, k := range Statements {
		if !k.Verb && !k.Head && (k.Section == "beat" || k.Section == "") {
			words = append(words, k.Words...)
		}
	}
	slices.Sort(words)
	return slices.Compact(words)
}
