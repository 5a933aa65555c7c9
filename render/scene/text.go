package scene

import (
	"longhand/render/fonts"
)

// Anchor is which part of a line of text lies at its point, across.
type Anchor uint8

const (
	Start Anchor = iota
	Middle
	End
)

// Level is which part of a line of text lies at its point, up and down.
type Level uint8

const (
	Baseline Level = iota
	Center         // half a capital above the baseline
	Top            // the top of capitals
)

// Text is one line. Its colour is the fill of its classes, black when they say
// none; groups around lend it only their opacity.
type Text struct {
	Class  string
	At     Point
	Text   string
	Size   float64 // points
	Face   fonts.Face
	Anchor Anchor
	Level  Level
	Turn   float64 // degrees counter-clockwise as seen, about At
	Halo   float64 // mm of white around the letters, to keep lines off them
}

func (*Text) item() {}

// Clean is the text as it is written: one line, valid in every format.
func (t *Text) Clean() string { return fonts.Clean(t.Text) }

// Width is how far the text runs, in millimetres.
func (t *Text) Width() float64 { return t.Face.Width(t.Size, t.Clean()) }

// Origin is where the first letter's baseline starts.
func (t *Text) Origin() Point {
	dx, dy := 0.0, 0.0
	switch t.Anchor {
	case Middle:
		dx = -t.Width() / 2
	case End:
		dx = -t.Width()
	}
	switch t.Level {
	case Center:
		dy = -t.Face.CapHeight(t.Size) / 2
	case Top:
		dy = -t.Face.CapHeight(t.Size)
	}
	return t.place(dx, dy)
}

// place is the point at dx along the line and dy above its anchor point.
func (t *Text) place(dx, up float64) Point {
	return t.At.Polar(dx, t.Turn).Polar(up, t.Turn+90)
}

// Quad is the text's outline: from the baseline's descenders to the top of
// accents and from the first letter's start to the last one's end, turned with
// the text. Corners go around from the start of the line below the baseline.
func (t *Text) Quad() [4]Point {
	o, w := t.Origin(), t.Width()
	down, up := t.Face.Descent(t.Size), t.Face.Ascent(t.Size)
	end := o.Polar(w, t.Turn)
	return [4]Point{
		o.Polar(-down, t.Turn+90), end.Polar(-down, t.Turn+90),
		end.Polar(up, t.Turn+90), o.Polar(up, t.Turn+90),
	}
}

// Box is the upright box around Quad.
func (t *Text) Box() Box {
	q := t.Quad()
	b, _ := BoundsOf(q[:])
	return b
}

// Lines sets several lines under each other from At on, the anchor, size and
// face as in the model; each is a Text of its own.
func Lines(model Text, lines ...string) []Item {
	items := make([]Item, len(lines))
	for i, l := range lines {
		t := model
		t.Text = l
		t.At = model.place(0, -float64(i)*fonts.LineHeight(model.Size))
		items[i] = &t
	}
	return items
}
