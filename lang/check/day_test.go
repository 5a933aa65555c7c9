package check_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

func waiting(take string, seconds float64) string {
	return "take \"Day\"\n  rate 24 fps\n" + take + "set \"Yard\"\n  mark M1 (0, 0)\npeople\n  performer mina\nbeat \"Wait\"\n  mina stands at M1 in " + fmt.Sprintf("%g", seconds) + " s\n"
}

// TestWindowsByTheAlmanac: SUN-17, London on 2019-08-29, an almanac's morning civil
// twilight from 04:32 to 05:08 UTC (04:32:17 to 05:07:41 by two programs): 35 min
// 24 s. A take of 35 min 15 s fits once, one of 35 min 35 s does not.
func TestWindowsByTheAlmanac(t *testing.T) {
	london := "  place 51.50853 N 0.12574 W\n  date 2019-08-29 zone +00:00\n  roll in civil-dawn\n"
	got := found(t, waiting(london, 35*60+15), "light-window")
	require.Len(t, got, 1)
	assert.Equal(t, diag.Note, got[0].Severity)
	assert.Contains(t, got[0].Message, "one try")
	got = found(t, waiting(london, 35*60+35), "light-window")
	require.Len(t, got, 1)
	assert.Equal(t, diag.Error, got[0].Severity)
	assert.Contains(t, got[0].Message, "from 04:33 to 05:07", "rounded into the window")
	assert.Empty(t, found(t, waiting(london, 5*60), "light-window"))
}

// TestPolarDays: SUN-25, Tromsø on 2024-06-21 has no twilight (two programs).
func TestPolarDays(t *testing.T) {
	tromso := "  place 69.65 N 18.96 E\n  date 2024-06-21 zone +02:00\n  roll in civil-dusk\n"
	got := found(t, waiting(tromso, 60), "light-window")
	require.Len(t, got, 1)
	assert.Contains(t, got[0].Message, "there is no civil-dusk")
	assert.Empty(t, found(t, waiting(strings.Replace(tromso, "civil-dusk", "day", 1), 60), "light-window"))
}

// TestClockWindows need no place: 19:40 to 20:25 are 45 minutes.
func TestClockWindows(t *testing.T) {
	roll := "  roll in 19:40 to 20:25\n  reset 11 min\n"
	assert.Len(t, found(t, waiting(roll, 46*60), "light-window"), 1)
	assert.Empty(t, found(t, waiting(roll, 17*60), "light-window"), "twice 17 and 11 between")
	assert.Len(t, found(t, waiting(roll, 17*60+1), "light-window"), 1)
}

// TestFilmLoads: RUN-3, 1000 ft of 35 mm with four perforations run 11:06.67 at
// 24 fps; RUN-6, with three 14:48.89; RUN-4, 400 ft of 16 mm as 1000 ft of 35 mm.
func TestFilmLoads(t *testing.T) {
	plan := func(film string, seconds float64) string {
		return waiting("  film "+film+"\n", seconds) + "  legs stands at (0, -6)\n  A on legs with ida\n  A takes w T4\n  A sees mina\n"
	}
	with := func(film string, seconds float64) []diag.Diagnostic {
		p := strings.Replace(plan(film, seconds), "people\n", "kit\n  camera A sensor 22 mm x 16 mm\n  lens w 35 mm\n  rig legs sticks\npeople\n  crew ida\n", 1)
		return found(t, p, "roll-out")
	}
	for _, row := range []struct {
		film string
		runs float64
	}{
		{"35mm-4perf 1000 ft", 666.67},
		{"35mm-3perf 1000 ft", 888.89},
		{"35mm-2perf 1000 ft", 1333.33},
		{"16mm 400 ft", 666.67},
		{"35mm-4perf 400 ft", 266.67}, // RUN-5
	} {
		got := with(row.film, row.runs+0.2)
		require.Len(t, got, 1, row.film)
		assert.Equal(t, diag.Error, got[0].Severity, row.film)
		got = with(row.film, row.runs-0.2)
		require.Len(t, got, 1, row.film)
		assert.Equal(t, diag.Warning, got[0].Severity, "%s: into the run-out", row.film)
		assert.Empty(t, with(row.film, row.runs*0.95), row.film)
	}
}

// TestPickupsAcrossTheSunset: SUN-31, between sunset and 6° down the light falls by
// 6.9 to 8.2 stops (AMS Glossary of Meteorology), so that a pickup by day is not
// like a take at dusk, nor one at nautical dusk.
func TestPickupsAcrossTheSunset(t *testing.T) {
	dusk := waiting("  place 56.05 N 12.69 E\n  date 2026-08-20 zone +02:00\n  roll in civil-dusk\n", 20)
	at := func(window string) []diag.Diagnostic {
		return found(t, dusk+"pickup \"Hands\" after \"Wait\" roll in "+window+"\n  mina stands at M1 in 5 s\n", "pickup-light")
	}
	assert.Len(t, at("day"), 1)
	assert.Len(t, at("golden-evening"), 1)
	assert.Len(t, at("nautical-dusk"), 1)
	assert.Empty(t, at("civil-dusk"))
	assert.Empty(t, at("20:50 to 21:05"))
	// The same brightness from the other side while the sun is up.
	morning := strings.Replace(dusk, "civil-dusk", "golden-evening", 1)
	got := found(t, morning+"pickup \"Hands\" after \"Wait\" roll in golden-morning\n  mina stands at M1 in 5 s\n", "pickup-light")
	assert.Len(t, got, 1)
}

// TestSunIndoors: through a door in the west wall the evening sun comes in; over
// the wall it doesn't, as there is a roof.
func TestSunIndoors(t *testing.T) {
	plan := func(door string) string {
		return `take "Sun"
  rate 24 fps
  place 56.05 N 12.69 E
  date 2026-08-20 zone +02:00
  roll in 19:50 to 19:55
set "Room"
  wall west (-8, -8) (-8, 8) high 3 m
  wall north (-8, 8) (4, 8) high 3 m
  wall east (4, 8) (4, -8) high 3 m
  wall south (4, -8) (-8, -8) high 3 m
` + door + `  mark M1 (-6, 2.5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w 24 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 8 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w T4
  A sees mina
`
	}
	assert.Empty(t, found(t, plan(""), "sun-flare"))
	// The sun stands 5.2° up at 285°: 2.14 m north and 0.75 m up at the wall.
	assert.Len(t, found(t, plan("  door arch on west 9 m to 12 m high 2.6 m open\n"), "sun-flare"), 1)
	assert.Empty(t, found(t, plan("  door arch on west 9 m to 12 m high 2.6 m shut\n"), "sun-flare"))
	assert.Empty(t, found(t, plan("  door arch on west 9 m to 12 m high 2 m open\n"), "sun-flare"), "under the lintel")
}
