package sky

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/lang/units"
)

func utc(y, m, d, hh, mm, ss int) time.Time {
	return time.Date(y, time.Month(m), d, hh, mm, ss, 0, time.UTC)
}

func TestSunPosition(t *testing.T) {
	t.Run("SUN-1 to SUN-3 (NOAA spreadsheet, 2010-06-21 00:06 UTC-7)", func(t *testing.T) {
		at := utc(2010, 6, 21, 7, 6, 0)
		assert.InDelta(t, 2455368.79583333, JulianDate(at), 1e-8)
		s := At(Place{40, -105}, at)
		assert.InDelta(t, 23.4383706193, float64(s.Declination), 1e-8)
		assert.InDelta(t, 89.8094800844, float64(s.RightAscension), 1e-8)
		assert.InDelta(t, -1.7153675785, float64(s.EquationOfTime)/60, 1e-8)
		assert.InDelta(t, -26.5537621192, float64(s.Elevation), 1e-8)
		assert.InDelta(t, 1.0986711839, float64(s.Azimuth), 1e-8)
		assert.InDelta(t, 0.0115456866, float64(s.Refraction), 1e-8)
		assert.InDelta(t, -26.5422164326, float64(s.Apparent()), 1e-8)
	})
	t.Run("SUN-4 to SUN-6 (NREL/TP-560-34302, table A5.1)", func(t *testing.T) {
		at := utc(2003, 10, 17, 19, 30, 30)
		assert.InDelta(t, 2452930.312847, JulianDate(at), 1e-6)
		s := At(Place{39.742476, -105.1786}, at)
		// The published zenith, 50.11162°, is with refraction at 1830 m.
		assert.InDelta(t, 39.872046, float64(s.Elevation), 0.01)
		assert.InDelta(t, 194.34024, float64(s.Azimuth), 0.01)
		assert.InDelta(t, 202.22741, float64(s.RightAscension), 0.005)
		assert.InDelta(t, -9.31434, float64(s.Declination), 0.005)
		assert.InDelta(t, 11.10590, float64(s.HourAngle), 0.01)
		assert.InDelta(t, 14.641503, float64(s.EquationOfTime)/60, 0.01)
		assert.InDelta(t, 0.016332, float64(s.Refraction), 0.005, "published for thinner air")
	})
	t.Run("SUN-9 (Meeus, Astronomical Algorithms, ex. 25.a and 28.b, from memory)", func(t *testing.T) {
		s := At(Place{}, utc(1992, 10, 13, 0, 0, 0))
		assert.InDelta(t, 198.38083, float64(s.RightAscension), 1e-4)
		assert.InDelta(t, -7.78507, float64(s.Declination), 1e-4)
		assert.InDelta(t, 13*60+42.7, float64(s.EquationOfTime), 0.5)
	})
	t.Run("SUN-10 (Meeus, ex. 7.a, from memory)", func(t *testing.T) {
		assert.InDelta(t, 2436116.31, JulianDate(utc(1957, 10, 4, 19, 26, 24)), 1e-6)
	})
	t.Run("SUN-18 (public test data, London, 2015-12-14)", func(t *testing.T) {
		london := Place{51.50853, -0.12574}
		s := At(london, utc(2015, 12, 14, 11, 0, 0))
		assert.InDelta(t, 14.38131, float64(s.Apparent()), 1e-3)
		assert.InDelta(t, 166.9677, float64(s.Azimuth), 1e-3)
		s = At(london, utc(2015, 12, 14, 20, 1, 0))
		assert.InDelta(t, -37.37102, float64(s.Apparent()), 0.02)
		assert.InDelta(t, 279.409, float64(s.Azimuth), 0.02)
	})
	t.Run("SUN-29 (90° - latitude ± 23.44°)", func(t *testing.T) {
		for day, want := range map[Day]float64{{2024, 6, 21, 0}: 73.44, {2024, 12, 21, 0}: 26.56} {
			p := Place{40, 0}
			assert.InDelta(t, want, float64(At(p, Noon(p, day)).Elevation), 0.02)
		}
	})
	t.Run("SUN-33 (tangent)", func(t *testing.T) {
		assert.InDelta(t, 2.0938, float64(Shadow(1.75, 39.888)), 1e-3)
		assert.True(t, math.IsInf(float64(Shadow(1.75, -1)), 1))
	})
}

func TestBearing(t *testing.T) {
	// By definition: north is +y, east +x.
	for azimuth, want := range map[units.Degrees]float64{0: 90, 90: 0, 180: -90, 270: 180} {
		assert.InDelta(t, want, float64(Sun{Azimuth: azimuth}.Bearing()), 1e-12)
	}
}

func TestSunProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Place{units.Degrees(rapid.Float64Range(-90, 90).Draw(t, "lat")), units.Degrees(rapid.Float64Range(-180, 180).Draw(t, "lon"))}
		at := utc(rapid.IntRange(1800, 2100).Draw(t, "year"), 1, 1, 0, 0, rapid.IntRange(0, 366*86400).Draw(t, "second"))
		s := At(p, at)
		ok := s.Elevation >= -90 && s.Elevation <= 90 && s.Azimuth >= 0 && s.Azimuth < 360 &&
			math.Abs(float64(s.Declination)) < 23.5 && math.Abs(float64(s.EquationOfTime)) < 17*60 && !math.IsNaN(float64(s.Refraction))
		if !ok {
			t.Fatalf("%+v", s)
		}
		// Before noon it stands in the east.
		if s.HourAngle < -1 && s.HourAngle > -179 && math.Abs(float64(p.Lat)) < 89.9 && s.Azimuth > 180 {
			t.Fatalf("before noon the sun is in the west: %+v", s)
		}
	})
}
