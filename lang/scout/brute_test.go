package scout

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/bind"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/staging"
	"longhand/lang/units"
)

// taken works a plan out as far as places need it.
func taken(t testing.TB, text string) Take {
	t.Helper()
	files, found := bind.Load(func(string) (string, error) { return text, nil }, "plan.take")
	require.Zero(t, found.Errors(), "%v", found.Sorted())
	p, bag := bind.Bind(files)
	require.Zero(t, bag.Errors(), "%v\n%s", bag.Sorted(), text)
	tracks := motion.Resolve(context.Background(), p)
	return Take{Plan: p, Tracks: tracks, Stage: staging.Build(p, tracks)}
}

// hall is a random hall with things to stand behind, one who walks and one who
// stands, and, if asked for, a camera that looks on.
func hall(seed uint64, looksOn bool) string {
	r := rand.New(rand.NewPCG(1931, seed))
	var b strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	in := func(lo, hi float64) float64 { return math.Round((lo+r.Float64()*(hi-lo))*100) / 100 }
	p("take \"Hall %d\"\n  rate 24 fps\n  aspect 1.85\nset \"Hall\"", seed)
	p("  wall south (0, 0) (9, 0) high 3 m thick 20 mm\n  wall east (9, 0) (9, 7) high 3 m thick 20 mm")
	p("  wall north (9, 7) (0, 7) high 3 m thick 20 mm\n  wall west (0, 7) (0, 0) high 3 m thick 20 mm")
	for i := range 3 {
		x, y := in(2, 7), in(1.2, 2.2)
		if i == 2 {
			y = in(4.8, 5.4)
		}
		p("  block block-%d (%.2f, %.2f) (%.2f, %.2f) (%.2f, %.2f) (%.2f, %.2f) high %.2f m", i+1, x-0.4, y-0.25, x+0.4, y-0.25, x+0.4, y+0.25, x-0.4, y+0.25, in(0.8, 2.4))
	}
	p("  pillar post (%.2f, %.2f) round 0.3 m high 3 m", in(3, 6), in(2.4, 2.6))
	p("kit\n  camera A sensor 24.9 mm x 14 mm\n  lens w28 28 mm stops T2 to T22\n  rig legs sticks\npeople\n  performer mina height %.2f m\n  performer otto height %.2f m\n  crew ida", in(1.55, 1.7), in(1.75, 1.9))
	p("beat \"On\"\n  mina walks from (%.2f, 4) to (%.2f, 4) at 1 m/s\n  otto stands at (%.2f, 3.3)", in(1.5, 2.5), in(5.5, 7), in(3, 6))
	if looksOn {
		p("  legs stands at (1.5, 6)\n  A on legs with ida up 1.5 m\n  A takes w28 T2.8\n  A sees mina")
	} else {
		p("  otto says \"Nobody looks on.\"")
	}
	return b.String()
}

func frame(t testing.TB) optics.Frame {
	f, err := optics.NewFrame(24.9, 14, 1, 1.85)
	require.NoError(t, err)
	return f
}

func all(t Take) sight.Frames {
	return sight.Frames{From: 0, To: units.Frame(t.Stage.Scene.Frames - 1)}
}

