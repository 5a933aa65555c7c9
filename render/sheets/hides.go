package sheets

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// hole is a lens hole with the camera behind it and what it needs.
type hole struct {
	p                 *part
	action            *plan.Action
	camera            *plan.Camera
	hole              *plan.Hole
	card              *plan.Card
	from, to          units.Seconds
	lens              *plan.Lens
	stop              units.Stop
	stopGiven         bool
	straight, turning units.Millimetres // least width, looking straight out and as it turns
	worst             units.Seconds
}

// hidden lists the cameras behind holes in all parts.
func (m *maker) hidden() []hole {
	var out []hole
	for _, p := range m.parts {
		for _, ct := range p.cameras() {
			for _, h := range ct.Holds {
				if h.Hide == nil || h.Hide.Hole == nil || h.Hide.Hole.Wall == nil {
					continue
				}
				h.Action = p.hideLine(ct.Camera, h)
				if h.Action != nil {
					out = append(out, m.holeOf(p, ct, h))
				}
			}
		}
	}
	return out
}

// hideLine is the part's own line that puts a camera behind a hole; nil where it
// has none.
func (p *part) hideLine(c *plan.Camera, h motion.Hold) *plan.Action {
	if p.has(h.Action) {
		return h.Action
	}
	for _, a := range p.actions {
		if d, ok := a.Deed.(*plan.Hide); ok && a.Subject == plan.Thing(c) && d.Hole == h.Hide.Hole {
			return a
		}
	}
	return nil
}

func (m *maker) holeOf(p *part, ct *motion.CameraTrack, h motion.Hold) hole {
	o := hole{p: p, action: h.Action, camera: ct.Camera, hole: h.Hide.Hole, card: h.Hide.Card, from: h.Start, to: h.End, worst: h.Start}
	o.from = p.clock.Of(h.Action).Start
	thick := float64(o.hole.Wall.Thick)
	if thick <= 0 {
		thick = solid.WallThick
	}
	centre, _ := plan.On{Wall: o.hole.Wall, From: o.hole.Along, To: o.hole.Along}.Ends()
	for k := m.rate.From(h.Start); m.rate.Time(k) < h.End; k++ {
		at := m.rate.Time(k)
		v := ct.At(at)
		if v.Focal <= 0 || !ct.Rolling(at) {
			continue
		}
		o.lens = ct.Lens(at)
		o.stop, o.stopGiven = ct.Stop(at), true
		if o.stop <= 0 {
			o.stop, o.stopGiven = fallbackStop, false
		}
		lens := geom.Vec{X: v.X, Y: v.Y}
		into := centre.Sub(lens).Unit()
		face := centre.Sub(lens).Len() + thick/2
		w, hgt, _ := optics.HoleFor(ct.Frame, units.Millimetres(v.Focal), o.stop, units.Metres(face).Millimetres())
		o.straight = max(o.straight, w, hgt)
		if n := holeNeeded(ct, v, o.stop, lens, into, face); n > o.turning {
			o.turning, o.worst = n, at
		}
	}
	return o
}

// holeNeeded is how wide a square hole has to be for nothing to be cut off as the
// lens looks now: each corner of the frame followed from the rim of the pupil to
// the wall's far face (similar triangles). Infinite where a corner never gets
// there.
func holeNeeded(ct *motion.CameraTrack, v motion.View, stop units.Stop, lens, into geom.Vec, face float64) units.Millimetres {
	view := optics.View{Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Focal: units.Millimetres(v.Focal)}
	pupil := float64(optics.Pupil(view.Focal, stop).Metres()) / 2
	half := 0.0
	for _, x := range []float64{-1, 1} {
		for _, y := range []float64{-1, 1} {
			ray := view.Ray(units.Millimetres(x*float64(ct.Frame.Width)/2), units.Millimetres(y*float64(ct.Frame.Height)/2))
			ahead := ray.Floor().Dot(into)
			if ahead < 1e-6 {
				return units.Millimetres(math.Inf(1))
			}
			k := face / ahead
			half = math.Max(half, math.Max(math.Abs(k*ray.Floor().Dot(into.Left())), math.Abs(k*ray.Z))+pupil)
		}
	}
	return units.Metres(2 * half).Millimetres()
}

func holeColumns() []Column {
	var out []Column
	for _, c := range [][]Column{
		col("hole", "hole", "name"), col("wall", "wall", "the wall it is cut into"),
		measure("along", "along the wall", "m", "of its centre, from the wall's first point"), measure("up", "centre up", "m", "above the set's floor"),
		measure("wide", "planned", "mm", "width of the square hole in the plan"),
		measure("straight", "least, straight out", "mm", "what the lens needs looking square through the wall"),
		measure("least", "least, as it turns", "mm", "what the lens needs at the widest it turns while it rolls"),
		measure("wise", "wise", "mm", "the least and a margin of 5 mm"),
	} {
		out = append(out, c...)
	}
	return out
}

func (m *maker) holeCells(o hole) []Cell {
	mm := func(v units.Millimetres) Cell {
		if v <= 0 {
			return word("not rolled")
		}
		if math.IsInf(float64(v), 1) {
			return word("past the hole")
		}
		return number(float64(v), 1, m.small(v))
	}
	wise := word("")
	if o.turning > 0 && !math.IsInf(float64(o.turning), 1) {
		wise = mm(units.Millimetres(math.Ceil(float64(o.turning + optics.HoleMargin))))
	}
	return cells(word(o.hole.Name), word(name(o.hole.Wall)), m.length(o.hole.Along), m.length(o.hole.Up), mm(o.hole.Wide.Millimetres()), mm(o.straight), mm(o.turning), wise)
}

// small prints what is cut: whole millimetres, and inches where the plan has feet.
func (m *maker) small(v units.Millimetres) string {
	if m.sys == units.Feet {
		return units.Number(float64(v)/25.4, 1) + " in"
	}
	return units.Number(float64(v), 0) + " mm"
}

// hides is the cameras in the set.
func (m *maker) hides() *Table {
	t := table("hides", "Hidden cameras", beatColumn(), clockColumns(), cueColumn(), col("camera", "camera", "name"), col("lens", "lens", "name and stop"), holeColumns(), col("card", "card", "what covers it"))
	t.Empty = "No camera hides in the set in this plan."
	for _, o := range m.hidden() {
		lens := ""
		if o.lens != nil {
			lens = o.lens.Name + ", " + o.stop.String()
			if !o.stopGiven {
				lens += " (taken)"
			}
		}
		card := "none"
		if o.card != nil {
			card = o.card.Name
		}
		t.add(o.action, o.p.beatAt(o.from), m.clock(o.from), o.p.cue(o.action), cells(word(o.camera.Name), word(lens)), m.holeCells(o), cells(word(card)))
	}
	if len(t.Rows) > 0 {
		t.note("the pupil is taken to lie 30 mm behind the wall's back face; a hole is square and needs the width given at the wall's far face")
	}
	return t
}
