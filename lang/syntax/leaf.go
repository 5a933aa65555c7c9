package syntax

import (
	"errors"
	"slices"
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// The parts that are one token each parse themselves, and the optional phrases
// pick their grammar by their first word: a line is read in about the time that
// its words take, however many phrases there are.

// one takes a token of one of the kinds into a node and its text; NextMatch if
// another stands there.
func one(l *lexer.PeekingLexer, n *Node, text *string, kinds ...lexer.TokenType) error {
	t := l.Peek()
	if !slices.Contains(kinds, t.Type) {
		return participle.NextMatch
	}
	*text = t.Value
	n.Pos = t.Pos
	n.EndPos = lexer.Position{Filename: t.Pos.Filename, Offset: t.Pos.Offset + len(t.Value)}
	l.Next()
	return nil
}

// Parse takes a name's token, for participle.
func (n *Name) Parse(l *lexer.PeekingLexer) error {
	return one(l, &n.Node, &n.Text, TokName, TokStopName)
}

// Parse takes a word's token, for participle.
func (w *Word) Parse(l *lexer.PeekingLexer) error {
	return one(l, &w.Node, &w.Text, TokName, TokStopName, TokKeyword)
}

// Parse takes a text's token, for participle.
func (s *String) Parse(l *lexer.PeekingLexer) error { return one(l, &s.Node, &s.Raw, TokString) }

// Parse takes a number's token, for participle.
func (n *Number) Parse(l *lexer.PeekingLexer) error { return one(l, &n.Node, &n.Text, TokNumber) }

// Parse takes a quantity's token, for participle.
func (q *Quantity) Parse(l *lexer.PeekingLexer) error {
	return one(l, &q.Node, &q.Text, TokQuantity, TokClock)
}

// Parse takes a coordinate's token, for participle.
func (c *Coordinate) Parse(l *lexer.PeekingLexer) error {
	return one(l, &c.Node, &c.Text, TokNumber, TokQuantity)
}

// Parse takes a stop's token, for participle.
func (s *Stop) Parse(l *lexer.PeekingLexer) error {
	return one(l, &s.Node, &s.Text, TokStop, TokStopName)
}

// Parse takes a ratio's token, for participle.
func (r *Ratio) Parse(l *lexer.PeekingLexer) error {
	return one(l, &r.Node, &r.Text, TokClock, TokNumber)
}

// Parse takes an offset's token, for participle.
func (z *Zone) Parse(l *lexer.PeekingLexer) error { return one(l, &z.Node, &z.Text, TokClock) }

// Parse takes a date's token, for participle.
func (d *Date) Parse(l *lexer.PeekingLexer) error { return one(l, &d.Node, &d.Text, TokDate) }

// Parse takes a bearing: (Number | Quantity | Mixed) ('N' | 'S' | 'E' | 'W')?.
func (b *Bearing) Parse(l *lexer.PeekingLexer) error {
	if err := one(l, &b.Node, &b.Amount, TokNumber, TokQuantity, TokMixed); err != nil {
		return err
	}
	switch t := l.Peek(); t.Value {
	case "N", "S", "E", "W":
		b.Side = t.Value
		l.Next()
		b.end(l)
	}
	return nil
}

// grammar is the parser of one part of a statement, built when first needed.
type grammar[T any] func() *participle.Parser[T]

func grammarOf[T any]() grammar[T] {
	return sync.OnceValue(func() *participle.Parser[T] {
		return participle.MustBuild[T](participle.Lexer(definition{}), participle.Elide("Space", "Comment", "EOL"))
	})
}

// parse reads a part and leaves the rest of the line.
func (g grammar[T]) parse(l *lexer.PeekingLexer) (*T, error) {
	return g().ParseFromLexer(l, participle.AllowTrailing(true))
}

// leaf is a part that parses itself.
type leaf[T any] interface {
	*T
	participle.Parseable
}

// read takes a part that parses itself, or says that it was expected.
func read[T any, P leaf[T]](l *lexer.PeekingLexer, to **T, expect string) error {
	n := new(T)
	err := P(n).Parse(l)
	if err == participle.NextMatch {
		return unmet(l, expect)
	}
	if err == nil {
		*to = n
	}
	return err
}

// unmet says what was expected where the line stands.
func unmet(l *lexer.PeekingLexer, expect string) error {
	return &participle.UnexpectedTokenError{Unexpected: *l.Peek(), Expect: expect}
}

// readBy takes a part by its grammar, or says that it was expected.
func readBy[T any](l *lexer.PeekingLexer, to **T, g grammar[T], expect string) error {
	at := l.Peek()
	n, err := g.parse(l)
	var positioned participle.Error
	switch {
	case err == nil:
	case errors.As(err, &positioned) && positioned.Position().Offset != at.Pos.Offset:
		return err
	default:
		return &participle.UnexpectedTokenError{Unexpected: *at, Expect: expect}
	}
	*to = n
	return nil
}

// list takes parts with commas between them.
func list[T any](l *lexer.PeekingLexer, to *[]*T, next func(**T) error) error {
	for {
		var n *T
		if err := next(&n); err != nil {
			return err
		}
		*to = append(*to, n)
		if l.Peek().Value != "," {
			return nil
		}
		l.Next()
	}
}

// here marks where a part begins; end where it ends.
func (n *Node) here(l *lexer.PeekingLexer) { n.Pos = l.Peek().Pos }
func (n *Node) end(l *lexer.PeekingLexer)  { n.EndPos = l.RawPeek().Pos }
