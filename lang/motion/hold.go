package motion

import (
	"math"
	"slices"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// hold is a time a camera spends on one rig with one operator, or behind one
// hole. From start to taken it changes hands: start is when the one before lets
// go, taken when this one has it.
type hold struct {
	start, taken, end float64
	action            *plan.Action // Mount, Handoff or Hide; nil for a handoff's first rig
	handoff           *plan.Handoff
	rig               *plan.Rig // nil behind a hole
	class             body.Rig
	operator          *plan.Person
	hide              *plan.Hide
	at                geom.Vec // of the lens in the rig's frame
	up                float64  // of the lens over the floor, at the start
}

// worn says that the operator's feet are the rig's wheels.
func (h *hold) worn() bool {
	return h.rig != nil && h.class.Crewing == body.Worn && h.operator != nil
}

// ridden says that the operator rides on the rig.
func (h *hold) ridden() bool {
	return h.rig != nil && h.operator != nil && (h.class.Crewing == body.Ridden || h.seated())
}

// seated says that the operator rides the arm.
func (h *hold) seated() bool { return h.class.Class == body.Crane && h.rig.Seats > 0 }

// base is what moves: the operator, or the rig; nil behind a hole.
func (h *hold) base() plan.Thing {
	switch {
	case h.worn():
		return h.operator
	case h.rig != nil:
		return h.rig
	}
	return nil
}

// armed says that the lens is at the end of an arm or on a rail.
func (h *hold) armed() bool { return h.rig != nil && armedClass(h.class.Class) }

func armedClass(c body.Class) bool { return c == body.Crane || c == body.Jib || c == body.Slider }

// classOf is what is taken for granted about a rig, with what the plan says
// about it.
func classOf(rig *plan.Rig) body.Rig {
	class, err := body.ParseClass(rig.Class)
	r := body.RigOf(class)
	if err != nil {
		return r
	}
	if class == body.Crane && rig.Seats > 0 {
		r = r.WithRider()
	}
	if rig.Length > 0 {
		r.Length = rig.Length
	}
	if rig.Width > 0 {
		r.Width = rig.Width
	}
	if rig.High > 0 {
		r.Height = rig.High
	}
	if rig.Reach > 0 {
		r.Reach = rig.Reach
	}
	if rig.Seats > 0 {
		r.Seats = rig.Seats
	}
	return r
}

// holds is every camera's holds in order of time. What a camera is on first it
// is on from the first frame.
func holdsOf(inTime []*plan.Action, c *clock.Clock) map[*plan.Camera][]hold {
	out := make(map[*plan.Camera][]hold)
	for _, a := range inTime {
		camera, ok := clock.SubjectOf(a).(*plan.Camera)
		if !ok {
			continue
		}
		iv := c.Of(a)
		h := hold{action: a, start: float64(iv.Start), end: math.Inf(1)}
		h.taken = h.start
		before := out[camera]
		var last *hold
		if len(before) > 0 {
			last = &before[len(before)-1]
		}
		switch d := a.Deed.(type) {
		case *plan.Mount:
			if d.Rig == nil {
				continue
			}
			h.rig, h.operator = d.Rig, d.With
			h.class = classOf(d.Rig)
			h.place(d.At, d.Up)
			if last != nil && h.start > 1e-9 && last.rig != nil { // changes rigs in the take, unsaid
				h.taken = h.start + float64(body.HandoffBetween(last.class.Class, h.class.Class).Minimum)
			}
		case *plan.Handoff:
			if d.To == nil {
				continue
			}
			h.handoff, h.rig, h.operator = d, d.To, d.With
			h.class = classOf(d.To)
			h.place(nil, nil)
			h.taken = float64(iv.End)
			if last == nil && d.From != nil {
				first := hold{rig: d.From, class: classOf(d.From), end: h.start}
				first.place(nil, nil)
				out[camera] = append(out[camera], first)
				before = out[camera]
				last = &before[len(before)-1]
			}
			if h.operator == nil && last != nil {
				h.operator = last.operator
			}
		case *plan.Hide:
			if d.Hole == nil || d.Hole.Wall == nil {
				continue
			}
			h.hide = d
			h.class = body.RigOf(body.Hide)
			h.up = float64(d.Hole.Up)
		default:
			continue
		}
		if last != nil {
			last.end = h.start
		} else {
			h.start, h.taken = 0, 0
		}
		out[camera] = append(out[camera], h)
	}
	return out
}

// place sets the lens where the text has it on the rig, or where the class has
// it: over the wearer, at the rear middle of what is ridden, in the middle of
// what isn't.
func (h *hold) place(at *geom.Vec, up *units.Metres) {
	h.up = float64(h.class.Lens)
	if up != nil {
		h.up = float64(*up)
	}
	switch {
	case at != nil:
		h.at = *at
	case h.class.Class == body.Crane || h.class.Class == body.Jib:
		h.at = geom.Vec{X: armOut * float64(h.class.Reach)}
	case h.class.Crewing == body.Ridden:
		h.at = geom.Vec{X: -float64(h.class.Length) / 4}
	}
}

// armOut is how far out an arm stands where the text doesn't say, of its reach.
const armOut = 0.75

func byStart(actions []*plan.Action, c *clock.Clock) []*plan.Action {
	return inTime(slices.Clone(actions), func(a **plan.Action) (units.Seconds, int) { return c.Of(*a).Start, 0 })
}
