package check

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// holder is a rig or a person that has a camera for a while.
type holder struct {
	camera *plan.Camera
	thing  plan.Thing // the camera itself, its rig, its operator, its hole, its card
	frames []diag.Frames
}

// holders lists what belongs to each camera and when. While a camera changes
// hands both sides have it.
func (p *Pass) holders() []holder { return p.known().holders.get(p.findHolders) }

func (p *Pass) findHolders() []holder {
	var held []holder
	last := units.Frame(p.Tracks.Frames - 1)
	all := []diag.Frames{{From: 0, To: last}}
	for _, c := range p.Tracks.Cameras {
		held = append(held, holder{c.Camera, c.Camera, all})
		for k, h := range c.Holds {
			until := h.End
			if k+1 < len(c.Holds) {
				until = c.Holds[k+1].Taken
			}
			during := diag.Frames{From: p.Tracks.Rate.From(h.Start), To: p.Tracks.Rate.From(until) - 1}
			if k == 0 {
				during.From = 0
			}
			if k == len(c.Holds)-1 {
				during.To = last
			}
			if during.From > during.To {
				continue
			}
			add := func(t plan.Thing) {
				held = append(held, holder{c.Camera, t, []diag.Frames{during}})
			}
			if h.Operator != nil {
				add(h.Operator)
			}
			if h.Rig != nil {
				add(h.Rig)
			}
			if h.Hide != nil {
				add(h.Hide.Hole)
				if h.Hide.Card != nil {
					add(h.Hide.Card)
				}
			}
		}
	}
	return held
}

// means is those of the frames in which a name in the plan means a thing: the
// thing itself, or, where the name is a camera's, whoever and whatever has that
// camera at the time. No name means everything.
func (p *Pass) means(name, thing plan.Thing, frames []diag.Frames) []diag.Frames {
	if name == nil || name == thing {
		return frames
	}
	camera, ok := name.(*plan.Camera)
	if card, is := name.(*plan.Card); is {
		for _, h := range p.Stage.Hides {
			if h.Card == card && plan.Thing(h.Hole) == thing {
				return frames
			}
		}
		return nil
	}
	if !ok {
		return nil
	}
	var out []diag.Frames
	for _, h := range p.holders() {
		if h.camera == camera && h.thing == thing {
			out = append(out, h.frames...)
		}
	}
	return meet(tidy(out), frames)
}

// cameraAt is the camera of the plan that one of the scene is.
func (p *Pass) cameraAt(i int) *plan.Camera { return p.Stage.Cameras[i] }
