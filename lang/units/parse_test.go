package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Lengths. The foot is 0.3048 m and the inch 25.4 mm exactly (international
// yard and pound agreement, 1959); the sums are done by hand from those.
func TestParseLength(t *testing.T) {
	for text, want := range map[string]float64{
		"2.4 m": 2.4, "2.4m": 2.4, "24 mm": 0.024, "110cm": 1.1, "-3 m": -3, "+3 m": 3, ".5 m": 0.5,
		"8'": 2.4384, `8'6"`: 2.5908, `8' 6"`: 2.5908, `8'-6"`: 2.5908, `8'6 1/2"`: 2.6035,
		`8'6½"`: 2.6035, `8'½"`: 2.4511, `6"`: 0.1524, `6 1/2"`: 0.1651, `1/2"`: 0.0127, `6.5"`: 0.1651,
		"8 ft": 2.4384, "8.5ft": 2.5908, "6 in": 0.1524, "8′6″": 2.5908, "8’6”": 2.5908, `-8'6"`: -2.5908,
		"8 ft 6 in": 2.5908, "8ft 6 inches": 2.5908, "-8 ft 6 in": -2.5908, "6 feet": 1.8288, "3 inches": 0.0762, "2 metres": 2, "2.4\u00a0m": 2.4,
	} {
		got, err := ParseLength(text)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want, float64(got), 1e-9, text)
		}
	}
}

func TestParseLengthSaysWhy(t *testing.T) {
	for text, want := range map[string]string{
		"12 s":  "`12 s` is a time, and a length is meant here: 2.4 m or 8'6\"",
		"2.4":   "`2.4` needs its unit: a length is written 2.4 m or 8'6\"",
		"2 mtr": "`mtr` is not a unit",
		"m":     "`m` is not a number with a unit",
		"":      "`` is not a number with a unit",
		`8'6`:   "`'6` is not a unit",
		"1/0\"": "`/0\"` is not a unit",
	} {
		_, err := ParseLength(text)
		require.Error(t, err, text)
		assert.Equal(t, want, err.Error(), text)
	}
}

// Exact by definition: the mile is 1609.344 m, so 1 mph is 0.44704 m/s; the
// pound is 0.45359237 kg (the same agreement of 1959).
func TestParseOthers(t *testing.T) {
	for _, c := range []struct {
		text string
		d    Dimension
		want float64
	}{
		{"12 km/h", Speed, 3.3333333333}, {"1 mph", Speed, 0.44704}, {"4 ft/s", Speed, 1.2192}, {"1.2m/s", Speed, 1.2},
		{"45 deg", Angle, 45}, {"45°", Angle, 45}, {"45 deg/s", AngularSpeed, 45},
		{"2.6 kg", Mass, 2.6}, {"10 lb", Mass, 4.5359237}, {"500 g", Mass, 0.5},
		{"3200 K", Temperature, 3200}, {"2 kW", Power, 2000}, {"16 A", Current, 16}, {"230 V", Voltage, 230},
		{"40 %", Share, 40}, {"40%", Share, 40}, {"600 cd/m2", Luminance, 600}, {"2400 cd", Intensity, 2400},
		{"23.976 fps", FrameRate, 23.976}, {"96 bpm", BeatRate, 96}, {"150 words/min", WordRate, 150},
	} {
		got, err := Parse(c.text, c.d)
		if assert.NoError(t, err, c.text) {
			assert.InDelta(t, c.want, got, 1e-9, c.text)
		}
	}
}

func TestParseTimeSpan(t *testing.T) {
	for text, want := range map[string]TimeSpan{
		"12 s": {Seconds: 12}, "250 ms": {Seconds: 0.25}, "2 min": {Seconds: 120}, "1 h": {Seconds: 3600},
		"1:04.5": {Seconds: 64.5}, "+1:04": {Seconds: 64}, "1:02:03": {Seconds: 3723}, "90 f": {Frames: 90},
		"16 counts": {Counts: 16}, "2 bars": {Bars: 2}, "1 frame": {Frames: 1}, "3 seconds": {Seconds: 3},
	} {
		got, err := ParseTimeSpan(text)
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, got, text)
		}
	}
	for _, text := range []string{"1:99", "1:2:3:4", "1.5:00", "3 m", "3", ":"} {
		_, err := ParseTimeSpan(text)
		assert.Error(t, err, text)
	}
}

func TestParseDayTime(t *testing.T) {
	got, err := ParseDayTime("19:40")
	require.NoError(t, err)
	assert.Equal(t, Seconds(19*3600+40*60), got)
	for _, text := range []string{"24:00", "7:5", "19", "19:60", "1:02:03"} {
		_, err := ParseDayTime(text)
		assert.Error(t, err, text)
	}
}

func TestTableIsSound(t *testing.T) {
	seen := map[string]bool{}
	for _, u := range Table {
		assert.False(t, seen[u.Text], "%s twice", u.Text)
		seen[u.Text] = true
		assert.Positive(t, u.Factor, u.Text)
		assert.NotEmpty(t, u.Dimension.Example(), u.Text)
		if u.Same != "" {
			assert.True(t, IsUnit(u.Same), u.Text)
			assert.Equal(t, u.Factor, byText[u.Same].Factor, u.Text)
			assert.Equal(t, u.Dimension, byText[u.Same].Dimension, u.Text)
		}
	}
}
