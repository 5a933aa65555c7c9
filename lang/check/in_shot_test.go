package check_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

// of is the findings of a code.
func of(found []diag.Diagnostic, code diag.Code) []diag.Diagnostic {
	var out []diag.Diagnostic
	for _, d := range found {
		if d.Code == code {
			out = append(out, d)
		}
	}
	return out
}

// yard is a camera on legs that looks straight up the paper along x = 0 at
// somebody who stands at (0, 0), and a cart that is parked.
func yard(cart string) string {
	return fmt.Sprintf(`take "The yard"
  rate 24 fps
set "Yard"
  wall shed (-8, 6) (-2.5, 6) high 2.6 m
  mark M1 (0, 0)
  mark park %s
kit
  camera A sensor 24.89 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig cart cart size 2 m x 1 m high 0.5 m
people
  performer mina height 1.7 m
  crew ida
beat "Standing"
  mina stands at M1 for 2 s
  cart stands at park
  legs stands at (0, -7)
  A on legs with ida up 1.2 m
  A takes w35 T4
  A sees mina
`, cart)
}

// Moving one mark brings the cart out from behind the shed: the finding names
// it, the camera, the frames, and how much of the frame it fills.
func TestOneMarkMovedShowsTheCart(t *testing.T) {
	assert.Empty(t, worse(compiled(t, yard("(-4, 8)")).Findings))

	r := compiled(t, yard("(0, 8)"))
	require.Len(t, worse(r.Findings), 1)
	d := of(r.Findings, "gear-in-shot")[0]
	assert.Equal(t, "cart", d.Subject)
	assert.Equal(t, "A", d.Camera)
	assert.Equal(t, []diag.Frames{{From: 0, To: 47}}, d.Frames)
	assert.Equal(t, "Standing", d.Beat)
	assert.Equal(t, "cart stands at park", d.Span.Text())
	assert.Contains(t, d.Message, "cart is in A's frame 0:00.0–0:02.0 (frames 0–47)")
	assert.Contains(t, d.Message, "15 m away")
	assert.Contains(t, d.Message, "middle third")
	assert.Contains(t, d.Message, "behind mina")
	// By similar triangles (x = f·X/Z): the cart's near face, 2 m ahead along x
	// and 0.5 m high, is 14.5 m off and the frame there 14.5·24.89/35 m wide and
	// as much less high as the sensor; mina, 0.46 m wide at 7 m, hides the middle
	// of it. The top face adds what 1 m of depth shows of it from 0.7 m above.
	frameWide, frameHigh := 14.5*24.89/35, 14.5*14/35
	near := 2 * 0.5 / (frameWide * frameHigh) * 100
	assert.Greater(t, float64(d.Share), near*0.4)
	assert.Less(t, float64(d.Share), near*1.1)
	assert.InDelta(t, 2/frameWide, d.Box[2]-d.Box[0], 0.01)
	assert.InDelta(t, 0.5, (d.Box[0]+d.Box[2])/2, 1e-6)
	require.NotEmpty(t, d.Related)
	assert.Equal(t, "A sees mina", d.Related[0].Span.Text())
	var notes []string
	notes = append(notes, d.Notes...)
	assert.Contains(t, strings.Join(notes, "\n"), "behind it: the ")
}

// slot is a wall with a slit, past which a rig is driven: the camera looks
// through the slit.
func slot(speed string) string {
	return `take "The slit"
  rate 24 fps
set "Yard"
  wall west (-90, 3) (-0.1, 3) high 4 m
  wall east (0.1, 3) (90, 3) high 4 m
  mark M1 (3, 0)
  mark W0 (-60, 8)
  mark W1 (60, 8)
kit
  camera A sensor 24.89 mm x 14 mm
  lens w75 75 mm stops T2 to T22
  rig legs sticks
  vehicle van 1.2 m x 1 m high 1.6 m gear
people
  performer mina height 1.7 m
  crew ida
beat "Standing"
  mina stands at M1 for 30 s
  van drives from W0 to W1 at ` + speed + `
  legs stands at (0, -7)
  A on legs with ida up 2.2 m
  A takes w75 T4
  A sees (0, 8)
`
}

