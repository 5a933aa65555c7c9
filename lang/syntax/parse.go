package syntax

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"longhand/lang/diag"
	"longhand/lang/source"
)

// File is a parsed text: all its lines, good or bad, and the sections they form.
type File struct {
	Source   *source.File
	Lines    []*Line
	Sections []*Section
	Uses     []*Use
}

// Line is a statement with its tokens, or a blank line, or a comment alone. A
// statement broken after a comma or inside brackets is one Line.
type Line struct {
	Tokens  []Token // all of them, the line's end included
	Stmt    Stmt    // nil for blank lines, comments, and lines that could not be read
	Kind    *Kind   // what the first words say it is; nil if they do not
	Bad     bool    // an error was found in it
	Section *Section

	words     []Token
	complaint *complaint // what was found wrong; nil if nothing was
}

// Section is a header and the lines up to the next header. The lines before
// the first header form a section without Word.
type Section struct {
	Word  string // take, set, ...; "" before the first header
	Head  *Line  // nil if Word is ""
	Lines []*Line
}

// Codes of what is wrong with the text of a line.
const (
	CodeSyntax   diag.Code = "syntax"        // the words do not fit together
	CodeWord     diag.Code = "unknown-word"  // no statement begins like this
	CodeSection  diag.Code = "wrong-section" // a statement where it cannot stand
	CodeReserved diag.Code = "reserved-word" // a name that is a word of the language
)

// Parse reads a text. It always returns a File, with as much in it as could be
// understood.
func Parse(src *source.File) (*File, diag.Bag) {
	return (&parser{file: &File{Source: src}}).read()
}

type parser struct {
	file  *File
	bag   diag.Bag
	at    *Section
	known map[reading]*Line // the lines of an older text; nil without one
	quiet bool              // all there is to say of the text is said
}

func (p *parser) read() (*File, diag.Bag) {
	p.quiet = p.sixteen()
	for _, tokens := range split(Lex("", p.file.Source.Text)) {
		p.line(tokens)
	}
	return p.file, p.bag
}

func (p *parser) line(tokens []Token) {
	old := p.again(tokens)
	line := &Line{Tokens: tokens}
	line.words = line.Words()
	words := line.words
	word, starts := "", false
	if old != nil {
		word, starts = old.Section.Word, old.Section.Head == old
	} else {
		word, starts = p.startsSection(words)
	}
	before := p.at
	switch {
	case starts:
		p.at = &Section{Word: word, Head: line}
	case p.at == nil:
		p.at = &Section{}
	}
	line.Section = p.at
	var c *complaint
	switch {
	case old != nil:
		c = p.recall(line, old)
	case len(words) > 0:
		c = p.statement(line, words)
	}
	if c != nil {
		if old == nil { // one that is known was not cut apart
			if parts := p.apart(tokens); len(parts) > 1 {
				p.at = before
				for _, part := range parts {
					p.line(part)
				}
				return
			}
		}
		line.Bad, line.complaint = true, c
		p.report(c)
	}
	p.keep(line, p.at != before, starts)
}

// keep files a line in its section, and the section in the file.
func (p *parser) keep(line *Line, begins, header bool) {
	p.file.Lines = append(p.file.Lines, line)
	if begins {
		p.file.Sections = append(p.file.Sections, p.at)
	}
	if !header {
		p.at.Lines = append(p.at.Lines, line)
	}
	if use, ok := line.Stmt.(*Use); ok {
		p.file.Uses = append(p.file.Uses, use)
	}
}

// apart cuts a broken line that could not be read where a part of it begins
// like a statement of its own: a comma left over costs its line only.
func (p *parser) apart(tokens []Token) [][]Token {
	var parts [][]Token
	start, first := 0, 0
	for i, t := range tokens {
		if t.Type != TokEOL && i+1 < len(tokens) {
			continue
		}
		words := (&Line{Tokens: tokens[first : i+1]}).Words()
		if first > start && len(words) > 0 {
			if kind, _ := p.kind(words); kind != nil {
				parts = append(parts, tokens[start:first])
				start = first
			}
		}
		first = i + 1
	}
	return append(parts, tokens[start:])
}

