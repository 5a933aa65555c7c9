package syntax

import (
	"slices"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

var (
	roundGrammar   = grammarOf[Round]()
	eightGrammar   = grammarOf[Eight]()
	timeGrammar    = grammarOf[Time]()
	triggerGrammar = grammarOf[Trigger]()
	momentGrammar  = grammarOf[Moment]()
	withGrammar    = grammarOf[With]()
	measureGrammar = grammarOf[Measure]()
)

// Parse takes a phrase by its first word, for participle.
func (p *Phrase) Parse(l *lexer.PeekingLexer) error {
	p.here(l)
	if err := p.parse(l); err != nil {
		return err
	}
	p.end(l)
	return nil
}

func (p *Phrase) parse(l *lexer.PeekingLexer) error {
	t := l.Peek()
	switch t.Type {
	case TokKeyword:
		return p.keyword(l, t.Value)
	case TokName:
		return p.word(l, t.Value)
	case TokStop, TokStopName:
		return read(l, &p.Stop, "Stop")
	case TokQuantity, TokClock:
		return readBy(l, &p.Measure, measureGrammar, "Measure")
	}
	return participle.NextMatch
}

// keyword takes the phrases that a joining word begins.
func (p *Phrase) keyword(l *lexer.PeekingLexer, word string) error {
	switch word {
	case "round":
		return readBy(l, &p.Round, roundGrammar, "Round")
	case "eight":
		return readBy(l, &p.Eight, eightGrammar, "Eight")
	case "with":
		return readBy(l, &p.With, withGrammar, "With")
	case "left", "right", "up", "down":
		return readBy(l, &p.Measure, measureGrammar, "Measure")
	case "from", "via", "to", "straight", "curved", "facing", "backwards", "starting",
		"when", "in", "for", "at", "by", "until", "over":
		l.Next()
	default:
		return participle.NextMatch
	}
	switch word {
	case "from":
		return read(l, &p.From, "Place")
	case "via":
		return list(l, &p.Via, func(to **Place) error { return read(l, to, "Place") })
	case "to":
		return read(l, &p.To, "Goal")
	case "straight", "curved":
		p.Shape = word
	case "facing":
		return read(l, &p.Facing, "Place")
	case "backwards":
		p.Backwards = true
	case "starting":
		return readBy(l, &p.Starting, timeGrammar, "Time")
	case "when":
		return readBy(l, &p.When, triggerGrammar, "Trigger")
	case "in":
		if IsNameToken(*l.Peek()) {
			return read(l, &p.Glass, "Name")
		}
		return read(l, &p.In, "Quantity")
	case "for":
		return read(l, &p.For, "Quantity")
	case "at":
		return read(l, &p.At, "Goal")
	case "by":
		return readBy(l, &p.By, timeGrammar, "Time")
	case "until":
		return readBy(l, &p.Until, momentGrammar, "Moment")
	case "over":
		return read(l, &p.Over, "Quantity")
	}
	return nil
}

// word takes the phrases that another word begins.
func (p *Phrase) word(l *lexer.PeekingLexer, word string) error {
	switch {
	case word == "card":
		l.Next()
		return read(l, &p.Card, "Name")
	case word == "weight":
		l.Next()
		return read(l, &p.Weight, "Name")
	case word == "fifty-fifty":
		p.Fifty = true
	case slices.Contains(Sizes, word):
		p.Size = word
	default:
		return participle.NextMatch
	}
	l.Next()
	return nil
}