// What shows for a frame or two through a slit is found; where the slit is
// closed it is not.
func TestOneFrameIsFound(t *testing.T) {
	open := compiled(t, slot("6 m/s"))
	found := of(open.Findings, "gear-in-shot")
	require.Len(t, found, 1, worse(open.Findings))
	frames := found[0].Frames
	require.Len(t, frames, 1)
	// The slit, 0.2 m wide and 10 m off, opens 15/10·0.2 m at 15 m, plus what its
	// 0.1 m of thickness takes; a van of 1.2 m at 6 m/s crosses that in about
	// (1.2+0.3)/6 s: 6 frames.
	assert.InDelta(t, 6, int(frames[0].To-frames[0].From)+1, 1)

	shut := strings.ReplaceAll(slot("6 m/s"), "(0.1, 3)", "(-0.1, 3)")
	assert.Empty(t, of(compiled(t, shut).Findings, "gear-in-shot"))

	// Narrow the slit and the van until one frame is left.
	thin := strings.ReplaceAll(strings.ReplaceAll(slot("9 m/s"), "(-0.1, 3)", "(-0.01, 3) "), "(0.1, 3)", "(0.01, 3)")
	thin = strings.ReplaceAll(thin, "1.2 m x 1 m high 1.6 m", "0.3 m x 0.3 m high 1.6 m")
	one := of(compiled(t, thin).Findings, "gear-in-shot")
	require.Len(t, one, 1)
	assert.Equal(t, one[0].Frames[0].From, one[0].Frames[0].To)
	assert.Contains(t, one[0].Message, "one frame)")
}

// Ten minutes, a camera that travels past one doorway, a second doorway behind
// it, and a trolley in the dark beyond: for one frame the three are in line.
func TestOneFrameInTenMinutes(t *testing.T) {
	text := `take "Two doorways"
  rate 24 fps
set "Corridors"
  wall near (-90, 3) (90, 3) high 4 m thick 20 mm
  door first on near 89.9 m to 90.1 m high 3 m open
  wall far (-90, 9) (90, 9) high 4 m thick 20 mm
  door second on far 90.98 m to 91.02 m high 3 m open
  mark S0 (-30, 0)
  mark S1 (30, 0)
kit
  camera A sensor 24.89 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig track dolly
  vehicle trolley 40 mm x 40 mm high 1.2 m gear
people
  crew ida
beat "Past"
  trolley stands at CART
  track moves from S0 to S1 at 2 m/s starting +5:00
  A on track with ida up 1.5 m at (0, 0)
  A takes w35 T4
  A pans 90 deg left
  ida stands until +10:00
`
	// The trolley, 40 mm wide, is in line with the middles of both doorways, 12 m behind
	// the far one, which is 40 mm wide too. On the camera's line, 9 m before that
	// doorway, by similar triangles, some of it shows over
	// 2·(20·(1 + 9/12) + 20·9/12) = 100 mm: at 2 m/s that is 1.2 frames.
	found := compiled(t, strings.Replace(text, "CART", "(3, 21)", 1))
	assert.Equal(t, 14401, found.Tracks.Frames)
	d := of(found.Findings, "gear-in-shot")
	require.Len(t, d, 1)
	require.Len(t, d[0].Frames, 1)
	assert.LessOrEqual(t, int(d[0].Frames[0].To-d[0].Frames[0].From), 1)
}

// An operator, what they wear and the camera on it are one finding, not three.
func TestACameraSeenIsOneFinding(t *testing.T) {
	text := `take "Two cameras"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
kit
  camera A sensor 24.89 mm x 14 mm
  camera B sensor 24.89 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig vest body-rig carries 2 kg to 14 kg
people
  performer mina height 1.7 m
  crew ida
  crew jon
beat "Standing"
  mina stands at M1 for 3 s
  legs stands at (0, -7)
  A on legs with ida up 1.2 m
  A takes w35 T4
  A sees mina
  jon stands at (1.5, 5)
  B on vest with jon
  B takes w35 T4
  B sees mina
  B rests
`
	r := compiled(t, text)
	got := worse(r.Findings)
	require.Len(t, got, 1, got)
	d := of(r.Findings, "camera-in-shot")[0]
	assert.True(t, strings.HasPrefix(d.Message, "jon and vest, with B, are in A's frame"), d.Message)
}

// Nothing that is found depends on how many look.
func TestFindingsRepeat(t *testing.T) {
	a, b := compiled(t, yard("(0, 8)")), compiled(t, yard("(0, 8)"))
	assert.Equal(t, worse(a.Findings), worse(b.Findings))
}

// A rig is its own camera's when the lens looks at it.
func TestAnOwnDeckIsGear(t *testing.T) {
	text := `take "Over the edge"
  rate 24 fps
set "Yard"
  mark M1 (3, 0, 0)
kit
  camera A sensor 24.89 mm x 14 mm
  lens w18 18 mm stops T2 to T22
  rig cart cart size 2.4 m x 1.2 m high 0.5 m
people
  performer mina height 1.7 m
  crew ida
beat "Standing"
  mina stands at M1 for 2 s
  mina crouches
  cart stands at (0, 0)
  A on cart with ida up 1.7 m at (%s, 0)
  A takes w18 T4
  A sees M1
`
	found := of(compiled(t, fmt.Sprintf(text, "-0.6")).Findings, "gear-in-shot")
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, "cart is in A's frame")
	assert.Contains(t, strings.Join(found[0].Notes, "\n"), "A is on it")
	assert.Empty(t, of(compiled(t, fmt.Sprintf(text, "1")).Findings, "gear-in-shot"))
}
