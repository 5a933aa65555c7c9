package check_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

// past has mina walk along y = 5 at 1.2 m/s behind a wall of a width, whose
// middle is right before the lens, half way to her.
func past(wall float64, more string) string {
	return fmt.Sprintf(`take "Past"
  rate 24 fps
set "Hall"
  wall screen (%g, 2.5) (%g, 2.5) high 2.6 m thick 10 mm
  mark M1 (-4, 5)
  mark M2 (4, 5)
kit
  camera A sensor 24.89 mm x 14 mm
  lens w28 28 mm stops T2 to T22
  rig legs sticks
people
  performer mina height 1.7 m
  performer otto height 1.8 m
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (0, 0)
  A on legs with ida up 1.5 m
  A takes w28 T4
  A sees mina
%s
`, -wall/2, wall/2, more)
}

func TestLostByLength(t *testing.T) {
	// Behind a wall of w half way to her she is more than 90 % hidden over
	// 2w less 0.8 of her 0.46 m: at 1.2 m/s that takes (2w - 0.37)/1.2 s.
	for _, c := range []struct {
		wall     float64
		severity diag.Severity
	}{{0.4, -1}, {0.7, diag.Warning}, {1.5, diag.Error}} {
		found := of(compiled(t, past(c.wall, "")).Findings, "lost-subject")
		if c.severity < 0 {
			assert.Empty(t, found, "%g m", c.wall)
			continue
		}
		require.Len(t, found, 1, "%g m", c.wall)
		d := found[0]
		assert.Equal(t, c.severity, d.Severity, d.Message)
		assert.Contains(t, d.Message, "A loses mina")
		assert.Contains(t, d.Message, "hidden behind the wall screen")
		assert.InDelta(t, (2*c.wall-0.37)/1.2*24, int(d.Frames[0].To-d.Frames[0].From)+1, 2)
		assert.Equal(t, "A sees mina", d.Span.Text())
	}
}

// A camera that looks where somebody is to come is not one that has lost them;
// one that never shows them is.
func TestWaitingIsNotLosing(t *testing.T) {
	r := compiled(t, `take "Waits"
  rate 24 fps
set "Hall"
  wall screen (-3, 2.5) (0.2, 2.5) high 2.6 m
  mark M1 (-2, 5)
  mark M2 (4, 5)
kit
  camera A sensor 24.89 mm x 14 mm
  lens w28 28 mm stops T2 to T22
  rig legs sticks
people
  performer mina height 1.7 m
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (0, 0)
  A on legs with ida up 1.5 m
  A takes w28 T4
  A sees mina
`)
	assert.Empty(t, worse(r.Findings))
	notes := of(r.Findings, "lost-subject")
	require.Len(t, notes, 1)
	assert.Equal(t, diag.Note, notes[0].Severity)
	assert.Contains(t, notes[0].Message, "A waits for mina")

	never := of(compiled(t, past(20, "")).Findings, "lost-subject")
	require.Len(t, never, 1)
	assert.Equal(t, diag.Error, never[0].Severity)
	assert.Contains(t, never[0].Message, "A never sees mina")
}

func TestOutOfFrame(t *testing.T) {
	// Two who walk apart: the lens stays between them, and at 8 m from each other
	// at 5 m neither is in a frame 5·24.89/28 = 4.4 m wide.
	r := compiled(t, past(0.01, `  otto walks from (0.5, 5) to (-7, 5) at 1.2 m/s
  A sees mina, otto`))
	found := of(r.Findings, "lost-subject")
	require.NotEmpty(t, found)
	var all string
	for _, d := range found {
		all += d.Message + "\n"
	}
	assert.Contains(t, all, "out of frame, to the left")
}
