package optics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/units"
)

func inch(v float64) units.Millimetres { return units.Metres(v * float64(units.Inch)).Millimetres() }

func TestFilmFormats(t *testing.T) {
	// Apertures as published on an encyclopedia's page "35 mm film, technical
	// specifications", in inches, and in lists of camera formats, in mm.
	rows := []struct {
		id                    string
		w, h                  units.Millimetres
		squeeze, wMM, hMM     float64
		aspect, tolerance, mm float64
	}{
		{"FMT-1", inch(0.980), inch(0.735), 1, 24.892, 18.669, 1.333, 0.001, 0.01},
		{"FMT-2", inch(0.866), inch(0.630), 1, 22.00, 16.00, 1.375, 0.001, 0.01},
		{"FMT-3", inch(0.866), inch(0.732), 2, 22.00, 18.59, 2.366, 0.002, 0.01},
		{"FMT-4", inch(0.825), inch(0.690), 2, 20.955, 17.526, 2.391, 0.002, 0.001},
		{"FMT-5 a", inch(0.825), inch(0.602), 1, 20.955, 15.291, 1.370, 0.001, 0.01},
		{"FMT-5 b", inch(0.825), inch(0.497), 1, 20.955, 12.624, 1.660, 0.001, 0.01},
		{"FMT-5 c", inch(0.825), inch(0.446), 1, 20.955, 11.328, 1.850, 0.001, 0.01},
		{"FMT-6", inch(0.945), inch(0.394), 1, 24.00, 10.01, 2.398, 0.002, 0.01},
		{"FMT-7", inch(0.945), inch(0.511), 1, 24.00, 12.98, 1.849, 0.002, 0.01},
		{"FMT-8", 24.89, 13.87, 1, 24.89, 13.87, 1.7945, 0.001, 0},
		{"FMT-9", 21.95, 9.47, 1, 21.95, 9.47, 2.318, 0.002, 0},
		{"FMT-10 super 16", 12.52, 7.41, 1, 12.52, 7.41, 1.690, 0.001, 0},
		{"FMT-10 standard 16", 10.26, 7.49, 1, 10.26, 7.49, 1.370, 0.001, 0},
		{"FMT-10 super 8", 5.79, 4.01, 1, 5.79, 4.01, 1.444, 0.001, 0},
		{"FMT-11", 2048, 1080, 1, 2048, 1080, 1.8963, 0.0001, 0},
	}
	for _, r := range rows {
		t.Run(r.id, func(t *testing.T) {
			f, err := NewFrame(r.w, r.h, r.squeeze, 0)
			require.NoError(t, err)
			gw, gh := f.Gate()
			assert.InDelta(t, r.wMM, float64(gw), r.mm+1e-9)
			assert.InDelta(t, r.hMM, float64(gh), r.mm+1e-9)
			assert.InDelta(t, r.aspect, f.Aspect(), r.tolerance)
		})
	}
}

func TestFrameInsideSensor(t *testing.T) {
	// FMT-7, FMT-6: 1.85 and 2.40 cut from a 24 mm wide sensor.
	f, err := NewFrame(24, 18, 1, 1.85)
	require.NoError(t, err)
	assert.InDelta(t, 24, float64(f.Width), 1e-9)
	assert.InDelta(t, 12.973, float64(f.Height), 1e-3)
	// Taller than the sensor: the width gives.
	f, err = NewFrame(24, 12, 1, 1.5)
	require.NoError(t, err)
	assert.InDelta(t, 18, float64(f.Width), 1e-9)
	// FMT-4: 2.39 out of a squeezed sensor.
	f, err = NewFrame(22, 18.59, 2, 2.39)
	require.NoError(t, err)
	gw, _ := f.Gate()
	assert.InDelta(t, 22, float64(gw), 1e-9)
	assert.InDelta(t, 44/2.39, float64(f.Height), 1e-9)

	for _, bad := range [][4]float64{{0, 1, 1, 1}, {1, -1, 1, 1}, {1, 1, -2, 1}, {1, 1, 1, -1}, {1, 1, 1, math.Inf(1)}, {math.NaN(), 1, 1, 1}} {
		_, err := NewFrame(units.Millimetres(bad[0]), units.Millimetres(bad[1]), bad[2], bad[3])
		assert.Error(t, err, "%v", bad)
	}
}

