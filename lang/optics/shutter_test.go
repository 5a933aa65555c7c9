package optics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/units"
)

func TestShutter(t *testing.T) {
	rate := units.Rate{Num: 24, Den: 1}
	// SHT-1, SHT-2: a trade article's and an art school's cheat sheets; SHT-3 by
	// the formula.
	for angle, parts := range map[units.Degrees]float64{270: 32, 180: 48, 172.8: 50, 144: 60, 90: 96, 72: 120, 360: 24, 45: 192, 22.5: 384, 11: 785.4545454545} {
		assert.InDelta(t, parts, 1/float64(ShutterTime(angle, rate)), 1e-6, "SHT-1 to SHT-3, %v", angle)
	}
	// The sheets' wrong lines.
	for angle, wrong := range map[units.Degrees]float64{178.8: 50, 45: 198, 22.5: 348, 11: 696} {
		assert.Greater(t, math.Abs(1/float64(ShutterTime(angle, rate))-wrong), 1.0/3, "SHT-3, %v must not be 1/%v", angle, wrong)
	}
	assert.InDelta(t, 8.640, float64(ShutterAngle(1.0/1000, rate)), 1e-9, "SHT-4")
	assert.InDelta(t, 225, float64(ShutterAngle(1.0/48, units.Rate{Num: 30, Den: 1})), 1e-9, "SHT-5")
	assert.InDelta(t, 1.0/50, float64(ShutterTime(180, units.Rate{Num: 25, Den: 1})), 1e-12, "SHT-6")
	blur := MotionBlur(1.4, 1.0/48, 50, 5)
	assert.InDelta(t, 0.29167, float64(blur), 1e-5, "SHT-7")
	assert.InDelta(t, 48.0, float64(blur)*4096/24.89, 0.1, "SHT-7")
	assert.InDelta(t, 26.738, float64(CrossingSpeed(1.4, 3)), 0.001, "SHT-8")
	assert.InDelta(t, 8.021, float64(CrossingSpeed(1.4, 10)), 0.001, "SHT-8")
	assert.InDelta(t, 38.4, float64(CrossingSpeed(13.41, 20)), 0.1, "SHT-9")
	// SHT-10, time lapse, is left out: a take is shot at one rate and uncut.
}

func TestPanning(t *testing.T) {
	at := func(fps int) units.Rate { return units.Rate{Num: fps, Den: 1} }
	// PAN-1: a camera maker's guidance page.
	assert.InDelta(t, 7, float64(PanTime(40, 40, PanSeconds, at(24))), 1e-9, "PAN-1")
	// PAN-2, PAN-3: a practical handbook's tables 25 and 26.
	assert.InDelta(t, 6, float64(PanLimit(AngleOfView(22, 75), PanSeconds, at(60))), 0.1, "PAN-2")
	ninety := PanTime(90, AngleOfView(22, 100), PanSeconds, at(48))
	assert.True(t, ninety >= 24 && ninety <= 30, "PAN-3: the table steps coarsely to 30 s; %v", ninety)
	assert.InDelta(t, 3.993, float64(PanLimit(AngleOfView(24.89, 50), PanSeconds, at(24))), 0.001, "PAN-4")
	assert.InDelta(t, 22.54, float64(PanTime(-90, AngleOfView(24.89, 50), PanSeconds, at(24))), 0.01, "PAN-4")
	assert.InDelta(t, 5.593, float64(PanLimit(AngleOfView(24.89, 35), PanSeconds, at(24))), 0.001, "PAN-5")
	assert.InDelta(t, 16.09, float64(PanTime(90, AngleOfView(24.89, 35), PanSeconds, at(24))), 0.01, "PAN-5")
	step := FrameStep(PanLimit(40, PanSeconds, at(24)), 40, at(24))
	assert.InDelta(t, 168, 1/step, 1e-9, "PAN-6")
	assert.InDelta(t, 12.19, step*2048, 0.01, "PAN-6")
	assert.InDelta(t, 22.86, step*3840, 0.01, "PAN-6")
	assert.InDelta(t, 6.095, step*2048*180/360, 0.01, "PAN-7")
	// PAN-8: an animation textbook: above 0.1 in a frame it is likely to strobe; on
	// a 12 in field (from memory) that is a width in 5 s. Ours is on the safe side.
	assert.Less(t, step, 0.1/12)
	assert.Greater(t, step, 0.1/12/2)
}
