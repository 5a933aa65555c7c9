package syntax

import (
	"slices"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// Points and places stand on most lines, so they parse themselves.

func is(l *lexer.PeekingLexer, word string) bool {
	t := l.Peek()
	return t.Value == word && (t.Type == TokPunct || t.Type == TokName || t.Type == TokKeyword)
}

// Parse takes a point: '(' Coordinate ',' Coordinate (',' Coordinate)? ')'.
func (p *Point) Parse(l *lexer.PeekingLexer) error {
	if !is(l, "(") {
		return participle.NextMatch
	}
	p.here(l)
	l.Next()
	if err := read(l, &p.X, "Coordinate"); err != nil {
		return err
	}
	if !is(l, ",") {
		return unmet(l, `"," Coordinate`)
	}
	l.Next()
	if err := read(l, &p.Y, "Coordinate"); err != nil {
		return err
	}
	if is(l, ",") {
		l.Next()
		if err := read(l, &p.Z, "Coordinate"); err != nil {
			return err
		}
	}
	if !is(l, ")") {
		return unmet(l, `")"`)
	}
	l.Next()
	p.end(l)
	return nil
}

// Parse takes a place: (Quantity Side)? (Name | Point) ('+' Point)?.
func (p *Place) Parse(l *lexer.PeekingLexer) error {
	p.here(l)
	if l.Peek().Type == TokQuantity {
		before := l.MakeCheckpoint()
		if err := read(l, &p.Offset, "Quantity"); err != nil {
			return err
		}
		side, err := parseSide(l)
		if err != nil {
			return err
		}
		if side == nil {
			l.LoadCheckpoint(before)
			return participle.NextMatch
		}
		p.Side = side
	}
	if err := nameOrPoint(l, &p.Name, &p.Point); err != nil {
		if err == participle.NextMatch && p.Side != nil {
			return unmet(l, "Place")
		}
		return err
	}
	if err := plus(l, &p.Plus); err != nil {
		return err
	}
	p.end(l)
	return nil
}

// parseSide takes the direction of an offset; nil, and nothing taken, if there
// is none.
func parseSide(l *lexer.PeekingLexer) (*Side, error) {
	s := &Side{}
	s.here(l)
	before := l.MakeCheckpoint()
	switch word := l.Peek().Value; word {
	case "before", "after", "behind":
		s.Word = word
		l.Next()
	case "left", "right", "camera-left", "camera-right", "in":
		l.Next()
		s.Word = word
		if word == "in" {
			if !is(l, "front") {
				l.LoadCheckpoint(before)
				return nil, nil
			}
			s.Word = "front"
			l.Next()
		}
		if !is(l, "of") {
			if word == "left" || word == "right" {
				l.LoadCheckpoint(before)
				return nil, nil
			}
			return nil, unmet(l, `"of"`)
		}
		l.Next()
	default:
		return nil, nil
	}
	s.end(l)
	return s, nil
}

func nameOrPoint(l *lexer.PeekingLexer, name **Name, point **Point) error {
	if is(l, "(") {
		return read(l, point, "Point")
	}
	if !IsNameToken(*l.Peek()) {
		return participle.NextMatch
	}
	return read(l, name, "Name")
}

func plus(l *lexer.PeekingLexer, to **Point) error {
	if !is(l, "+") {
		return nil
	}
	l.Next()
	return read(l, to, "Point")
}

// Parse takes a corner: (Point | Name) ('+' Point)?, unless its word begins a
// detail.
func (c *Corner) Parse(l *lexer.PeekingLexer) error {
	if slices.Contains([]string{"thick", "wild", "glass", "points", "width", "rise"}, l.Peek().Value) {
		return participle.NextMatch
	}
	c.here(l)
	if err := nameOrPoint(l, &c.Name, &c.Point); err != nil {
		return err
	}
	if err := plus(l, &c.Plus); err != nil {
		return err
	}
	c.end(l)
	return nil
}

// Parse takes what is seen: Target ('in' Name)?. An amount after `in` is a time.
func (s *Seen) Parse(l *lexer.PeekingLexer) error {
	s.here(l)
	what := &Target{}
	if err := what.Parse(l); err != nil {
		return err
	}
	s.What = what
	if inGlass(l) {
		l.Next()
		if err := read(l, &s.Glass, "Name"); err != nil {
			return err
		}
	}
	s.end(l)
	return nil
}

// inGlass reports whether the line goes on with `in` and a name.
func inGlass(l *lexer.PeekingLexer) bool {
	if !is(l, "in") {
		return false
	}
	before := l.MakeCheckpoint()
	l.Next()
	named := IsNameToken(*l.Peek())
	l.LoadCheckpoint(before)
	return named
}

// Parse takes a goal: Place | Quantity.
func (g *Goal) Parse(l *lexer.PeekingLexer) error {
	g.here(l)
	p := &Place{}
	switch err := p.Parse(l); err {
	case nil:
		g.Place = p
	case participle.NextMatch:
		q := &Quantity{}
		if err := q.Parse(l); err != nil {
			return err
		}
		g.Amount = q
	default:
		return err
	}
	g.end(l)
	return nil
}
