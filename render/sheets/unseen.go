package sheets

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/lang/units"
)

const (
	unseenCell  = 0.25 // m, side of a cell of the floor
	unseenCells = 800  // cells a side at the most: 200 m at the usual size
	unseenLeast = 1.0  // m², the smallest zone worth a row
	unseenMost  = 6    // rows
	standClear  = 0.5  // m, kept clear round somebody who stands out of sight
	standNear   = 20.0 // m either way from the lens, within which a place is looked for
)

// unseen is the floor on which nobody standing is seen by a rolling camera at any
// frame of the take, the largest zones first.
func (m *maker) unseen() *Table {
	t := table("unseen", "Floor no lens sees", col("where", "around", "the middle of its roomiest part"), measure("room", "clear round it", "m", "from there to the zone's nearest edge"),
		measure("area", "area", "m²", "of the zone"), measure("left", "from x", "m", "least x of the zone"), measure("right", "to x", "m", "greatest x"), measure("low", "from y", "m", "least y"), measure("high", "to y", "m", "greatest y"))
	t.Empty = "No camera rolls in this take, so none sees the floor."
	if !m.rolls() {
		return t
	}
	t.Empty = "There is no floor of " + m.area(unseenLeast) + " or more that is out of sight for all of the take."
	if m.zones == nil {
		if floor := m.floor(clock.Span{To: m.take.clock.Length + 1}, nil); floor != nil {
			m.zones = floor.Zones(unseenLeast)
		}
	}
	for i, z := range m.zones {
		if i == unseenMost {
			break
		}
		t.add(nil, cells(word(m.spot(z.Roomiest)), m.length(units.Metres(z.Room)), number(z.Area, 2, m.area(z.Area)), m.signed(z.Min.X), m.signed(z.Max.X), m.signed(z.Min.Y), m.signed(z.Max.Y)))
	}
	t.note(m.unseenNote())
	return t
}

func (m *maker) unseenNote() string {
	return "for a person of " + m.metres(sight.Standing) + " standing there, hidden by the set alone, within the bounds of the set and its marks; whoever lies in wait there is still to be out of the way of what moves"
}

// standing is where somebody can stand out of sight in each beat, nearest to the
// rolling camera.
func (m *maker) standing() *Table {
	t := table("standing", "Where to stand out of sight", beatColumn(), clockColumns(), untilColumns("until"), col("camera", "near", "the rolling camera"), col("camera_at", "which is at", "in the middle of the beat"), col("where", "stand at", "nearest place out of sight"), measure("distance", "from the lens", "m", "over the floor"))
	t.Empty = "No camera rolls in this take, so there is nothing to stay out of."
	p := m.take
	for _, s := range p.spans() {
		mid := (s.From + s.To) / 2
		for _, ct := range p.cameras() {
			if s.To <= s.From || !ct.Rolling(mid) || ct.Hold(mid) != nil && ct.Hold(mid).Hide != nil {
				continue
			}
			v := ct.At(mid)
			lens := geom.Vec{X: v.X, Y: v.Y}
			spot, far := word("nowhere within "+m.metres(standNear)+" either way"), word("")
			if at, ok := nearest(m.floor(s, &lens), lens); ok {
				spot, far = word(m.spot(at)), m.length(units.Metres(at.Dist(lens)))
			}
			t.add(nil, p.beatAt(s.From), m.clock(s.From), m.until(s.To), cells(word(ct.Camera.Name), word(m.spot(lens)), spot, far))
		}
	}
	if len(t.Rows) > 0 {
		t.note(m.unseenNote())
	}
	return t
}

// nearest is the free cell nearest to a place that is never seen, nor any cell
// within standClear of it.
func nearest(floor *sight.FloorMap, to geom.Vec) (geom.Vec, bool) {
	if floor == nil {
		return geom.Vec{}, false
	}
	var best geom.Vec
	far := math.Inf(1)
	n := int(math.Ceil(standClear / floor.Cell))
	for row := n; row < floor.Rows-n; row++ {
		for column := n; column < floor.Columns-n; column++ {
			at := floor.Middle(column, row)
			if d := at.Dist(to); d < far-1e-9 && d > standClear && clearRound(floor, column, row, n) {
				best, far = at, d
			}
		}
	}
	return best, !math.IsInf(far, 1)
}

func clearRound(floor *sight.FloorMap, column, row, n int) bool {
	for dy := -n; dy <= n; dy++ {
		for dx := -n; dx <= n; dx++ {
			if !floor.Never(column+dx, row+dy) {
				return false
			}
		}
	}
	return true
}

func (m *maker) rolls() bool {
	for _, c := range m.r.Stage.Scene.Cameras {
		if len(c.Rolls) > 0 {
			return true
		}
	}
	return false
}

// floor is what no rolling camera sees over a stretch, near a place or everywhere;
// nil where there is no floor or no frame to speak of.
func (m *maker) floor(s clock.Span, round *geom.Vec) *sight.FloorMap {
	first, last := m.rate.From(s.From), units.Frame(m.take.tracks.Frames-1)
	if f := m.rate.From(s.To) - 1; f < last {
		last = f
	}
	bounds, ok := m.bounds()
	if last < first || !ok {
		return nil
	}
	if round != nil {
		bounds[0] = geom.Vec{X: math.Max(bounds[0].X, round.X-standNear), Y: math.Max(bounds[0].Y, round.Y-standNear)}
		bounds[1] = geom.Vec{X: math.Min(bounds[1].X, round.X+standNear), Y: math.Min(bounds[1].Y, round.Y+standNear)}
		if bounds[0].X >= bounds[1].X || bounds[0].Y >= bounds[1].Y {
			return nil
		}
	}
	// A plan may span more than any set: its floor is looked at more coarsely.
	size := bounds[1].Sub(bounds[0])
	cell := math.Max(unseenCell, math.Max(size.X, size.Y)/unseenCells)
	floor, err := sight.Floor(m.ctx, m.r.Stage.Scene, sight.FloorOptions{Cell: cell, Height: sight.Standing, Frames: []sight.Frames{{From: first, To: last}}, Bounds: bounds})
	if err != nil {
		return nil // only a context that ended, which Breakdown reports
	}
	return floor
}

// bounds is the floor that is asked about: what the set and its marks span, and a
// little more.
func (m *maker) bounds() ([2]geom.Vec, bool) {
	var all []geom.Vec
	for _, s := range m.r.Stage.Scene.Solids {
		all = append(all, s.Polygon...)
	}
	for _, k := range m.p.Set.Marks {
		all = append(all, k.Point)
	}
	for _, tr := range m.take.tracks.Bodies {
		all = append(all, tr.At(0).Point(), tr.At(m.take.clock.Length).Point())
	}
	if len(all) == 0 {
		return [2]geom.Vec{}, false
	}
	low, high := geom.Bounds(all)
	const round = 2.0
	low = geom.Vec{X: math.Floor(low.X - round), Y: math.Floor(low.Y - round)}
	high = geom.Vec{X: math.Ceil(high.X + round), Y: math.Ceil(high.Y + round)}
	return [2]geom.Vec{low, high}, true
}

// area prints an area in the plan's unit.
func (m *maker) area(v float64) string {
	if m.sys == units.Feet {
		return units.Number(v/float64(units.Foot*units.Foot), 0) + " ft²"
	}
	return units.Number(v, 1) + " m²"
}
