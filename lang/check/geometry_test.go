package check

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/bind"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/safety"
)

func played(t testing.TB, text string) *Pass {
	t.Helper()
	files, found := bind.Load(func(string) (string, error) { return text, nil }, "test.take")
	require.Empty(t, found.Sorted())
	plan, found := bind.Bind(files)
	require.Empty(t, found.Sorted())
	tracks := motion.Resolve(context.Background(), plan)
	return &Pass{Ctx: context.Background(), Plan: plan, Clock: tracks.Clock, Tracks: tracks}
}

func turned(t *rapid.T, label string) geom.Polygon {
	at := geom.Vec{X: rapid.Float64Range(-2, 2).Draw(t, label+" x"), Y: rapid.Float64Range(-2, 2).Draw(t, label+" y")}
	l, w := rapid.Float64Range(0.2, 3).Draw(t, label+" long"), rapid.Float64Range(0.2, 3).Draw(t, label+" wide")
	return geom.Rectangle(geom.Vec{X: -l / 2, Y: -w / 2}, geom.Vec{X: l / 2, Y: w / 2}).Placed(at, rapid.Float64Range(-4, 4).Draw(t, label+" turn"))
}

// Two boxes overlap just where they share ground, either way round; moved apart
// by their overlap along the right direction they touch, so by no less.
func TestOverlapIsWhatPartsThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := turned(t, "p"), turned(t, "q")
		deep := overlap(p, q)
		assert.InDelta(t, deep, overlap(q, p), 1e-9)
		if apart := p.DistanceTo(q); deep > 1e-9 {
			assert.Zero(t, apart)
		} else if deep < -1e-9 {
			assert.Positive(t, apart)
			assert.LessOrEqual(t, -deep, apart+1e-9, "the gap along a normal is no more than the distance")
		}
		if deep <= 0 {
			return
		}
		least := math.Inf(1) // of ways out, in all directions
		for i := range 720 {
			dir := geom.Polar(1, 2*math.Pi*float64(i)/720)
			low, high := 0.0, 20.0
			for range 40 {
				mid := (low + high) / 2
				moved := make(geom.Polygon, len(q))
				for k, v := range q {
					moved[k] = v.Add(dir.Mul(mid))
				}
				if overlap(p, moved) > 0 {
					low = mid
				} else {
					high = mid
				}
			}
			least = min(least, high)
		}
		assert.InDelta(t, deep, least, 0.01*(1+deep), "found by trying directions")
	})
}

// What lies across a way is what points of the polygon within the slab say.
func TestAcrossBoundsWhatIsBeside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := turned(t, "p")
		at := geom.Vec{X: rapid.Float64Range(-3, 3).Draw(t, "x"), Y: rapid.Float64Range(-3, 3).Draw(t, "y")}
		dir := geom.Polar(1, rapid.Float64Range(-4, 4).Draw(t, "way"))
		half := rapid.Float64Range(0.05, 0.5).Draw(t, "half")
		least, most, ok := across(p, at, dir, half)
		for i := range 30 {
			for k := range 30 {
				a := p[0].Lerp(p[1], float64(i)/29)
				b := p[3].Lerp(p[2], float64(i)/29)
				v := a.Lerp(b, float64(k)/29).Sub(at)
				if math.Abs(dir.Dot(v)) <= half {
					assert.True(t, ok)
					assert.GreaterOrEqual(t, dir.Cross(v), least-1e-9)
					assert.LessOrEqual(t, dir.Cross(v), most+1e-9)
				}
			}
		}
	})
}

// Nothing is skipped between two looks: the meetings of two who walk anyhow are
// those that every frame shows.
func TestLooksMissNothing(t *testing.T) {
	p := played(t, `take "Many ways"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina
  performer otto
  performer nora
beat "All"
  mina walks from (0, 0) via (3, 4), (6, -2), (2, -3) to (0, 3) at 1.5 m/s
  otto walks from (5, 5) via (0, 0), (4, -4) to (6, 6) at 1.9 m/s
  nora runs from (-5, 0) to (9, 1) at 5 m/s
  nora runs to (-5, 3) at 5 m/s
  van drives from (-20, 2) to (20, 2) at 4 m/s
`)
	m := p.moving()
	for i, a := range m.list {
		for _, b := range m.list[i+1:] {
			got := map[int]bool{}
			m.meetings(a, b, 0.5, func(frame int, _, _ motion.Pose) { got[frame] = true })
			for f := range m.frames {
				if m.at(a, f).Point().Dist(m.at(b, f).Point()) <= a.reach+b.reach+0.5 {
					assert.True(t, got[f], "%s and %s at frame %d", nameOf(a.thing), nameOf(b.thing), f)
				}
			}
		}
	}
}

// The numbers in the explanation of close-pass: AASHTO's formula.
func TestStoppingDistancesOfTheExplanation(t *testing.T) {
	assert.InDelta(t, 8.8, float64(safety.StoppingDistance(3, safety.Dry)), 0.05)
	assert.InDelta(t, 16.2, float64(safety.StoppingDistance(5, safety.Dry)), 0.05)
}

func TestDoorsAreShutWhenTheLinesSaySo(t *testing.T) {
	p := played(t, `take "Doors"
  rate 24 fps
set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 4 m to 5 m high 2.1 m shut
  door side on street 8 m to 9 m high 2.1 m open
people
  performer mina
beat "All" for 20 s
  mina stands at (4.5, -1)
  door dock opens starting +3 s
  door dock shuts starting +10 s
  door side shuts starting +5 s
`)
	for _, o := range p.obstacles() {
		if o.Door == nil {
			continue
		}
		switch o.Door.Name {
		case "dock":
			require.Len(t, o.shut, 2)
			assert.Equal(t, 0.0, float64(o.shut[0].from))
			assert.Equal(t, 4.5, float64(o.shut[0].to), "open when it has opened: 1.5 s")
			assert.Equal(t, 10.0, float64(o.shut[1].from))
			assert.True(t, math.IsInf(float64(o.shut[1].to), 1))
			assert.True(t, o.there(3) && !o.there(5) && o.there(12))
			at, ok := o.opens(1)
			assert.True(t, ok)
			assert.Equal(t, 4.5, float64(at))
			_, ok = o.opens(12)
			assert.False(t, ok)
		case "side":
			require.Len(t, o.shut, 1)
			assert.Equal(t, 5.0, float64(o.shut[0].from))
		}
	}
}
