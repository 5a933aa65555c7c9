package check

import (
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/units"
)

// putThere is the line that put a thing where it is at a time: its last move, or
// what it last stepped on or was handed to; nil where only its declaration says.
func (p *Pass) putThere(thing plan.Thing, at units.Seconds) *plan.Action {
	switch t := thing.(type) {
	case *plan.Camera:
		c := p.Tracks.Camera(t)
		if c == nil {
			return nil
		}
		h := c.Hold(at)
		base := plan.Thing(nil)
		switch {
		case h.Worn && h.Operator != nil:
			base = h.Operator
		case h.Rig != nil:
			base = h.Rig
		}
		if base != nil {
			if a := p.putThere(base, at); a != nil {
				return a
			}
		}
		return h.Action
	case *plan.Hole:
		for _, h := range p.Stage.Hides {
			if h.Hole == t {
				return h.Action
			}
		}
		return nil
	case *plan.Person, *plan.Vehicle, *plan.Rig:
		track := p.Tracks.Body(thing)
		if track == nil {
			return nil
		}
		walked, stood := p.walked(track, at), p.stood(thing, at)
		if walked == nil || stood != nil && p.Clock.Of(stood).Start > p.Clock.Of(walked).Start {
			return stood
		}
		return walked
	}
	return nil
}

// stood is the last line before a time that says where a thing stands; the first
// of all where none is before.
func (p *Pass) stood(thing plan.Thing, at units.Seconds) *plan.Action {
	var out *plan.Action
	for _, a := range p.Plan.Actions {
		d, ok := a.Deed.(*plan.Stand)
		if !ok || a.Subject != thing || d.At == nil {
			continue
		}
		if start := p.Clock.Of(a).Start; out == nil || start <= at && start >= p.Clock.Of(out).Start {
			out = a
		}
	}
	return out
}

// walked is the line of the segment a time lies in, or of the last one before
// that has a line.
func (p *Pass) walked(track *motion.Track, at units.Seconds) *plan.Action {
	for i := len(track.Segments) - 1; i >= 0; i-- {
		s := &track.Segments[i]
		if s.Start > at {
			continue
		}
		if s.Action != nil {
			return s.Action
		}
		if s.Carrier != nil {
			if a := p.putThere(s.Carrier, at); a != nil {
				return a
			}
		}
	}
	// Where a thing is first it is from the first frame on.
	for i := range track.Segments {
		if a := track.Segments[i].Action; a != nil {
			return a
		}
	}
	return nil
}

// placed is the text to change so that a thing isn't where it is at a time.
func (p *Pass) placed(thing plan.Thing, at units.Seconds) source.Span {
	if a := p.putThere(thing, at); a != nil {
		return a.Span
	}
	if l, ok := thing.(*plan.Lamp); ok {
		for _, at := range p.Plan.Set.Placed {
			if at.Lamp == l {
				return at.Span
			}
		}
	}
	return thing.ID().Decl
}

// relateCamera adds the lines that make a camera look there: what it sees and
// how it moves at a time.
func (p *Pass) relateCamera(d *diag.Diagnostic, camera *plan.Camera, at units.Seconds) {
	c := p.Tracks.Camera(camera)
	if c == nil {
		return
	}
	var aim *plan.Action
	for i := range c.Aims {
		if i == 0 || c.Aims[i].Start <= at {
			aim = c.Aims[i].Action
		}
	}
	if aim != nil {
		d.Relate(aim.Span, "%s looks there: %s", camera.Name, clock.Describe(aim))
	}
	if move := p.putThere(camera, at); move != nil && move != aim {
		d.Relate(move.Span, "%s is there: %s", camera.Name, clock.Describe(move))
	}
}

// relateUncovered adds what stops hiding a thing at the first frame in which it
// shows, and says what did in a word or two; "" where nothing hid it.
func (p *Pass) relateUncovered(d *diag.Diagnostic, camera int, c part, first units.Frame) string {
	before := first - 1
	if before < 0 {
		return ""
	}
	body, ok := p.main(camera, c.bodies, before)
	if !ok {
		return ""
	}
	list := p.covering(camera, body, before)
	if len(list) == 0 {
		return ""
	}
	by := list[0]
	at := p.Tracks.Rate.Time(before)
	said := what(by.Name, by.Kind)
	thing := p.thing(by.Name, by.Kind)
	switch t := thing.(type) {
	case *plan.Door:
		for _, a := range p.Plan.Actions {
			if op, ok := a.Deed.(*plan.Operate); ok && op.Door == t && op.Open {
				if i := p.Clock.Of(a); p.Tracks.Rate.From(i.Start) <= first && first <= p.Tracks.Rate.From(i.End) {
					d.Relate(a.Span, "until then %s hides it", said)
				}
			}
		}
	case *plan.Person, *plan.Vehicle, *plan.Rig:
		if a := p.putThere(thing, at); a != nil {
			d.Relate(a.Span, "until then %s hides it: %s", said, clock.Describe(a))
		}
	}
	return said
}

// main is the body, of those of a thing, that fills most of the frame, hidden or
// not.
func (p *Pass) main(camera int, bodies []int, f units.Frame) (int, bool) {
	best, most := -1, -1.0
	for _, s := range p.Sight.At(camera, f) {
		if s.Mirror >= 0 {
			continue
		}
		for _, b := range bodies {
			if b != s.Body {
				continue
			}
			whole := s.Share
			if s.Visible > 0 {
				whole /= s.Visible
			}
			if whole > most {
				best, most = b, whole
			}
		}
	}
	return best, best >= 0
}

// thing is the thing of the plan that a body or a solid of the scene is.
func (p *Pass) thing(name, kind string) plan.Thing {
	if i, ok := p.Stage.Scene.Body(name); ok && kind != "wall" && kind != "door" {
		return p.Stage.Things[i]
	}
	for _, c := range p.Stage.Pieces {
		if c.Name == name && string(c.Thing.Kind()) == kind {
			return c.Thing
		}
	}
	return nil
}

// floorSpot says where a thing is on the floor at a time.
func (p *Pass) floorSpot(thing plan.Thing, at units.Seconds) string {
	track := p.Tracks.Body(thing)
	if track == nil {
		return ""
	}
	return p.floorPlace(track.At(at).Point())
}

// floorPlace says where a point of the floor is: the mark it is at, or how far it
// is from the nearest, or the point.
func (p *Pass) floorPlace(here geom.Vec) string {
	var near *plan.Mark
	for _, m := range p.Plan.Set.Marks {
		if !m.Bad && (near == nil || m.Point.Dist(here) < near.Point.Dist(here)) {
			near = m
		}
	}
	point := "(" + units.Number(here.X, 1) + ", " + units.Number(here.Y, 1) + ")"
	const same, close = 0.3, 3.0 // metres
	switch {
	case near == nil || near.Point.Dist(here) > close:
		return "at " + point
	case near.Point.Dist(here) <= same:
		return "at " + near.Name
	}
	return "at " + point + ", " + p.away(near.Point.Dist(here)) + " from " + near.Name
}
