package compile

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const coverage = `take "Coverage"
  rate 24 fps
set "Room"
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
pickup "Her face" after "Across"
  mina stands at M2
  mina says "Nobody."
  B on other with per at (6, -2.4)
  B takes w35 T8
  B sees mina
  gus stands at (6, -4)
`

func TestAPickupIsWorkedOutOnAClockOfItsOwn(t *testing.T) {
	r, err := Text(context.Background(), "a.take", coverage, Options{})
	require.NoError(t, err)
	require.False(t, r.Stopped, "%v", r.Findings)
	require.Len(t, r.Pickups, 1)
	u := r.Pickups[0]
	assert.InDelta(t, 0.5, float64(u.Tracks.Length()), 1e-6, "a word at 150 a minute, but half a second at least")
	for i, c := range u.Stage.Scene.Cameras {
		assert.Equal(t, u.Stage.Cameras[i].Name == "B", len(c.Rolls) > 0, "only the camera it names rolls")
	}
}

func TestWhatSpoilsAPickupIsFoundAndSaidToBeThere(t *testing.T) {
	spoilt := strings.Replace(coverage, "gus stands at (6, -4)", "gus stands at (6.5, 1.5)", 1)
	r, err := Text(context.Background(), "a.take", spoilt, Options{})
	require.NoError(t, err)
	found := ""
	for _, d := range r.Findings {
		if d.Code == "crew-in-shot" && d.Camera == "B" {
			found = d.Message
		}
	}
	assert.Contains(t, found, `in pickup "Her face", gus`)
	assert.Zero(t, func() (n int) {
		clean, err := Text(context.Background(), "a.take", coverage, Options{})
		require.NoError(t, err)
		return clean.Errors()
	}())
}

func TestAnExcuseInAPickupIsForThePickup(t *testing.T) {
	excused := strings.Replace(coverage, "gus stands at (6, -4)", "gus stands at (6.5, 1.5)\n  paint out gus from B because \"he holds the lamp\"", 1)
	r, err := Text(context.Background(), "a.take", excused, Options{})
	require.NoError(t, err)
	for _, d := range r.Findings {
		assert.NotContains(t, []string{"idle-allow", "crew-in-shot"}, string(d.Code), d.Message)
	}
}
