package sight

import (
	"context"
	"fmt"
	"math"
	"sort"
	"testing"

	"longhand/lang/units"
)

func BenchmarkSee(b *testing.B) {
	for _, walled := range []bool{true, false} {
		b.Run(variant(walled), func(b *testing.B) {
			s := referenceLoad(walled).scene()
			b.ReportAllocs()
			for b.Loop() {
				if _, err := See(context.Background(), s, Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func variant(walled bool) string {
	if walled {
		return "walled"
	}
	return "open"
}

// BenchmarkRays is the reference: the ray caster of the tests, which has no
// acceleration structure, on one frame in some of the reference load, with as many
// rays a body as 8 x 24 and 64 x 192 are. It says what the whole load would take,
// and how far the fractions of bodies with at least 40 of those rays are from the
// engine's.
func BenchmarkRays(b *testing.B) {
	for _, walled := range []bool{true, false} {
		for n, every := range map[int]units.Frame{14: 1440, 110: 7200} {
			b.Run(fmt.Sprintf("%s/%d", variant(walled), n*n), func(b *testing.B) {
				s := referenceLoad(walled).scene()
				st := newStage(s)
				var apart []float64
				for b.Loop() {
					apart = apart[:0]
					for f := units.Frame(0); int(f) < s.Frames; f += every {
						c := newCaster(s, f)
						for cam := range s.Cameras {
							for _, got := range st.at(cam, f) {
								if rays := c.rays(cam, got.Body, n); rays.hits >= 40 {
									apart = append(apart, math.Abs(rays.visible-got.Visible))
								}
							}
						}
					}
				}
				sort.Float64s(apart)
				b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)*float64(every), "s-the-whole")
				b.ReportMetric(apart[len(apart)-1], "worst-apart")
				b.ReportMetric(apart[len(apart)*99/100], "99th-apart")
			})
		}
	}
}

func BenchmarkFloor(b *testing.B) {
	for _, walled := range []bool{true, false} {
		for _, height := range []float64{0, Standing} {
			b.Run(fmt.Sprintf("%s/%v", variant(walled), height), func(b *testing.B) {
				s := referenceLoad(walled).scene()
				for b.Loop() {
					if _, err := Floor(context.Background(), s, FloorOptions{Height: height}); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// BenchmarkGrowth shows that time grows with frames, cameras and bodies in
// proportion.
func BenchmarkGrowth(b *testing.B) {
	for _, k := range []int{1, 2, 4} {
		for name, l := range map[string]load{
			"frames":  {true, 1800 * k, 2, 30},
			"cameras": {true, 1800, 2 * k, 30},
			"bodies":  {true, 1800, 2, 30 * k},
		} {
			b.Run(fmt.Sprintf("%s/%dx", name, k), func(b *testing.B) {
				s := l.scene()
				for b.Loop() {
					if _, err := See(context.Background(), s, Options{}); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// BenchmarkAgain is one body of the reference load moved a metre throughout.
func BenchmarkAgain(b *testing.B) {
	for _, walled := range []bool{true, false} {
		b.Run(variant(walled), func(b *testing.B) {
			s := referenceLoad(walled).scene()
			before, err := See(context.Background(), s, Options{})
			if err != nil {
				b.Fatal(err)
			}
			c := *s
			c.Bodies = append([]Body(nil), s.Bodies...)
			moved := &c.Bodies[30]
			moved.Track = append([]Pose(nil), moved.Track...)
			for i := range moved.Track {
				moved.Track[i].X++
			}
			for b.Loop() {
				if _, err := Again(context.Background(), before, &c, Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
