package check

import (
	"math"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
)

// A refuge is looked for on cells of refugeCell, up to refugeReach away, metres.
const (
	refugeCell  = 0.25
	refugeReach = 8.0
)

// refuge is the nearest floor, to where a thing stands still over a stretch of
// frames, that no camera looks at in that stretch, with room for all of it; in
// words, "" where there is none.
func (p *Pass) refuge(thing plan.Thing, over diag.Frames) string {
	track := p.Tracks.Body(thing)
	if track == nil {
		return ""
	}
	here := track.At(p.Tracks.Rate.Time(over.From)).Point()
	if here.Dist(track.At(p.Tracks.Rate.Time(over.To)).Point()) > 0.01 {
		return "" // it is on its way: where it goes through is another matter
	}
	high, room := 0.0, 0.0
	for _, i := range p.Stage.Body(thing) {
		b := &p.Stage.Scene.Bodies[i]
		pose := b.At(over.From)
		reach := b.Radius
		for _, v := range b.Polygon {
			reach = math.Max(reach, v.Len())
		}
		high = math.Max(high, pose.Z+pose.Height)
		room = math.Max(room, reach+here.Dist(geom.Vec{X: pose.X, Y: pose.Y}))
	}
	room += refugeCell / 2 // cells are told by their middles
	reach := geom.Vec{X: refugeReach, Y: refugeReach}
	m, err := sight.Floor(p.Ctx, p.Stage.Scene, sight.FloorOptions{
		Cell: refugeCell, Height: high, Frames: []sight.Frames{{From: over.From, To: over.To}},
		Bounds: [2]geom.Vec{here.Sub(reach), here.Add(reach)},
	})
	if err != nil {
		return "" // cancelled
	}
	best, found := geom.Vec{}, false
	for row := range m.Rows {
		for column := range m.Columns {
			c := m.Middle(column, row)
			if d := c.Dist(here); d <= refugeReach && (!found || d < best.Dist(here)) && free(m, column, row, room) {
				best, found = c, true
			}
		}
	}
	if !found {
		return ""
	}
	at := p.floorPlace(best)
	return p.away(best.Dist(here)) + " from where it is, " + at
}

// free says whether all the floor within a distance of a cell is never seen and
// free.
func free(m *sight.FloorMap, column, row int, room float64) bool {
	n := int(math.Ceil(room / m.Cell))
	for r := row - n; r <= row+n; r++ {
		for c := column - n; c <= column+n; c++ {
			if math.Hypot(float64(c-column), float64(r-row))*m.Cell > room {
				continue
			}
			if r < 0 || c < 0 || r >= m.Rows || c >= m.Columns || !m.Never(c, r) {
				return false
			}
		}
	}
	return true
}
