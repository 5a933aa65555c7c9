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
	unseenLeast = 1.0  // m², the smallest zone worth a row
	unseenMost  = 6    // rows for the take; for a beat, unseenBeat
	unseenBeat  = 2
)

// unseen is the floor on which nobody standing is seen by a rolling camera: of
// the take, and, where beats are asked for, of each beat.
func (m *maker) unseen(beats bool) *Table {
	t := table("unseen", "Floor no lens sees", beatColumn(), col("where", "around", "the middle of its roomiest part"), measure("room", "clear round it", "m", "from there to the zone's nearest edge"),
		measure("area", "area", "m²", "of the zone"), measure("left", "from x", "m", "least x of the zone"), measure("right", "to x", "m", "greatest x"), measure("low", "from y", "m", "least y"), measure("high", "to y", "m", "greatest y"),
		clockColumns(), untilColumns("until"))
	t.Columns[t.Column("clock")].Title = "unseen from"
	t.Empty = "No camera rolls in this take, so none sees the floor."
	if !m.rolls() {
		return t
	}
	t.Empty = "There is no such floor of " + m.area(unseenLeast) + " or more."
	m.zones(t, clock.Span{To: m.take.clock.Length + 1}, "all of the take", unseenMost)
	if beats && len(m.take.clock.Spans()) > 1 {
		for _, s := range m.take.clock.Spans() {
			if s.Beat != nil && s.To > s.From {
				m.zones(t, s, beatName(s.Beat), unseenBeat)
			}
		}
	}
	t.note("for a person of " + m.metres(sight.Standing) + " standing there, hidden by the set alone, within the bounds of the set and its marks; the floor at " + m.metres(0))
	return t
}

func (m *maker) rolls() bool {
	for _, c := range m.r.Stage.Scene.Cameras {
		if len(c.Rolls) > 0 {
			return true
		}
	}
	return false
}

func (m *maker) zones(t *Table, s clock.Span, title string, most int) {
	first, last := m.rate.From(s.From), units.Frame(m.take.tracks.Frames-1)
	if f := m.rate.From(s.To) - 1; f < last {
		last = f
	}
	if last < first {
		return
	}
	bounds, ok := m.bounds()
	if !ok {
		return
	}
	floor, err := sight.Floor(m.ctx, m.r.Stage.Scene, sight.FloorOptions{Cell: unseenCell, Height: sight.Standing, Frames: []sight.Frames{{From: first, To: last}}, Bounds: bounds})
	if err != nil {
		return
	}
	for i, z := range floor.Zones(unseenLeast) {
		if i == most {
			break
		}
		from, to := m.frameClock(z.Opens), m.until(m.rate.Time(z.Closes))
		if int(z.Opens) <= 0 {
			from[0].Text = "the start"
		}
		if int(z.Closes) >= m.take.tracks.Frames-1 {
			to[0].Text = "the end"
		}
		t.add(nil, cells(word(title), word(m.spot(z.Roomiest)), m.length(units.Metres(z.Room)), number(z.Area, 2, m.area(z.Area)),
			m.signed(z.Min.X), m.signed(z.Max.X), m.signed(z.Min.Y), m.signed(z.Max.Y)), from, to)
	}
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
