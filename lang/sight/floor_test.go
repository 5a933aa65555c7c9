package sight

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// floorSeen asks about one point over the floor by casting a ray to it.
func (c *caster) floorSeen(camera int, p geom.Vec3) bool {
	cam := &c.s.Cameras[camera]
	v := cam.Track[0]
	if len(cam.Track) > 1 {
		v = cam.Track[c.f]
	}
	k := newCastCamera(cam, v)
	x, y, depth := k.at(p)
	if depth <= 0 || x < 0 || x > 1 || y < 0 || y > 1 {
		return false
	}
	r := ray{k.o, p.Sub(k.o)}
	for _, i := range c.solids {
		s := &c.s.Solids[i]
		if r.o.Z > s.Z[0] && r.o.Z < s.Z[1] && inPolygon(r.o.Floor(), s.Polygon) {
			continue
		}
		if hitPrism(r, s.Polygon, s.Z[0], s.Z[1]) <= 1 {
			return false
		}
	}
	return true
}

// TestFloorAgainstRays compares every cell with a ray to it at every frame.
func TestFloorAgainstRays(t *testing.T) {
	const frames = 4
	for k, kind := range randomKinds[:6] {
		t.Run(kind.name, func(t *testing.T) {
			t.Parallel()
			seed := 1
			r := rand.New(rand.NewPCG(uint64(k), uint64(seed)))
			s := randomScene(r, frames, 2, 2)
			kind.change(r, s)
			// Bounds off the walls' own lines: a cell's middle on a wall's face is
			// neither seen nor hidden.
			o := FloorOptions{Cell: 0.31, Bounds: [2]geom.Vec{{X: -7.013, Y: -7.017}, {X: 7, Y: 7}}, Times: true}
			m, err := Floor(context.Background(), s, o)
			require.NoError(t, err)
			wrong, seen := 0, 0
			for row := range m.Rows {
				for column := range m.Columns {
					p := m.Middle(column, row).At(0)
					first, last := -1, -1
					for f := range units.Frame(frames) {
						c := newCaster(s, f)
						for cam := range s.Cameras {
							if c.floorSeen(cam, p) {
								if first < 0 {
									first = int(f)
								}
								last = int(f)
							}
						}
					}
					got0, got1, ok := m.SeenFrom(column, row)
					if ok != (first >= 0) || ok && (int(got0) != first || int(got1) != last) {
						wrong++
					}
					if first >= 0 {
						seen++
					}
				}
			}
			assert.Zero(t, wrong, "%s, seed %d: of %d x %d cells", kind.name, seed, m.Columns, m.Rows)
			assert.Positive(t, seen)
		})
	}
}

// TestStandingAgainstRays compares cells up to a person's height with rays to
// points all the way up.
func TestStandingAgainstRays(t *testing.T) {
	const frames, up, again = 3, 60, 4000
	for k, kind := range randomKinds[:6] {
		t.Run(kind.name, func(t *testing.T) {
			t.Parallel()
			r := rand.New(rand.NewPCG(uint64(k), 77))
			s := randomScene(r, frames, 1, 1)
			kind.change(r, s)
			o := FloorOptions{Cell: 0.41, Height: Standing, Bounds: [2]geom.Vec{{X: -7.013, Y: -7.017}, {X: 7, Y: 7}}}
			m, err := Floor(context.Background(), s, o)
			require.NoError(t, err)
			missed, extra, seen := 0, 0, 0
			for row := range m.Rows {
				for column := range m.Columns {
					p := m.Middle(column, row)
					cast := func(up int) (any bool) {
						for f := units.Frame(0); f < frames && !any; f++ {
							c := newCaster(s, f)
							for i := 0; i < up && !any; i++ {
								any = c.floorSeen(0, p.At(Standing*(float64(i)+0.5)/float64(up)))
							}
						}
						return any
					}
					any := cast(up)
					if !any && m.Seen(column, row) { // a glimpse between the rays?
						any = cast(again)
					}
					switch {
					case any && !m.Seen(column, row):
						missed++
					case !any && m.Seen(column, row):
						extra++
					}
					if any {
						seen++
					}
				}
			}
			assert.Zero(t, missed, "%s: seen by a ray, called unseen", kind.name)
			assert.LessOrEqual(t, extra, 1, "%s: of %d seen, by no ray", kind.name, seen)
			assert.Positive(t, seen)
		})
	}
}

// TestFloorZones: one camera looks along a wall; behind it nobody is seen until
// the camera turns round.
func TestFloorZones(t *testing.T) {
	const frames = 10
	s := &Scene{Rate: units.Rate{Num: 24, Den: 1}, Frames: frames, Aspect: 1.85}
	s.Solids = []Solid{{Name: "wall", Kind: "wall", Z: [2]float64{0, 3},
		Polygon: []geom.Vec{{X: 0, Y: -0.1}, {X: 4, Y: -0.1}, {X: 4, Y: 0.1}, {X: 0, Y: 0.1}}}}
	c := Camera{Name: "a", Width: 24, Height: 13, Rolls: []Frames{{0, frames - 1}}}
	for f := range frames {
		v := View{X: 2, Y: -3, Z: 1.5, Pan: math.Pi / 2, Tilt: -0.3, Focal: 10}
		if f >= 6 {
			v.Y, v.Pan = 3, -math.Pi/2 // the other side of the wall
		}
		c.Track = append(c.Track, v)
	}
	s.Cameras = []Camera{c}
	o := FloorOptions{Frames: []Frames{{0, 2}}, Bounds: [2]geom.Vec{{X: 1, Y: -2}, {X: 3, Y: 2}}}
	m, err := Floor(context.Background(), s, o)
	require.NoError(t, err)
	zones := m.Zones(0.5)
	require.Len(t, zones, 1)
	z := zones[0]
	assert.InDelta(t, 2*1.9, z.Area, 1e-9)          // the strip behind the wall
	assert.InDelta(t, z.Area+2*0.2, m.Area(), 1e-9) // and what is too near the lens
	assert.EqualValues(t, 0, z.Opens)
	assert.EqualValues(t, 5, z.Closes)
	assert.InDelta(t, 2, z.Middle.X, 1e-9)
	assert.InDelta(t, 1.05, z.Middle.Y, 1e-9)
	assert.InDelta(t, 2, z.Max.Y, 1e-9)
	assert.Greater(t, z.Room, 0.85)
	assert.True(t, m.Taken(5, 20))
}
