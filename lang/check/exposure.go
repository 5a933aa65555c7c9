package check

import (
	"sort"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// exposure is one stretch of frames in which a camera sees what must not be
// seen: one thing, or a camera with whoever and whatever has it.
type exposure struct {
	code    diag.Code
	camera  int
	carrier *plan.Camera // that all of the parts belong to; nil for a thing alone
	parts   []part
}

// forbidden says whether a thing must not be in frame at all.
func forbidden(thing plan.Thing) bool {
	switch t := thing.(type) {
	case *plan.Vehicle:
		return t.Gear
	case *plan.Person:
		return t.Crew
	case *plan.Lamp:
		return !t.Seen
	case *plan.Rig, *plan.Camera, *plan.Card:
		return true
	}
	return false
}

// exposures works out, once, everything that is in a frame and must not be, but
// for lens holes, which have a rule of their own.
func (p *Pass) exposures() []exposure {
	return p.known().exposures.get(func() []exposure {
		var out []exposure
		for camera := range p.Stage.Cameras {
			out = append(out, p.exposuresIn(camera)...)
		}
		return out
	})
}

func (p *Pass) exposuresIn(camera int) []exposure {
	groups := map[*plan.Camera][]part{}
	var out []exposure
	for _, g := range p.views().glimpses {
		if g.camera != camera || g.mirror != sight.NoMirror || !forbidden(g.thing) {
			continue
		}
		alone := g.frames
		for _, h := range p.holders() {
			if h.thing != g.thing || h.camera == p.cameraAt(camera) {
				continue
			}
			if with := meet(alone, h.frames); len(with) > 0 {
				groups[h.camera] = append(groups[h.camera], part{g.thing, g.bodies, with})
				alone = minus(alone, with)
			}
		}
		if len(alone) > 0 {
			out = append(out, p.stretches(camera, nil, []part{{g.thing, g.bodies, alone}})...)
		}
	}
	for _, c := range p.Plan.Kit.Cameras {
		if parts := groups[c]; len(parts) > 0 {
			out = append(out, p.stretches(camera, c, parts)...)
		}
	}
	return out
}

// stretches is an exposure for each stretch of the parts' frames.
func (p *Pass) stretches(camera int, carrier *plan.Camera, parts []part) []exposure {
	var out []exposure
	for _, stretch := range joined(framesOf(parts), p.gap()) {
		e := exposure{camera: camera, carrier: carrier, parts: cut(parts, []diag.Frames{stretch})}
		e.code = p.kindOf(&e)
		out = append(out, e)
	}
	return out
}

// The codes of what is in frame and must not be. All are errors.
const (
	codeGear   diag.Code = "gear-in-shot"
	codeCrew   diag.Code = "crew-in-shot"
	codeCamera diag.Code = "camera-in-shot"
	codeLeft   diag.Code = "left-in-shot"
	codeHide   diag.Code = "hide-seen"
	codeMirror diag.Code = "mirror-shows"
)

// kindOf is the code an exposure falls under.
func (p *Pass) kindOf(e *exposure) diag.Code {
	if len(names(e.parts)) > 1 {
		return codeCamera
	}
	switch t := e.parts[0].thing.(type) {
	case *plan.Camera:
		return codeCamera
	case *plan.Person:
		return codeCrew
	case *plan.Rig:
		if p.leftBefore(t, e.parts[0].frames[0].From) != nil {
			return codeLeft
		}
	}
	return codeGear
}

// isOn says whether a camera is on a rig at a frame, and not about to leave it.
func (p *Pass) isOn(camera *plan.Camera, thing plan.Thing, f units.Frame) bool {
	c := p.Tracks.Camera(camera)
	rig, ok := thing.(*plan.Rig)
	return ok && c != nil && c.Rig(p.Tracks.Rate.Time(f)) == rig
}

// lead is the part that shows most, by frames; the camera's own before others.
func (e exposure) lead() part {
	best := e.parts[0]
	for _, c := range e.parts[1:] {
		if count(c.frames) > count(best.frames) {
			best = c
		}
	}
	return best
}

// called names what is seen, the camera first; where that does not show itself,
// it is said whose the rest is.
func (e *exposure) called() string {
	out := names(e.parts)
	if e.carrier == nil {
		return things(out)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i] == e.carrier.Name && out[j] != e.carrier.Name })
	if out[0] != e.carrier.Name {
		return things(out) + ", with " + e.carrier.Name + ","
	}
	return things(out)
}

// leaving is when a rig was let go of.
type leaving struct {
	camera *plan.Camera
	at     units.Seconds
	action *plan.Action // that took the camera off it
}

// leftBefore is when a rig without a camera last had one before a frame; nil
// where it never had, or has one then.
func (p *Pass) leftBefore(rig *plan.Rig, f units.Frame) *leaving {
	var out *leaving
	for _, h := range p.holders() {
		if h.thing == plan.Thing(rig) && holds(h.frames, f) {
			return nil
		}
	}
	t := p.Tracks.Rate.Time(f)
	for _, c := range p.Tracks.Cameras {
		for k, h := range c.Holds {
			if h.Rig != rig || h.End > t || k+1 >= len(c.Holds) {
				continue
			}
			next := c.Holds[k+1]
			if out == nil || next.Start > out.at {
				out = &leaving{c.Camera, next.Start, next.Action}
			}
		}
	}
	return out
}
