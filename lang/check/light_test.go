package check_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
	"longhand/lang/safety"
)

func supplied(supply, kit, cues string) string {
	return "take \"Load\"\n  rate 24 fps\nset \"Hall\"\n  grid flies (0, 0) (8, 0) (8, 8) (0, 8) high 5 m points 200\n  " + supply +
		"\n  mark M1 (4, 4)\nkit\n" + kit + "people\n  performer mina\nbeat \"One\"\n  mina stands at M1 in 20 s\n" + cues
}

// TestContinuousLoad: ELE-1, 20 A at 120 V are 2400 VA, of which 1920 W last (NEC
// 210.20(A) as quoted).
func TestContinuousLoad(t *testing.T) {
	plan := func(w int) string {
		return supplied("supply mains 120 V 20 A x 1", fmt.Sprintf("  lamp globe %d W\n  wash hall globe x 10 on flies\n", w), "")
	}
	assert.Empty(t, found(t, plan(192), "over-current"))
	got := found(t, plan(193), "over-current")
	require.Len(t, got, 1)
	assert.Equal(t, diag.Warning, got[0].Severity)
	got = found(t, plan(241), "over-current")
	require.Len(t, got, 1)
	assert.Equal(t, diag.Error, got[0].Severity)
	assert.Contains(t, got[0].Message, "2.41 kW")
	assert.Contains(t, got[0].Notes, safety.Electricity.Caution())
	assert.Contains(t, got[0].Notes, safety.Heat.Caution())
}

// TestCrossfade: ELE-8, 6 kW down and 8 kW up together, evenly, never draw more
// than 8 kW.
func TestCrossfade(t *testing.T) {
	plan := func(kw float64) string {
		amps := kw * 1000 / 0.8 / 230
		return supplied(fmt.Sprintf("supply mains 230 V %.3f A", amps), "  lamp a 6000 W\n  lamp b 8000 W\n  wash early a x 1 on flies\n  wash late b x 1 on flies\n",
			"  cue first early 100 % over 0 s\n  cue cross early 0 %, late 100 % over 10 s starting +2 s\n")
	}
	got := found(t, plan(8.01), "over-current")
	require.Len(t, got, 1, "the two do not go on one circuit in full")
	assert.Contains(t, got[0].Message, "1 lamp finds no room")
	got = found(t, plan(7.9), "over-current")
	require.Len(t, got, 1)
	assert.Contains(t, got[0].Message, "the lamps draw 8 kW at 0:12.0")
	assert.Empty(t, found(t, plan(14.01), "over-current"))
}

func TestCuesThatAgreeDontFight(t *testing.T) {
	kit := "  lamp globe 500 W\n  wash hall globe x 4 on flies\n  wash yard globe x 4 on flies\n"
	on := func(second string) []diag.Diagnostic {
		return found(t, supplied("supply mains 230 V 16 A x 2", kit, "  cue one hall 60 % over 8 s\n  cue two "+second+" over 2 s starting +4 s\n"), "cue-overlap")
	}
	assert.Len(t, on("hall 20 %"), 1)
	assert.Empty(t, on("hall 60 %"))
	assert.Empty(t, on("yard 20 %"))
}

func TestLampsThatChangeAreShared(t *testing.T) {
	plan := func(lamp, cues string) string {
		p := supplied("supply mains 230 V 63 A x 4", "  lamp globe 500 W"+lamp+"\n  wash day globe x 12 on flies\n  wash night globe x 12 on flies\n", cues)
		return strings.Replace(p, "points 200", "points 16", 1)
	}
	turns := "  cue one day 50 % over 0 s\n  cue two day 0 % over 4 s starting +2 s\n  cue three night 50 % over 4 s starting +6 s\n"
	assert.Empty(t, found(t, plan(" changes", turns), "grid-full"), "never lit at once")
	assert.Len(t, found(t, plan("", turns), "grid-full"), 1)
	assert.Len(t, found(t, plan(" changes", "  cue one day 50 %, night 20 % over 0 s\n"), "grid-full"), 1, "lit at once")
}