func TestFrameIsLargest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(4, 70).Draw(t, "w")
		h := rapid.Float64Range(4, 70).Draw(t, "h")
		q := rapid.SampledFrom([]float64{1, 1.33, 1.5, 2}).Draw(t, "q")
		a := rapid.Float64Range(0.5, 4).Draw(t, "a")
		f, err := NewFrame(units.Millimetres(w), units.Millimetres(h), q, a)
		if err != nil {
			t.Fatal(err)
		}
		gw, gh := f.Gate()
		fits := float64(gw) <= w+1e-9 && float64(gh) <= h+1e-9
		touches := math.Abs(float64(gw)-w) < 1e-9 || math.Abs(float64(gh)-h) < 1e-9
		if !fits || !touches || math.Abs(f.Aspect()-a) > 1e-9 {
			t.Fatalf("%v of %v x %v", f, w, h)
		}
	})
}

func TestAngleOfView(t *testing.T) {
	full := Frame{Width: 36, Height: 24, Squeeze: 1}
	academy := Frame{Width: 22, Height: 16, Squeeze: 1}
	minutes := func(d, m float64) float64 { return d + m/60 }
	none := math.NaN()
	// AOV-1 to 4: a mailing list's table of 1999; AOV-5 to 7: a photography site's
	// table; AOV-8: a conversion site; AOV-10 to 16: a cine lens theory page's
	// table for the 16 x 22 mm frame, to 10 minutes of arc.
	rows := []struct {
		id                 string
		frame              Frame
		f                  units.Millimetres
		across, up, corner float64
		tolerance          float64
	}{
		{"AOV-1", full, 24, 73.740, 53.130, 84.062, 0.001},
		{"AOV-2", full, 35, 54.432, 37.849, 63.440, 0.001},
		{"AOV-3", full, 50, 39.598, 26.991, 46.793, 0.001},
		{"AOV-4", full, 135, 15.189, 10.159, 18.208, 0.001},
		{"AOV-5", full, 18, 90.0, 67.4, 100.5, 0.05},
		{"AOV-6", full, 85, 23.9, 16.1, 28.6, 0.05},
		{"AOV-7", full, 100, 20.4, 13.7, 24.4, 0.05},
		{"AOV-8 18", Frame{Width: 24.9, Height: 1}, 18, 69.340636, none, none, 1e-6},
		{"AOV-8 35", Frame{Width: 24.9, Height: 1}, 35, 39.162399, none, none, 1e-6},
		{"AOV-8 50", Frame{Width: 24.9, Height: 1}, 50, 27.964611, none, none, 1e-6},
		{"AOV-8 100", Frame{Width: 24.9, Height: 1}, 100, 14.193615, none, none, 1e-6},
		{"AOV-9 (another program, a 3D library's camera)", Frame{Width: 24.89, Height: 18.66}, 35, 39.1479, 29.8526, none, 1e-3},
		{"AOV-10", academy, 16, 69, minutes(53, 10), none, 5.0 / 60},
		{"AOV-11", academy, 28, minutes(42, 50), minutes(31, 50), none, 5.0 / 60},
		{"AOV-12", academy, 35, minutes(34, 50), minutes(25, 40), none, 6.0 / 60},
		{"AOV-13", academy, 50, 25, minutes(18, 10), none, 12.0 / 60},
		{"AOV-14", academy, 75, minutes(16, 40), minutes(12, 10), none, 5.0 / 60},
		{"AOV-15", academy, 100, minutes(12, 30), minutes(9, 10), none, 5.0 / 60},
		{"AOV-16", academy, 200, minutes(6, 20), minutes(4, 40), none, 6.0 / 60},
	}
	for _, r := range rows {
		t.Run(r.id, func(t *testing.T) {
			across, up, corner := r.frame.Angles(r.f)
			for i, got := range []units.Degrees{across, up, corner} {
				if want := []float64{r.across, r.up, r.corner}[i]; !math.IsNaN(want) {
					assert.InDelta(t, want, float64(got), r.tolerance)
				}
			}
		})
	}

	t.Run("AOV-17 (a forum's worked example)", func(t *testing.T) {
		assert.InDelta(t, 24, float64(Spherical(36, 1.5)), 1e-9)
		for squeeze, f := range map[float64]units.Millimetres{1.33: 37.24, 1.5: 42, 2: 56} {
			assert.InDelta(t, 28, float64(Spherical(f, squeeze)), 1e-9)
		}
		squeezed, _ := NewFrame(24.89, 18.66, 1.5, 0)
		plain, _ := NewFrame(24.89, 18.66, 1, 0)
		a, up, _ := squeezed.Angles(36)
		b, _, _ := plain.Angles(24)
		_, upPlain, _ := plain.Angles(36)
		assert.InDelta(t, float64(b), float64(a), 1e-9)
		assert.InDelta(t, float64(upPlain), float64(up), 1e-9)
	})
	t.Run("AOV-18 (identity with a 25 mm spherical lens)", func(t *testing.T) {
		f, _ := NewFrame(21.95, 18.6, 2, 0)
		across, _, _ := f.Angles(50)
		assert.InDelta(t, 47.403, float64(across), 0.001)
		assert.InDelta(t, float64(AngleOfView(21.95, 25)), float64(across), 1e-12)
	})
	t.Run("AOV-19 (thin lens: m = f/(s-f))", func(t *testing.T) {
		assert.InDelta(t, 52.632, float64(ImageDistance(50, 1)), 0.001)
		assert.InDelta(t, 37.761, float64(AngleOfViewAt(36, 50, 1)), 0.001)
		assert.InDelta(t, 0.052632, Magnification(50, 1), 1e-6)
		assert.Equal(t, AngleOfView(36, 50), AngleOfViewAt(36, 50, 0))
		assert.Equal(t, AngleOfView(36, 50), AngleOfViewAt(36, 50, units.Metres(math.Inf(1))))
	})
	t.Run("AOV-20 (a conversion site)", func(t *testing.T) {
		f, err := FocalLength(36, 50)
		require.NoError(t, err)
		assert.InDelta(t, 38.601125, float64(f), 1e-6)
		for _, bad := range []units.Degrees{200, 180, 0, -5, units.Degrees(math.NaN())} {
			_, err := FocalLength(36, bad)
			assert.Error(t, err, "the site answers -3.17 mm for 200°")
		}
	})
	t.Run("not 19.8° for 100 mm, half the angle of 50 mm", func(t *testing.T) {
		assert.InDelta(t, 20.41, float64(AngleOfView(36, 100)), 0.01)
		assert.Greater(t, float64(AngleOfView(36, 100)), 20.2)
	})
}

func TestAngleRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := units.Millimetres(rapid.Float64Range(3, 70).Draw(t, "d"))
		f := units.Millimetres(rapid.Float64Range(4, 800).Draw(t, "f"))
		back, err := FocalLength(d, AngleOfView(d, f))
		if err != nil || math.Abs(float64(back/f)-1) > 1e-9 {
			t.Fatalf("%v -> %v (%v)", f, back, err)
		}
		s := units.Metres(rapid.Float64Range(1, 100).Draw(t, "s"))
		if AngleOfViewAt(d, f, s) > AngleOfView(d, f) {
			t.Fatalf("focused at %v the angle is wider than at infinity", s)
		}
	})
}
