package check_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

// found is the findings of one code.
func found(t *testing.T, text, code string) []diag.Diagnostic {
	t.Helper()
	r := compiled(t, text)
	require.False(t, r.Stopped, "%v\n%s", worse(r.Findings), text)
	var out []diag.Diagnostic
	for _, d := range r.Findings {
		if string(d.Code) == code {
			out = append(out, d)
		}
	}
	return out
}

// standing is a plan of one tripod and somebody who stands before it.
func standing(take, kit, look, beat string) string {
	return "take \"Numbers\"\n" + take + "set \"Hall\"\n  mark C1 (0, 0)\n  mark M1 (0, 3.1)\nkit\n" + kit +
		"  rig legs sticks\npeople\n  performer mina height 1.75 m\n  performer otto height 1.75 m\n  crew ida\n" + look + "beat \"One\"\n" + beat
}

const watched = `  legs stands at C1
  A on legs with ida
  A takes w T4
`

// TestTightest: waist is a frame of 0.76 m for 1.75 m, chest one of 0.52 m (body
// cut lines, common practice); the border is their geometric mean, 0.60 m after
// the operator's 5 %. Through 50 mm on 14 mm of sensor that is at 2.14 m (similar
// triangles).
func TestTightest(t *testing.T) {
	plan := func(y float64) string {
		return strings.Replace(standing("  rate 24 fps\n", "  camera A sensor 24.9 mm x 14 mm\n  lens w 50 mm stops T2 to T22\n", "look\n  never tighter than waist\n",
			watched+"  mina stands at M1 in 4 s\n  A sees mina\n"), "(0, 3.1)", fmt.Sprintf("(0, %.2f)", y), 1)
	}
	assert.Len(t, found(t, plan(2.0), "too-tight"), 1)
	assert.Empty(t, found(t, plan(2.3), "too-tight"))
	d := found(t, plan(2.0), "too-tight")[0]
	assert.Equal(t, diag.Error, d.Severity)
	assert.Equal(t, []diag.Frames{{From: 0, To: 95}}, d.Frames)
}

// TestNobodyFramedByAnArm: crew, people out of frame and people mostly hidden are
// in no shot of theirs.
func TestNobodyFramedByAnArm(t *testing.T) {
	plan := standing("  rate 24 fps\n", "  camera A sensor 24.9 mm x 14 mm\n  lens w 35 mm stops T2 to T22\n", "look\n  never tighter than knee\n",
		watched+"  mina stands at (0, 6) in 4 s\n  otto stands at (1.2, 0.5) in 4 s\n  A sees mina\n")
	assert.Empty(t, found(t, plan, "too-tight"))
	// In front of the lens otto is framed, though nobody looks at him; so tight that
	// his head alone fills the frame.
	plan = strings.Replace(plan, "(1.2, 0.5)", "(0.2, 1.2)", 1)
	assert.Len(t, found(t, plan, "too-tight"), 1)
}

// TestSoftBorder: DOF-8's lens, 50 mm at T2.8 on a sensor whose diagonal is
// 37.5 mm, so that the circle is 0.025 mm. Focused at 3 m it is sharp from 2.7711 m
// to 3.2701 m. The second of two counts from twice that blur: disc =
// (f²/N)·|x-s|/(x(s-f)), 0.05 mm at 3.5945 m. Faces are 0.1 m ahead of the body.
func TestSoftBorder(t *testing.T) {
	plan := func(y float64) string {
		p := standing("  rate 24 fps\n", "  camera A sensor 30 mm x 22.5 mm\n  lens w 50 mm stops T2 to T22\n", "",
			strings.Replace(watched, "T4", "T2.8", 1)+fmt.Sprintf("  mina stands at M1 in 4 s\n  otto stands at (0.6, %.2f) in 4 s\n  A sees mina, otto\n", y))
		return p
	}
	assert.Empty(t, found(t, plan(3.6), "soft"))
	got := found(t, plan(3.95), "soft")
	require.Len(t, got, 1)
	assert.Equal(t, "otto", got[0].Subject)
	assert.Contains(t, got[0].Message, "2.8 m to 3.3 m")
	assert.Contains(t, got[0].Notes[0], "circle 0.025 mm")
}

