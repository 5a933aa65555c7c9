package sight

import (
	"context"
	"math"
	"math/rand/v2"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/units"
)

func see(t testing.TB, s *Scene) *Report {
	t.Helper()
	r, err := See(context.Background(), s, Options{})
	require.NoError(t, err)
	return r
}

// TestAgainstRays compares every fraction with dense ray casting, scene by
// random scene of every kind.
func TestAgainstRays(t *testing.T) {
	const scenes, frames, n = 5, 3, 150
	for k, kind := range randomKinds {
		t.Run(kind.name, func(t *testing.T) {
			t.Parallel()
			var errs []float64
			for seed := range scenes {
				r := rand.New(rand.NewPCG(uint64(k), uint64(seed)))
				s := randomScene(r, frames, 2, 9)
				kind.change(r, s)
				report := see(t, s)
				for f := range units.Frame(frames) {
					c := newCaster(s, f)
					for cam := range s.Cameras {
						for b := range s.Bodies {
							errs = append(errs, compareWithRays(t, report, c, cam, b, n, seed)...)
						}
					}
				}
			}
			sort.Float64s(errs)
			require.NotEmpty(t, errs)
			t.Logf("%d fractions: worst error %.4f, 99th percentile %.4f", len(errs), errs[len(errs)-1], errs[len(errs)*99/100])
			assert.Less(t, errs[len(errs)-1], 0.02)
		})
	}
}

// TestReferenceLoadAgainstRays does the same for some frames of the take the
// benchmarks measure.
func TestReferenceLoadAgainstRays(t *testing.T) {
	const n, step = 80, 4801
	for _, walled := range []bool{true, false} {
		t.Run(variant(walled), func(t *testing.T) {
			t.Parallel()
			s := referenceLoad(walled).scene()
			st := newStage(s)
			var errs []float64
			for f := units.Frame(0); int(f) < s.Frames; f += step {
				c := newCaster(s, f)
				for cam := range s.Cameras {
					for _, got := range st.at(cam, f) {
						want := c.rays(cam, got.Body, n)
						if want.hits > 2000 {
							errs = append(errs, math.Abs(got.Visible-want.visible))
						}
						if want.open > 0 {
							assert.Positive(t, got.Visible, "frame %d camera %d body %d", f, cam, got.Body)
						}
					}
				}
			}
			sort.Float64s(errs)
			require.NotEmpty(t, errs)
			t.Logf("%d fractions: worst error %.4f, 99th percentile %.4f", len(errs), errs[len(errs)-1], errs[len(errs)*99/100])
			assert.Less(t, errs[len(errs)-1], 0.02)
		})
	}
}

// TestChords: over the take that the benchmarks measure, chords as coarse as they
// usually are keep close to ones so fine that they hardly leave the curve.
func TestChords(t *testing.T) {
	const step = 17
	for _, walled := range []bool{true, false} {
		t.Run(variant(walled), func(t *testing.T) {
			t.Parallel()
			s := referenceLoad(walled).scene()
			l := newLooker(newStage(s))
			var errs []float64
			for f := units.Frame(0); int(f) < s.Frames; f += step {
				for cam := range s.Cameras {
					if !l.frame(cam, f) {
						continue
					}
					for i := l.nset; i < l.n; i++ {
						got := l.measure(&l.items[i])
						l.cover.finer = true
						want := l.measure(&l.items[i])
						l.cover.finer = false
						if want.whole > 1e-4*l.eye.area {
							errs = append(errs, math.Abs(got.open/got.whole-want.open/want.whole))
						}
						assert.Equal(t, want.open > 0, got.open > 0, "frame %d camera %d item %d", f, cam, l.items[i].ref)
					}
				}
			}
			sort.Float64s(errs)
			require.NotEmpty(t, errs)
			t.Logf("%d fractions: worst error %.4f, 99th percentile %.4f", len(errs), errs[len(errs)-1], errs[len(errs)*99/100])
			assert.Less(t, errs[len(errs)-1], 0.02)
			assert.Less(t, errs[len(errs)*99/100], 0.003)
		})
	}
}

func compareWithRays(t *testing.T, report *Report, c *caster, cam, b, n, seed int) []float64 {
	got, in := report.Moment(cam, b, c.f)
	want := c.rays(cam, b, n)
	if want.hits == 0 {
		if in && got.Share > 0.01 {
			t.Errorf("seed %d frame %d camera %d body %d: share %.4f, no ray meets it", seed, c.f, cam, b, got.Share)
		}
		return nil
	}
	if !in {
		t.Errorf("seed %d frame %d camera %d body %d: not in frame, %d rays meet it", seed, c.f, cam, b, want.hits)
		return nil
	}
	if want.open > 0 && got.Visible == 0 {
		t.Errorf("seed %d frame %d camera %d body %d: hidden, %d of %d rays meet it first", seed, c.f, cam, b, want.open, want.hits)
	}
	if want.hits < 200 { // too few rays to say how much
		return nil
	}
	d := math.Abs(got.Visible - want.visible)
	// The rays' own error: about one ray along the edges of what they count.
	if d > 0.02 {
		t.Logf("seed %d frame %d camera %d body %d: %.4f, rays %.4f (%d of %d)", seed, c.f, cam, b, got.Visible, want.visible, want.open, want.hits)
	}
	assert.InDelta(t, want.share, got.Share, 0.3+0.03*want.share, "seed %d frame %d camera %d body %d share", seed, c.f, cam, b)
	return []float64{d}
}
