package motion

import "longhand/lang/pace"

// turnEase is how a body or a rig turns, rises and changes posture; aimEase is
// how a practised hand moves a lens.
const (
	turnEase = pace.Smoothstep
	aimEase  = pace.MinimumJerk
)

// eased is the part of the way from start to end done at t.
func eased(t, start, end float64) float64 { return easedBy(turnEase, t, start, end) }

func easedBy(e pace.Ease, t, start, end float64) float64 {
	switch {
	case t >= end:
		return 1
	case t <= start:
		return 0
	}
	return e.At((t - start) / (end - start))
}
