package timecode

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/units"
)

// Rows left out: RUN-15 (8 mm film) and RUN-17 to RUN-20 (uncompressed video of
// capture cards), which no plan can name.

func gauge(t *testing.T, name string) Gauge {
	g, err := ParseGauge(name)
	require.NoError(t, err)
	return g
}

func TestFilm(t *testing.T) {
	at := func(fps int) units.Rate { return units.Rate{Num: fps, Den: 1} }
	four, three, two, sixteen := gauge(t, "35mm-4perf"), gauge(t, "35mm-3perf"), gauge(t, "35mm-2perf"), gauge(t, "16mm")
	// RUN-1, 2: encyclopedias, a national film archive's glossary; RUN-3: a units
	// site; RUN-4: a book of 1938; RUN-6: a blog on 3-perf. Others: arithmetic.
	for _, r := range []struct {
		id              string
		g               Gauge
		perFoot, perMin float64 // frames a foot; feet a minute at 24
	}{
		{"RUN-1", four, 16, 90},
		{"RUN-2", sixteen, 40, 36},
		{"RUN-2", gauge(t, "super16"), 40, 36},
		{"RUN-6", three, 64.0 / 3, 67.5},
		{"RUN-7", two, 32, 45},
		{"35 mm, eight of 64 perforations a foot (180 ft/min, from memory)", gauge(t, "35mm-8perf"), 8, 180},
		{"65 mm, five of 64 perforations a foot (112.5 ft/min, from memory)", gauge(t, "65mm-5perf"), 12.8, 112.5},
	} {
		assert.InDelta(t, r.perFoot, r.g.FramesPerFoot(), 1e-9, r.id)
		assert.InDelta(t, r.perMin, float64(r.g.Length(60, at(24))/units.Foot), 1e-9, r.id)
	}
	for _, r := range []struct {
		id      string
		g       Gauge
		feet    float64
		fps     int
		seconds float64
	}{
		{"RUN-3", four, 1000, 24, 11*60 + 6.67},
		{"RUN-4", sixteen, 400, 24, 11*60 + 6.67},
		{"RUN-5", four, 400, 24, 4*60 + 26.67},
		{"RUN-6", three, 1000, 24, 14*60 + 48.89},
		{"RUN-7", two, 400, 24, 8*60 + 53.33},
		{"RUN-7", two, 1000, 24, 22*60 + 13.33},
		{"RUN-8", sixteen, 100, 24, 2*60 + 46.67},
		{"RUN-8", sixteen, 200, 24, 5*60 + 33.33},
		{"RUN-9", four, 1000, 25, 10*60 + 40},
		{"RUN-10", four, 9000, 24, 6000},
		{"RUN-10", sixteen, 3600, 24, 6000},
	} {
		assert.InDelta(t, r.seconds, float64(r.g.Runs(units.Metres(r.feet)*units.Foot, at(r.fps))), 0.01, r.id)
	}
	// Web pages' 2.5 and 3.5 minutes, and a magazine of 311 m for 305.
	assert.Greater(t, float64(sixteen.Runs(100*units.Foot, at(24))), 2.7*60)
	assert.Greater(t, float64(four.Runs(400*units.Foot, at(24))), 4*60.0)
	assert.InDelta(t, 304.8, float64(four.Loads[len(four.Loads)-1]), 1e-9)
	// RUN-11 to RUN-13: a projection page uses a pitch of 19.00 mm for 19.05.
	assert.InEpsilon(t, 27.36, float64(four.Length(60, at(24))), 0.003, "RUN-11")
	perMetre := four.Frames(1)
	assert.True(t, perMetre >= 52.49 && perMetre <= 52.63, "RUN-12: %v", perMetre)
	assert.InEpsilon(t, 2736, float64(four.Length(6000, at(24))), 0.003, "RUN-13")
	assert.InEpsilon(t, 5800, float64(four.Length(212*60, at(24))), 0.004, "RUN-13")
	// RUN-14: a film school's rule of thumb: about 20, about 60 min.
	assert.InEpsilon(t, 20, float64(four.Runs(600, at(24)))/60, 0.1, "RUN-14")
	assert.InEpsilon(t, 60, float64(four.Runs(1800, at(24)))/60, 0.1, "RUN-14")
	_, err := ParseGauge("70mm")
	assert.ErrorContains(t, err, "65mm-5perf")
}

