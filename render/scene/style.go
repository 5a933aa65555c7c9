package scene

import (
	"fmt"
	"math"
	"strings"
)

// Paint is a colour, no paint at all, or not said (the zero value: what the
// group around has).
type Paint struct {
	R, G, B uint8
	kind    uint8
}

const (
	paintUnset uint8 = iota
	paintNone
	paintColour
)

// None paints nothing, also where the group around would.
var None = Paint{kind: paintNone}

// Black and White are the two colours that survive a photocopier.
var (
	Black = Grey(0)
	White = Grey(1)
)

// Grey is a grey level from 0, black, to 1, white.
func Grey(level float64) Paint {
	v := uint8(math.Round(math.Max(0, math.Min(1, level)) * 255))
	return RGB(v, v, v)
}

// RGB is a colour in sRGB.
func RGB(r, g, b uint8) Paint { return Paint{r, g, b, paintColour} }

// IsSet is whether anything was said, be it None.
func (p Paint) IsSet() bool { return p.kind != paintUnset }

// Visible is whether it is a colour.
func (p Paint) Visible() bool { return p.kind == paintColour }

// String is the CSS name: "none" or "#rrggbb", empty when not said.
func (p Paint) String() string {
	switch p.kind {
	case paintNone:
		return "none"
	case paintColour:
		return fmt.Sprintf("#%02x%02x%02x", p.R, p.G, p.B)
	}
	return ""
}

// Cap is how a stroke ends, Join how it turns.
type (
	Cap  uint8
	Join uint8
)

const (
	CapUnset Cap = iota
	Butt
	RoundCap
	Square
)

const (
	JoinUnset Join = iota
	Miter
	RoundJoin
	Bevel
)

// DefaultWidth is the stroke width in millimetres where no rule says one.
const DefaultWidth = 0.25

// Style is what a rule says. A zero field says nothing and leaves what the
// group around says; Opacity multiplies with that of the groups around.
type Style struct {
	Stroke  Paint
	Fill    Paint
	Width   float64   // mm
	Dash    []float64 // mm on, off, on, off...; Solid for none where the group has one
	Opacity float64   // above 0, up to 1
	Cap     Cap
	Join    Join
}

// Solid is the dash of an unbroken line.
var Solid = []float64{}

// Rule gives a class its style.
type Rule struct {
	Class string
	Style
}

// Styles are the rules of a sheet. As in CSS a later rule wins over an earlier
// one where both apply to the same shape and say the same thing.
type Styles []Rule

// Root is the style outside all groups: nothing is painted.
func Root() Style {
	return Style{Stroke: None, Fill: None, Width: DefaultWidth, Opacity: 1, Cap: Butt, Join: Miter}
}

// On is the style of something with these classes (a list with spaces between)
// inside something of a style that is already resolved.
func (s Styles) On(around Style, classes string) Style {
	if classes == "" {
		return around
	}
	own := around
	own.Opacity = 1
	for _, r := range s {
		if hasClass(classes, r.Class) {
			own = r.over(own)
		}
	}
	own.Opacity *= around.Opacity
	return own
}

// OnText is the style of text: black unless its own classes say a fill, and
// never outlined, whatever the group around says.
func (s Styles) OnText(around Style, classes string) Style {
	around.Fill = Black
	around = s.On(around, classes)
	around.Stroke = None
	return around
}

// over lays what the rule says over a style.
func (s Style) over(base Style) Style {
	if s.Stroke.IsSet() {
		base.Stroke = s.Stroke
	}
	if s.Fill.IsSet() {
		base.Fill = s.Fill
	}
	if s.Width > 0 {
		base.Width = s.Width
	}
	if s.Dash != nil {
		base.Dash = s.Dash
	}
	if s.Opacity > 0 {
		base.Opacity = s.Opacity
	}
	if s.Cap != CapUnset {
		base.Cap = s.Cap
	}
	if s.Join != JoinUnset {
		base.Join = s.Join
	}
	return base
}

func hasClass(list, class string) bool {
	for c := range strings.FieldsSeq(list) {
		if c == class {
			return true
		}
	}
	return false
}

// ValidClass is whether CSS and every other output take the name as it is.
func ValidClass(c string) bool {
	for i, r := range c {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		if !letter && (i == 0 || !(r >= '0' && r <= '9' || r == '-' || r == '_')) {
			return false
		}
	}
	return c != ""
}

// WithoutColour gives the rules as a black and white printer would: each colour
// as the grey of its luma (ITU-R BT.601).
func (s Styles) WithoutColour() Styles {
	grey := func(p Paint) Paint {
		if !p.Visible() {
			return p
		}
		return Grey((0.299*float64(p.R) + 0.587*float64(p.G) + 0.114*float64(p.B)) / 255)
	}
	out := make(Styles, len(s))
	for i, r := range s {
		r.Stroke, r.Fill = grey(r.Stroke), grey(r.Fill)
		out[i] = r
	}
	return out
}
