package bind

import (
	"longhand/lang/syntax"
)

// salvage notes the names on lines that could not be read, so that no line that
// uses them is blamed.
func (b *binder) salvage(files []*syntax.File) {
	here := map[string]bool{}
	for _, f := range files {
		here[f.Source.Name] = true
	}
	for i, f := range files {
		for _, use := range f.Uses {
			b.blind = b.blind || !here[Resolve(f.Source.Name, use.File.Value())]
		}
		for _, ln := range f.Lines {
			if ln.Stmt != nil {
				continue
			}
			said := meaningful(ln)
			if len(said) == 0 {
				continue
			}
			first := said[0].Value
			b.blind = b.blind || first == "use"
			if len(said) > 1 && syntax.IsNameToken(said[1]) {
				b.lost[said[1].Value] = true
			}
			if i > 0 {
				continue
			}
			b.untitled = b.untitled || first == "beat"
			if ln.Section != nil && ln.Section.Word == "take" {
				b.lostSetting(first)
			}
			if inBeat(ln.Section) {
				b.drop(ln)
			}
		}
	}
}

// lostSetting notes a statement of the take that could not be read.
func (b *binder) lostSetting(first string) { b.lost["take "+first] = true }

func (b *binder) hasLostSetting(first string) bool { return b.lost["take "+first] }

func inBeat(s *syntax.Section) bool { return s != nil && (s.Word == "beat" || s.Word == "pickup") }

// meaningful is a line's tokens without blanks and comments.
func meaningful(ln *syntax.Line) []syntax.Token {
	var out []syntax.Token
	for _, t := range ln.Tokens {
		switch t.Type {
		case syntax.TokSpace, syntax.TokComment, syntax.TokEOL:
		default:
			out = append(out, t)
		}
	}
	return out
}
