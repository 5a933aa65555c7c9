package highlight

import (
	"slices"
	"strings"

	"longhand/lang/syntax"
	"longhand/lang/units"
)

// The characters of the lexer, as sets.
const (
	digits     = "0-9"
	footMarks  = "'′’"
	inchMarks  = "\"″”"
	fractions  = "½¼¾⅛⅜⅝⅞"
	marks      = "(),+×"
	otherMarks = "“„«»‘`°" // quotes of other languages, and the sign of degrees
	signs      = footMarks + inchMarks + fractions + marks + otherMarks
)

// blanks keep words apart inside a line.
var blanks = strings.ReplaceAll(syntax.Blanks, "\r", "")

var (
	blank     = set(blanks)
	digit     = many{set(digits)}
	fraction  = opt{seq{literal("."), digit}}
	bare      = seq{opt{set("+-")}, either{seq{digit, fraction}, seq{literal("."), digit}}}
	number    = seq{wordStart{}, bare}
	wordChar  = either{letter{}, set(digits)}
	nameShape = seq{letter{}, repeat{seq{opt{literal("-")}, wordChar}}}
	name      = seq{wordStart{}, nameShape}
)

// inchTail is what follows the whole number of inches: the mark, perhaps after
// a fraction.
var inchTail = either{
	set(inchMarks),
	seq{repeat{blank}, set(fractions), set(inchMarks)},
	seq{opt{seq{many{blank}, digit}}, literal("/"), digit, set(inchMarks)},
}

// lexical are the numbers of the language, in the order in which the lexer
// tries them.
func lexical() []rule {
	number, bare := number, bare
	date := seq{wordStart{}, opt{set("+-")}, digit, literal("-"), digit, literal("-"), digit}
	clock := seq{number, many{seq{literal(":"), digit, fraction}}}
	in := seq{repeat{blank}, literal("in"), many{blank}, opt{set("+-")}, opt{literal(".")}, set(digits)}
	feet := seq{number, set(footMarks), opt{seq{
		either{many{blank}, opt{literal("-")}},
		either{seq{digit, fraction, inchTail}, seq{set(fractions), set(inchMarks)}},
	}}}
	mixed := seq{number, letter{}, repeat{either{wordChar, seq{set("-./"), wordChar}}}}
	return []rule{
		one(Number, date), one(Number, clock),
		{Parts: []part{{Role: Number, Pattern: number}}, Ahead: in}, // bar 12.3 in 4 s: no inches
		one(Number, feet), one(Number, seq{number, inchTail}),
		one(Number, seq{number, repeat{blank}, feetInWords()}),
		one(Number, seq{number, repeat{blank}, unit()}),
		one(Number, mixed), one(Number, seq{wordStart{}, bare}),
		one(Stop, stop),
	}
}

// stop is a stop with a decimal, which is no name; stopName may be either.
var (
	stop     = seq{wordStart{}, literal("T"), digit, literal("."), digit}
	stopName = seq{wordStart{}, literal("T"), digit, fraction, wordEnd{}}
)

// feetInWords is feet written out, with the inches after them: ft 6 in.
func feetInWords() pattern {
	inches := seq{many{blank}, digit, fraction, repeat{blank}, wordsOf(spellings("in")), wordEnd{},
		ahead{seq{repeat{blank}, opt{set("+-")}, opt{literal(".")}, set(digits)}, false}}
	return seq{wordsOf(spellings("ft")), wordEnd{}, inches}
}

// unit is any unit, the longest first.
func unit() pattern {
	var words, symbols []string
	for _, u := range units.Table {
		switch last := u.Text[len(u.Text)-1]; {
		case strings.Contains(footMarks+inchMarks, u.Text): // with feet and inches
		case 'a' <= last && last <= 'z' || 'A' <= last && last <= 'Z' || '0' <= last && last <= '9':
			words = append(words, u.Text)
		default:
			symbols = append(symbols, u.Text)
		}
	}
	return either{seq{wordsOf(words), wordEnd{}}, wordsOf(symbols)}
}

// spellings are all the ways to write a unit in letters.
func spellings(usual string) []string {
	var words []string
	for _, u := range units.Table {
		if units.Usual(u.Text) == usual && !strings.Contains(footMarks+inchMarks, u.Text) {
			words = append(words, u.Text)
		}
	}
	return words
}

// wordsOf is any of some words, longer ones before those they begin with.
func wordsOf(words []string) pattern {
	sorted := slices.Clone(words)
	slices.SortFunc(sorted, func(a, b string) int {
		if len(a) != len(b) {
			return len(b) - len(a)
		}
		return strings.Compare(a, b)
	})
	var p either
	for _, w := range slices.Compact(sorted) {
		p = append(p, literal(w))
	}
	return p
}
