package check_test

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

// hole is a lens hole at (4, 8) in a wall along the paper, looked through
// straight down the paper.
func hole(wide, stop, kit, lines string) string {
	return fmt.Sprintf(`take "The hole"
  rate 24 fps
set "Hall"
  wall racks (0, 8) (8, 8) high 3 m thick 20 mm
  hole pigeon on racks at 4 m up 1.45 m wide %s
  mark M1 (4, 1, 1.45)
kit
  camera B sensor 24.89 mm x 18.66 mm
  camera A sensor 24.89 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  card grey 0.4 m x 0.3 m
%s
people
  performer mina height 1.7 m
  performer otto height 1.8 m
  crew ida
beat "Through"  for 4 s
  B hides behind pigeon
  B takes w35 %s
  B sees M1
%s
`, wide, kit, stop, lines)
}

var needs = regexp.MustCompile(`the lens needs ([0-9.]+) mm`)

// The least hole by similar triangles, f/N + 2z·(w/2)/f: for f 35, T2.8, a frame
// of 24.89 x 18.66 and the far face 50 mm from the opening that is
// 12.5 + 50·24.89/35 = 48.057 mm (worked by hand).
func TestLeastHole(t *testing.T) {
	r := compiled(t, hole("40 mm", "T2.8", "", ""))
	found := of(r.Findings, "hole-vignettes")
	require.Len(t, found, 1)
	assert.Equal(t, diag.Error, found[0].Severity)
	m := needs.FindStringSubmatch(found[0].Message)
	require.NotNil(t, m, found[0].Message)
	least, err := strconv.ParseFloat(m[1], 64)
	require.NoError(t, err)
	assert.InDelta(t, 12.5+50*24.89/35, least, 0.051)
	require.Len(t, found[0].Fixes, 1)
	assert.Equal(t, "54 mm", found[0].Fixes[0].Edits[0].Text)

	tight := of(compiled(t, hole("50 mm", "T2.8", "", "")).Findings, "hole-vignettes")
	require.Len(t, tight, 1)
	assert.Equal(t, diag.Warning, tight[0].Severity)
	assert.Empty(t, of(compiled(t, hole("54 mm", "T2.8", "", "")).Findings, "hole-vignettes"))
	// Stopped down, the opening is smaller: 35/8 + 50·24.89/35 = 39.93 mm.
	assert.Empty(t, of(compiled(t, hole("45 mm", "T8", "", "")).Findings, "hole-vignettes"))
	// No stop in the plan: T2.8 is taken, and it is said so.
	guess := hole("40 mm", "", "", "")
	guess = strings.Replace(guess, " stops T2 to T22", "", 1)
	g := of(compiled(t, guess).Findings, "hole-vignettes")
	require.Len(t, g, 1)
	assert.Contains(t, strings.Join(g[0].Notes, "\n"), "the plan gives no stop")
}

// A looks at the hole from a distance, past otto who stands before it and walks
// away.
func seenFrom(y float64, card string) string {
	lines := fmt.Sprintf(`  otto stands at (4, 7.2)
  otto walks to (1, 7.2) at 1.2 m/s starting +1 s
  legs stands at (4, %g)
  A on legs with ida up 1.5 m
  A takes w35 T4
  A sees (4, 8)
  B rests`, y)
	return strings.Replace(hole("60 mm", "T4", "", lines), "hides behind pigeon", "hides behind pigeon"+card, 1)
}

func TestHoleFoundOut(t *testing.T) {
	r := compiled(t, seenFrom(1, ""))
	found := of(r.Findings, "hide-seen")
	require.Len(t, found, 1)
	d := found[0]
	assert.Contains(t, d.Message, "A sees the hole pigeon, where B hides")
	assert.Contains(t, d.Message, "7 m away, without a card; otto hides it until")
	assert.Equal(t, "A", d.Camera)
	// otto has to get 0.23 m and the hole's half, as seen from A, out of the line:
	// he sets out at 1 s.
	assert.Greater(t, int(d.Frames[0].From), 24)
	assert.Less(t, int(d.Frames[0].From), 24+20)
	var related []string
	for _, x := range d.Related {
		related = append(related, x.Message)
	}
	assert.Contains(t, strings.Join(related, "\n"), "until then otto hides it")
	// A hole of 60 mm at 7 m: 0.06² of a frame 7·24.89/35 wide and 7·14/35 high.
	assert.InDelta(t, 100*0.06*0.06/(7*24.89/35*7*14/35), float64(d.Share), 0.01)

	assert.Empty(t, of(compiled(t, seenFrom(1, " card grey")).Findings, "hide-seen"), "a card is enough from 4 m on")
	near := of(compiled(t, seenFrom(5, " card grey")).Findings, "hide-seen")
	require.Len(t, near, 1)
	assert.Contains(t, near[0].Message, "its card grey does from 4 m on")
}

// Whoever passes close by for a moment does not block the hole; whoever stays
// does; who is named as seen never does.
func TestHoleBlocked(t *testing.T) {
	passes := `  otto walks from (0, 7.6) to (8, 7.6) at 1.6 m/s`
	assert.Empty(t, of(compiled(t, hole("60 mm", "T4", "", passes)).Findings, "hole-blocked"))
	stays := `  otto stands at (4, 7.6)`
	d := of(compiled(t, hole("60 mm", "T4", "", stays)).Findings, "hole-blocked")
	require.Len(t, d, 1)
	assert.Contains(t, d[0].Message, "otto is right in front of it")
	meant := strings.Replace(hole("60 mm", "T4", "", stays), "B sees M1", "B sees otto", 1)
	assert.Empty(t, of(compiled(t, meant).Findings, "hole-blocked"))
	door := strings.Replace(hole("60 mm", "T4", "", ""), "  mark M1", "  block crate (3, 7) (5, 7) (5, 7.7) (3, 7.7) high 2 m\n  mark M1", 1)
	d = of(compiled(t, door).Findings, "hole-blocked")
	require.Len(t, d, 1)
	assert.Contains(t, d[0].Message, "the block crate is right in front of it")
}
