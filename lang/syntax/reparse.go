package syntax

import (
	"reflect"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"longhand/lang/diag"
	"longhand/lang/source"
)

// Reparse reads a text as Parse does and comes to the same, and does not read
// the lines again that stand in an older text, in the same kind of section,
// wherever they stood there. The older File stays as it is; what both have in
// common they share.
func Reparse(old *File, src *source.File) (*File, diag.Bag) {
	p := &parser{file: &File{Source: src}}
	if old != nil {
		p.known = known(old)
	}
	return p.read()
}

// reading is all that the reading of a line depends on.
type reading struct{ section, text string }

// known are the lines of a text by what their reading depends on.
func known(f *File) map[reading]*Line {
	lines := make(map[reading]*Line, len(f.Lines))
	section := ""
	for _, l := range f.Lines {
		if len(l.words) > 0 {
			lines[reading{section, textOf(f.Source, l.Tokens)}] = l
		}
		section = l.Section.Word
	}
	return lines
}

func textOf(f *source.File, tokens []Token) string {
	at := spanOf(f, tokens)
	return f.Text[at.Start:at.End]
}

// again is the line of the older text that reads as these tokens do; nil, and
// the tokens hold a text of their own, if there is none.
func (p *parser) again(tokens []Token) *Line {
	if p.known == nil {
		return nil
	}
	section := ""
	if p.at != nil {
		section = p.at.Word
	}
	old := p.known[reading{section, textOf(p.file.Source, tokens)}]
	if old == nil {
		detach(p.file.Source, tokens)
	}
	return old
}

// recall takes over what an older line was read as.
func (p *parser) recall(line, old *Line) *complaint {
	by := line.Tokens[0].Pos.Offset - old.Tokens[0].Pos.Offset
	line.Kind, line.Stmt = old.Kind, old.Stmt
	if by != 0 && old.Stmt != nil {
		line.Stmt = moved(old.Stmt, by)
	}
	if old.complaint == nil {
		return nil
	}
	c := *old.complaint
	c.span = source.Span{File: p.file.Source, Start: c.span.Start + by, End: c.span.End + by}
	return &c
}

// detach has tokens hold a text of their own: what is read from them may be
// shared by many later texts, and would keep all of this one alive.
func detach(f *source.File, tokens []Token) {
	text := strings.Clone(textOf(f, tokens))
	for i := range tokens {
		n := len(tokens[i].Value)
		tokens[i].Value, text = text[:n], text[n:]
	}
}

// moved is a statement as it would be read that many bytes further on.
func moved(stmt Stmt, by int) Stmt {
	m := mover{by: by, done: map[any]reflect.Value{}}
	v := reflect.New(reflect.TypeOf(stmt)).Elem()
	v.Set(reflect.ValueOf(stmt))
	m.move(v)
	return v.Interface().(Stmt)
}

// mover copies a statement and moves the places in it. Parts that two fields
// point at stay one part.
type mover struct {
	by   int
	done map[any]reflect.Value // copies by the pointers they replace
}

var position = reflect.TypeFor[lexer.Position]()

func (m mover) move(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		if v.Type() == position {
			v.Addr().Interface().(*lexer.Position).Offset += m.by
			return
		}
		for i := range v.NumField() {
			m.move(v.Field(i))
		}
	case reflect.Pointer:
		if v.IsNil() {
			return
		}
		from := v.Interface()
		to, ok := m.done[from]
		if !ok {
			to = reflect.New(v.Type().Elem())
			m.done[from] = to
			to.Elem().Set(v.Elem())
			m.move(to.Elem())
		}
		v.Set(to)
	case reflect.Slice:
		if v.IsNil() {
			return
		}
		from := v
		to := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(to, from)
		for i := range to.Len() {
			m.move(to.Index(i))
		}
		v.Set(to)
	}
}
