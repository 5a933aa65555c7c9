package check_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

// twoBeats has a cart in A's frame from frame 0 to 95, the second beat beginning
// at frame 48; line stands at the end of the second beat.
func twoBeats(line string) string {
	return fmt.Sprintf(`take "Two beats"
  rate 24 fps
set "Yard"
  wall fence (-8, 12) (8, 12) high 2.6 m
  mark M1 (0, 0)
kit
  camera A sensor 24.89 mm x 14 mm
  camera B sensor 24.89 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig vest body-rig carries 2 kg to 14 kg
  rig cart cart size 2 m x 1 m high 0.5 m
people
  performer mina height 1.7 m
  crew ida
  crew jon
beat "One" for 2 s
  mina stands at M1 for 2 s
  cart stands at (0, 8)
  legs stands at (0, -7)
  A on legs with ida up 1.2 m
  A takes w35 T4
  A sees mina
beat "Two" for 2 s
  mina stands at M1 for 2 s
  %s
`, line)
}

func TestPaintOutCoversFrames(t *testing.T) {
	plain := compiled(t, twoBeats(`note grip "nothing to do"`))
	require.Len(t, worse(plain.Findings), 1)
	assert.Equal(t, []diag.Frames{{From: 0, To: 95}}, of(plain.Findings, "gear-in-shot")[0].Frames)
	assert.Empty(t, plain.Accepted)

	all := compiled(t, twoBeats(`paint out cart from A because "black yard"`))
	assert.Empty(t, worse(all.Findings))
	require.Len(t, all.Accepted, 1)
	a := all.Accepted[0]
	assert.Equal(t, diag.Code("gear-in-shot"), a.Finding.Code)
	assert.Equal(t, []diag.Frames{{From: 0, To: 95}}, a.Finding.Frames)
	assert.Positive(t, float64(a.Finding.Share))
	assert.Greater(t, a.Finding.Box[2], a.Finding.Box[0])
	assert.Equal(t, "black yard", a.PaintOut.Because)
	assert.Nil(t, a.Allow)
	assert.False(t, a.Moves)
	require.NotEmpty(t, a.Behind)
	assert.Equal(t, "floor", a.Behind[0].Kind)

	half := compiled(t, twoBeats(`paint out cart from A during "One" because "black yard"`))
	require.Len(t, worse(half.Findings), 1)
	left := of(half.Findings, "gear-in-shot")[0]
	assert.Equal(t, []diag.Frames{{From: 48, To: 95}}, left.Frames)
	assert.Equal(t, "Two", left.Beat)
	assert.Contains(t, left.Message, "(frames 48–95)")
	require.Len(t, half.Accepted, 1)
	assert.Equal(t, []diag.Frames{{From: 0, To: 47}}, half.Accepted[0].Finding.Frames)
	assert.Contains(t, half.Accepted[0].Finding.Message, "(frames 0–47)")

	// The same by an allow, which names the code.
	allowed := compiled(t, twoBeats(`allow gear-in-shot cart in A during "Two" because "it is a prop"`))
	require.Len(t, worse(allowed.Findings), 1)
	assert.Equal(t, []diag.Frames{{From: 0, To: 47}}, of(allowed.Findings, "gear-in-shot")[0].Frames)
	require.Len(t, allowed.Accepted, 1)
	assert.NotNil(t, allowed.Accepted[0].Allow)
}

func TestIdleLinesAreReported(t *testing.T) {
	for _, line := range []string{
		`paint out jon from A because "nobody there"`,
		`paint out cart from B because "B sees nothing"`,
		`allow flare in A because "wanted"`,
		`allow gear-in-shot vest because "it is not there"`,
		`allow unknown-name because "no such thing"`,
	} {
		r := compiled(t, twoBeats(line))
		idle := of(r.Findings, "idle-allow")
		require.Len(t, idle, 1, line)
		assert.Equal(t, line, strings.TrimSpace(idle[0].Span.Text()))
		assert.Len(t, of(r.Findings, "gear-in-shot"), 1, line)
		assert.Empty(t, r.Accepted, line)
	}
	text := of(compiled(t, twoBeats(`allow unknown-name because "no such thing"`)).Findings, "idle-allow")[0]
	assert.Contains(t, strings.Join(text.Notes, "\n"), "cannot be allowed")
	near := of(compiled(t, twoBeats(`allow gear-in-shot vest because "it is not there"`)).Findings, "idle-allow")[0]
	assert.Contains(t, strings.Join(near.Notes, "\n"), "cart is in A's frame")
}

// A line that names a beat in which nothing is found says so, for that beat.
func TestABeatNamedForNothingIsReported(t *testing.T) {
	gone := strings.Replace(twoBeats(`paint out cart from A during "One", "Two" because "black yard"`), "beat \"Two\" for 2 s\n", "beat \"Two\" for 2 s\n  A sees (-20, -7)\n", 1)
	r := compiled(t, gone)
	require.Empty(t, of(r.Findings, "idle-allow"), "the pan away takes a part of the second beat")
	three := gone + "beat \"Three\" for 2 s\n  mina stands at M1 for 2 s\n"
	three = strings.Replace(three, `"One", "Two"`, `"One", "Two", "Three"`, 1)
	idle := of(compiled(t, three).Findings, "idle-allow")
	require.Len(t, idle, 1)
	assert.Contains(t, idle[0].Message, `during "Three"`)
}

