package trace

import (
	"bytes"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestAgainstRaysFromTheText casts rays at what the text says and compares what
// it claims was seen: a check of the engine from its trace alone.
func TestAgainstRaysFromTheText(t *testing.T) {
	tr, err := Read(bytes.NewReader(written(t, hall())))
	require.NoError(t, err)
	compared, hidden := 0, 0
	for _, cam := range tr.Cameras {
		for f := cam.Rolls[0][0]; f <= cam.Rolls[0][1]; f++ {
			w := worldAt(tr, &cam, f)
			hits, open := w.cast(420, 227)
			for i, b := range tr.Bodies {
				visible, share, in := claim(tr, cam.Name, b.Name, f)
				if hits[i] == 0 {
					assert.True(t, !in || share < 0.01, "%s frame %d: no ray meets it", b.Name, f)
					continue
				}
				require.True(t, in, "%s frame %d: %d rays meet it", b.Name, f, hits[i])
				if hits[i] > 800 {
					assert.InDelta(t, float64(open[i])/float64(hits[i]), visible, 0.02, "%s frame %d", b.Name, f)
					assert.InDelta(t, 100*float64(open[i])/(420*227), share, 0.1+0.02*share, "%s frame %d", b.Name, f) // a column of rays is 1.7 per cent of a body
					compared++
				}
				if visible == 0 {
					hidden++
				}
			}
		}
	}
	assert.Greater(t, compared, 25)
	assert.Positive(t, hidden)
}

func claim(tr *Trace, camera, body string, f int) (visible, share float64, in bool) {
	for _, s := range tr.Sight {
		if s.Camera != camera || s.Body != body {
			continue
		}
		for _, r := range s.Runs {
			if r.From <= f && f <= r.To {
				return r.Visible[f-r.From], r.Share[f-r.From], true
			}
		}
	}
	return 0, 0, false
}

// world is everything upright at a frame, bodies first, about the lens.
type world struct {
	cam    *Camera
	f      int
	things []thing
	bodies int
}

type thing struct {
	poly   [][2]float64
	x, y   float64
	r      float64
	z0, z1 float64
	gone   bool
}

func worldAt(tr *Trace, cam *Camera, f int) *world {
	w := &world{cam: cam, f: f, bodies: len(tr.Bodies)}
	c := cam.Track[f]
	for _, b := range tr.Bodies {
		p := b.Track[f]
		th := thing{x: p[0] - c[0], y: p[1] - c[1], r: b.Radius, z0: p[2] - c[2], z1: p[2] + p[4] - c[2], gone: p[4] == 0}
		sin, cos := math.Sincos(p[3] * math.Pi / 180)
		for _, v := range b.Polygon {
			th.poly = append(th.poly, [2]float64{th.x + v[0]*cos - v[1]*sin, th.y + v[0]*sin + v[1]*cos})
		}
		for _, o := range cam.Own {
			th.gone = th.gone || o.Body == b.Name && o.From <= f && f <= o.To
		}
		w.things = append(w.things, th)
	}
	for _, s := range tr.Solids {
		th := thing{z0: s.Z[0] - c[2], z1: s.Z[1] - c[2], gone: s.Shut != nil}
		for _, r := range s.Shut {
			th.gone = th.gone && !(r[0] <= f && f <= r[1])
		}
		for _, v := range s.Polygon {
			th.poly = append(th.poly, [2]float64{v[0] - c[0], v[1] - c[1]})
		}
		w.things = append(w.things, th)
	}
	return w
}

// cast sends nx x ny rays through the frame: how many would meet each body, and
// how many meet it before anything else.
func (w *world) cast(nx, ny int) (hits, open []int) {
	hits, open = make([]int, w.bodies), make([]int, w.bodies)
	c := w.cam.Track[w.f]
	sp, cp := math.Sincos(c[3] * math.Pi / 180)
	st, ct := math.Sincos(c[4] * math.Pi / 180)
	for j := range ny {
		for i := range nx {
			x := ((float64(i)+0.5)/float64(nx) - 0.5) * w.cam.Sensor[0] / c[5]
			y := ((float64(j)+0.5)/float64(ny) - 0.5) * w.cam.Sensor[1] / c[5]
			ahead := ct - y*st
			d := [3]float64{ahead*cp + x*sp, ahead*sp - x*cp, st + y*ct}
			first, which := math.Inf(1), -1
			for k := range w.things {
				if t, ok := w.things[k].meet(d); ok {
					if k < w.bodies {
						hits[k]++
					}
					if t < first {
						first, which = t, k
					}
				}
			}
			if which >= 0 && which < w.bodies {
				open[which]++
			}
		}
	}
	return hits, open
}

// meet is where a ray from the origin enters: the overlap of the stretch within
// the footprint and that between the faces.
func (t *thing) meet(d [3]float64) (float64, bool) {
	if t.gone {
		return 0, false
	}
	from, to := 0.0, math.Inf(1)
	if t.r > 0 {
		a := d[0]*d[0] + d[1]*d[1]
		b := (t.x*d[0] + t.y*d[1]) / a
		k := b*b - (t.x*t.x+t.y*t.y-t.r*t.r)/a
		if k < 0 {
			return 0, false
		}
		from, to = b-math.Sqrt(k), b+math.Sqrt(k)
	} else {
		for i := range t.poly { // all convex and counter-clockwise
			p, q := t.poly[i], t.poly[(i+1)%len(t.poly)]
			nx, ny := q[1]-p[1], p[0]-q[0]
			clip(&from, &to, nx*d[0]+ny*d[1], nx*p[0]+ny*p[1])
		}
	}
	clip(&from, &to, d[2], t.z1)
	clip(&from, &to, -d[2], -t.z0)
	return from, from < to && to > 0
}

// clip keeps the t with v*t <= c.
func clip(from, to *float64, v, c float64) {
	switch {
	case v > 0:
		*to = min(*to, c/v)
	case v < 0:
		*from = max(*from, c/v)
	case c < 0:
		*to = -1
	}
}
