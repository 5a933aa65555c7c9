package staging

import (
	"sort"

	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// touch is how near a lens may come to a body's face and still be held by it,
// metres: at the joint of two pieces of an arm the last bit of a number must not
// say which of them is before the lens.
const touch = 1e-3

// boxFrames is how many frames on end have one box.
const boxFrames = 64

// boxesOf are what holds the middle of a body, from above, for each so many frames on
// end; one for all where it never moves.
func boxesOf(body *sight.Body) []geom.Box {
	var out []geom.Box
	for from := 0; from < len(body.Track); from += boxFrames {
		track := body.Track[from:min(from+boxFrames, len(body.Track))]
		box := geom.BoxAt(geom.Vec{X: track[0].X, Y: track[0].Y})
		for i := range track {
			box = box.With(geom.Vec{X: track[i].X, Y: track[i].Y})
		}
		out = append(out, box)
	}
	return out
}

// holding lists when a body holds the lens within it, or the lens touches it: the
// end of the arm it hangs from, a rig on the back of who works another. Nobody can
// look out of a solid, so for those frames it is the camera's own.
func (b *builder) holding(c *sight.Camera, boxes [][]geom.Box) []sight.Own {
	var out []sight.Own
	var lens []geom.Box
	for f := range units.Frame(len(b.times)) {
		v := c.At(f)
		p := geom.Vec{X: v.X, Y: v.Y}
		if f%boxFrames == 0 {
			lens = append(lens, geom.BoxAt(p))
		}
		lens[f/boxFrames] = lens[f/boxFrames].With(p)
	}
	for i := range b.stage.Scene.Bodies {
		body := &b.stage.Scene.Bodies[i]
		open := false
		reach := body.Radius
		for _, v := range body.Polygon {
			reach = max(reach, v.Len())
		}
		for k := range lens {
			if where := boxes[i][min(k, len(boxes[i])-1)]; lens[k].Apart(where) > reach+touch {
				open = false
				continue
			}
			from := units.Frame(k * boxFrames)
			for f := from; f < min(from+boxFrames, units.Frame(len(b.times))); f++ {
				if !holds(body, f, c.At(f)) {
					open = false
					continue
				}
				if !open {
					out = append(out, sight.Own{Body: body.Name, Frames: sight.Frames{From: f, To: f}})
					open = true
				}
				out[len(out)-1].To = f
			}
		}
	}
	return out
}

func holds(body *sight.Body, f units.Frame, v sight.View) bool {
	p := body.At(f)
	if v.Z < p.Z-touch || v.Z > p.Z+p.Height+touch || p.Height <= 0 {
		return false
	}
	at := geom.Vec{X: v.X - p.X, Y: v.Y - p.Y}
	if body.Radius > 0 {
		return at.Len() < body.Radius+touch
	}
	at = at.Rotate(-p.Heading)
	for i, a := range body.Polygon {
		side := body.Polygon[(i+1)%len(body.Polygon)].Sub(a)
		if side.Cross(at.Sub(a)) < -touch*side.Len() {
			return false
		}
	}
	return len(body.Polygon) > 2
}

// tidy joins the frames of each body and puts them in order, so that none is
// listed twice.
func tidy(own []sight.Own) []sight.Own {
	sort.SliceStable(own, func(i, j int) bool {
		if own[i].Body != own[j].Body {
			return own[i].Body < own[j].Body
		}
		return own[i].From < own[j].From
	})
	var out []sight.Own
	for _, o := range own {
		if n := len(out); n > 0 && out[n-1].Body == o.Body && o.From <= out[n-1].To+1 {
			out[n-1].To = max(out[n-1].To, o.To)
			continue
		}
		out = append(out, o)
	}
	return out
}
