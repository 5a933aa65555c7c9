package pace

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/units"
)

func drawMove(t *rapid.T) Move {
	m := Move{
		Length: units.Metres(rapid.Float64Range(0.01, 60).Draw(t, "length")),
		Pace: Pace{
			Speed: units.MetresPerSecond(rapid.Float64Range(0.1, 8).Draw(t, "speed")),
			Accel: units.MetresPerSecond2(rapid.Float64Range(0.1, 4).Draw(t, "accel")),
			Brake: units.MetresPerSecond2(rapid.Float64Range(0.1, 4).Draw(t, "brake")),
		},
	}
	if rapid.Bool().Draw(t, "goes on") {
		m.Entry = units.MetresPerSecond(rapid.Float64Range(0, 5).Draw(t, "entry"))
		m.Exit = units.MetresPerSecond(rapid.Float64Range(0, 5).Draw(t, "exit"))
	}
	if rapid.Bool().Draw(t, "capped") {
		low, wave := rapid.Float64Range(0.2, 3).Draw(t, "low"), rapid.Float64Range(0.1, 2).Draw(t, "wave")
		m.Cap = func(s units.Metres) units.MetresPerSecond {
			return units.MetresPerSecond(low + 1 + math.Sin(float64(s)*wave))
		}
	}
	return m
}

// sound is what holds for every profile of a length: it starts at nothing,
// arrives exactly, never goes back, and its length, speed and acceleration are
// each other's derivatives, asked for in any order.
func sound(t *rapid.T, p *Profile, length units.Metres) {
	end := p.Duration()
	assert.Equal(t, length, p.At(end))
	assert.Equal(t, length, p.At(end+5))
	assert.Equal(t, units.Metres(0), p.At(0))
	assert.Equal(t, units.Metres(0), p.At(-1))
	assert.Equal(t, end, p.TimeAt(length))
	assert.Equal(t, units.Seconds(0), p.TimeAt(0))
	last := p.parts[len(p.parts)-1]
	assert.InEpsilon(t, float64(length), last.at(last.dt), 1e-9, "the parts make up the length")
	a := end * units.Seconds(rapid.Float64Range(0, 1).Draw(t, "a"))
	b := end * units.Seconds(rapid.Float64Range(0, 1).Draw(t, "b"))
	later, earlier := max(a, b), min(a, b)
	sl, se := p.At(later), p.At(earlier)
	assert.GreaterOrEqual(t, sl, se)
	assert.Equal(t, sl, p.At(later))
	assert.LessOrEqual(t, float64(sl-se), float64(p.Peak())*float64(later-earlier)+1e-9)
	change := math.Abs(float64(p.Speed(later) - p.Speed(earlier)))
	assert.LessOrEqual(t, change, float64(p.Strain())*float64(later-earlier)*(1+1e-9)+1e-6, "the speed is continuous")
	// The mean speed of a short while is the speed.
	h := end * 1e-6
	if a > h && a+h < end {
		assert.InDelta(t, float64(p.Speed(a)), float64(p.At(a+h)-p.At(a-h))/float64(2*h), 1e-3+float64(p.Strain()*units.MetresPerSecond2(h)))
	}
	assert.GreaterOrEqual(t, p.Speed(a), units.MetresPerSecond(0))
	// TimeAt is the inverse.
	assert.InDelta(t, float64(p.At(a)), float64(p.At(p.TimeAt(p.At(a)))), 1e-9*(1+float64(length)))
}

func TestNaturalProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMove(t)
		p, err := m.Natural()
		var room *NoRoom
		if errors.As(err, &room) {
			assert.Greater(t, room.Needs, m.Length)
			sound(t, p, m.Length)
			return
		}
		require.NoError(t, err)
		sound(t, p, m.Length)
		assert.InDelta(t, float64(m.Entry), float64(p.Speed(0)), 1e-9)
		assert.InDelta(t, float64(m.Exit), float64(p.Speed(p.Duration())), 1e-9)
		for k := range 200 {
			s := m.Length * units.Metres(float64(k)+0.5) / 200
			at := p.TimeAt(s)
			v, a := float64(p.Speed(at)), float64(p.Accel(at))
			assert.LessOrEqual(t, a, float64(m.Accel)*(1+1e-5)+1e-6)
			assert.GreaterOrEqual(t, a, -float64(m.Brake)*(1+1e-5)-1e-6)
			// Above its pace or its cap only on the way from or to an end.
			most := float64(m.Speed)
			if m.Cap != nil {
				most = min(most, float64(m.Cap(s))+0.15) // the cap changes between samples
			}
			near := 0.0
			if m.Cap != nil { // the samples it may begin or end early by
				near = min(sampleStep, float64(m.Length)/minSamples)
			}
			from := math.Sqrt(max(0, float64(m.Entry*m.Entry)-2*float64(m.Brake)*(float64(s)-near)))
			to := math.Sqrt(max(0, float64(m.Exit*m.Exit)-2*float64(m.Accel)*(float64(m.Length-s)-near)))
			assert.LessOrEqual(t, v, max(most, from, to)+1e-6)
		}
		if m.Cap == nil && m.Entry == 0 && m.Exit == 0 {
			l, v, k := float64(m.Length), float64(m.Speed), 1/float64(m.Accel)+1/float64(m.Brake)
			want := l/v + v*k/2
			if v*v*k/2 > l {
				want = math.Sqrt(2 * l * k)
			}
			assert.InEpsilon(t, want, float64(p.Duration()), 1e-9)
		}
	})
}

func TestInProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMove(t)
		natural, naturalErr := m.Natural()
		time := natural.Duration() * units.Seconds(rapid.Float64Range(0.3, 4).Draw(t, "stretch"))
		p, err := m.In(time)
		assert.InEpsilon(t, float64(time), float64(p.Duration()), 1e-9)
		sound(t, p, m.Length)
		var short *TooShort
		var long *TooLong
		switch {
		case naturalErr != nil:
			assert.Equal(t, naturalErr, err)
		case errors.As(err, &short):
			assert.Less(t, float64(time), float64(natural.Duration()))
			assert.Equal(t, natural.Duration(), short.Shortest)
		case errors.As(err, &long):
			assert.Less(t, float64(long.Longest), float64(time))
			assert.False(t, m.Entry == 0 && m.Exit == 0)
		default:
			require.NoError(t, err)
			assert.GreaterOrEqual(t, float64(time), float64(natural.Duration())*(1-1e-9))
			assert.LessOrEqual(t, float64(p.Peak()), float64(natural.Peak())*(1+1e-6))
			assert.LessOrEqual(t, float64(p.Strain()), float64(max(m.Accel, m.Brake))*(1+1e-5))
		}
	})
}

// A profile is asked for its length at every frame of a take.
func BenchmarkProfileAt(b *testing.B) {
	p, _ := Move{Length: 20, Pace: Pace{Speed: 1.3, Accel: 1.5}}.Natural()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		p.At(units.Seconds(i%400) / 24)
	}
}

func BenchmarkCappedIn(b *testing.B) {
	m := Move{Length: 20, Pace: Pace{Speed: 1.3, Accel: 1.5}, Cap: func(s units.Metres) units.MetresPerSecond {
		return units.MetresPerSecond(1.2 + math.Sin(float64(s)))
	}}
	for b.Loop() {
		_, _ = m.In(60)
	}
}

// The peak of a move is reached where its pace is, and not before.
func TestPeakAt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, err := drawMove(t).Natural()
		if err != nil || p.Duration() <= 0 {
			return
		}
		at, peak := p.PeakAt(), float64(p.Peak())
		require.InDelta(t, peak, float64(p.Speed(at)), 1e-6*(1+peak))
		for _, k := range []float64{0, 0.25, 0.5, 0.75, 0.99} {
			require.Less(t, float64(p.Speed(at*units.Seconds(k))), peak+1e-12)
		}
	})
}
