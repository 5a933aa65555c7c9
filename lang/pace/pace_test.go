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
			// A cap that never binds changes nothing.
			free := func(units.Metres) units.MetresPerSecond { return 9 }
			capped, err := Move{Length: c.length, Pace: c.pace, Cap: free}.Natural()
			require.NoError(t, err)
			for k := range 101 {
				at := p.Duration() * units.Seconds(k) / 100
				assert.InDelta(t, float64(p.At(at)), float64(capped.At(at)), 1e-9)
			}
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

// KIN-14, v²κ and vκ: 1.4 m/s on a bend of 2 m.
func TestOnABend(t *testing.T) {
	assert.InDelta(t, 0.980, float64(Lateral(1.4, 1.0/2)), 1e-9)
	assert.InDelta(t, 40.107, float64(Turning(1.4, 1.0/2)), 1e-3)
	cap := Bends(func(float64) float64 { return -1.0 / 2 }, 0.98)
	assert.InDelta(t, 1.4, float64(cap(3)), 1e-9)
	straight := Bends(func(float64) float64 { return 0 }, 0.98)
	assert.True(t, math.IsInf(float64(straight(3)), 1))
}

// A way straight for 10 m, on a bend of 2 m for 5 m and straight for 10 m: the
// speed is the bend's on it, and what the accelerations allow before and after.
func TestBendSlows(t *testing.T) {
	bend := func(s float64) float64 {
		if s >= 10 && s <= 15 {
			return 1.0 / 2
		}
		return 0
	}
	m := Move{Length: 25, Pace: Pace{Speed: 3, Accel: 1}, Cap: Bends(bend, 0.5)}
	p, err := m.Natural()
	require.NoError(t, err)
	// Up to the bend: from 0 to a peak v and down to 1 m/s, cruising at 3 m/s.
	// v²/2 + (v² - 1)/2 = 10 has v > 3, so: 3 + 1.5/3 + 2 s; and the same back.
	want := 2*(3+1.5/3+2) + 5
	assert.InDelta(t, want, float64(p.Duration()), 0.1, "stretches of 5 cm")
	assert.GreaterOrEqual(t, float64(p.Duration()), want-1e-9, "never faster than the way allows")
	for s := 0.0; s < 25; s += 0.01 {
		v := float64(p.Speed(p.TimeAt(units.Metres(s))))
		if s > 10 && s < 15 {
			assert.InDelta(t, 1, v, 1e-6)
		}
		assert.LessOrEqual(t, v, 3+1e-9)
	}
	assert.InDelta(t, 1, float64(p.Strain()), 1e-6)
	slower, err := m.In(20)
	require.NoError(t, err)
	assert.Equal(t, units.Seconds(20), slower.Duration())
	assert.LessOrEqual(t, float64(slower.Peak()), 3.0)
	_, err = m.In(10)
	assert.ErrorContains(t, err, "the shortest possible is")
	// A cap of nothing: the move crawls past it and arrives.
	stuck := Move{Length: 5, Pace: Pace{Speed: 1, Accel: 1}, Cap: func(s units.Metres) units.MetresPerSecond {
		if s > 2 && s < 2.2 {
			return 0
		}
		return units.MetresPerSecond(math.NaN())
	}}
	p, err = stuck.Natural()
	require.NoError(t, err)
	assert.Equal(t, units.Metres(5), p.At(p.Duration()))
}

func TestIn(t *testing.T) {
	walk := Pace{Speed: 2, Accel: 1.5}
	p, err := Move{Length: 6, Pace: walk}.In(6)
	require.NoError(t, err)
	// v²/a - Tv + L = 0.
	assert.InDelta(t, (6-math.Sqrt(36-4*6/1.5))/2*1.5, float64(p.Peak()), 1e-9)

	p, err = Move{Length: 6, Pace: walk}.In(3)
	var short *TooShort
	require.ErrorAs(t, err, &short)
	assert.Equal(t, "6 m in 3 s: the shortest possible is 4.4 s", err.Error())
	assert.InDelta(t, 6/2.0+2/1.5, float64(short.Shortest), 1e-9)
	assert.InDelta(t, 4, float64(short.Peak), 1e-9, "a triangle of 6 m in 3 s")
	assert.InDelta(t, 4/1.5, float64(short.Strain), 1e-9)
	assert.Equal(t, units.Metres(6), p.At(3))
	assert.Less(t, float64(p.At(2.99)), 6.0)

	_, err = Move{Length: 1, Pace: Pace{Speed: 2, Accel: 0.5}, Entry: 2, Exit: 2}.In(9)
	var long *TooLong
	require.ErrorAs(t, err, &long)
	assert.ErrorContains(t, err, "without stopping it takes at most 0.5 s")

	p, err = Move{Length: 1, Pace: walk, Entry: 3}.Natural()
	var room *NoRoom
	require.ErrorAs(t, err, &room)
	assert.Equal(t, "going from 3 m/s to 0 m/s takes 3 m, but the move is only 1 m long", err.Error())
	assert.Equal(t, units.Metres(1), p.At(p.Duration()))

	for _, bad := range []Move{
		{Length: -1, Pace: walk}, {Length: 5}, {Length: units.Metres(math.NaN()), Pace: walk},
		{Length: 5, Pace: walk, Entry: -1}, {Length: 5, Pace: Pace{Accel: units.MetresPerSecond2(math.Inf(1))}},
		{Length: 5, Pace: Pace{Speed: units.MetresPerSecond(math.NaN()), Accel: 1}},
	} {
		p, err := bad.Natural()
		assert.Error(t, err)
		assert.Zero(t, p.At(1))
		_, err = bad.In(4)
		assert.Error(t, err)
	}
	for _, time := range []units.Seconds{0, -1, units.Seconds(math.NaN()), units.Seconds(math.Inf(1))} {
		p, err := Move{Length: 5, Pace: walk}.In(time)
		assert.Error(t, err)
		assert.Equal(t, units.Metres(5), p.At(p.Duration()))
	}
	p, err = Move{Pace: walk}.In(3)
	require.NoError(t, err)
	assert.Equal(t, units.Seconds(3), p.Duration())
	assert.Zero(t, p.At(2))
	p, err = Move{Pace: walk}.Natural()
	require.NoError(t, err)
	assert.Zero(t, p.Duration())
	assert.Zero(t, p.TimeAt(0))
}
