package syntax

import (
	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

var (
	rangeGrammar  = grammarOf[Range]()
	stopsGrammar  = grammarOf[Stops]()
	sizeGrammar   = grammarOf[Size]()
	colourGrammar = grammarOf[Colour]()
	cableGrammar  = grammarOf[Cable]()
)

// Parse takes a detail by its first word, for participle.
func (d *Detail) Parse(l *lexer.PeekingLexer) error {
	d.here(l)
	if err := d.parse(l); err != nil {
		return err
	}
	d.end(l)
	return nil
}

func (d *Detail) parse(l *lexer.PeekingLexer) error {
	t := l.Peek()
	switch {
	case t.Type == TokQuantity || t.Type == TokClock:
		return read(l, &d.Amount, "Quantity")
	case t.Value == "×" || t.Value == "x":
		l.Next()
		return read(l, &d.Times, "Number")
	case t.Type != TokName && t.Type != TokKeyword:
		return participle.NextMatch
	}
	if to := d.quantity(t.Value); to != nil {
		l.Next()
		return read(l, to, "Quantity")
	}
	return d.other(l, t.Value)
}

// quantity is the field of a word that a quantity follows.
func (d *Detail) quantity(word string) **Quantity {
	switch word {
	case "thick":
		return &d.Thick
	case "up":
		return &d.Up
	case "wide":
		return &d.Wide
	case "round":
		return &d.Round
	case "width":
		return &d.Width
	case "rise":
		return &d.Rise
	case "weighs":
		return &d.Weighs
	case "close":
		return &d.Close
	case "reach":
		return &d.Reach
	case "speed":
		return &d.Speed
	case "back":
		return &d.Back
	case "pan":
		return &d.Pan
	case "height":
		return &d.Height
	case "spread":
		return &d.Spread
	}
	return nil
}

// other takes what else may follow a word.
func (d *Detail) other(l *lexer.PeekingLexer, word string) error {
	switch word {
	case "high", "at", "points", "aims", "squeeze", "stops", "carries", "size", "seats",
		"colour", "color", "scale", "zone", "cable", "wild", "glass", "open", "shut", "gear", "changes", "modern", "seen", "three-phase":
		l.Next()
	default:
		return participle.NextMatch
	}
	switch word {
	case "high":
		return readBy(l, &d.High, rangeGrammar, "Range")
	case "at":
		return read(l, &d.At, "Goal")
	case "points":
		return read(l, &d.Points, "Number")
	case "aims":
		if l.Peek().Value == "at" {
			l.Next()
		}
		return read(l, &d.Aims, "Place")
	case "squeeze":
		return read(l, &d.Squeeze, "Number")
	case "stops":
		return readBy(l, &d.Stops, stopsGrammar, "Stops")
	case "carries":
		return readBy(l, &d.Carries, rangeGrammar, "Range")
	case "size":
		return readBy(l, &d.Size, sizeGrammar, "Size")
	case "seats":
		return read(l, &d.Seats, "Number")
	case "colour", "color":
		return readBy(l, &d.Colour, colourGrammar, "Colour")
	case "scale":
		return read(l, &d.Scale, "Ratio")
	case "zone":
		return read(l, &d.Zone, "Zone")
	case "cable":
		return readBy(l, &d.Cable, cableGrammar, "Cable")
	}
	d.Flag = word
	return nil
}
