package overhead

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Two people by themselves would fill the paper at 1:20 and show no wall: a smaller
// scale does, unless the set is too far off.
func TestSomeOfTheSetIsOnTheDrawing(t *testing.T) {
	for wall, want := range map[string]string{
		"(0, 4) (5, 4)":     "1:25",
		"(0, 2.6) (5, 2.6)": "1:20",
		"(0, -7) (5, -7)":   "1:50",
		"(0, 90) (5, 90)":   "1:20",
	} {
		r := fromText(t, `take "t"
set "s"
  wall back `+wall+`
people
  performer ann
  performer bo
beat "b"
  ann stands at (1, 0)
  bo walks from (3, 0) to (3, 1)
`)
		for _, s := range Beat(r, r.Plan.Beats[0], Options{}) {
			assert.Contains(t, s.Desc, "Floor plan at "+want+",", wall)
		}
	}
}

// Two lines about what is elsewhere get no page of their own where they fit the list
// without their headings.
func TestTheListKeepsToItsPage(t *testing.T) {
	found := false
	for k := range 16 * 3 {
		n, spoken := k/3+1, strings.Repeat("word ", 1+k%3*8)
		text := "take \"t\"\nset \"s\"\n  wall back (0, 4) (5, 4)\n  mark far (90, 0)\npeople\n  performer ann\n  performer bo\nbeat \"a\"\n  bo stands at far\nbeat \"b\" for 60 s\n  ann walks from (0, 0) to (3, 0)\n"
		for i := range n {
			text += fmt.Sprintf("  ann says \"line %d\" starting +%d s\n", i, i+5)
		}
		text += "  ann says \"" + spoken + "\" starting +29 s\n"
		r := fromText(t, text)
		all := Beat(r, r.Plan.Beats[1], Options{Turn: Landscape})
		for _, s := range all[1:] { // whatever goes over is more than that
			assert.True(t, strings.Contains(s.Dump(), "says"), "%d lines", n)
		}
		for _, x := range all[0].Texts() {
			found = found || strings.HasPrefix(x.Text, "Off this drawing: bo ")
		}
	}
	assert.True(t, found, "somewhere the heading goes into the line")
}
