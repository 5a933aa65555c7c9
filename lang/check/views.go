package check

import (
	"sort"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// leastShare is the share of the frame, in per cent, below which nothing is
// taken to be seen: less than one picture element of a frame 4096 wide by 2214
// high.
const leastShare = 1e-5

// glimpse is all that one camera sees of one thing, directly or in one mirror.
type glimpse struct {
	camera, mirror int
	part           // its frames are those in which any of it shows
}

// views is what cameras see by camera, mirror and body, and by thing.
type views struct {
	runs     map[[3]int][]*sight.Run
	glimpses []glimpse // by camera, mirror, then in the order of the scene's bodies
}

// views works out, once, what each camera shows of each thing.
func (p *Pass) views() *views { return p.known().views.get(p.findViews) }

func (p *Pass) findViews() *views {
	v := &views{runs: map[[3]int][]*sight.Run{}}
	add := func(runs []sight.Run) {
		for i := range runs {
			r := &runs[i]
			key := [3]int{r.Camera, r.Mirror, r.Body}
			v.runs[key] = append(v.runs[key], r)
		}
	}
	add(p.Sight.Sight)
	add(p.Sight.Reflected)
	for camera := range p.Stage.Scene.Cameras {
		for mirror := sight.NoMirror; mirror < len(p.Stage.Scene.Mirrors); mirror++ {
			at := map[plan.Thing]int{}
			for body, thing := range p.Stage.Things {
				frames := v.showing(camera, mirror, body)
				if len(frames) == 0 || thing == nil {
					continue
				}
				i, ok := at[thing]
				if !ok {
					i = len(v.glimpses)
					at[thing] = i
					v.glimpses = append(v.glimpses, glimpse{camera: camera, mirror: mirror, part: part{thing: thing}})
				}
				g := &v.glimpses[i]
				g.bodies = append(g.bodies, body)
				g.frames = tidy(append(g.frames, frames...))
			}
		}
	}
	return v
}

// showing is the frames in which something of a body shows.
func (v *views) showing(camera, mirror, body int) []diag.Frames {
	var out []diag.Frames
	for _, r := range v.runs[[3]int{camera, mirror, body}] {
		for i, s := range r.Share {
			if float64(s) < leastShare {
				continue
			}
			f := r.From + units.Frame(i)
			if n := len(out); n > 0 && out[n-1].To == f-1 {
				out[n-1].To = f
			} else {
				out = append(out, diag.Frames{From: f, To: f})
			}
		}
	}
	return out
}

// run is the run of a body at a frame; nil where it isn't in frame.
func (v *views) run(camera, mirror, body int, f units.Frame) *sight.Run {
	runs := v.runs[[3]int{camera, mirror, body}]
	i := sort.Search(len(runs), func(i int) bool { return runs[i].To >= f })
	if i < len(runs) && runs[i].From <= f {
		return runs[i]
	}
	return nil
}

// of is what a camera sees of a thing at a frame, all its bodies together: the
// share of the frame that shows, and the part of its in-frame area that does;
// false where it is out of frame.
func (v *views) of(camera, mirror int, bodies []int, f units.Frame) (sight.Moment, bool) {
	out := sight.Moment{Frame: f}
	whole, in := 0.0, false
	for _, b := range bodies {
		r := v.run(camera, mirror, b, f)
		if r == nil {
			continue
		}
		in = true
		m := r.At(f)
		out.Share += m.Share
		out.Visible = max(out.Visible, m.Visible)
		if m.Visible > 0 {
			whole += m.Share / m.Visible
		}
	}
	if len(bodies) > 1 && whole > 0 {
		out.Visible = min(out.Visible, out.Share/whole)
	}
	return out, in
}

// peak is the first frame, of those of the parts, at which most of the picture
// shows them.
func (p *Pass) peak(camera, mirror int, parts []part) sight.Moment {
	v := p.views()
	var best sight.Moment
	found := false
	for _, r := range framesOf(parts) {
		for f := r.From; f <= r.To; f++ {
			m := sight.Moment{Frame: f}
			for _, c := range parts {
				if holds(c.frames, f) {
					s, _ := v.of(camera, mirror, c.bodies, f)
					m.Share += s.Share
					m.Visible = max(m.Visible, s.Visible)
				}
			}
			if !found || m.Share > best.Share {
				best, found = m, true
			}
		}
	}
	return best
}

// box is what shows of the parts at a frame, and how far from the lens the
// nearest of them is.
func (p *Pass) box(camera, mirror int, parts []part, f units.Frame) (box sight.Box, distance float64, ok bool) {
	for _, s := range p.Sight.At(camera, f) {
		if s.Mirror != mirror || s.Visible <= 0 || !has(parts, s.Body, f) {
			continue
		}
		if !ok {
			box, distance, ok = s.Box, s.Distance, true
			continue
		}
		box.Left, box.Bottom = min(box.Left, s.Box.Left), min(box.Bottom, s.Box.Bottom)
		box.Right, box.Top = max(box.Right, s.Box.Right), max(box.Top, s.Box.Top)
		distance = min(distance, s.Distance)
	}
	return box, distance, ok
}

func has(parts []part, body int, f units.Frame) bool {
	for _, c := range parts {
		if !holds(c.frames, f) {
			continue
		}
		for _, b := range c.bodies {
			if b == body {
				return true
			}
		}
	}
	return false
}
