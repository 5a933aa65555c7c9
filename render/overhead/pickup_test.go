package overhead

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/render/scene"
)

const covered = `take "Covered"
  rate 24 fps
  place 56.05 N 12.69 E
  date 2026-08-20 zone +02:00
  roll in civil-dusk
set "Room"
  wall back (0, 4) (8, 4)
  mark M1 (0, 0)
  mark M2 (6, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
  rig other sticks
people
  performer mina
  crew ida
  crew per
  crew gus
beat "Across"
  mina walks from M1 to M2
  A on legs with ida at (3, -9)
  A takes w35 T8
  A sees mina
pickup "Her face" after "Across" roll in golden-evening
  mina stands at M2
  mina walks to M1 at 1 m/s starting +1 s
  mina says "Nobody." starting +2 s
  B on other with per at (6, -2.4)
  B takes w35 T8
  B sees mina
  gus stands at (6.5, 1.5)
`

// A pickup is drawn from its own lines, on its own clock; what is found in it is on
// its drawing and on no other.
func TestAPickupHasADrawingOfItsOwn(t *testing.T) {
	r := fromText(t, covered)
	require.Len(t, r.Pickups, 1)
	all := func(sheets []*scene.Sheet) (out []string) {
		for _, s := range sheets {
			assertReads(t, s, s.Title)
			for _, x := range s.Texts() {
				out = append(out, x.Text)
			}
		}
		return out
	}
	own := all(Pickup(r, r.Pickups[0], Options{}))
	assert.Contains(t, own, "Her face")
	assert.Contains(t, own, "pickup, on a clock of its own")
	assert.Contains(t, own, "0:02.0  f 48")
	assert.Contains(t, own, "2 s into the pickup")
	assert.Contains(t, own, "mina walks to M1 at 1 m/s")
	assert.NotContains(t, own, "mina walks from M1 to M2")
	assert.True(t, has(own, "gus is in B's frame"), "%q", own)
	assert.True(t, has(own, "golden evening"), "its own window of light")
	for _, other := range [][]*scene.Sheet{Take(r, Options{}), Beat(r, r.Plan.Beats[0], Options{})} {
		texts := all(other)
		assert.False(t, has(texts, "gus is in"), "%q", texts)
		assert.False(t, has(texts, "pickup"), "%q", texts)
	}
}

func has(texts []string, part string) bool {
	for _, s := range texts {
		if strings.Contains(s, part) {
			return true
		}
	}
	return false
}
