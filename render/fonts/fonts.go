// Package fonts holds the three typefaces that drawings and books are set in,
// and measures text in them.
//
// One measuring function serves every output, so a label that was placed
// without a collision stays without one in the SVG, the PDF and the picture.
// Sizes are in points (1/72 inch), results in millimetres on paper. Kerning is
// not applied, and writers must switch it off where a viewer would apply it.
//
// It draws nothing. It may import golang.org/x/image and nothing of the project.
package fonts

import (
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is one of the typefaces; the zero value is the regular one.
type Face uint8

const (
	Regular Face = iota
	Bold
	Mono
	faces // how many there are
)

// MMPerPoint is one point in millimetres: an inch is 25.4 mm and 72 points.
const MMPerPoint = 25.4 / 72

// Faces lists all of them in a fixed order.
func Faces() []Face { return []Face{Regular, Bold, Mono} }

func (f Face) String() string {
	switch f {
	case Bold:
		return "bold"
	case Mono:
		return "mono"
	}
	return "regular"
}

// TTF is the font file. Callers must not change it.
func (f Face) TTF() []byte {
	switch f {
	case Bold:
		return gobold.TTF
	case Mono:
		return gomono.TTF
	}
	return goregular.TTF
}

// Font is the parsed font file, safe for use by many at once as long as each
// brings its own sfnt.Buffer.
func (f Face) Font() *sfnt.Font { return table(f).font }

// glyphs is what measuring needs, worked out once for a face: looking each
// glyph up in the file again would make label placement slow.
type glyphs struct {
	font     *sfnt.Font
	em       float64
	advances []float64 // of each glyph, in font units
	latin    [256]sfnt.GlyphIndex
	ascent   float64 // in font units, all positive
	descent  float64
	capitals float64
	small    float64
}

var tables [faces]struct {
	once sync.Once
	is   *glyphs
}

func table(f Face) *glyphs {
	if f >= faces {
		f = Regular
	}
	t := &tables[f]
	t.once.Do(func() { t.is = load(f) })
	return t.is
}

func load(f Face) *glyphs {
	parsed, err := sfnt.Parse(f.TTF())
	if err != nil {
		panic("fonts: a built-in face does not parse: " + err.Error()) // a broken build, not a user's mistake
	}
	g := &glyphs{font: parsed, em: float64(parsed.UnitsPerEm())}
	var b sfnt.Buffer
	ppem := fixed.Int26_6(parsed.UnitsPerEm()) // so that results are font units
	g.advances = make([]float64, parsed.NumGlyphs())
	for i := range g.advances {
		if a, err := parsed.GlyphAdvance(&b, sfnt.GlyphIndex(i), ppem, font.HintingNone); err == nil {
			g.advances[i] = float64(a)
		}
	}
	for r := range g.latin {
		g.latin[r], _ = parsed.GlyphIndex(&b, rune(r))
	}
	if m, err := parsed.Metrics(&b, ppem, font.HintingNone); err == nil {
		g.ascent, g.descent = float64(m.Ascent), float64(m.Descent)
		g.capitals, g.small = float64(m.CapHeight), float64(m.XHeight)
	}
	return g
}

func (g *glyphs) index(b *sfnt.Buffer, r rune) sfnt.GlyphIndex {
	if r >= 0 && r < 256 {
		return g.latin[r]
	}
	i, err := g.font.GlyphIndex(b, r)
	if err != nil {
		return 0
	}
	return i
}
