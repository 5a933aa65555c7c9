package lsp

import (
	"slices"

	"longhand/lang/syntax"
	"longhand/lang/units"
)

// expect holds a shape against the words of a line and returns what may come
// after them; nothing if they do not fit.
func expect(s *shape, words []syntax.Token) []term {
	m := &matcher{words: words}
	m.match(s, 0)
	var out []term
	for _, t := range m.next {
		if !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	return out
}

// matcher tries all ways at once; lines are short.
type matcher struct {
	words []syntax.Token
	next  []term
	depth int
}

// deepest bounds the nesting of shapes, which is small.
const deepest = 64

// match returns the words that may come after a shape begun at word i.
func (m *matcher) match(s *shape, i int) []int {
	if m.depth > deepest {
		return nil
	}
	m.depth++
	defer func() { m.depth-- }()
	switch {
	case s.term != nil:
		if i == len(m.words) {
			m.next = append(m.next, *s.term)
			return nil
		}
		if n := s.term.takes(m.words[i:]); n > 0 {
			return []int{i + n}
		}
		return nil
	case s.any != nil:
		var out []int
		for _, a := range s.any {
			out = merge(out, m.match(a, i))
		}
		return out
	case s.often != nil:
		out, fresh := []int{i}, []int{i}
		for len(fresh) > 0 {
			var found []int
			for _, k := range fresh {
				for _, e := range m.match(s.often, k) {
					if !slices.Contains(out, e) && !slices.Contains(found, e) {
						found = append(found, e)
					}
				}
			}
			out, fresh = append(out, found...), found
		}
		return out
	}
	ends := []int{i}
	for _, p := range s.parts {
		var after []int
		for _, k := range ends {
			after = merge(after, m.match(p, k))
		}
		ends = after
	}
	return ends
}

func merge(a, b []int) []int {
	for _, x := range b {
		if !slices.Contains(a, x) {
			a = append(a, x)
		}
	}
	return a
}

// reserved are the words that can be no name; camera-left and camera-right stand
// where names do.
var reserved = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range syntax.ReservedWords() {
		m[w] = w != "camera-left" && w != "camera-right"
	}
	return m
}()

// takes is how many words the term stands for at the beginning of some; 0 if
// they begin otherwise.
func (t *term) takes(words []syntax.Token) int {
	w := words[0]
	if t.word != "" {
		if w.Value == t.word || t.word == "x" && w.Value == "×" {
			return 1
		}
		return 0
	}
	ok := false
	switch t.want {
	case "STRING", "BEAT", "SAID", "FILE":
		ok = w.Type == syntax.TokString || w.Type == syntax.TokOpenText
	case "QUANTITY":
		ok = w.Type == syntax.TokQuantity || w.Type == syntax.TokClock
		if ok && w.Type == syntax.TokQuantity {
			if d := units.DimensionOf(w.Value); d != units.NoDimension && t.dim != units.NoDimension {
				ok = d == t.dim
			}
		}
	case "SCENE":
		ok = true // 31A, which would be a current anywhere else
	case "CLOCK":
		ok = w.Type == syntax.TokClock
	case "COORDINATE":
		ok = w.Type == syntax.TokNumber || w.Type == syntax.TokQuantity
	case "NUMBER", "INT", "1:INT":
		ok = w.Type == syntax.TokNumber || w.Type == syntax.TokClock || w.Type == syntax.TokMixed
	case "T", "STOP":
		ok = w.Type == syntax.TokStop || w.Type == syntax.TokStopName
	case "DATE":
		ok = w.Type == syntax.TokDate
	case "OFFSET":
		ok = w.Type == syntax.TokClock
	case "GAUGE":
		ok = w.Type == syntax.TokMixed || w.Type == syntax.TokQuantity
	default:
		ok = syntax.IsNameToken(w) && !reserved[w.Value]
	}
	if ok {
		return 1
	}
	return 0
}
