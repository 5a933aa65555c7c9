package sight

import (
	"context"
	"fmt"
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

// BenchmarkRays is the reference: the ray caster of the tests on one frame in
// 1,440 of the reference load, at two densities; multiply by 1,440.
func BenchmarkRays(b *testing.B) {
	for _, walled := range []bool{true, false} {
		for _, n := range []int{14, 110} { // 8 x 24 and 64 x 192 rays a body
			b.Run(fmt.Sprintf("%s/%d", variant(walled), n*n), func(b *testing.B) {
				s := referenceLoad(walled).scene()
				for b.Loop() {
					for f := units.Frame(0); int(f) < s.Frames; f += 1440 {
						c := newCaster(s, f)
						for cam := range s.Cameras {
							for body := range s.Bodies {
								c.rays(cam, body, n)
							}
						}
					}
				}
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
