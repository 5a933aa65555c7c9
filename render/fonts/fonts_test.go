package fonts

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"pgregory.net/rapid"
)

// The reference is x/image's own text measuring at a size so large that its
// 1/64 pixel steps do not show.
func TestWidthAgreesWithAFontFace(t *testing.T) {
	for _, f := range Faces() {
		face, err := opentype.NewFace(f.Font(), &opentype.FaceOptions{Size: 2048, DPI: 72, Hinting: font.HintingNone})
		assert.NoError(t, err)
		for _, s := range []string{"", "Mara Lind", "AVAVA To", "0:12.08 at 1.25 m", "Жук Ω ½ →"} {
			want := 0.0
			for _, r := range s { // rune by rune, so that no kerning comes in
				a, _ := face.GlyphAdvance(r)
				want += float64(a) / 64
			}
			want *= 10.0 / 2048 * 25.4 / 72
			assert.InDelta(t, want, f.Width(10, s), 0.001, "%s %q", f, s)
		}
	}
}

// A capital of a Latin text face is between two thirds and four fifths of its
// size (common practice, no source).
func TestHeights(t *testing.T) {
	for _, f := range Faces() {
		size := 10 * MMPerPoint
		assert.Greater(t, f.CapHeight(10), size*0.66, f)
		assert.Less(t, f.CapHeight(10), size*0.8, f)
		assert.Less(t, f.XHeight(10), f.CapHeight(10), f)
		assert.Less(t, f.CapHeight(10), f.Ascent(10), f)
		assert.Greater(t, f.Descent(10), 0.0, f)
		assert.Less(t, f.Descent(10), size*0.4, f)
	}
}

func TestMissing(t *testing.T) {
	assert.Empty(t, Regular.Missing("Ångström ½ × → Жук Ω “so” – …\t\u00a0"))
	assert.Equal(t, []rune("漢✓"), Regular.Missing("漢 ok ✓漢"))
}

func TestClean(t *testing.T) {
	assert.Equal(t, "a b c", Clean("a\nb\tc"))
	assert.Equal(t, "a\uFFFDb", Clean("a\xffb"))
	rapid.Check(t, func(t *rapid.T) {
		s := Clean(rapid.String().Draw(t, "text"))
		if !utf8.ValidString(s) || strings.ContainsAny(s, "\n\r\t\x00\x1b") || Clean(s) != s {
			t.Fatalf("%q is not clean", s)
		}
	})
}

func TestWrapKeepsEveryWordAndTheWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOf(rapid.StringMatching(`[a-zA-Zäß0-9.,:-]{1,30}`)).Draw(t, "words")
		width := rapid.Float64Range(4, 80).Draw(t, "width")
		lines := Regular.Wrap(8, width, strings.Join(words, " "))
		if len(lines) == 0 {
			t.Fatal("no line")
		}
		for _, l := range lines {
			if w := Regular.Width(8, l); w > width+1e-9 && utf8.RuneCountInString(l) > 1 {
				t.Fatalf("%q is %v mm wide, more than %v", l, w, width)
			}
		}
		if got := strings.ReplaceAll(strings.Join(lines, ""), " ", ""); got != strings.Join(words, "") {
			t.Fatalf("wrapped to %q", lines)
		}
	})
}

func TestNumbersKeepTheirUnits(t *testing.T) {
	for _, text := range []string{"up to 0.1 % of the frame, right third, 6.1 m away, for 0.5 s, and no more", "230 V, 16 A (of 63 A); 900 cd/m2."} {
		for width := 18.0; width < 80; width += 0.5 {
			for _, l := range Regular.Wrap(8, width, text) {
				assert.NotRegexp(t, `^(%|m|s|V|A|cd/m2)\b|^%`, l, "%v mm", width)
			}
		}
	}
	assert.Equal(t, []string{"12", "m"}, Regular.Wrap(8, 3.5, "12 m"), "where there is no room for both")
}

func TestFit(t *testing.T) {
	assert.Equal(t, "short", Regular.Fit(8, 50, "short"))
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[a-z ]{0,60}`).Draw(t, "text")
		width := rapid.Float64Range(0, 50).Draw(t, "width")
		got := Bold.Fit(8, width, s)
		if Bold.Width(8, got) > width {
			t.Fatalf("%q is too wide", got)
		}
		if math.Abs(Bold.Width(8, got)-width) > 8 && got != s && got != "" {
			t.Fatalf("%q was cut too short for %v", got, width)
		}
	})
}