// blocked says whether anything upright stands between two points: each footprint
// is cut by the way on the floor, and the way's height compared with its own. It
// shares nothing with sight.
func blocked(scene *sight.Scene, skipSolid string, skip map[int]bool, f units.Frame, from, to geom.Vec3) bool {
	cuts := func(ring []geom.Vec, z0, z1 float64) bool {
		// The part of the way over a convex footprint (Cyrus and Beck, 1978).
		lo, hi := 0.0, 1.0
		d := to.Floor().Sub(from.Floor())
		area := 0.0
		for i, a := range ring {
			area += a.Cross(ring[(i+1)%len(ring)])
		}
		for i, a := range ring {
			e := ring[(i+1)%len(ring)].Sub(a)
			n := geom.Vec{X: e.Y, Y: -e.X} // outward of a counter-clockwise ring
			if area < 0 {
				n = n.Mul(-1)
			}
			num, den := a.Sub(from.Floor()).Dot(n), d.Dot(n)
			switch {
			case den == 0:
				if num < 0 {
					return false
				}
			case den > 0:
				hi = min(hi, num/den)
			default:
				lo = max(lo, num/den)
			}
		}
		if lo >= hi {
			return false
		}
		za, zb := from.Z+(to.Z-from.Z)*lo, from.Z+(to.Z-from.Z)*hi
		return max(za, zb) > z0 && min(za, zb) < z1
	}
	for i := range scene.Solids {
		if s := &scene.Solids[i]; s.Name != skipSolid && cuts(s.Polygon, s.Z[0], s.Z[1]) {
			return true
		}
	}
	for i := range scene.Bodies {
		b := &scene.Bodies[i]
		p := b.At(f)
		if skip[i] || p.Height <= 0 {
			continue
		}
		ring := make([]geom.Vec, 0, 24)
		if b.Radius > 0 {
			for k := range 24 {
				ring = append(ring, geom.Vec{X: p.X, Y: p.Y}.Add(geom.Polar(b.Radius, float64(k)*math.Pi/12)))
			}
		} else {
			for _, v := range b.Polygon {
				ring = append(ring, v.Rotate(p.Heading).Add(geom.Vec{X: p.X, Y: p.Y}))
			}
		}
		if cuts(ring, p.Z, p.Z+p.Height) {
			return true
		}
	}
	return false
}

// byRays is what a lens sees of a standing body at a frame, in rays: the part, 0
// to 1, of its outline within the frame that nothing hides.
func byRays(a *Ask, wall string, from geom.Vec3, v sight.View, body int, f units.Frame) float64 {
	scene := a.Stage.Scene
	b := &scene.Bodies[body]
	p := b.At(f)
	view := optics.View{At: from, Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Focal: a.Focal}
	across := geom.Vec{X: p.X, Y: p.Y}.Sub(from.Floor()).Unit().Left()
	in, shows := 0, 0
	for i := range 9 {
		for k := range 24 {
			q := geom.Vec{X: p.X, Y: p.Y}.Add(across.Mul(b.Radius * (float64(2*i-8) / 9))).At(p.Z + p.Height*(float64(k)+0.5)/24)
			at, ok := view.Project(q)
			if !ok || !a.Frame.Holds(at) {
				continue
			}
			in++
			if !blocked(scene, wall, map[int]bool{body: true}, f, from, q) {
				shows++
			}
		}
	}
	if in == 0 {
		return 0
	}
	return float64(shows) / float64(in)
}

