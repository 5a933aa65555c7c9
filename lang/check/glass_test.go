package check_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

// mirrored is a plan of a lens at the origin, 1.5 m up, somebody 4 m to its right, and
// a mirror whose face lies along y = 3: check MIR-5 of the design, a path of 7.2111 m
// that meets the glass at (2, 3) (unfolded path; C).
const mirrored = `take "In the cloakroom"
  rate 24 fps
  aspect 1.85
set "Cloakroom"
  wall north (0, 3.101) (8, 3.101) high 3 m thick 0.2 m
  mirror glass on north 1.2 m to 2.8 m high 0.6 m to 2.4 m
kit
  camera A sensor 24.9 mm x 14 mm
  lens w50 50 mm stops T2 to T22
  rig legs sticks
people
  performer mina height 1.66 m
  performer otto
  crew ida
beat "At the glass"
  mina stands at (4, 0) for 4 s
  legs stands at (0, 0)
  A on legs with ida up 1.5 m
  A takes w50 T4
  A sees mina in glass full
`

func swapped(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(mirrored) }

// TestFoldedPath: what stands at the end of a way folded by a mirror is framed and
// focused as if it stood at its image (8 - 4, 6): MIR-5.
func TestFoldedPath(t *testing.T) {
	r := compiled(t, mirrored)
	require.False(t, r.Stopped)
	assert.Empty(t, worse(r.Findings))
	v := r.Stage.Scene.Cameras[0].At(10)
	// Along the axis, which points from her head down to where all of her is in frame;
	// the face is 0.1 m nearer than the body.
	head := math.Atan2(1.66*0.935-1.5, 7.2111)
	assert.InDelta(t, math.Hypot(7.2111, 1.66*0.935-1.5)*math.Cos(head-v.Tilt)-0.1, v.Focus, 0.003)
	assert.InDelta(t, 0.98279, v.Pan, 1e-4) // atan2(6, 4)
	assert.Empty(t, r.Sight.Of(0, 0), "mina herself is out of frame")
	in := r.Sight.In(0, 0, 0)
	in = append(in, r.Sight.In(1, 0, 0)...)
	require.Len(t, in, 1)
	assert.InDelta(t, 1, in[0].At(10).Visible, 1e-6)
	// 14 mm at 50 mm, the aspect taking 13.46 mm of it, is 1.94 m at 7.2 m: full of
	// 1.66 m, not waist.
	d := of(compiled(t, swapped("full", "waist")).Findings, "size-off")
	require.Len(t, d, 1)
	assert.Contains(t, d[0].Message, "A is to see mina in glass waist, and it is full")
	assert.Contains(t, d[0].Message, "1.9 m high at the reflection of mina, which is 7.2 m from the lens by way of glass")
}

// TestNotInGlass: a reflection is lost beyond the edges of the glass, across the wall
// it hangs on, behind who stands before the glass, and behind who stands between it
// and the subject.
func TestNotInGlass(t *testing.T) {
	for name, c := range map[string]struct{ text, says string }{
		"left of the lens's way":  {swapped("1.2 m to 2.8 m", "3 m to 4 m"), "the way to mina by glass misses the glass: 1 m to the left of it"},
		"right":                   {swapped("1.2 m to 2.8 m", "0 m to 1 m"), "the way to mina by glass misses the glass: 1 m to the right of it"},
		"too high":                {swapped("0.6 m to 2.4 m", "2.3 m to 2.9 m"), "misses the glass"},
		"the other side":          {swapped("at (4, 0)", "at (4, 6)"), "mina and A are on different sides of glass"},
		"before the glass":        {swapped("  mina stands", "  otto stands at (1, 1.5) for 4 s\n  mina stands"), "hidden behind otto; by way of glass, mina is 7.2 m away"},
		"beyond the glass":        {swapped("  mina stands", "  otto stands at (3, 1.5) for 4 s\n  mina stands"), "hidden behind otto; by way of glass, mina is 7.2 m away"},
		"a wall beyond the glass": {swapped("  mirror glass", "  wall screen (2.6, 1.5) (3.6, 1.5) high 2.6 m\n  mirror glass"), "hidden behind the wall screen; by way of glass, mina is 7.2 m away"},
	} {
		t.Run(name, func(t *testing.T) {
			d := of(compiled(t, c.text).Findings, "lost-subject")
			require.Len(t, d, 1)
			assert.Equal(t, diag.Error, d[0].Severity)
			assert.Contains(t, d[0].Message, "A never sees mina in glass")
			assert.Contains(t, d[0].Message, c.says)
			assert.Equal(t, "mina", d[0].Subject)
		})
	}
}

// TestGlassCutsHead: from a lens 1.5 m up at 3.606 m from the glass, half the way, the
// top of 1.66 m is seen through the glass at 1.58 m; a glass up to 1.5 m cuts it.
func TestGlassCutsHead(t *testing.T) {
	d := of(compiled(t, swapped("to 2.4 m", "to 1.5 m")).Findings, "head-cut")
	require.Len(t, d, 1)
	assert.Contains(t, d[0].Message, "the edge of glass cuts mina's head in A's frame")
	assert.Contains(t, d[0].Message, "80 mm above the glass")
	assert.Empty(t, of(compiled(t, swapped("to 2.4 m", "to 1.6 m")).Findings, "head-cut"))
}

// A camera that frames a mirror square on frames itself, and that is found.
func TestOwnReflection(t *testing.T) {
	r := compiled(t, swapped("at (4, 0)", "at (0.6, 0.8)", "1.2 m to", "0 m to"))
	d := of(r.Findings, "mirror-shows")
	require.NotEmpty(t, d)
	assert.Contains(t, d[0].Message, "A and ")
	assert.Contains(t, d[0].Message, "in the mirror glass, in A's frame")
}

// The look's tightest size holds in a mirror, too.
func TestTooTightInGlass(t *testing.T) {
	look := swapped("beat \"At", "look\n  never tighter than wide\nbeat \"At")
	d := of(compiled(t, look).Findings, "too-tight")
	require.Len(t, d, 1)
	assert.Contains(t, d[0].Message, "A frames mina in glass at full size")
}
