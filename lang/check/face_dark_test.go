package check_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

// darkened is a plan of somebody whose face is some metres from a lamp of 4000 cd, which
// is as high as the face. The sensitivity is 800 and the shutter open for 1/48 s.
func darkened(metres float64, stop, look string) string {
	return fmt.Sprintf(`take "Dark"
  rate 24 fps
  sensitivity 800
set "Hall"
  mark M1 (0, 0)
  place globe at (0, %g) up 1.636 m
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T1.4 to T22
  rig legs sticks
  lamp globe 500 W 4000 cd seen
people
  performer mina height 1.75 m
  crew ida
%sbeat "One"
  mina stands at M1 for 4 s
  legs stands at (-4, -1)
  A on legs with ida
  A takes w24%s
  A sees mina
`, metres, look, stop)
}

// TestFaceDarkBorder: N² = E·S·t/C with C = 250 (ISO 2720:1974): at index 800 and 1/48 s
// T4 takes 240 lx. 4000 cd give that at 4.082 m (inverse square), 30 lx, three stops
// less, at 11.547 m, and 60 lx, two stops less, at 8.165 m.
func TestFaceDarkBorder(t *testing.T) {
	two := "look\n  faces at most 2 stops under\n"
	for _, c := range []struct {
		metres float64
		look   string
		want   int
	}{{4.1, "", 0}, {11.3, "", 0}, {11.8, "", 1}, {8, two, 0}, {8.35, two, 1}, {11.8, "look\n  faces at most 4 stops under\n", 0}} {
		d := of(compiled(t, darkened(c.metres, " T4", c.look)).Findings, "face-dark")
		require.Len(t, d, c.want, "%g m, %q", c.metres, c.look)
		if c.want == 0 {
			continue
		}
		assert.Equal(t, []diag.Frames{{From: 0, To: 95}}, d[0].Frames)
		assert.Equal(t, c.look != "", d[0].Severity == diag.Error)
		assert.Equal(t, "mina", d[0].Subject)
	}
	d := of(compiled(t, darkened(16.33, " T4", "")).Findings, "face-dark")[0]
	assert.Contains(t, d.Message, "mina is too dark in A's frame 0:00.0–0:04.0 (frames 0–95): at 0:00.0 15 lx on the face take T1, and the lens is at T4, 4 stops under; 3 stops is the most, by common practice, no source")
	assert.Contains(t, d.Notes[0], "T2.8 keeps the face within 3 stops, T1 exposes it in full; so does 16 times the light")
	require.Len(t, d.Fixes, 1)
	assert.Equal(t, "open up to T2.8, with less depth of field", d.Fixes[0].Title)
}

// TestFaceDarkSaysNothing: without a stop, a sensitivity, a lamp of known candela, or
// with a lamp of unknown candela burning, and where a wall keeps every lamp off.
func TestFaceDarkSaysNothing(t *testing.T) {
	dark := darkened(20, " T4", "")
	require.Len(t, of(compiled(t, dark).Findings, "face-dark"), 1)
	for name, text := range map[string]string{
		"no stop":         darkened(20, "", ""),
		"no sensitivity":  strings.Replace(dark, "  sensitivity 800\n", "", 1),
		"no candela":      strings.Replace(dark, " 4000 cd", "", 1),
		"another burns":   strings.Replace(strings.Replace(dark, "  mark M1", "  place fire at (2, 2) up 1 m\n  mark M1", 1), "  rig legs", "  lamp fire 1 kW seen\n  rig legs", 1),
		"behind a wall":   strings.Replace(dark, "  mark M1", "  wall screen (-9, 5) (9, 5) high 4 m\n  mark M1", 1),
		"never in frame":  strings.Replace(dark, "A sees mina", "A sees (-4, -20)", 1),
		"allowed by name": strings.Replace(dark, "  A sees", "  allow face-dark mina because \"a silhouette\"\n  A sees", 1),
	} {
		t.Run(name, func(t *testing.T) { assert.Empty(t, of(compiled(t, text).Findings, "face-dark")) })
	}
}

// TestFaceDarkInTheOpen: at the end of civil twilight the clear sky gives 2 to 3.5 lx
// (AMS Glossary of Meteorology) and in the afternoon thousands, which light a face that
// the lamp alone would leave in the dark.
func TestFaceDarkInTheOpen(t *testing.T) {
	place := func(roll string) string {
		return strings.Replace(darkened(20, " T4", ""), "  sensitivity", "  place 56.05 N 12.69 E\n  date 2026-08-20 zone +02:00\n  roll in "+roll+"\n  sensitivity", 1)
	}
	assert.Empty(t, of(compiled(t, place("15:00 to 16:00")).Findings, "face-dark"))
	d := of(compiled(t, place("civil-dusk")).Findings, "face-dark")
	require.Len(t, d, 1)
	assert.Contains(t, d[0].Message, "13.4 lx on the face") // 10 of the lamp
	assert.Contains(t, strings.Join(d[0].Notes, "\n"), "the sky counts with 3.4 lx")
}

// A walk out of the light and back gives a stretch of its own each time, and a pull of
// the iris counts; while a cue moves the light nothing is said.
func TestFaceDarkStretches(t *testing.T) {
	walk := strings.NewReplacer("  mark M1 (0, 0)", "  mark M1 (0, 15)\n  mark M2 (0, 0)", "  mina stands at M1 for 4 s\n", "  mina walks from M2 to M1 at 1 m/s\n  mina walks to M2 at 1 m/s\n",
		"legs stands at (-4, -1)", "legs stands at (-20, 8)", "A takes w24 T4", "A takes w24 T4").Replace(darkened(17, " T4", ""))
	d := of(compiled(t, walk).Findings, "face-dark")
	require.Len(t, d, 2, "%v", d)
	assert.Equal(t, 0, int(d[0].Frames[0].From))
	assert.InDelta(t, 17-11.547, float64(d[0].Frames[0].To)/24, 0.8) // at 1 m/s, with a start
	assert.Greater(t, d[1].Frames[0].From, d[0].Frames[0].To)
	iris := strings.Replace(walk, "  A sees mina\n", "  A sees mina\n  A takes w24 T1.4 in 1 s starting +1 s\n", 1)
	less := of(compiled(t, iris).Findings, "face-dark")
	assert.Less(t, len(less), 2)
	cue := strings.Replace(darkened(5, " T4", ""), "  A sees mina\n", "  A sees mina\n  cue morning globe 100 % over 4 s\n", 1)
	assert.Empty(t, of(compiled(t, cue).Findings, "face-dark"))
}

// In feet the light is said in footcandles; a reflection is as dark as its face.
func TestFaceDarkInFeetAndGlass(t *testing.T) {
	feet := strings.Replace(darkened(16.33, " T4", ""), "  rate", "  units feet\n  rate", 1)
	feet = strings.NewReplacer("(0, 16.33)", "(0 m, 16.33 m)", "(-4, -1)", "(-4 m, -1 m)").Replace(feet)
	d := of(compiled(t, feet).Findings, "face-dark")
	require.Len(t, d, 1)
	assert.Contains(t, d[0].Message, "1.4 fc on the face take T1")
	glass := strings.NewReplacer("  mark M1", "  wall south (-8, -3) (8, -3) high 3 m\n  mirror glass on south 4 m to 8 m high 0.3 m to 2.6 m\n  mark M1",
		"A sees mina", "A sees mina in glass").Replace(darkened(16.33, " T4", ""))
	d = of(compiled(t, glass).Findings, "face-dark")
	require.Len(t, d, 1)
	assert.Contains(t, d[0].Message, "mina in glass is too dark")
}
