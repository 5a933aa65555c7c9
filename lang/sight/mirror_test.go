package sight

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// reflected casts nx x ny rays through the frame, turns those that meet a mirror
// back, and counts what they then meet: by body, the rays that would meet it if
// nothing else were there, and those that do.
func (c *caster) reflected(camera, mirror, nx, ny int) (hits, open []int) {
	hits, open = make([]int, len(c.bodies)), make([]int, len(c.bodies))
	cam, m := &c.s.Cameras[camera], c.s.Mirrors[mirror]
	v := cam.Track[0]
	if len(cam.Track) > 1 {
		v = cam.Track[c.f]
	}
	k := newCastCamera(cam, v)
	own := func(i int) bool {
		for _, o := range cam.Own {
			if o.Body == c.s.Bodies[i].Name && o.From <= c.f && c.f <= o.To {
				return true
			}
		}
		return c.bodies[i].holds(k.o)
	}
	along := m.B.Sub(m.A)
	n := along.Left().Unit()
	if k.o.Floor().Sub(m.A).Dot(n) <= 0 {
		return hits, open
	}
	for j := range ny {
		for i := range nx {
			r := k.through((float64(i)+0.5)/float64(nx), (float64(j)+0.5)/float64(ny))
			down := r.d.Floor().Dot(n)
			if down >= 0 {
				continue
			}
			t := m.A.Sub(r.o.Floor()).Dot(n) / down
			at := r.o.Add(r.d.Mul(t))
			s := at.Floor().Sub(m.A).Dot(along) / along.Dot(along)
			if s < 0 || s > 1 || at.Z < m.Z[0] || at.Z > m.Z[1] {
				continue
			}
			blocked := c.blocked(r, t*(1-1e-9), -1, own)
			turned := r.d.Floor().Sub(n.Mul(2 * down))
			back := ray{at, geom.Vec3{X: turned.X, Y: turned.Y, Z: r.d.Z}}
			for b := range c.bodies {
				tb := c.bodies[b].hit(back)
				if math.IsInf(tb, 1) {
					continue
				}
				hits[b]++
				if !blocked && !c.blocked(back, tb, b, func(int) bool { return false }) {
					open[b]++
				}
			}
		}
	}
	return hits, open
}

// TestMirrorsAgainstRays compares what mirrors show with rays turned back at them.
func TestMirrorsAgainstRays(t *testing.T) {
	const nx, ny, frames = 200, 108, 1
	compared, covered := 0, 0
	for k, kind := range randomKinds[:6] {
		for seed := range 8 {
			r := rand.New(rand.NewPCG(uint64(k), uint64(100+seed)))
			s := randomScene(r, frames, 1, 8)
			kind.change(r, s)
			for range 2 {
				v := s.Cameras[0].Track[0] // before the lens, turned to it more or less
				lens := geom.Vec{X: v.X, Y: v.Y}
				middle := lens.Add(geom.Polar(2+r.Float64()*5, v.Pan+r.Float64()*0.6-0.3))
				half := lens.Sub(middle).Unit().Left().Rotate(r.Float64()*1.6 - 0.8).Mul(-0.6 - r.Float64())
				a, b := middle.Sub(half), middle.Add(half)
				s.Mirrors = append(s.Mirrors, Mirror{Name: "glass", A: a, B: b, Z: [2]float64{r.Float64(), 1.5 + r.Float64()}})
			}
			report := see(t, s)
			for f := range units.Frame(frames) {
				c := newCaster(s, f)
				for m := range s.Mirrors {
					hits, open := c.reflected(0, m, nx, ny)
					for b := range s.Bodies {
						got, in := reflection(report, m, b, f)
						if hits[b] == 0 {
							assert.LessOrEqual(t, got.Share, 0.02, "%s seed %d frame %d mirror %d body %d: no ray meets it", kind.name, seed, f, m, b)
							continue
						}
						assert.True(t, in, "%s seed %d frame %d mirror %d body %d: %d rays meet it", kind.name, seed, f, m, b, hits[b])
						if hits[b] < 100 {
							continue
						}
						want := float64(open[b]) / float64(hits[b])
						assert.InDelta(t, want, got.Visible, 0.02+2/math.Sqrt(float64(hits[b]))*0.3, "%s seed %d frame %d mirror %d body %d: %d of %d", kind.name, seed, f, m, b, open[b], hits[b])
						hidden := 0.0
						for _, by := range report.CoveringIn(m, 0, b, f) {
							hidden += by.Share
						}
						assert.InDelta(t, 1-got.Visible, hidden, 0.04, "%s seed %d frame %d mirror %d body %d: what covers it", kind.name, seed, f, m, b)
						compared++
						if want < 0.99 {
							covered++
						}
					}
				}
			}
		}
	}
	t.Logf("%d compared, %d partly covered", compared, covered)
	assert.Greater(t, compared, 40)
	assert.Greater(t, covered, 10)
}

