package sheets

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/sight"
	"longhand/lang/units"
)

const (
	unseenCell  = 0.25 // m, side of a cell of the floor
	unseenCells = 800  // cells a side at the most: 200 m at the usual size
	unseenLeast = 1.0  // m², the smallest zone worth a row
	unseenMost  = 6    // rows
	standClear  = 0.5  // m, kept clear round somebody who stands out of sight
	standOff    = 1.5  // m, kept from the way of the lens itself: common practice, no source
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
	return "for a person of " + m.metres(sight.Standing) + " standing there, hidden by the set alone, within the bounds of the set and its marks; whoever waits there is still to be out of the way of what moves"
}

// standing is where somebody can stand out of sight in each beat, nearest to the
// rolling camera.
func (m *maker) standing() *Table {
	if m.stand == nil {
		m.stand = m.standingTable()
	}
	return m.stand
}

func (m *maker) standingTable() *Table {
	t := table("standing", "Where to stand or park out of sight", beatColumn(), clockColumns(), untilColumns("until"), col("camera", "near", "the rolling camera"), col("camera_at", "which is at", "in the middle of the beat"), col("where", "stand at", "nearest place out of sight"), measure("distance", "from the lens", "m", "over the floor"),
		measure("area", "of", "m²", "floor out of sight there, within "+m.metres(standNear)+" of the lens"), col("opens", "hidden since", "from when on all of that floor is out of sight"), col("closes", "till", "when some of it is seen again"))
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
			area, opens, closes := word(""), "", ""
			floor := m.floor(s, &lens)
			if cell, ok := nearest(floor, lens, m.lensPath(ct, s)); ok {
				at := floor.Middle(cell[0], cell[1])
				spot, far = word(m.spot(at)), m.length(units.Metres(at.Dist(lens)))
				if z, ok := zoneOf(floor, cell); ok {
					area, opens, closes = number(z.Area, 2, m.area(z.Area)), m.edge(z.Opens, "the start"), m.edge(z.Closes, "the end")
				}
			}
			t.add(nil, p.beatAt(s.From), m.clock(s.From), m.until(s.To), cells(word(ct.Camera.Name), word(m.spot(lens)), spot, far, area, word(opens), word(closes)))
		}
	}
	if len(t.Rows) > 0 {
		t.note(m.unseenNote())
	}
	return t
}

// lensPath is where a lens goes over a stretch, frame by frame, without what is
// nearly where it was.
func (m *maker) lensPath(ct *motion.CameraTrack, s clock.Span) []geom.Vec {
	const apart = 0.05 // m
	var out []geom.Vec
	for k := m.rate.From(s.From); m.rate.Time(k) < s.To; k++ {
		v := ct.At(m.rate.Time(k))
		if p := (geom.Vec{X: v.X, Y: v.Y}); len(out) == 0 || p.Dist(out[len(out)-1]) > apart {
			out = append(out, p)
		}
	}
	return out
}

// nearest is the free cell nearest to a place that is never seen, nor any cell
// within standClear of it, and that keeps standOff from a path.
func nearest(floor *sight.FloorMap, to geom.Vec, path []geom.Vec) (cell [2]int, ok bool) {
	if floor == nil {
		return cell, false
	}
	far := math.Inf(1)
	n := int(math.Ceil(standClear / floor.Cell))
	for row := n; row < floor.Rows-n; row++ {
		for column := n; column < floor.Columns-n; column++ {
			at := floor.Middle(column, row)
			if d := at.Dist(to); d < far-1e-9 && clearRound(floor, column, row, n) && farFrom(at, path) {
				cell, far = [2]int{column, row}, d
			}
		}
	}
	return cell, !math.IsInf(far, 1)
}

func farFrom(at geom.Vec, path []geom.Vec) bool {
	for _, p := range path {
		if p.Dist(at) < standOff {
			return false
		}
	}
	return true
}

// zoneOf is the connected floor out of sight that a cell belongs to.
func zoneOf(floor *sight.FloorMap, cell [2]int) (sight.Zone, bool) {
	for _, z := range floor.Zones(unseenLeast) {
		for _, c := range z.Cells {
			if c == cell {
				return z, true
			}
		}
	}
	return sight.Zone{}, false
}

// edge is the clock of a frame, or words for the take's first and last.
func (m *maker) edge(f units.Frame, end string) string {
	if f <= 0 || int(f) >= m.take.tracks.Frames-1 {
		return end
	}
	return m.rate.Time(f).Clock()
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
