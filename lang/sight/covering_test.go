package sight_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/sight"
)

// A wall hides the left half of somebody, somebody nearer all of the rest below
// the chest.
func TestCoveringNamesWhatHidesABody(t *testing.T) {
	s := &sight.Scene{
		Frames: 1, Aspect: 16.0 / 9,
		Solids: []sight.Solid{{Name: "flat", Kind: "wall", Z: [2]float64{0, 3},
			Polygon: []geom.Vec{{X: 3, Y: 0}, {X: 3.1, Y: 0}, {X: 3.1, Y: 5}, {X: 3, Y: 5}}}},
		Bodies: []sight.Body{
			{Name: "mina", Kind: "performer", Of: "mina", Radius: 0.23, Track: []sight.Pose{{X: 6, Height: 1.6}}},
			{Name: "case", Kind: "rig", Of: "case", Radius: 0.6, Track: []sight.Pose{{X: 5, Y: -0.3, Height: 0.8}}},
		},
		Cameras: []sight.Camera{{Name: "A", Width: 24, Height: 13.5, Rolls: []sight.Frames{{From: 0, To: 0}},
			Track: []sight.View{{Z: 0.8, Focal: 24}}}},
	}
	r, err := sight.See(context.Background(), s, sight.Options{})
	require.NoError(t, err)
	by := r.Covering(0, 0, 0)
	require.Len(t, by, 2)
	assert.Equal(t, "flat", by[0].Name)
	assert.Equal(t, "wall", by[0].Kind)
	assert.InDelta(t, 0.5, by[0].Share, 0.02)
	assert.InDelta(t, 3, by[0].Distance, 0.02)
	assert.Equal(t, "case", by[1].Name)
	// It stands in front of what is below the lens: half of the other half.
	assert.InDelta(t, 0.25, by[1].Share, 0.02)
	m, ok := r.Moment(0, 0, 0)
	require.True(t, ok)
	assert.InDelta(t, 1-m.Visible, by[0].Share+by[1].Share, 0.02)
	assert.Empty(t, r.Covering(0, 1, 0)[1:])
}
