package lsp

import (
	"slices"

	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// The legend of the semantic tokens.
var (
	tokenTypes = []string{"keyword", "function", "string", "number", "comment", "operator",
		"parameter", "class", "property", "variable", "enumMember", "event"}
	tokenModifiers = []string{"declaration"}
)

const (
	tokKeyword = iota
	tokFunction
	tokString
	tokNumber
	tokComment
	tokOperator
	tokPerson // "parameter": who plays a part in it
	tokMachine
	tokPlace // "property"
	tokOther
	tokWord // "enumMember"
	tokEvent
)

// Tokens is the meaning of every word, coded as the protocol has it: line and
// column from the token before, length, type, modifiers.
func (s *Snapshot) Tokens() []int {
	data := []int{}
	names := map[int]mention{}
	n := s.names()
	for _, m := range n.all {
		if m.at.File.Name == s.File.Source.Name {
			names[m.at.Start] = m
		}
	}
	var last Position
	for _, l := range s.File.Lines {
		for _, t := range l.Tokens {
			kind, declared, ok := tokenType(n, names, l, t)
			if !ok {
				continue
			}
			at := s.Encoding.span(source.Span{File: s.File.Source, Start: t.Pos.Offset, End: t.Pos.Offset + len(t.Value)})
			if at.End.Line != at.Start.Line {
				continue
			}
			column := at.Start.Character
			if at.Start.Line == last.Line {
				column -= last.Character
			}
			data = append(data, at.Start.Line-last.Line, column, at.End.Character-at.Start.Character, kind, declared)
			last = at.Start
		}
	}
	return data
}

func tokenType(n *names, at map[int]mention, l *syntax.Line, t syntax.Token) (kind, declared int, ok bool) {
	switch t.Type {
	case syntax.TokComment:
		return tokComment, 0, true
	case syntax.TokString, syntax.TokOpenText:
		if m, is := at[t.Pos.Offset+1]; is && m.space == ofTitles {
			return tokEvent, boolean(m.decl), true
		}
		return tokString, 0, true
	case syntax.TokNumber, syntax.TokQuantity, syntax.TokClock, syntax.TokDate, syntax.TokStop, syntax.TokMixed:
		return tokNumber, 0, true
	case syntax.TokKeyword:
		return tokKeyword, 0, true
	case syntax.TokPunct:
		return tokOperator, 0, t.Value == "+"
	case syntax.TokName, syntax.TokStopName:
		if m, is := at[t.Pos.Offset]; is {
			return tokenOfName(n, m), boolean(m.decl), true
		}
		if t.Type == syntax.TokStopName {
			return tokNumber, 0, true
		}
		return wordType(l, t), 0, l.Kind != nil
	}
	return 0, 0, false
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

func tokenOfName(n *names, m mention) int {
	if m.space == ofCues {
		return tokEvent
	}
	switch n.kinds[m.name] {
	case plan.KindPerformer, plan.KindCrew:
		return tokPerson
	case plan.KindCamera, plan.KindRig, plan.KindVehicle, plan.KindLens:
		return tokMachine
	case "", plan.KindLamp, plan.KindWash, plan.KindCard:
		return tokOther
	}
	return tokPlace
}

// wordType is for a word that is no name.
func wordType(l *syntax.Line, t syntax.Token) int {
	if l.Kind == nil {
		return tokOther
	}
	if slices.Contains(l.Kind.Words, t.Value) {
		if l.Kind.Verb {
			return tokFunction
		}
		return tokKeyword
	}
	if slices.Contains(usageWords(l.Kind), t.Value) {
		return tokKeyword
	}
	return tokWord
}
