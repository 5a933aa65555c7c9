package syntax

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"
)

// Lex cuts a text into tokens. It cannot fail: joined, the tokens are the text,
// byte for byte. Positions are byte offsets; lines and columns are left to
// package source.
func Lex(filename, text string) []Token {
	tokens := make([]Token, 0, len(text)*2/5+4)
	for at := 0; at < len(text); {
		kind, n := next(text[at:])
		tokens = append(tokens, Token{
			Type:  kind,
			Value: text[at : at+n],
			Pos:   lexer.Position{Filename: filename, Offset: at},
		})
		at += n
	}
	return tokens
}

// next finds the token a non-empty text begins with, and its length in bytes.
func next(text string) (lexer.TokenType, int) {
	switch c := text[0]; {
	case c == '\n':
		return TokEOL, 1
	case strings.HasPrefix(text, "\r\n"):
		return TokEOL, 2
	}
	if n := spaces(text); n > 0 {
		return TokSpace, n
	}
	switch c := text[0]; {
	case c == '#':
		return TokComment, lineLength(text)
	case c == '"':
		return quoted(text)
	case isDigit(c):
		return number(text)
	case (c == '+' || c == '-' || c == '.') && startsNumber(text):
		return number(text)
	case strings.IndexByte("(),+", c) >= 0:
		return TokPunct, 1
	}
	if n := wordLength(text); n > 0 {
		return wordKind(text[:n], text[n:])
	}
	return illegal(text)
}

// Blanks are the characters that only keep words apart, besides line ends: a
// carriage return that ends no line, and what word processors put between a
// number and its unit, among them.
const Blanks = " \t\r\u00a0\u2009\u202f\ufeff"

// spaces is the length of the blanks that a text begins with.
func spaces(text string) int {
	n := 0
	for n < len(text) {
		switch c := text[n]; {
		case c == ' ' || c == '\t' || c == '\r' && !strings.HasPrefix(text[n:], "\r\n"):
			n++
			continue
		case c < utf8.RuneSelf:
			return n
		}
		r, size := utf8.DecodeRuneInString(text[n:])
		if !strings.ContainsRune(Blanks, r) {
			return n
		}
		n += size
	}
	return n
}

// lineLength is the length up to the line's end, without it.
func lineLength(text string) int {
	n := strings.IndexByte(text, '\n')
	if n < 0 {
		return len(text)
	}
	if n > 0 && text[n-1] == '\r' {
		n--
	}
	return n
}

func quoted(text string) (lexer.TokenType, int) {
	end := lineLength(text)
	for i := 1; i < end; i++ {
		switch text[i] {
		case '\\':
			i++
		case '"':
			return TokString, i + 1
		}
	}
	return TokOpenText, end
}

// wordLength is the length of a letter and the letters, digits and inner
// hyphens after it; 0 if there is none.
func wordLength(text string) int {
	n := letter(text)
	if n == 0 {
		return 0
	}
	for n < len(text) {
		if text[n] == '-' {
			if k := letterOrDigit(text[n+1:]); k > 0 {
				n += 1 + k
				continue
			}
			break
		}
		k := letterOrDigit(text[n:])
		if k == 0 {
			break
		}
		n += k
	}
	return n
}

func letter(text string) int {
	if text == "" {
		return 0
	}
	if c := text[0]; c < utf8.RuneSelf {
		if 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' {
			return 1
		}
		return 0
	}
	r, n := utf8.DecodeRuneInString(text)
	if r != utf8.RuneError && unicode.IsLetter(r) {
		return n
	}
	return 0
}

func letterOrDigit(text string) int {
	if text != "" && isDigit(text[0]) {
		return 1
	}
	if n := letter(text); n > 0 || text == "" {
		return n
	}
	r, n := utf8.DecodeRuneInString(text)
	if r != utf8.RuneError && unicode.IsMark(r) { // accents written apart from their letter
		return n
	}
	return 0
}

func wordKind(word, rest string) (lexer.TokenType, int) {
	if len(word) > 1 && word[0] == 'T' && allDigits(word[1:]) {
		if len(rest) > 1 && rest[0] == '.' && isDigit(rest[1]) {
			return TokStop, len(word) + 1 + digits(rest[1:])
		}
		return TokStopName, len(word)
	}
	if IsKeyword(word) {
		return TokKeyword, len(word)
	}
	return TokName, len(word)
}

// illegal takes one character, or a run of bytes that are no UTF-8, or a word
// that a name's rule does not allow, so that one mistake is one token.
func illegal(text string) (lexer.TokenType, int) {
	if strings.HasPrefix(text, "×") {
		return TokPunct, len("×")
	}
	_, n := utf8.DecodeRuneInString(text)
	for _, open := range []string{"“", "”", "„", "«", "'", "‘", "`"} { // a string in the wrong quotes, as one piece
		if strings.HasPrefix(text, open) {
			return TokIllegal, foreignString(text, len(open))
		}
	}
	return TokIllegal, n
}

func foreignString(text string, open int) int {
	line := text[:lineLength(text)]
	for _, shut := range []string{"”", "“", "»", "'", "’", "`"} {
		if i := strings.Index(line[open:], shut); i >= 0 {
			return open + i + len(shut)
		}
	}
	return open
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func digits(text string) int {
	n := 0
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	return n
}

func allDigits(text string) bool { return digits(text) == len(text) }