func reflection(r *Report, mirror, body int, f units.Frame) (Moment, bool) {
	for i := range r.Reflected {
		run := &r.Reflected[i]
		if run.Mirror == mirror && run.Body == body && run.From <= f && f <= run.To {
			return run.At(f), true
		}
	}
	return Moment{}, false
}

// TestOwnReflection: a lens that looks into a mirror sees the operator it leaves
// out of its own view.
func TestOwnReflection(t *testing.T) {
	s := still(View{Z: 1.5, Focal: 20}, person("operator", -0.4, 0, 0.23, 1.8))
	s.Cameras[0].Own = []Own{{"operator", Frames{0, 0}}}
	s.Mirrors = []Mirror{{Name: "glass", A: geom.Vec{X: 3, Y: -1}, B: geom.Vec{X: 3, Y: 1}, Z: [2]float64{0, 2}}}
	// The wall it hangs on does not hide it.
	s.Solids = []Solid{box("wall", "wall", 3, -4, 3.2, 4, 0, 3)}
	report := see(t, s)
	assert.Empty(t, report.Sight)
	assert.Len(t, report.Reflected, 1)
	assert.Equal(t, float32(1), report.Reflected[0].Visible[0])
	// From behind it nothing is seen in it.
	s.Cameras[0].Track[0] = View{X: 6, Z: 1.5, Pan: math.Pi, Focal: 20}
	assert.Empty(t, see(t, s).Reflected)
}

func TestGlow(t *testing.T) {
	s := still(View{Z: 1.5, Focal: 24})
	s.Glows = []Glow{{Name: "window", A: geom.Vec{X: 4, Y: -1}, B: geom.Vec{X: 4, Y: 1}, Z: [2]float64{1, 2}, Nits: 4000}}
	s.Frames = 4
	s.Cameras[0].Rolls = []Frames{{0, 3}}
	s.Cameras[0].Track = []View{
		{Z: 1.5, Focal: 24},                                                  // straight at it
		{Z: 1.5, Focal: 24, Pan: math.Pi / 2},                                // away from it
		{Z: 1.5, Focal: 24, Pan: math.Pi},                                    // back to it
		{Z: 1.5, Focal: 24, Pan: math.Atan(0.25) + math.Atan(12.0/24) + 0.1}, // just past its edge
	}
	s.Solids = []Solid{box("post", "pillar", 2, -3, 2.2, 0, 0, 3)}
	g := see(t, s).Glares
	assert.Len(t, g, 1)
	// 2 m by 1 m at 4 m, the frame 4 m by 3 m there; the post's inner edge lies on
	// the axis and hides half of it.
	assert.InDelta(t, 100*2.0/12/2, g[0].Share[0], 1e-4)
	assert.InDelta(t, 0.5, g[0].Open[0], 1e-6)
	assert.InDelta(t, 1, g[0].Facing[0], 1e-6)
	assert.Zero(t, g[0].Off[0])
	// A quarter turn away its corners at (4, 1) lie 4 - 1/2 past the side of the
	// frame, x = y/2, and half a metre above and below the lens.
	assert.InDelta(t, math.Asin(3.5/math.Sqrt(1.25)/math.Sqrt(16+1+0.25))*180/math.Pi, g[0].Off[1], 0.01)
	assert.Zero(t, g[0].Share[1])
	assert.InDelta(t, 0.5, g[0].Open[1], 0.01)
	assert.Greater(t, g[0].Off[2], float32(90))
	assert.InDelta(t, math.Asin(math.Sin(0.1)*math.Sqrt(17/17.25))*180/math.Pi, g[0].Off[3], 0.01)
	// From behind it faces away.
	s.Glows[0].A, s.Glows[0].B = s.Glows[0].B, s.Glows[0].A
	assert.InDelta(t, -1, see(t, s).Glares[0].Facing[0], 1e-6)
}
