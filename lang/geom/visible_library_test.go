package geom

import (
	"encoding/json"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is seen of seeded random rooms with pillars, held to another program: npm
// visibility-polygon 1.1.0, run by testdata/visibility_rooms.cjs, which tells how
// to make the file anew.
func TestVisibleAgainstALibrary(t *testing.T) {
	data, err := os.ReadFile("testdata/visibility_rooms.json")
	require.NoError(t, err)
	var rooms []struct {
		Room    [][2]float64
		Pillars [][][2]float64
		Eye     [2]float64
		Area    float64
	}
	require.NoError(t, json.Unmarshal(data, &rooms))
	require.Len(t, rooms, 60)
	points := func(list [][2]float64) Polygon {
		var out Polygon
		for _, p := range list {
			out = append(out, Vec{p[0], p[1]})
		}
		return out
	}
	for i, r := range rooms {
		var edges []Segment
		for _, pillar := range r.Pillars {
			p := points(pillar)
			for k := range p {
				edges = append(edges, Segment{p[k], p[(k+1)%len(p)]})
			}
		}
		seen := NewWalls(points(r.Room), edges...).Visible(Vec{r.Eye[0], r.Eye[1]})
		assert.InDelta(t, r.Area, seen.Area(), 1e-4, "room %d", i)
	}
}
