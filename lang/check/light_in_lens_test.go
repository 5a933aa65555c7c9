package check_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

const window = `take "The window"
  rate 24 fps
  sensitivity 800
set "Hall"
  wall north (-10, 8) (10, 8) high 4 m
  glow dusk on north 9.5 m to 10.5 m high 1 m to 2 m NITS cd/m2
  mark M1 (0, -2)
  mark M2 (0, 4)
kit
  camera A sensor 24.89 mm x 14 mm
  lens prime 35 mm stops T2 to T22
  lens long 25 mm to 50 mm stops T2.8 to T22
  lamp sun 500 W
  lamp table 40 W seen
  rig track dolly
people
  performer mina height 1.7 m
  crew ida
beat "In"
  track moves from M1 to M2 at 1 m/s
  A on track with ida up 1.5 m
  A takes LENS T4
  A sees TARGET
`

func lit(nits, lens, target, more string) string {
	s := strings.NewReplacer("NITS", nits, "LENS", lens, "TARGET", target).Replace(window)
	return strings.Replace(s, "  mark M1", more+"  mark M1", 1)
}

// Middle grey at T4, index 800, 1/48 s is 12.5·16/(800/48) = 12 cd/m2 (ISO
// 2720): four stops over it are 192 cd/m2.
func TestGlowIsHeldAgainstTheExposure(t *testing.T) {
	assert.Empty(t, of(compiled(t, lit("190", "prime", "(0, 8, 1.5)", "")).Findings, "flare"))
	r := compiled(t, lit("200", "prime", "(0, 8, 1.5)", ""))
	found := of(r.Findings, "flare")
	require.Len(t, found, 1)
	d := found[0]
	assert.Equal(t, diag.Warning, d.Severity)
	assert.Contains(t, d.Message, "growing from")
	assert.Contains(t, strings.Join(d.Notes, "\n"), "200 cd/m2, 4.1 stops over middle grey")
	// Straight before the lens and 1 m square: of a frame d·24.89/35 wide and
	// d·14/35 high, the wall's face being at 7.949.
	away := 7.949 - r.Stage.Scene.Cameras[0].At(d.Worst).Y
	assert.InDelta(t, 100/(away*away*24.89*14/35/35), float64(d.Share), 0.01)

	bare := strings.Replace(lit("450", "prime", "(0, 8, 1.5)", ""), "  sensitivity 800\n", "", 1)
	assert.Empty(t, of(compiled(t, bare).Findings, "flare"))
	assert.Len(t, of(compiled(t, strings.Replace(bare, "450", "600", 1)).Findings, "flare"), 1)
}

func TestFlareIsWorseOnAZoom(t *testing.T) {
	zoom := of(compiled(t, lit("900", "long 35 mm", "(0, 8, 1.5)", "")).Findings, "flare")
	require.Len(t, zoom, 1)
	assert.Contains(t, zoom[0].Message, "on a zoom")
	// Beside the frame, a prime gets a note and a zoom a warning.
	for lens, severity := range map[string]diag.Severity{"prime": diag.Note, "long 35 mm": diag.Warning} {
		near := of(compiled(t, lit("900", lens, "(5.5, 8, 1.5)", "")).Findings, "flare")
		require.Len(t, near, 1, lens)
		assert.Equal(t, severity, near[0].Severity, lens)
		assert.Contains(t, near[0].Message, "just out of frame")
	}
	assert.Empty(t, of(compiled(t, lit("900", "prime", "(-9, -2, 1.5)", "")).Findings, "flare"), "it is behind")
}

func TestLampsInAndNearFrame(t *testing.T) {
	// A lamp that may be seen, aimed at the lens, in frame; turned away it is none.
	in := of(compiled(t, lit("10", "prime", "(0, 8, 1.5)", "  place table at (0.5, 7) up 1.5 m aims (0, -2)\n")).Findings, "flare")
	require.Len(t, in, 1)
	assert.Equal(t, diag.Warning, in[0].Severity)
	assert.Equal(t, "table", in[0].Subject)
	away := of(compiled(t, lit("10", "prime", "(0, 8, 1.5)", "  place table at (0.5, 7) up 1.5 m aims (0.5, 8)\n")).Findings, "flare")
	assert.Empty(t, away)
	round := of(compiled(t, lit("10", "prime", "(0, 8, 1.5)", "  place table at (0.5, 7) up 1.5 m\n")).Findings, "flare")
	require.Len(t, round, 1)
	assert.Equal(t, diag.Note, round[0].Severity)

	// One that must not be seen, just out of frame; behind a flag it is none.
	out := lit("10", "prime", "(0, 8, 1.5)", "  place sun at (6, 7.5) up 1.5 m aims (0, 0)\n")
	near := of(compiled(t, out).Findings, "flare")
	require.Len(t, near, 1)
	assert.Contains(t, near[0].Message, "sun shines into A's lens from just out of frame")
	flagged := strings.Replace(out, "  mark M1", "  wall flag (4, 6.8) (6.6, 6.4) high 3 m\n  mark M1", 1)
	assert.Empty(t, of(compiled(t, flagged).Findings, "flare"))
}

// A mirror turned away from the camera shows nothing of it.
func TestMirrorGivesTheCameraAway(t *testing.T) {
	glass := strings.Replace(lit("10", "prime", "(0, 8, 1.5)", ""), "  mark M1", "  mirror glass on north 9 m to 11 m high 0.5 m to 2.5 m\n  mark M1", 1)
	found := of(compiled(t, glass).Findings, "mirror-shows")
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, "ida and track show in the mirror glass, in A's frame")
	allowed := glass + `  allow mirror-shows in A because "the mirror is greased"` + "\n"
	r := compiled(t, allowed)
	assert.Empty(t, of(r.Findings, "mirror-shows"))
	assert.Len(t, r.Accepted, 1)
	side := strings.Replace(glass, "wall north (-10, 8) (10, 8)", "wall north (8, -10) (8, 10)", 1)
	assert.Empty(t, of(compiled(t, side).Findings, "mirror-shows"))
}
