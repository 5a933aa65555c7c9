package daylight_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/daylight"
	"longhand/lang/plan"
	"longhand/lang/sky"
)

func TestWindow(t *testing.T) {
	date, place := &plan.Date{Year: 2026, Month: 6, Day: 21, Zone: 3600}, &plan.LatLon{Lat: 78, Lon: 15}
	dusk, clock := &plan.Window{Name: "civil-dusk"}, &plan.Window{From: 20 * 3600, To: 21 * 3600}
	for _, c := range []struct {
		name string
		take plan.Take
		w    *plan.Window
		ok   bool
	}{
		{"no window", plan.Take{Date: date, Place: place}, nil, false},
		{"clock times need no place and no day", plan.Take{}, clock, true},
		{"dusk needs a place", plan.Take{Date: date}, dusk, false},
		{"dusk needs a day", plan.Take{Place: place}, dusk, false},
		{"both", plan.Take{Date: date, Place: place}, dusk, true},
		{"a name of no window", plan.Take{Date: date, Place: place}, &plan.Window{Name: "noonish"}, false},
	} {
		w, day, ok := daylight.Window(&c.take, c.w)
		assert.Equal(t, c.ok, ok, c.name)
		if ok && c.w == clock {
			assert.Equal(t, "20:00", day.Clock(w.Start)[:5], c.name)
			assert.InDelta(t, 3600, float64(w.Length()), 1e-9, c.name)
		}
		if ok && c.w == dusk { // the sun stays up all night north of the polar circle at midsummer
			assert.Equal(t, sky.Never, w.State, c.name)
		}
	}
}

func TestReset(t *testing.T) {
	reset, given := daylight.Reset(&plan.Take{})
	assert.Equal(t, sky.Reset, reset)
	assert.False(t, given)
	reset, given = daylight.Reset(&plan.Take{Reset: 60})
	assert.EqualValues(t, 60, reset)
	assert.True(t, given)
}
