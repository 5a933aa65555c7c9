package overhead

import (
	"sort"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// material is everything that drawings are made from.
type material struct {
	plan     *plan.Plan
	pickup   *plan.Pickup // that is drawn; nil for the take
	tracks   *motion.Tracks
	pieces   []solid.Piece
	findings []diag.Diagnostic
	report   *sight.Report // nil where sight was not worked out
	scene    *sight.Scene  // likewise
	things   []plan.Thing  // of scene.Bodies
	cameras  []*plan.Camera
	marks    map[plan.Thing]string // the letter or two in each body's sign
}

// span is a stretch of the take.
type span struct{ from, to units.Seconds }

func (s span) holds(t units.Seconds) bool { return t >= s.from && t <= s.to }

func (s span) meets(from, to units.Seconds) bool { return from <= s.to && to >= s.from }

// spanOf is what a beat occupies; one that another beat overtakes at once keeps
// its own length.
func (m *material) spanOf(b *plan.Beat) span {
	for _, s := range m.tracks.Clock.Spans() {
		if s.Beat == b && s.To > s.From {
			return span{s.From, s.To}
		}
	}
	if b.Index < len(m.tracks.Clock.Beats) {
		i := m.tracks.Clock.Beats[b.Index]
		return span{i.Start, max(i.Start, i.End)}
	}
	return span{}
}

// order is the number of a beat in order of time, from 1.
func (m *material) order(b *plan.Beat) int {
	for i, s := range m.tracks.Clock.Spans() {
		if s.Beat == b {
			return i + 1
		}
	}
	return b.Index + 1
}

// lastOf is the last moment of a stretch at which things are as in it.
func (m *material) lastOf(s span) units.Seconds {
	return max(s.from, s.to-units.Seconds(1e-6))
}

// position is where a thing of the plan is at a time.
func (m *material) position(t plan.Thing, at units.Seconds) (geom.Vec, bool) {
	switch v := t.(type) {
	case nil:
		return geom.Vec{}, false
	case *plan.Camera:
		if c := m.tracks.Camera(v); c != nil {
			p := c.At(at)
			return geom.Vec{X: p.X, Y: p.Y}, true
		}
	case *plan.Person, *plan.Vehicle, *plan.Rig:
		if b := m.tracks.Body(v); b != nil {
			return b.At(at).Point(), true
		}
		if rig, ok := t.(*plan.Rig); ok {
			for _, c := range m.tracks.Cameras {
				if c.Rig(at) == rig {
					p := c.At(at)
					return geom.Vec{X: p.X, Y: p.Y}, true
				}
			}
		}
	case *plan.Door:
		return middle(v.On)
	case *plan.Pane:
		return middle(v.On)
	case *plan.Mirror:
		return middle(v.On)
	case *plan.Glow:
		return middle(v.On)
	case *plan.Hole:
		return middle(plan.On{Wall: v.Wall, From: v.Along, To: v.Along})
	case *plan.Wall:
		if len(v.Line) > 0 {
			return middle(plan.On{Wall: v, To: units.Metres(length(v.Line))})
		}
	case *plan.Mark:
		return v.Point, true
	case *plan.Pillar:
		return v.Centre, true
	case *plan.Block:
		return geom.Polygon(v.Polygon).Centroid(), len(v.Polygon) > 2
	case *plan.Platform:
		return geom.Polygon(v.Polygon).Centroid(), len(v.Polygon) > 2
	case *plan.Stairs:
		return v.Foot.Lerp(v.Head, 0.5), true
	case *plan.Grid:
		return geom.Polygon(v.Polygon).Centroid(), len(v.Polygon) > 2
	case *plan.Wash:
		if v.Grid != nil {
			return m.position(v.Grid, at)
		}
	case *plan.Lamp:
		for _, p := range m.plan.Set.Placed {
			if p.Lamp == v {
				return p.At.Point, true
			}
		}
	}
	return geom.Vec{}, false
}

func middle(o plan.On) (geom.Vec, bool) {
	if o.Wall == nil || len(o.Wall.Line) == 0 {
		return geom.Vec{}, false
	}
	at, _ := o.Middle()
	return at, true
}

func length(line []geom.Vec) float64 {
	sum := 0.0
	for i := 1; i < len(line); i++ {
		sum += line[i-1].Dist(line[i])
	}
	return sum
}

// open is whether a door stands open at a time. One that is opening has left its
// opening; one that is shutting stands in it when it is shut.
func (m *material) open(d *plan.Door, at units.Seconds) bool {
	type change struct {
		at   units.Seconds
		open bool
	}
	var changes []change
	for _, a := range m.plan.Actions {
		op, ok := a.Deed.(*plan.Operate)
		if !ok || op.Door != d {
			continue
		}
		i := m.tracks.Clock.Of(a)
		if op.Open {
			changes = append(changes, change{i.Start, true})
		} else {
			changes = append(changes, change{i.End, false})
		}
	}
	sort.SliceStable(changes, func(i, j int) bool { return changes[i].at < changes[j].at })
	open := d.Open
	for _, c := range changes {
		if c.at <= at {
			open = c.open
		}
	}
	return open
}

// rolling is the first and the last moment a camera rolls within a stretch.
func (m *material) rolling(c *motion.CameraTrack, s span) (from, to units.Seconds, ok bool) {
	for _, r := range c.Rolls {
		a, b := max(r.From, s.from), min(r.To, m.lastOf(s))
		if b < a || r.To <= s.from { // the last moment of a roll is not in it
			continue
		}
		if !ok {
			from = a
		}
		to, ok = b, true
	}
	return from, to, ok
}