// TestAgainstBruteForce: what is said of a place is what rays find, and no place of
// a dense grid is much better than the best that is listed.
func TestAgainstBruteForce(t *testing.T) {
	for seed := range uint64(3) {
		take := taken(t, hall(seed, false))
		ask := Ask{Take: take, Frame: frame(t), Focal: 28, Stop: 2.8, Sees: []plan.Thing{take.Plan.People[0], take.Plan.People[1]}, Frames: all(take), Walls: take.Plan.Set.Walls[:1], Count: 4}
		r, err := Cameras(context.Background(), ask)
		require.NoError(t, err)
		require.NotEmpty(t, r.Places, "seed %d", seed)
		c := ask.cut(ask.sampled(6))
		rays := func(s *spot) (sees, tall float64) {
			for k, f := range c.frames {
				v := ask.aim(c, s.pupil, units.Frame(k))
				least, short := 1.0, math.Inf(1)
				for i, bodies := range c.targets {
					p := c.scene.Bodies[bodies[0]].At(units.Frame(k))
					body := ask.Stage.Body(ask.Sees[i])[0]
					see := 0.0
					if ask.holds(v, p, true) {
						see = byRays(&ask, s.Wall.Name, s.pupil, v, body, f)
					}
					least = min(least, see)
					d := math.Hypot(p.X-s.pupil.X, p.Y-s.pupil.Y)
					short = min(short, p.Height*28/(d*float64(ask.Frame.Height)))
				}
				sees += least / float64(len(c.frames))
				tall += short / float64(len(c.frames))
			}
			return sees, tall
		}
		for _, p := range r.Places {
			assert.True(t, p.Checked)
			s, ok := ask.onWall(c, p.Wall, float64(p.Along), float64(p.Up))
			require.True(t, ok)
			sees, tall := rays(&s)
			assert.InDelta(t, sees, p.Sees, 0.08, "seed %d: %s", seed, p.In(units.Metric))
			assert.InDelta(t, tall, p.Tall, 0.03, "seed %d: %s", seed, p.In(units.Metric))
		}
		best, top := 0.0, spot{}
		for x := 0.3; x < 8.8; x += 0.4 {
			for z := 0.3; z < 2.8; z += 0.4 {
				s, ok := ask.onWall(c, ask.Walls[0], x, z)
				if !ok || ask.needed(&s, ask.views(c, &s)) > mostHole {
					continue
				}
				sees, tall := rays(&s)
				if by := score(sees, 0, tall); by > best {
					best, top = by, s
				}
			}
		}
		// What rays at a few frames like best, at every frame.
		require.NoError(t, ask.exact(context.Background(), ask.cut(ask.sampled(1<<20)), nil, &top))
		assert.GreaterOrEqual(t, r.Places[0].Score, top.Score-0.02, "seed %d: %s", seed, top.In(units.Metric))
	}
}

// TestExposureAgainstBruteForce: for how long another camera has a hole in view is
// what rays from that camera to the hole's edges and middle find, frame by frame.
func TestExposureAgainstBruteForce(t *testing.T) {
	some := 0
	for seed := range uint64(3) {
		take := taken(t, hall(seed, true))
		ask := Ask{Take: take, Frame: frame(t), Focal: 28, Stop: 2.8, Sees: []plan.Thing{take.Plan.People[0]}, Frames: all(take), Walls: Walls(&take.Plan.Set)}
		c := ask.cut(ask.sampled(1 << 20))
		for _, w := range ask.Walls {
			for _, along := range []float64{1.2, 3.1, 5.3} {
				s, ok := ask.onWall(c, w, along, 1.4)
				if !ok {
					continue
				}
				s.Hole = 150
				holed, plugs := ask.holed(c, s.hole())
				require.NoError(t, ask.expose(context.Background(), holed, &s, plugs))
				cam := &take.Stage.Scene.Cameras[0]
				n := 0
				for f := range units.Frame(take.Stage.Scene.Frames) {
					v := cam.At(f)
					view := optics.View{At: geom.Vec3{X: v.X, Y: v.Y, Z: v.Z}, Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Focal: 28}
					own := map[int]bool{}
					for _, o := range cam.Own {
						if i, ok := take.Stage.Scene.Body(o.Body); ok {
							own[i] = true
						}
					}
					seen := false
					for i := range 21 {
						for k := range 21 {
							q := s.At.Add(s.normal.Mul(0.011)).Add(s.normal.Left().Mul(0.075 * float64(i-10) / 10.5)).At(1.4 + 0.075*float64(k-10)/10.5)
							at, ok := view.Project(q)
							seen = seen || ok && ask.Frame.Holds(at) && !blocked(take.Stage.Scene, w.Name, own, f, view.At, q)
						}
					}
					if seen {
						n++
					}
				}
				want := float64(n) / 24
				assert.InDelta(t, want, float64(s.Seen), 0.13, "seed %d: %s", seed, s.In(units.Metric))
				if n > 0 && n < take.Stage.Scene.Frames {
					some++
				}
			}
		}
	}
	assert.Positive(t, some, "some holes are in view for part of the time")
}
