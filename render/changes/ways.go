package changes

import (
	"math"

	"longhand/lang/compare"
	"longhand/lang/compile"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// way is where something goes, in one plan and in the other; either is empty
// where it is in one of them only.
type way struct {
	name, class string
	old, new    []geom.Vec
}

// apart is how far a place has to be off the other way to differ, metres: no more
// than the width of a line on the drawing.
const apart = 0.1

// waysOf are all that move or stand on the floor, as the newer plan calls them:
// performers, vehicles and cameras, and crew and rigs where no camera goes with
// them.
func waysOf(r *compare.Report) []way {
	var out []way
	at := map[plan.Thing]int{}
	for _, t := range moving(r.New) {
		at[t] = len(out)
		out = append(out, way{name: t.ID().Name, class: classOf(t), new: trail(r.New, t)})
	}
	for _, t := range moving(r.Old) {
		if i, ok := at[r.Newer(t)]; ok {
			out[i].old = trail(r.Old, t)
			continue
		}
		w := way{name: t.ID().Name, class: classOf(t), old: trail(r.Old, t)}
		if n := r.Newer(t); n != nil {
			// It carries a camera in the newer plan, or moves in the older one only.
			w.name, w.new = n.ID().Name, trail(r.New, n)
		}
		out = append(out, w)
	}
	return out
}

func classOf(t plan.Thing) string {
	switch t.Kind() {
	case plan.KindPerformer:
		return "performer"
	case plan.KindCrew:
		return "crew"
	case plan.KindCamera:
		return "lens"
	}
	return "machine"
}

// moving is what has a place on the floor, in the order of the text.
func moving(r *compile.Result) []plan.Thing {
	with := map[plan.Thing]bool{}
	for _, c := range r.Tracks.Cameras {
		for _, h := range c.Holds {
			if h.Rig != nil {
				with[h.Rig] = true
			}
			if h.Operator != nil {
				with[h.Operator] = true
			}
		}
	}
	var out []plan.Thing
	for _, b := range r.Tracks.Bodies {
		if !with[b.Thing] {
			out = append(out, b.Thing)
		}
	}
	for _, c := range r.Tracks.Cameras {
		out = append(out, c.Camera)
	}
	return out
}

// trail is where a thing is over the take, without the stops.
func trail(r *compile.Result, t plan.Thing) []geom.Vec {
	var out []geom.Vec
	add := func(p geom.Vec) {
		if n := len(out); n == 0 || out[n-1].Dist(p) >= 0.05 {
			out = append(out, p)
		}
	}
	const step = 3 // frames
	camera, _ := t.(*plan.Camera)
	for i, c := range r.Stage.Cameras {
		if c != camera {
			continue
		}
		track := r.Stage.Scene.Cameras[i].Track
		for f := 0; f < len(track); f += step {
			add(geom.Vec{X: track[f].X, Y: track[f].Y})
		}
	}
	if b := r.Tracks.Body(t); b != nil {
		for f := 0; f < r.Tracks.Frames; f += step {
			add(b.At(r.Tracks.Rate.Time(units.Frame(f))).Point())
		}
	}
	return out
}

// differing is the stretches of a way that are off another.
func differing(of, from []geom.Vec) [][]geom.Vec {
	var out [][]geom.Vec
	var run []geom.Vec
	for i, p := range of {
		if off(p, from) > apart {
			if run == nil && i > 0 {
				run = append(run, of[i-1])
			}
			run = append(run, p)
			continue
		}
		if run != nil {
			out = append(out, append(run, p))
			run = nil
		}
	}
	if run != nil {
		out = append(out, run)
	}
	return out
}

// off is how far a place is from a line.
func off(p geom.Vec, line []geom.Vec) float64 {
	best := math.Inf(1)
	if len(line) == 1 {
		return p.Dist(line[0])
	}
	for i := 0; i+1 < len(line); i++ {
		if d := (geom.Segment{A: line[i], B: line[i+1]}).Distance(p); d < best {
			best = d
			if best <= apart {
				return best
			}
		}
	}
	return best
}