// TestSizeOff: more than one size off counts, one doesn't, and a passage is a note.
func TestSizeOff(t *testing.T) {
	plan := func(size, mina string) string {
		return standing("  rate 24 fps\n", "  camera A sensor 24.9 mm x 14 mm\n  lens w 50 mm stops T2 to T22\n", "",
			watched+"  "+mina+"\n  A sees mina "+size+"\n")
	}
	// 50 mm on 14 mm at 3 m: a frame 0.84 m high, between waist (0.76) and thigh (1.14).
	assert.Empty(t, found(t, plan("waist", "mina stands at M1 in 4 s"), "size-off"))
	assert.Empty(t, found(t, plan("chest", "mina stands at M1 in 4 s"), "size-off"))
	assert.Empty(t, found(t, plan("thigh", "mina stands at M1 in 4 s"), "size-off"))
	got := found(t, plan("face", "mina stands at M1 in 4 s"), "size-off")
	require.Len(t, got, 1)
	assert.Equal(t, diag.Warning, got[0].Severity)
	assert.Contains(t, got[0].Message, "waist, 3 sizes too loose")
	got = found(t, plan("waist", "mina walks from (0, 9) to M1 at 1.5 m/s\n  mina waits in 12 s"), "size-off")
	require.Len(t, got, 1)
	assert.Equal(t, diag.Note, got[0].Severity)
}

// TestPansAgainstTheTables: PAN-5, a gate of 24.89 mm and 35 mm at 24 fps bears
// 5.593°/s, 90° in 16.09 s at an even pace; PAN-2, a handbook's panning table: 22 mm,
// 75 mm, 60 fps bears 6°/s. Pans here are eased, so that they peak above the mean.
func TestPansAgainstTheTables(t *testing.T) {
	plan := func(fps, wide, focal, turn, in float64) string {
		return standing(fmt.Sprintf("  rate %g fps\n", fps), fmt.Sprintf("  camera A sensor %g mm x 16 mm\n  lens w %g mm stops T2 to T22\n", wide, focal), "",
			watched+fmt.Sprintf("  mina stands at M1 in %g s\n  A pans %g deg left in %g s\n", in+1, turn, in))
	}
	for _, row := range []struct{ fps, wide, focal, limit float64 }{
		{24, 24.89, 35, 5.593},
		{24, 24.89, 50, 3.993}, // PAN-4
		{60, 22, 75, 5.960},    // PAN-2: the table says 6
	} {
		even := 40 / row.limit
		assert.NotEmpty(t, found(t, plan(row.fps, row.wide, row.focal, 40, even*0.95), "strobe-pan"), "%+v", row)
		got := found(t, plan(row.fps, row.wide, row.focal, 40, even*1.05), "strobe-pan")
		require.NotEmpty(t, got, "eased, it peaks above the mean: %+v", row)
		assert.Empty(t, found(t, plan(row.fps, row.wide, row.focal, 40, even*2), "strobe-pan"), "%+v", row)
	}
}

// TestPansThatHoldSomebody: the background goes by as fast as it likes behind
// somebody who is followed.
func TestPansThatHoldSomebody(t *testing.T) {
	plan := standing("  rate 24 fps\n", "  camera A sensor 24.9 mm x 14 mm\n  lens w 35 mm stops T2 to T22\n", "look\n  pan at least 7 s a frame\n",
		watched+"  mina walks from (-6, 3) to (6, 3) at 1.2 m/s\n  A sees mina\n")
	assert.Empty(t, found(t, plan, "strobe-pan"))
	// From her to him, with nobody to go along with: by the look's limit a warning.
	plan = strings.Replace(plan, "  A sees mina\n", "  otto stands at (-8, -3)\n  A sees mina\n  A sees otto starting +6 s\n", 1)
	got := found(t, plan, "strobe-pan")
	require.Len(t, got, 1)
	assert.Equal(t, diag.Warning, got[0].Severity)
}

// TestPairs: at 2 m and 2.6 m the one is 1.3 times as big as the other.
func TestPairs(t *testing.T) {
	plan := func(a, b float64) string {
		return standing("  rate 24 fps\n", "  camera A sensor 24.9 mm x 14 mm\n  lens w 24 mm stops T2 to T22\n", "",
			watched+fmt.Sprintf("  mina stands at (-0.6, %g) in 4 s\n  otto stands at (0.6, %g) in 4 s\n  A sees mina, otto fifty-fifty\n", a, b))
	}
	assert.Empty(t, found(t, plan(2, 2), "uneven-pair"))
	assert.Empty(t, found(t, plan(2.2, 2.6), "uneven-pair"))
	assert.Len(t, found(t, plan(2, 2.8), "uneven-pair"), 1)
}

// TestRests: what a lens does while its camera rests is nobody's picture.
func TestRests(t *testing.T) {
	plan := standing("  rate 24 fps\n", "  camera A sensor 24.9 mm x 14 mm\n  lens z 24 mm to 70 mm stops T2.8 to T22\n", "look\n  never zoom\n",
		`  legs stands at C1
  A on legs with ida
  A takes z 24 mm T4
  A rolls
  mina stands at M1 in 12 s
  A sees mina
  A rests starting +4 s
  A takes z 50 mm T4 starting +5 s
  A rolls starting +8 s
`)
	assert.Empty(t, found(t, plan, "no-zoom"))
	assert.Len(t, found(t, strings.Replace(plan, "starting +5 s", "starting +3 s", 1), "no-zoom"), 1)
}
