package sky

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/units"
)

func TestWindows(t *testing.T) {
	london := Place{51.50853, -0.12574}
	tromso := Place{69.65, 18.96}
	stockholm := Place{59.33, 18.07}
	window := func(name string, p Place, d Day) Window {
		w, err := WindowOf(name, p, d)
		require.NoError(t, err)
		return w
	}
	minutes := func(d Day, at time.Time) float64 { return float64(d.SinceMidnight(at)) / 60 }

	t.Run("SUN-17 (public test data, London, 2019-08-29 UTC)", func(t *testing.T) {
		d := Day{2019, 8, 29, 0}
		dawn, dusk := window("civil-dawn", london, d), window("civil-dusk", london, d)
		assert.InDelta(t, 4*60+32, minutes(d, dawn.Start), 1)
		assert.InDelta(t, 5*60+8, minutes(d, dawn.End), 1)
		assert.InDelta(t, 18*60+54, minutes(d, dusk.Start), 1)
		assert.InDelta(t, 19*60+30, minutes(d, dusk.End), 1)
		assert.Equal(t, "18:55 to 19:29", dusk.Text(d), "inside 18:54:14 to 19:29:28")
	})
	t.Run("polar days give words", func(t *testing.T) {
		summer, winter := Day{2024, 6, 21, 2 * h}, Day{2024, 12, 21, 1 * h}
		assert.Equal(t, "always", window("day", tromso, summer).Text(summer))
		assert.Equal(t, "never", window("night", tromso, summer).Text(summer))
		assert.Equal(t, "never", window("civil-dusk", tromso, summer).Text(summer))
		assert.Equal(t, "never", window("day", tromso, winter).Text(winter))
		assert.Equal(t, "never", window("golden-evening", tromso, winter).Text(winter))
		assert.Equal(t, 0.0, Fall(tromso, window("day", tromso, winter)))
		// The sun stays just under the horizon at noon: dusk begins there.
		dusk := window("civil-dusk", tromso, winter)
		assert.Equal(t, Timed, dusk.State)
		assert.True(t, dusk.StartTurns)
		assert.False(t, dusk.EndTurns)
		// Half a year earlier the sun is low, never down: the golden evening ends at
		// midnight.
		golden := window("golden-evening", tromso, summer)
		assert.Equal(t, Timed, golden.State)
		assert.True(t, golden.EndTurns)
	})
	t.Run("the day on which the midnight sun begins has a sunrise and no sunset", func(t *testing.T) {
		turned := 0
		for day := 10; day <= 28; day++ {
			w := window("day", tromso, Day{2024, 5, day, 2 * h})
			if w.StartTurns != w.EndTurns {
				turned++
				assert.Equal(t, Timed, w.State)
				assert.True(t, w.EndTurns)
				assert.True(t, Rises(tromso, Day{2024, 5, day, 2 * h}, Horizon).Time.Equal(w.Start))
			}
		}
		assert.Equal(t, 1, turned)
	})
	t.Run("white night: nautical dusk turns into dawn", func(t *testing.T) {
		d := Day{2024, 6, 21, 2 * h}
		w := window("nautical-dusk", stockholm, d)
		assert.Equal(t, Timed, w.State)
		assert.True(t, w.EndTurns)
		assert.Equal(t, "23:41 to 00:49 the next day", w.Text(d))
	})
	t.Run("night runs over midnight", func(t *testing.T) {
		d := Day{2015, 12, 1, 0}
		w := window("night", london, d)
		assert.InDelta(t, 17*60+16.45, minutes(d, w.Start), 0.5, "SUN-15")
		assert.InDelta(t, 24*60+6*60+23, minutes(d, w.End), 1.5)
		assert.Contains(t, w.Text(d), "the next day")
	})
	t.Run("clock times", func(t *testing.T) {
		d := Day{2026, 8, 20, 2 * h}
		assert.Equal(t, "19:40 to 20:25", Between(d, 19*h+40*60, 20*h+25*60).Text(d))
		assert.Equal(t, units.Seconds(7200), Between(d, 23*h, 1*h).Length())
	})
	t.Run("what is not on earth", func(t *testing.T) {
		day := Day{2026, 8, 20, 0}
		for _, bad := range []struct {
			p Place
			d Day
		}{{Place{91, 0}, day}, {Place{0, 181}, day}, {Place{}, Day{2026, 2, 30, 0}}, {Place{}, Day{2026, 0, 1, 0}}, {Place{}, Day{1066, 10, 14, 0}}, {Place{}, Day{2026, 8, 20, 20 * h}},
			{Place{units.Degrees(math.NaN()), 0}, day}} {
			_, err := WindowOf("day", bad.p, bad.d)
			assert.Error(t, err, "%v", bad)
		}
		_, err := WindowOf("tea-time", Place{}, day)
		assert.ErrorContains(t, err, "civil-dusk")
	})
	for _, name := range WindowNames() {
		assert.NotEmpty(t, WindowSays(name), name)
	}
	assert.Empty(t, WindowSays("tea-time"))
}

func TestWindowProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Place{units.Degrees(rapid.Float64Range(-88, 88).Draw(t, "lat")), units.Degrees(rapid.Float64Range(-180, 180).Draw(t, "lon"))}
		d := Day{2024, rapid.IntRange(1, 12).Draw(t, "month"), rapid.IntRange(1, 28).Draw(t, "day"), units.Seconds(math.Round(float64(p.Lon)/15)) * h}
		name := rapid.SampledFrom(WindowNames()).Draw(t, "name")
		w, err := WindowOf(name, p, d)
		if err != nil {
			t.Fatal(err)
		}
		low, high := Horizon, units.Degrees(90)
		switch b, ok := bands[name]; {
		case ok:
			low, high = b.low, b.high
		case name == "night":
			low, high = -90, Nautical
		}
		if w.State == Never {
			return
		}
		if !w.End.After(w.Start) {
			t.Fatalf("%s ends before it begins: %v", name, w)
		}
		// Everywhere inside, the sun is where the name says.
		for i := range 21 {
			at := w.Start.Add(w.End.Sub(w.Start) * time.Duration(i) / 20)
			if e := At(p, at).Elevation; e < low-0.001 || e > high+0.001 {
				t.Fatalf("%s: at %v the sun is at %v", name, at, e)
			}
		}
	})
}

func TestThePoles(t *testing.T) {
	// At the poles every direction is south, or north; the sun is up for half the
	// year.
	for _, lat := range []units.Degrees{-90, 90} {
		for month := 1; month <= 12; month++ {
			d := Day{2026, month, 15, 0}
			p := Place{lat, 0}
			up := (lat > 0) == (month >= 4 && month <= 9)
			for _, name := range WindowNames() {
				w, err := WindowOf(name, p, d)
				require.NoError(t, err)
				assert.NotEmpty(t, w.Text(d))
				if name == "day" && month != 3 && month != 9 {
					assert.Equal(t, map[bool]State{true: Always, false: Never}[up], w.State, "%v in month %d", lat, month)
				}
			}
		}
	}
	assert.Empty(t, State(9).String())
}

func TestMomentText(t *testing.T) {
	sydney, d := Place{-33.8688, 151.2093}, Day{2024, 6, 21, 0}
	assert.Equal(t, "21:00 the day before", Rises(sydney, d, Horizon).Text(d), "SUN-26")
	assert.Equal(t, "06:54", Sets(sydney, d, Horizon).Text(d), "SUN-26")
}

func TestBright(t *testing.T) {
	// SUN-31: AMS Glossary of Meteorology.
	sunset, dark := float64(Bright(Horizon)), float64(Bright(Civil))
	assert.True(t, sunset >= 410 && sunset <= 585, "%v lx at sunset", sunset)
	assert.True(t, dark >= 2 && dark <= 3.5, "%v lx at the end of civil twilight", dark)
	// SUN-32: an encyclopedia's table: 400 lx, 3.4 lx, 6.88 stops.
	assert.InEpsilon(t, 400, sunset, 0.2)
	assert.InEpsilon(t, 3.4, dark, 0.05)
	stops := math.Log2(sunset / dark)
	assert.True(t, stops >= 6.87 && stops <= 8.19, "%v stops", stops)
	// Seidelmann's table of ground illumination, from memory, lux.
	for e, want := range map[units.Degrees]float64{90: 129000, 60: 102000, 20: 27300, 0: 759, -12: 0.00806, -18: 0.000648} {
		assert.InEpsilon(t, want, float64(Bright(e)), 0.05, "%v", e)
	}
	assert.Equal(t, Bright(-18), Bright(-40))
	last := Bright(-18)
	for e := units.Degrees(-17.99); e <= 90; e += 0.01 {
		b := Bright(e)
		assert.Greater(t, float64(b), float64(last)*0.99, "at %v it gets darker as the sun rises", e)
		last = b
	}
	p, d := Place{56.05, 12.69}, Day{2026, 8, 20, 2 * h}
	w, err := WindowOf("civil-dusk", p, d)
	require.NoError(t, err)
	assert.InDelta(t, -stops, Fall(p, w), 0.01)
}

func TestTries(t *testing.T) {
	d := Day{2026, 8, 20, 2 * h}
	w := Between(d, 20*h, 20*h+40*60)
	clock := func(at time.Time) string { return d.Clock(at) }
	// Arithmetic: 40 min hold a take of 5 min and then 2 more of 11 + 5.
	got := TriesIn(w, 5*60, 11*60)
	require.Equal(t, 3, got.Count())
	assert.Equal(t, "20:32", clock(got.Starts[2]))
	assert.Equal(t, "20:35", clock(got.Last))
	assert.InDelta(t, 180, float64(got.Spare), 1e-9)
	// Exactly full.
	got = TriesIn(w, 10*60, 5*60)
	require.Equal(t, 3, got.Count())
	assert.InDelta(t, 0, float64(got.Spare), 1e-9)
	// None.
	got = TriesIn(w, 41*60, 0)
	assert.Zero(t, got.Count())
	assert.InDelta(t, -60, float64(got.Spare), 1e-9)
	assert.Zero(t, TriesIn(Window{State: Never}, 60, 0).Count())
	assert.Zero(t, TriesIn(w, units.Seconds(math.NaN()), 0).Count())
	assert.Equal(t, tryCap, TriesIn(w, 0, 0).Count())
	rapid.Check(t, func(t *rapid.T) {
		length := units.Seconds(rapid.Float64Range(1, 3000).Draw(t, "length"))
		reset := units.Seconds(rapid.Float64Range(0, 3000).Draw(t, "reset"))
		got := TriesIn(w, length, reset)
		for i, s := range got.Starts {
			if s.Add(seconds(length)).After(w.End.Add(2 * time.Millisecond)) {
				t.Fatalf("try %d ends after the light", i)
			}
		}
		if got.Count() > 0 && got.Spare > length+reset {
			t.Fatalf("another try would have fitted")
		}
	})
}
