package syntax

import (
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"longhand/lang/source"
)

// Node is the place of a part of a statement; every part embeds it. EndPos may
// lie behind the blanks after the part; Span leaves them out.
type Node struct {
	Pos    lexer.Position
	EndPos lexer.Position
}

// Span is the part's place in the file it was parsed from.
func (n Node) Span(f *source.File) source.Span {
	end := min(n.EndPos.Offset, len(f.Text))
	text := strings.TrimRight(f.Text[min(n.Pos.Offset, end):end], Blanks+"\n")
	return source.Span{File: f, Start: n.Pos.Offset, End: n.Pos.Offset + len(text)}
}

// Spanned is anything with a place in a file.
type Spanned interface {
	Span(f *source.File) source.Span
}

// Name is a name: mail-van, M1.
type Name struct {
	Node
	Text string
}

// Word is a word of the language where it was written.
type Word struct {
	Node
	Text string
}

// String is a text between quotes, kept with them.
type String struct {
	Node
	Raw string
}

// Value is the text without its quotes and backslashes.
func (s *String) Value() string {
	if s == nil || len(s.Raw) < 2 {
		return ""
	}
	return unescape.Replace(s.Raw[1 : len(s.Raw)-1])
}

var unescape = strings.NewReplacer(`\\`, `\`, `\"`, `"`)

// Quote writes a text as a string of the language.
func Quote(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", " ").Replace(text) + `"`
}

// Number is a bare number: a coordinate, a count.
type Number struct {
	Node
	Text string
}

// Quantity is a number with its unit as written, or a time on a clock: 2.4 m,
// 8'6", 1:04.5. Its methods convert it.
type Quantity struct {
	Node
	Text string
}

// Coordinate is a bare number in the set's unit, or a length: 4, 8'6".
type Coordinate struct {
	Node
	Text string
}

// Stop is a T-stop: T2.8.
type Stop struct {
	Node
	Text string
}

// Point is (x, y) or (x, y, z).
type Point struct {
	Node
	X, Y *Coordinate
	Z    *Coordinate // nil if not given
}

// Place is where something is or goes to: a name, a point, or either with an
// offset: M1; (2, 3); M1 + (0, 2); 2 m left of M1; 1.5 m before M1.
type Place struct {
	Node
	Offset *Quantity // nil if not given
	Side   *Side     // nil without Offset
	Name   *Name     // or
	Point  *Point
	Plus   *Point // nil if not given
}

// Side is the direction of an offset: left, right, camera-left, camera-right,
// front, behind, before or after.
type Side struct {
	Node
	Word string
}

// Target is what somebody turns to, or a lens sees: the same words as a Place,
// where a name may also be a person, a rig, camera-left or camera-right.
type Target = Place

// Goal follows `to` and `at`: a place, or an amount (a length, an angle, a
// speed). One of the two is set.
type Goal struct {
	Node
	Place  *Place
	Amount *Quantity
}

// Measure is an amount with a direction, in either order: 90 deg left, up
// 1.5 m.
type Measure struct {
	Node
	Before string    `parser:"@('left' | 'right' | 'up' | 'down')?"`
	Amount *Quantity `parser:"@@"`
	After  string    `parser:"@('left' | 'right' | 'up' | 'down')?"`
}

// Dir is left, right, up, down, or "" if none is given.
func (m *Measure) Dir() string {
	if m == nil {
		return ""
	}
	if m.Before != "" {
		return m.Before
	}
	return m.After
}
