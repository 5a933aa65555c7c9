package solid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

func area(p []geom.Vec) float64 {
	a := 0.0
	for i, v := range p {
		a += v.Cross(p[(i+1)%len(p)])
	}
	return a / 2
}

func volume(pieces []Piece) float64 {
	v := 0.0
	for _, p := range pieces {
		v += area(p.Polygon) * (p.Z[1] - p.Z[0])
	}
	return v
}

func straight(length, high units.Metres) *plan.Wall {
	return &plan.Wall{Ident: plan.Ident{Name: "w"}, Line: []geom.Vec{{}, {X: float64(length)}}, High: plan.Range{High: high}, Thick: 0.2}
}

func TestOpeningsAreCutOutAndFilled(t *testing.T) {
	w := straight(10, 3)
	set := &plan.Set{Walls: []*plan.Wall{w},
		Doors:   []*plan.Door{{Ident: plan.Ident{Name: "d"}, On: plan.On{Wall: w, From: 2, To: 3}, High: plan.Range{High: 2}}},
		Windows: []*plan.Pane{{Ident: plan.Ident{Name: "p"}, On: plan.On{Wall: w, From: 5, To: 7}, High: plan.Range{Low: 1, High: 2}}},
		Holes:   []*plan.Hole{{Ident: plan.Ident{Name: "h"}, Wall: w, Along: 9, Up: 1.5, Wide: 0.1}},
	}
	pieces := Of(set)
	// 10 x 3 wall less a 2 x 1 window, 0.2 thick; the door and the plug fill
	// their own openings.
	assert.InDelta(t, (10*3-2*1)*0.2, volume(pieces), 1e-9)
	var door, plug int
	for _, p := range pieces {
		if p.Door != nil {
			door++
			assert.Equal(t, [2]float64{0, 2}, p.Z)
		}
		if p.Hole != nil {
			plug++
			assert.InDelta(t, 0.1*0.2, area(p.Polygon), 1e-9)
		}
	}
	assert.Equal(t, 1, door)
	assert.Equal(t, 1, plug)
}

func TestCornersAreMitredWithoutGapOrOverlap(t *testing.T) {
	// A closed square room, 4 m along the middle of its walls, 0.2 m thick:
	// 4.2 squared outside less 3.8 squared inside.
	w := &plan.Wall{Line: []geom.Vec{{}, {X: 4}, {X: 4, Y: 4}, {Y: 4}, {}}, High: plan.Range{High: 1}, Thick: 0.2}
	assert.InDelta(t, 4.2*4.2-3.8*3.8, volume(Of(&plan.Set{Walls: []*plan.Wall{w}})), 1e-9)
}

func TestRandomOpeningsConserveTheWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := straight(10, 3)
		set := &plan.Set{Walls: []*plan.Wall{w}}
		for i := range rapid.IntRange(0, 5).Draw(t, "doors") {
			from := units.Metres(rapid.Float64Range(-1, 10).Draw(t, "from"))
			set.Doors = append(set.Doors, &plan.Door{Ident: plan.Ident{Name: "d"},
				On:   plan.On{Wall: w, From: from, To: from + 0.5},
				High: plan.Range{High: units.Metres(1 + float64(i)*0.3)}})
		}
		solidVolume := 0.0
		for _, p := range Of(set) {
			require.GreaterOrEqual(t, area(p.Polygon), 0.0)
			if p.Door == nil {
				solidVolume += area(p.Polygon) * (p.Z[1] - p.Z[0])
			}
		}
		// Count by brute force what no door covers.
		const n = 400
		open := 0
		for i := range n {
			for j := range 60 {
				s, z := (float64(i)+0.5)*10/n, (float64(j)+0.5)*3/60
				for _, d := range set.Doors {
					if s > float64(d.From) && s < float64(d.To) && z < float64(d.High.High) {
						open++
						break
					}
				}
			}
		}
		want := 0.2 * (30 - float64(open)*30/(n*60))
		require.InDelta(t, want, solidVolume, 0.05)
	})
}

func TestFloors(t *testing.T) {
	set := &plan.Set{
		Platforms: []*plan.Platform{
			{Polygon: []geom.Vec{{X: 0}, {X: 4}, {X: 4, Y: 4}, {Y: 4}}, High: plan.Range{High: 0.6}},
			{Polygon: []geom.Vec{{X: 10}, {X: 14}, {X: 14, Y: 4}, {X: 10, Y: 4}}, High: plan.Range{Low: 2.8, High: 3}},
		},
		Stairs: []*plan.Stairs{{Foot: geom.Vec{X: 6, Y: 2}, Head: geom.Vec{X: 10, Y: 2}, Width: 1, Rise: 3}},
	}
	f := NewFloors(set)
	assert.Equal(t, 0.6, f.Stand(geom.Vec{X: 2, Y: 2}), "on a rostrum that stands on the floor")
	assert.Equal(t, 0.0, f.Stand(geom.Vec{X: 12, Y: 2}), "under a gallery")
	assert.Equal(t, 0.0, f.Under(geom.Vec{X: 12, Y: 2}, 0))
	assert.Equal(t, 3.0, f.Under(geom.Vec{X: 12, Y: 2}, 3))
	assert.InDelta(t, 1.5, f.Under(geom.Vec{X: 8, Y: 2}, 1.4), 1e-9, "half way up the stairs")
	z := 0.0
	for x := 5.0; x <= 12; x += 0.05 {
		z = f.Under(geom.Vec{X: x, Y: 2}, z)
	}
	assert.Equal(t, 3.0, z, "up the stairs and along the gallery")
}

func TestStairsAreSolidSteps(t *testing.T) {
	pieces := Of(&plan.Set{Stairs: []*plan.Stairs{{Foot: geom.Vec{}, Head: geom.Vec{X: 4}, Width: 1, Rise: 3.4}}})
	require.Len(t, pieces, 20)
	assert.InDelta(t, 3.4, pieces[19].Z[1], 1e-9)
	assert.InDelta(t, 4*1*3.4*21/40, volume(pieces), 1e-9, "n(n+1)/2 steps of rise/n each")
}

func TestPillarKeepsItsArea(t *testing.T) {
	p := Of(&plan.Set{Pillars: []*plan.Pillar{{Round: 0.6, High: plan.Range{High: 4}}}})
	assert.InDelta(t, math.Pi*0.09, area(p[0].Polygon), 1e-9)
}
