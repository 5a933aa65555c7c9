package syntax

import (
	"errors"
	"fmt"

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
	CodeSyntax  diag.Code = "syntax"        // the words do not fit together
	CodeWord    diag.Code = "unknown-word"  // no statement begins like this
	CodeSection diag.Code = "wrong-section" // a statement where it cannot stand
	CodeWords   diag.Code = "reserved-word" // a name that is a word of the language
)

// Parse reads a text. It always returns a File, with as much in it as could be
// understood.
func Parse(src *source.File) (*File, diag.Bag) {
	p := &parser{file: &File{Source: src}}
	for _, tokens := range split(Lex("", src.Text)) {
		p.line(tokens)
	}
	return p.file, p.bag
}

type parser struct {
	file *File
	bag  diag.Bag
	at   *Section
}

func (p *parser) line(tokens []Token) {
	line := &Line{Tokens: tokens}
	p.file.Lines = append(p.file.Lines, line)
	words := line.words()
	if len(words) > 0 && IsSectionWord(words[0].Value) {
		p.at = &Section{Word: words[0].Value, Head: line}
		p.file.Sections = append(p.file.Sections, p.at)
	} else {
		if p.at == nil {
			p.at = &Section{}
			p.file.Sections = append(p.file.Sections, p.at)
		}
		p.at.Lines = append(p.at.Lines, line)
	}
	line.Section = p.at
	if len(words) == 0 {
		return
	}
	if c := p.statement(line, words); c != nil {
		line.Bad = true
		p.report(c)
	}
	if use, ok := line.Stmt.(*Use); ok {
		p.file.Uses = append(p.file.Uses, use)
	}
}

// words are the tokens that mean something.
func (l *Line) words() []Token {
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
	words := l.words()
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
	if kind == nil {
		return c
	}
	line.Kind = kind
	stmt, failed := kind.read(line.Tokens)
	if failed != nil {
		return p.explain(kind, words, *failed)
	}
	f := &folder{}
	stmt.fold(f)
	if f.at != nil {
		return &complaint{code: CodeSyntax, span: f.at.Span(p.file.Source), message: f.message,
			notes: append(f.notes, usageNote(kind))}
	}
	line.Stmt = stmt
	return nil
}

// read parses a line's tokens. If the words do not fit it returns the token at
// which they stop fitting.
func (k *Kind) read(tokens []Token) (stmt Stmt, failed *Token) {
	last := tokens[len(tokens)-1]
	end := lexer.Position{Offset: last.Pos.Offset + len(last.Value)}
	defer func() {
		if recover() != nil { // the library's own mistake: the line is lost, the file is not
			stmt, failed = nil, &tokens[0]
		}
	}()
	peeking, err := lexer.Upgrade(&replay{tokens: tokens, end: end}, TokSpace, TokComment, TokEOL)
	if err != nil {
		return nil, &tokens[0]
	}
	stmt, err = k.parse(peeking)
	if err == nil {
		return stmt, nil
	}
	var unexpected *participle.UnexpectedTokenError
	if errors.As(err, &unexpected) {
		return nil, &unexpected.Unexpected
	}
	at := Token{Type: TokEOF, Pos: end}
	var positioned participle.Error
	if errors.As(err, &positioned) {
		for _, t := range tokens {
			if t.Pos.Offset == positioned.Position().Offset {
				at = t
				break
			}
		}
	}
	return nil, &at
}
