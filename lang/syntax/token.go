package syntax

import (
	"io"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// Token is a piece of the text; tokens follow each other without gaps.
type Token = lexer.Token

// The kinds of token. Lexing cannot fail: what fits none of them is Illegal.
const (
	TokEOF      lexer.TokenType = lexer.EOF
	TokEOL      lexer.TokenType = iota + 1 // a line's end, "\n" or "\r\n"
	TokSpace                               // blanks and tabs
	TokComment                             // from # to the end of the line
	TokName                                // a name or a word
	TokKeyword                             // a word that joins, never a name: to, at, when
	TokStopName                            // T2: a T-stop where one may stand, else a name
	TokStop                                // T2.8
	TokString                              // "..."
	TokOpenText                            // a string without its closing quote
	TokNumber                              // 4, -2.5
	TokQuantity                            // a number with its unit: 2.4 m, 8'6"
	TokClock                               // numbers with colons: 1:04.5, 16:9, +02:00
	TokDate                                // 2026-08-20
	TokMixed                               // digits and letters that are no quantity: 35mm-4perf, 31B
	TokPunct                               // ( ) , +
	TokIllegal
)

var symbols = map[string]lexer.TokenType{
	"EOF": TokEOF, "EOL": TokEOL, "Space": TokSpace, "Comment": TokComment, "Name": TokName,
	"Keyword": TokKeyword, "StopName": TokStopName, "Stop": TokStop, "String": TokString,
	"OpenText": TokOpenText, "Number": TokNumber, "Quantity": TokQuantity, "Clock": TokClock,
	"Date": TokDate, "Mixed": TokMixed, "Punct": TokPunct, "Illegal": TokIllegal,
}

// definition lets participle know the kinds of token and lex single values.
type definition struct{}

func (definition) Symbols() map[string]lexer.TokenType { return symbols }

func (definition) Lex(filename string, r io.Reader) (lexer.Lexer, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return &replay{tokens: Lex(filename, string(text))}, nil
}

func (definition) LexString(filename, text string) (lexer.Lexer, error) {
	return &replay{tokens: Lex(filename, text)}, nil
}

// replay hands out tokens that were cut before, then an end.
type replay struct {
	tokens []Token
	next   int
	end    lexer.Position
}

func (r *replay) Next() (Token, error) {
	if r.next >= len(r.tokens) {
		return Token{Type: TokEOF, Pos: r.end}, nil
	}
	r.next++
	return r.tokens[r.next-1], nil
}

// blank reports whether a token means nothing to the grammar.
func blank(t lexer.TokenType) bool { return t == TokSpace || t == TokComment || t == TokEOL }

// Print joins tokens to the text they were cut from.
func Print(tokens []Token) string {
	var b strings.Builder
	for i := range tokens {
		b.WriteString(tokens[i].Value)
	}
	return b.String()
}

// IsNameToken reports whether a token may stand for a name.
func IsNameToken(t Token) bool { return t.Type == TokName || t.Type == TokStopName }
