package check_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"longhand/lang/check"
)

// crowded is a take of three minutes with fifteen bodies in a furnished hall:
// twelve people who walk all the time, a van, a cart and an operator who follows.
func crowded() string {
	var b strings.Builder
	b.WriteString("take \"Crowd\"\n  rate 24 fps\nset \"Hall\"\n  wall street (0, 0) (40, 0) high 5 m\n  door dock on street 8 m to 12 m high 3 m open\n  wall east (40, 0) (40, 30) high 5 m\n  platform gallery (0, 24) (40, 24) (40, 28) (0, 28) high 0 m to 1 m\n")
	for i := range 24 {
		x, y := float64(3+6*(i%6)), float64(4+5*(i/6))
		fmt.Fprintf(&b, "  block bench-%d (%g, %g) (%g, %g) (%g, %g) (%g, %g) high 1 m\n", i, x, y, x+2, y, x+2, y+0.8, x, y+0.8)
	}
	b.WriteString("kit\n  camera A sensor 24.9 mm x 14 mm\n  lens w35 35 mm\n  rig vest body-rig\n  rig cart cart\n  vehicle van 4.6 m x 1.9 m high 2.3 m\npeople\n  crew ida\n")
	for i := range 12 {
		fmt.Fprintf(&b, "  performer p%d\n", i)
	}
	b.WriteString("beat \"All\" for 3 min\n  van drives from (-60, -12) to (0, -12) at 2 m/s\n  cart drives from (-60, -20) to (0, -20) at 2 m/s\n  A on vest with ida\n  A takes w35 T4\n  A sees p0\n  A follows p0 by 2.5 m\n")
	for i := range 12 {
		y := 1.5 + 1.9*float64(i)
		fmt.Fprintf(&b, "  p%d walks from (1, %g) to (38, %g) at 1 m/s\n", i, y, y)
		for range 2 {
			fmt.Fprintf(&b, "  p%d walks to (1, %g) at 1 m/s\n  p%d walks to (38, %g) at 1 m/s\n", i, y, i, y)
		}
	}
	return b.String()
}

// BenchmarkMovement is all rules of movement on a crowded take of three minutes.
func BenchmarkMovement(b *testing.B) {
	r := moved(b, crowded())
	if r.Stopped {
		b.Fatal(text(r.Findings))
	}
	upTo := check.Moved
	for b.Loop() {
		p := &check.Pass{Ctx: context.Background(), Plan: r.Plan, Clock: r.Tracks.Clock, Tracks: r.Tracks}
		if _, err := check.Run(context.Background(), p, upTo); err != nil {
			b.Fatal(err)
		}
	}
}