// TestSwing: EXP-15, from 3200 lx to 400 lx are three stops: 12800 cd at 2 m and at
// 5.657 m (inverse square). EXP-13: 240 lx take T4 at 800, 1/48 s, with C = 250.
func TestSwing(t *testing.T) {
	plan := func(limit string) string {
		return `take "Swing"
  rate 24 fps
  sensitivity 800
set "Hall"
  mark M1 (2, 0)
  mark M2 (5.65685, 0)
  mark L1 (0, 0)
  place globe at L1 up 1.636 m aims M2
kit
  camera A sensor 24.9 mm x 14 mm
  lens w 24 mm stops T2 to T22
  rig legs sticks
  lamp globe 500 W 12800 cd
people
  performer mina height 1.75 m
  crew ida
look
  exposure within ` + limit + ` stops
beat "Away"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (-2, 1)
  A on legs with ida
  A takes w T4
  A sees mina
`
	}
	assert.Empty(t, found(t, plan("3"), "exposure-swing"))
	got := found(t, plan("2.9"), "exposure-swing")
	require.Len(t, got, 1)
	assert.Equal(t, diag.Error, got[0].Severity)
	assert.Contains(t, got[0].Message, "3 stops darker")
	assert.Contains(t, got[0].Message, "3200 lx")
	assert.Contains(t, got[0].Message, "400 lx")

	// A pull of the iris by three stops takes it up: T4 to T1.4 asks for more than the
	// lens has, T11 to T4 does.
	pulled := strings.Replace(plan("2.9"), "  A takes w T4\n", "  A takes w T11\n", 1) + "  A takes w T4 starting +2 s\n"
	assert.Empty(t, found(t, pulled, "exposure-swing"))

	// A wall between the lamp and all of the way leaves no light that the plan knows; a
	// low one leaves all of it.
	wall := func(high string) string {
		return strings.Replace(plan("2.9"), "  mark L1", "  wall screen (1, -3) (1, 3) high "+high+"\n  mark L1", 1)
	}
	assert.Empty(t, found(t, wall("4 m"), "exposure-swing"))
	assert.Len(t, found(t, wall("1 m"), "exposure-swing"), 1)
}

// TestHungLamps: a lamp at 4 m, 8 m ahead of a lens at 0.7 m stands 22.4° up; 24 mm on
// 14 mm sees 16.3° up from its axis, and tilts up to somebody near.
func TestHungLamps(t *testing.T) {
	plan := func(lamp, wall, look string) string {
		return `take "Hung"
  rate 24 fps
set "Hall"
  grid flies (-4, 6) (4, 6) (4, 14) (-4, 14) high 4 m points 16
  mark M1 (0, 4)
` + wall + `kit
  camera A sensor 24.9 mm x 14 mm
  lens w 24 mm stops T2 to T22
  rig legs sticks
  lamp globe 500 W` + lamp + `
  wash hall globe x 12 on flies
people
  performer mina
  crew ida
` + look + `beat "Stand"
  mina stands at M1 in 4 s
  legs stands at (0, 0)
  A on legs with ida up 0.7 m
  A takes w T4
  A sees mina
`
	}
	never := "look\n  never modern in frame\n"
	assert.Len(t, found(t, plan("", "", ""), "grid-in-shot"), 1)
	assert.Empty(t, found(t, plan(" seen", "", ""), "grid-in-shot"))
	assert.Empty(t, found(t, plan("", "  wall screen (-9, 5) (9, 5) high 5 m\n", ""), "grid-in-shot"), "behind a wall")
	assert.Len(t, found(t, plan(" modern seen", "", never), "modern-in-shot"), 1)
	assert.Empty(t, found(t, plan(" modern", "", never), "grid-in-shot"), "one finding, of the look")
	assert.Len(t, found(t, plan(" modern", "", ""), "grid-in-shot"), 1, "where no look forbids the modern")
}

func TestPickupsWithoutTheirLight(t *testing.T) {
	p := waiting("  place 69.65 N 18.96 E\n  date 2024-06-21 zone +02:00\n", 5) + "pickup \"Hands\" after \"Wait\" roll in civil-dusk\n  mina stands at M1 in 5 s\n"
	got := found(t, p, "light-window")
	require.Len(t, got, 1)
	assert.Equal(t, "Hands", got[0].Subject)
}

// TestSwingOverTwoLines: the walk goes on under another line of the camera, and so
// does the light.
func TestSwingOverTwoLines(t *testing.T) {
	plan := `take "Swing"
  rate 24 fps
set "Hall"
  mark M1 (2, 0)
  mark M2 (5.65685, 0)
  mark L1 (0, 0)
  place globe at L1 up 1.636 m aims M2
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  rig legs sticks
  lamp globe 500 W 12800 cd
people
  performer mina height 1.75 m
  crew ida
look
  exposure within 2 stops
beat "Away"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (-2, 1)
  A on legs with ida
  A takes w24 T4
  A sees mina
  A sees mina waist starting +1.5 s
`
	assert.Len(t, found(t, plan, "exposure-swing"), 1)
}
