package pace

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/units"
)

// Closed forms of uniform acceleration; computed apart from the project.
func TestTrapezoid(t *testing.T) {
	for _, c := range []struct {
		id            string
		length        units.Metres
		pace          Pace
		time, highest float64
	}{
		{"KIN-15", 10, Pace{Speed: 1.5, Accel: 0.5}, 9.66667, 1.5}, // v/a + d/v
		{"KIN-16", 2, Pace{Speed: 1.5, Accel: 0.5}, 4, 1},          // 2√(d/a), √(da)
		// A braking of its own: up 2.25 m in 3 s, down 1.125 m in 1.5 s.
		{"two rates", 10, Pace{Speed: 1.5, Accel: 0.5, Brake: 1}, 4.5 + 6.625/1.5, 1.5},
		{"no cruise speed", 2, Pace{Accel: 0.5}, 4, 1},
	} {
		t.Run(c.id, func(t *testing.T) {
			p, err := Move{Length: c.length, Pace: c.pace}.Natural()
			require.NoError(t, err)
			assert.InDelta(t, c.time, float64(p.Duration()), 1e-5)
			assert.InDelta(t, c.highest, float64(p.Peak()), 1e-9)
			assert.Equal(t, c.length, p.At(p.Duration()))
			assert.Equal(t, p.Duration(), NaturalTime(c.length, c.pace))
		})
	}
}

// The factors of the minimum-jerk ease are Flash & Hogan's (1985, J. Neurosci.
// 5:1688); those of the others follow by differentiating.
func TestEase(t *testing.T) {
	const way, time = 6.0, 4.0
	for _, c := range []struct {
		id           string
		ease         Ease
		speed, accel float64
	}{
		{"KIN-17", MinimumJerk, 2.8125, 2.16506},
		{"KIN-18 smoothstep", Smoothstep, 2.25, 2.25},
		{"KIN-18 cosine", Cosine, 2.35619, 1.85055},
	} {
		t.Run(c.id, func(t *testing.T) {
			assert.InDelta(t, c.speed, c.ease.PeakSpeed()*way/time, 1e-5)
			assert.InDelta(t, c.accel, c.ease.PeakAccel()*way/time/time, 1e-5)
			assert.InDelta(t, time, c.ease.Time(way, c.speed, 0), 1e-4)
			assert.InDelta(t, time, c.ease.Time(-way, 100, c.accel), 1e-4)
			var speed, accel float64
			for x := 0.001; x < 1; x += 0.001 {
				const h = 1e-5
				assert.InDelta(t, (c.ease.At(x+h)-c.ease.At(x-h))/(2*h), c.ease.Speed(x), 1e-3)
				assert.InDelta(t, (c.ease.Speed(x+h/2)-c.ease.Speed(x-h/2))/h, c.ease.Accel(x), 0.2)
				speed = math.Max(speed, c.ease.Speed(x))
				accel = math.Max(accel, math.Abs(c.ease.Accel(x)))
			}
			assert.InDelta(t, c.ease.PeakSpeed(), speed, 1e-5)
			assert.InDelta(t, c.ease.PeakAccel(), accel, 0.02)
		})
	}
	assert.InDelta(t, 0.103516, MinimumJerk.At(0.25), 1e-6, "KIN-17: a quarter of the time")
}