func TestMedia(t *testing.T) {
	// RUN-16: a library's storage guide; RUN-21, RUN-22: arithmetic.
	assert.InDelta(t, 157.5e9, MediaSize(175e6, 120*60), 1, "RUN-16")
	assert.InDelta(t, 337.5e9, MediaSize(250e6, 3*3600), 1, "RUN-21")
	assert.InDelta(t, 533.33, float64(MediaRuns(1e12, 250e6))/60, 0.01, "RUN-22")
	assert.InDelta(t, 42.667, float64(MediaRuns(512e9, 1600e6))/60, 0.001, "RUN-22")
}

func TestFilmRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, err := ParseGauge(rapid.SampledFrom(Gauges()).Draw(t, "gauge"))
		if err != nil {
			t.Fatal(err)
		}
		rate, _ := units.ParseRate(rapid.SampledFrom([]float64{23.976, 24, 25, 48}).Draw(t, "rate"))
		length := units.Metres(rapid.Float64Range(1, 400).Draw(t, "length"))
		if back := g.Length(g.Runs(length, rate), rate); math.Abs(float64(back-length)) > 1e-9 {
			t.Fatalf("%v came back as %v", length, back)
		}
	})
}

func TestTempo(t *testing.T) {
	// Definition: a beat is 60/bpm.
	for _, r := range []struct {
		id                  string
		bpm                 float64
		beat, eight, frames float64
	}{
		{"CNT-1", 120, 0.5, 4, 12},
		{"CNT-2", 96, 0.625, 5, 15},
		{"CNT-3", 72, 0.8333, 6.6667, 20},
		{"CNT-4", 140, 0.428571, 3.428571, 10.2857},
	} {
		m := Tempo{r.bpm, 4}
		assert.InDelta(t, r.beat, float64(m.Beat()), 1e-4, r.id)
		assert.InDelta(t, r.eight, float64(m.Counts(8)), 1e-4, r.id)
		assert.InDelta(t, r.frames, float64(m.Beat())*24, 1e-4, r.id)
	}
	assert.InDelta(t, 82.286, float64(Tempo{140, 4}.Counts(8))*24, 0.001, "CNT-4: rounding does not add up")
	assert.InDelta(t, 64, float64(Tempo{120, 4}.Bar(33, 1)), 1e-9, "CNT-5: 32 bars")
	assert.Zero(t, Tempo{120, 4}.Bar(1, 1))
	rapid.Check(t, func(t *rapid.T) {
		m := Tempo{rapid.Float64Range(40, 220).Draw(t, "bpm"), rapid.IntRange(2, 7).Draw(t, "in")}
		bar, count := rapid.IntRange(1, 400).Draw(t, "bar"), rapid.IntRange(1, m.In).Draw(t, "count")
		b, c := m.Position(m.Bar(bar, float64(count)))
		if b != bar || math.Abs(c-float64(count)) > 1e-6 {
			t.Fatalf("bar %d.%d came back as %d.%v", bar, count, b, c)
		}
	})
}

func TestSpeech(t *testing.T) {
	// CNT-7, CNT-8: a speech length page at 130 words a minute, minutes; it prints
	// 3.8 for 500, truncated.
	for words, minutes := range map[int]float64{500: 3.85, 750: 5.77, 1000: 7.69, 1250: 9.6, 1500: 11.5, 2000: 15.4, 2500: 19.2, 5000: 38.5} {
		assert.InDelta(t, minutes, float64(Spoken(words, 130))/60, 0.05, "CNT-7, CNT-8")
	}
	assert.InDelta(t, 60, float64(Spoken(150, SpokenPace)), 1e-9, "CNT-6, CNT-9")
	for line, want := range map[string]int{
		"Last collection was at six.":  5,
		"Don't – you can't mean it...": 5,
		"":                             0,
		"... – !":                      0,
		"Well-worn,wait":               2,
		"At 6.30, 1,000 letters":       4,
		"Six—seven?":                   2,
		"Där är 3 brev, säger hon":     6,
	} {
		assert.Equal(t, want, Words(line), line)
	}
}
