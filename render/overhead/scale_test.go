package overhead

import (
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
