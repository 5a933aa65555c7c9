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

// boundFrames is how many frames on end have one bound.
const boundFrames = 64

// bound is what holds the middle of something, from above, over some frames.
type bound struct{ low, high geom.Vec }

// boundsOf is the bounds of a body; one for all where
// it never moves.
func boundsOf(body *sight.Body) []bound {
	n := len(body.Track)
	out := make([]bound, 0, (n+boundFrames-1)/boundFrames)
	for from := 0; from < n; from += boundFrames {
		track := body.Track[from:min(from+boundFrames, n)]
		x0, y0 := track[0].X, track[0].Y
		x1, y1 := x0, y0
		for i := range track {
			x0, x1 = min(x0, track[i].X), max(x1, track[i].X)
			y0, y1 = min(y0, track[i].Y), max(y1, track[i].Y)
		}
		out = append(out, bound{geom.Vec{X: x0, Y: y0}, geom.Vec{X: x1, Y: y1}})
	}
	return out
}

// apart is whether two bounds are further from each other than a distance.
func (b *bound) apart(c *bound, by float64) bool {
	return b.low.X > c.high.X+by || c.low.X > b.high.X+by || b.low.Y > c.high.Y+by || c.low.Y > b.high.Y+by
}

// holding lists when a body holds the lens within it, or the lens touches it: the
// end of the arm it hangs from, a rig on the back of who works another. Nobody can
// look out of a solid, so for those frames it is the camera's own.
func (b *builder) holding(c *sight.Camera, bounds [][]bound) []sight.Own {
	var out []sight.Own
	lens := make([]bound, 0, len(b.times)/boundFrames+1)
	for from := 0; from < len(b.times); from += boundFrames {
		v := c.At(units.Frame(from))
		box := bound{geom.Vec{X: v.X, Y: v.Y}, geom.Vec{X: v.X, Y: v.Y}}
		for f := from + 1; f < min(from+boundFrames, len(b.times)); f++ {
			v := c.At(units.Frame(f))
			box.low = geom.Vec{X: min(box.low.X, v.X), Y: min(box.low.Y, v.Y)}
			box.high = geom.Vec{X: max(box.high.X, v.X), Y: max(box.high.Y, v.Y)}
		}
		lens = append(lens, box)
	}
	for i := range b.stage.Scene.Bodies {
		body := &b.stage.Scene.Bodies[i]
		open := false
		reach := body.Radius
		for _, v := range body.Polygon {
			reach = max(reach, v.Len())
		}
		for k := range lens {
			where := &bounds[i][min(k, len(bounds[i])-1)]
			if lens[k].apart(where, reach+touch) {
				open = false
				continue
			}
			from := units.Frame(k * boundFrames)
			for f := from; f < min(from+boundFrames, units.Frame(len(b.times))); f++ {
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