// A camera's name takes whoever holds it and what it is on along.
func TestACameraIsPaintedOutWithItsPeople(t *testing.T) {
	with := `jon stands at (1.5, 5)
  B on vest with jon
  B takes w35 T4
  B rests
  paint out cart from A because "black yard"
  `
	plain := compiled(t, twoBeats(with))
	require.Len(t, worse(plain.Findings), 1)
	require.Len(t, of(plain.Findings, "camera-in-shot"), 1)

	all := compiled(t, twoBeats(with+`paint out B from A because "night"`))
	assert.Empty(t, worse(all.Findings))

	// Without jon the camera and its rig are left.
	one := compiled(t, twoBeats(with+`paint out jon from A because "night"`))
	require.Len(t, worse(one.Findings), 1)
	left := of(one.Findings, "camera-in-shot")
	require.Len(t, left, 1, worse(one.Findings))
	assert.Contains(t, left[0].Message, "B and vest are in A's frame")
	require.Len(t, one.Accepted, 2)
	assert.Equal(t, "jon", one.Accepted[1].Finding.Subject)
}

// What may be in frame may be painted out all the same.
func TestWhatMayBeSeenIsPaintedOut(t *testing.T) {
	for _, name := range []string{"mina", "fence"} {
		r := compiled(t, twoBeats("paint out "+name+` from A during "Two" because "for the version without"`))
		assert.Empty(t, of(r.Findings, "idle-allow"), name)
		require.Len(t, r.Accepted, 1, name)
		f := r.Accepted[0].Finding
		assert.Equal(t, []diag.Frames{{From: 48, To: 95}}, f.Frames, name)
		assert.Positive(t, float64(f.Share), name)
		assert.Equal(t, name, f.Subject)
	}
	idle := compiled(t, strings.Replace(twoBeats(`paint out fence from A because "not in frame"`), "(-8, 12) (8, 12)", "(-8, -12) (8, -12)", 1))
	assert.Len(t, of(idle.Findings, "idle-allow"), 1)
}

// Findings about time have no frames: they are matched by their line.
func TestAllowOfALine(t *testing.T) {
	text := `take "Late"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
people
  performer mina
  performer otto
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s by +6 s
  %s
`
	assert.Len(t, worse(compiled(t, fmt.Sprintf(text, `allow late otto because "no"`)).Findings), 2)
	for _, line := range []string{`allow late because "held by eye"`, `allow late mina because "held by eye"`, `allow late during "Across" because "held by eye"`} {
		r := compiled(t, fmt.Sprintf(text, line))
		assert.Empty(t, worse(r.Findings), line)
		assert.Len(t, r.Accepted, 1, line)
	}
}

// What is seen while the cuts have another picture is told apart.
func TestCutsAreMinded(t *testing.T) {
	with := `jon stands at (3, -7)
  B on vest with jon
  B takes w35 T4
  B sees mina
  cut to %s`
	for camera, noted := range map[string]bool{"A": false, "B starting 0:00": true} {
		r := compiled(t, twoBeats(fmt.Sprintf(with, camera)))
		found := of(r.Findings, "gear-in-shot")
		require.NotEmpty(t, found, camera)
		all := ""
		for _, d := range found {
			if d.Camera == "A" {
				all += strings.Join(d.Notes, "\n")
			}
		}
		assert.Equal(t, noted, strings.Contains(all, "the cuts have B's picture then"), "%s: %s", camera, all)
	}
}

// Whatever beats a paint out names, what it takes and what it leaves are the
// whole, and have no frame in common.
func TestPaintOutPartsFrames(t *testing.T) {
	titles := []string{"One", "Two", "Three", "Four"}
	base := twoBeats(`note grip "nothing to do"`)
	for _, title := range titles[2:] {
		base += "beat \"" + title + "\" for 2 s\n  mina stands at M1 for 2 s\n"
	}
	frames := func(list []diag.Frames, into map[int]int) {
		for _, r := range list {
			for f := r.From; f <= r.To; f++ {
				into[int(f)]++
			}
		}
	}
	whole := map[int]int{}
	frames(of(compiled(t, base).Findings, "gear-in-shot")[0].Frames, whole)
	for set := 1; set < 1<<len(titles); set++ {
		var named []string
		for i, title := range titles {
			if set>>i&1 == 1 {
				named = append(named, `"`+title+`"`)
			}
		}
		r := compiled(t, base+"  paint out cart from A during "+strings.Join(named, ", ")+" because \"black yard\"\n")
		assert.Empty(t, of(r.Findings, "idle-allow"), named)
		got := map[int]int{}
		for _, d := range of(r.Findings, "gear-in-shot") {
			frames(d.Frames, got)
		}
		left := len(got)
		for _, a := range r.Accepted {
			frames(a.Finding.Frames, got)
		}
		assert.Equal(t, whole, got, named)
		assert.Equal(t, len(whole)-48*len(named), left, named)
	}
}
