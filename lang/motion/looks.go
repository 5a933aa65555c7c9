package motion

import "math"

// maxLooks bounds how often anything is looked at: an hour and a half at a look
// a frame. What lasts longer is looked at less often.
const maxLooks = 1 << 17

// looks splits a stretch into even steps, of the given length or a little less.
func looks(length, every float64) (n int, step float64) {
	if !(length > 0) {
		return 1, 0
	}
	n = int(min(max(1, math.Ceil(length/every)), maxLooks))
	return n, length / float64(n)
}