// Words are the tokens that mean something.
func (l *Line) Words() []Token {
	if l.words != nil {
		return l.words
	}
	words := make([]Token, 0, len(l.Tokens))
	for _, t := range l.Tokens {
		if !blank(t.Type) {
			words = append(words, t)
		}
	}
	return words
}

// Span is the line's statement, without blanks, comment and line end.
func (l *Line) Span(f *source.File) source.Span {
	words := l.Words()
	if len(words) == 0 {
		return source.Span{}
	}
	return spanOf(f, words)
}

func spanOf(f *source.File, tokens []Token) source.Span {
	last := tokens[len(tokens)-1]
	return source.Span{File: f, Start: tokens[0].Pos.Offset, End: last.Pos.Offset + len(last.Value)}
}

// complaint is what is wrong with a line.
type complaint struct {
	code    diag.Code
	span    source.Span
	message string
	notes   []string
	fix     string // text to put in the span's place; "" for none
}

func (p *parser) report(c *complaint) {
	if p.quiet {
		return
	}
	d := p.bag.Errorf(c.code, c.span, "%s", c.message)
	for _, n := range c.notes {
		d.Note("%s", n)
	}
	if c.fix != "" {
		d.Fix(fmt.Sprintf("write `%s`", c.fix), diag.Edit{Span: c.span, Text: c.fix})
	}
}

// statement finds the line's kind, parses it, and folds its phrases.
func (p *parser) statement(line *Line, words []Token) *complaint {
	kind, c := p.kind(words)
	if bad := p.notUTF8(words); bad != nil {
		line.Kind = kind
		return bad
	}
	if kind == nil {
		return c
	}
	line.Kind = kind
	stmt, failed := kind.read(line)
	if failed != nil {
		return p.explain(kind, words, failed)
	}
	f := &folder{}
	stmt.fold(f)
	if f.at != nil {
		return p.misfit(kind, words, f)
	}
	if name := Declared(stmt); name != nil && reserved(name.Text) {
		return &complaint{code: CodeReserved, span: name.Span(p.file.Source),
			message: fmt.Sprintf("`%s` is a word of the language and cannot be a name", name.Text)}
	}
	line.Stmt = stmt
	return nil
}

// commented reports whether a comment stands between the words of a line.
func (l *Line) commented() bool {
	words := l.Words()
	end := words[len(words)-1].Pos.Offset
	return slices.ContainsFunc(l.Tokens, func(t Token) bool { return t.Type == TokComment && t.Pos.Offset < end })
}

// failure is where the words of a line stop fitting, and what was expected
// there, in the notation of the grammar.
type failure struct {
	at     Token
	expect string
}

// read parses a line's tokens: its words alone where no comment stands between
// them, since a part's end is then where the next one begins, less the blanks.
func (k *Kind) read(line *Line) (stmt Stmt, failed *failure) {
	tokens, words := line.Tokens, line.Words()
	last := words[len(words)-1]
	if line.commented() {
		words = nil
	}
	end := lexer.Position{Offset: last.Pos.Offset + len(last.Value)}
	defer func() {
		if recover() != nil { // the library's own mistake: the line is lost, the file is not
			stmt, failed = nil, &failure{at: Token{Type: TokEOF, Pos: end}}
		}
	}()
	var peeking *lexer.PeekingLexer
	var err error
	if words != nil {
		peeking, err = lexer.Upgrade(&replay{tokens: words, end: end})
	} else {
		peeking, err = lexer.Upgrade(&replay{tokens: tokens, end: end}, TokSpace, TokComment, TokEOL)
	}
	if err == nil {
		stmt, err = k.parse(peeking)
	}
	if err == nil {
		return stmt, nil
	}
	failed = &failure{at: Token{Type: TokEOF, Pos: end}}
	var positioned participle.Error
	if errors.As(err, &positioned) {
		for _, t := range tokens {
			if t.Pos.Offset == positioned.Position().Offset {
				failed.at = t
			}
		}
		if _, expect, ok := strings.Cut(positioned.Message(), "(expected "); ok {
			failed.expect = strings.TrimSuffix(expect, ")")
		}
	}
	return nil, failed
}
