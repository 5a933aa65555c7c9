package check_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Plans with one fault each, on either side of a limit. What counts is the code,
// and that nothing else is found; "" is a sound plan.
func TestFaultsOfMovement(t *testing.T) {
	const (
		crew = "people\n  performer mina\n  performer otto\n  crew ida\n  crew rolf\n"
		kit  = "kit\n  camera A sensor 24.9 mm x 14 mm\n  lens w35 35 mm\n  rig vest body-rig\n  rig arms gimbal\n  rig wheels dolly\n  rig cart cart\n  vehicle van 4.6 m x 1.9 m high 2.3 m\n"
		yard = "set \"Yard\"\n  mark M1 (0, 0)\n  mark M2 (12, 0)\n" + kit + crew
	)
	door := func(width string) string {
		return "set \"Hall\"\n  wall street (0, 0) (24, 0) high 5 m\n  door dock on street 5 m to " + width + " high 2.6 m open\n" + kit + crew
	}
	through := func(opening string) string {
		return "set \"Hall\"\n  wall street (0, 0) (24, 0) high 5 m thick 0.1 m\n" + opening + strings.Replace(kit, "dolly\n", "dolly\n  rig shoulder handheld\n", 1) + crew
	}
	hold := "  A on vest with ida\n  A takes w35 T4\n  A sees (6, 20)\n"
	for _, c := range []struct{ name, text, code string }{
		// Paces: Bohannon 1997 for the walk; the rest common practice, no source.
		{"a walk at the limit", yard + "beat \"B\"\n  mina walks from M1 to M2 at 2 m/s\n", ""},
		{"a walk over it", yard + "beat \"B\"\n  mina walks from M1 to M2 at 2.1 m/s\n", "too-fast"},
		{"a run", yard + "beat \"B\"\n  mina runs from M1 to M2 at 3.5 m/s\n", ""},
		{"a run over the limit", yard + "beat \"B\"\n  mina runs from M1 to M2 at 6.5 m/s\n", "too-fast"},
		{"no time for the way", yard + "beat \"B\"\n  mina walks from M1 to M2 in 5 s\n", "too-fast"},
		{"a body rig at 1.6", yard + "beat \"B\"\n  ida walks from M1 to M2 at 1.6 m/s\n" + hold, ""},
		{"a body rig over it", yard + "beat \"B\"\n  ida walks from M1 to M2 at 1.8 m/s\n" + hold, "too-fast"},
		{"the look's own limit", yard + "look\n  speed body-rig at most 1 m/s\nbeat \"B\"\n  ida walks from M1 to M2 at 1.2 m/s\n" + hold, "too-fast"},
		{"a van alone on the road", yard + "beat \"B\"\n  van drives from (0, 0) to (200, 0) at 8 m/s\n", ""},
		{"leading a walk that is too fast for backwards", yard + "beat \"B\"\n  mina walks from M1 to M2 at 1.5 m/s\n  A on vest with ida\n  A takes w35 T4\n  A leads mina by 2 m\n  A sees mina\n  rolf spots ida\n", "too-fast"},
		{"a spotter by the operator", yard + "beat \"B\"\n  mina walks from M1 to M2 at 0.9 m/s\n  A on vest with ida\n  A takes w35 T4\n  A leads mina by 2 m\n  A sees mina\n  rolf stands at (3, 0.5)\n  rolf spots ida\n", ""},
		{"a spotter who comes late", yard + "beat \"B\"\n  mina walks from M1 to M2 at 0.9 m/s\n  A on vest with ida\n  A takes w35 T4\n  A leads mina by 2 m\n  A sees mina\n  rolf stands at (8, 6)\n  rolf spots ida\n", "no-spotter"},
		{"handed through a wall", through("") + "beat \"B\"\n  A on arms with ida\n  A takes w35 T4\n  A sees (6, 20)\n  ida stands at (5, 0.4)\n  rolf stands at (5, -0.4)\n  handoff A from arms to shoulder with rolf starting +2 s\n", "handoff-apart"},
		{"handed through a window", through("  window sash on street 4 m to 6 m high 0.9 m to 2 m\n") + "beat \"B\"\n  A on arms with ida\n  A takes w35 T4\n  A sees (6, 20)\n  ida stands at (5, 0.4)\n  rolf stands at (5, -0.4)\n  handoff A from arms to shoulder with rolf starting +2 s\n", ""},
		{"handed through a narrow one", through("  window sash on street 4.8 m to 5.2 m high 0.9 m to 2 m\n") + "beat \"B\"\n  A on arms with ida\n  A takes w35 T4\n  A sees (6, 20)\n  ida stands at (5, 0.4)\n  rolf stands at (5, -0.4)\n  handoff A from arms to shoulder with rolf starting +2 s\n", "handoff-apart"},
		{"handed through a window in no time", through("  window sash on street 4 m to 6 m high 0.9 m to 2 m\n") + "beat \"B\"\n  A on arms with ida\n  A takes w35 T4\n  A sees (6, 20)\n  ida stands at (5, 0.4)\n  rolf stands at (5, -0.4)\n  handoff A from arms to shoulder with rolf starting +2 s in 2.5 s\n", "handoff-rushed"},
		{"an operator who sits into a van", yard + "beat \"B\"\n  van stands at (5, 0)\n  ida stands at (5, 1.6)\n  A on vest with ida\n  A takes w35 T4\n  A sees (6, 20)\n  ida rides van starting +2 s\n  van drives to (20, 0) at 1.5 m/s starting +10 s\n", ""},
		{"a van that drives off at once", yard + "beat \"B\"\n  van stands at (5, 0)\n  ida stands at (5, 1.6)\n  A on vest with ida\n  A takes w35 T4\n  A sees (6, 20)\n  ida rides van starting +2 s\n  van drives to (20, 0) at 1.5 m/s starting +5 s\n", "handoff-rushed"},
		// Jumps: half a pace is none.
		{"a quarter of a metre off", yard + "beat \"B\"\n  mina walks from M1 to M2\n  mina walks from (12.25, 0) to (12.25, 4)\n", ""},
		{"half a metre off", yard + "beat \"B\"\n  mina walks from M1 to M2\n  mina walks from (12.5, 0) to (12.5, 4)\n", "jump"},
		// Doors: common practice, no source.
		{"a door wide enough for a body rig", door("5.95 m") + "beat \"B\"\n  ida walks from (5.475, -3) to (5.475, 3) at 1 m/s\n" + hold, ""},
		{"a door too narrow for it", door("5.85 m") + "beat \"B\"\n  ida walks from (5.425, -3) to (5.425, 3) at 1 m/s\n" + hold, "tight-gap"},
		{"the same door for somebody without one", door("5.85 m") + "beat \"B\"\n  mina walks from (5.425, -3) to (5.425, 3)\n", ""},
		{"a slit", door("5.4 m") + "beat \"B\"\n  mina walks from (5.2, -3) to (5.2, 3)\n", "tight-gap"},
		{"a dolly through a door", door("5.95 m") + "beat \"B\"\n  wheels moves from (5.475, -3) to (5.475, 3) straight\n", ""},
		{"a dolly through a narrower one", door("5.8 m") + "beat \"B\"\n  wheels moves from (5.4, -3) to (5.4, 3) straight\n", "tight-gap"},
		{"a dolly through one narrower than itself", door("5.6 m") + "beat \"B\"\n  wheels moves from (5.3, -3) to (5.3, 3) straight\n", "tight-gap"},
		{"into the jamb", door("6.5 m") + "beat \"B\"\n  mina walks from (4.95, -3) to (4.95, 3)\n", "through-wall"},
		{"a van into the jamb", door("9 m") + "beat \"B\"\n  van drives from (5.6, -9) to (5.6, 9) straight\n", "through-wall"},
		{"a van through the middle", door("9 m") + "beat \"B\"\n  van drives from (7, -9) to (7, 9) straight\n", ""},
		{"a shut door", strings.Replace(door("6.5 m"), "open", "shut", 1) + "beat \"B\"\n  mina walks from (5.7, -3) to (5.7, 3)\n", "through-wall"},
		{"a door that opens too late", strings.Replace(door("6.5 m"), "open", "shut", 1) + "beat \"B\"\n  mina walks from (5.7, -3) to (5.7, 3)\n  door dock opens starting +4 s\n", "through-wall"},
		{"a door that opens in time", strings.Replace(door("6.5 m"), "open", "shut", 1) + "beat \"B\"\n  mina walks from (5.7, -3) to (5.7, 3)\n  door dock opens starting +0.2 s\n", ""},
		{"under a lintel", "set \"Hall\"\n  wall beam (0, 0) (24, 0) high 2 m to 5 m\n" + crew + "beat \"B\"\n  mina walks from (5, -3) to (5, 3)\n", ""},
		{"into a beam", "set \"Hall\"\n  wall beam (0, 0) (24, 0) high 1.4 m to 5 m\n" + crew + "beat \"B\"\n  mina walks from (5, -3) to (5, 3)\n", "through-wall"},
		{"over a kerb", "set \"Hall\"\n  block kerb (0, 0) (9, 0) (9, 0.3) (0, 0.3) high 0.15 m\n" + crew + "beat \"B\"\n  mina walks from (5, -3) to (5, 3)\n", ""},
		{"into the side of a platform", "set \"Hall\"\n  platform deck (0, 0) (9, 0) (9, 4) (0, 4) high 0 m to 1 m\n" + crew + "beat \"B\"\n  mina walks from (5, -3) to (5, -0.05)\n", "through-wall"},
		{"off the side of a platform", "set \"Hall\"\n  platform deck (0, 0) (9, 0) (9, 4) (0, 4) high 0 m to 1 m\n" + crew + "beat \"B\"\n  mina walks from (4, 2, 1) to (13, 2)\n", "fall-edge"},
		{"off a step", "set \"Hall\"\n  platform deck (0, 0) (9, 0) (9, 4) (0, 4) high 0 m to 0.4 m\n" + crew + "beat \"B\"\n  mina walks from (4, 2, 0.4) to (13, 2)\n", ""},
		{"down from nothing", yard + "beat \"B\"\n  mina stands at (0, 0, 1) for 1 s\n  mina walks to M2\n", "jump"},
		{"up to nothing", yard + "beat \"B\"\n  mina walks from M1 to (12, 0, 1)\n", "jump"},
		// Two bodies: shoulders 0.46 m, S. Pheasant, Bodyspace, from memory.
		{"shoulder to shoulder", yard + "beat \"B\"\n  mina walks from (0, 0) to (9, 0)\n  otto walks from (0, 0.45) to (9, 0.45)\n", ""},
		{"in each other", yard + "beat \"B\"\n  mina walks from (0, 0) to (9, 0)\n  otto walks from (0, 0.3) to (9, 0.3)\n", "bump"},
		{"on one mark", yard + "beat \"B\"\n  mina walks from M1 to M2\n  otto walks from (12, 8) to M2\n", "bump"},
		{"caught up", yard + "beat \"B\"\n  mina walks from (3, 0) to (12, 0) at 0.7 m/s\n  otto walks from (0, 0.1) to (13, 0.1) at 1.6 m/s\n", "bump"},
		{"a van over somebody's foot", yard + "beat \"B\"\n  van drives from (-12, 0) to (12, 0) at 0.4 m/s\n  mina stands at (0, 0.98)\n", "bump"},
		// Vehicles: AASHTO; at 2 m/s it stops in 5.59 m.
		{"beyond the stopping distance", yard + "beat \"B\"\n  van drives from (-12, 0) to (0, 0) at 2 m/s\n  mina stands at (9.3, 0)\n", ""},
		{"inside it", yard + "beat \"B\"\n  van drives from (-12, 0) to (0, 0) at 2 m/s\n  mina stands at (4, 0)\n", "close-pass"},
		{"half a metre to the side", yard + "beat \"B\"\n  van drives from (-12, 0) to (12, 0) at 2 m/s\n  mina stands at (0, 1.7)\n", "close-pass"},
		{"two metres to the side", yard + "beat \"B\"\n  van drives from (-12, 0) to (12, 0) at 2 m/s\n  mina stands at (0, 3.3)\n", ""},
		{"behind it", yard + "beat \"B\"\n  van drives from (-8, 0) to (12, 0) at 2 m/s\n  mina stands at (-13, 0)\n", ""},
		// In feet, as fixes have to be written then.
		{"too fast in feet", "  units feet\nset \"Yard\"\n  mark M1 (0, 0)\n  mark M2 (40, 0)\n" + crew + "beat \"B\"\n  mina walks from M1 to M2 at 8 ft/s\n", "too-fast"},
		{"on one mark in feet", "  units feet\nset \"Yard\"\n  mark M1 (0, 0)\n  mark M2 (40, 0)\n" + crew + "beat \"B\"\n  mina walks from M1 to M2\n  otto walks from (40, 20) to M2\n", "bump"},
		// Weight: who stands in has to be stood in for.
		{"the weight steps off too", "set \"Hall\"\n  mark C1 (0, 0)\nkit\n  camera A sensor 24.9 mm x 14 mm\n  lens w35 35 mm\n  rig lift crane reach 4 m seats 1\n  rig vest body-rig\n" + crew + "beat \"B\"\n  lift stands at C1\n  A on lift with ida up 1.5 m\n  A takes w35 T4\n  rolf stands at (3.6, 1.4)\n  handoff A from lift to vest weight rolf starting +2 s\n  rolf leaves lift starting +30 s\n", "no-weight"},
		// Marks moved.
		{"stands in a block", "set \"Hall\"\n  block bench (0, 0) (4, 0) (4, 1) (0, 1) high 1.2 m\n  mark M1 (2, -3)\n  mark M2 (2, 0.05)\n" + crew + "beat \"B\"\n  mina walks from M1 to M2\n", "through-wall"},
		{"a handoff a little too far", "set \"Yard\"\n  mark C1 (0, 0)\n  mark C2 (1.5, 0)\n" + kit + "  rig more handheld\n" + crew + "beat \"B\"\n  ida stands at C1\n  rolf stands at C2\n  A on arms with ida\n  A takes w35 T4\n  A sees (0, -9)\n  handoff A from arms to more with rolf starting +2 s\n", "handoff-apart"},
		// Backwards: common practice, no source.
		{"two metres backwards", yard + "beat \"B\"\n  ida walks from (0, 0) to (1.9, 0) backwards at 0.6 m/s\n" + hold, ""},
		{"three metres backwards", yard + "beat \"B\"\n  ida walks from (0, 0) to (3, 0) backwards at 0.6 m/s\n" + hold, "no-spotter"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := moved(t, "take \"Fault\"\n  rate 24 fps\n"+c.text)
			found := map[string]bool{}
			for _, s := range serious(r) {
				code, _, _ := strings.Cut(s, ":")
				found[code] = true
			}
			want := map[string]bool{}
			if c.code != "" {
				want[c.code] = true
			}
			assert.Equal(t, want, found, text(r.Findings))
			for _, d := range r.Findings {
				for _, f := range d.Fixes {
					mended := moved(t, applied(t, "take \"Fault\"\n  rate 24 fps\n"+c.text, f))
					assert.NotContains(t, text(mended.Findings), d.Message, f.Title)
					assert.Less(t, len(serious(mended)), len(serious(r)), "%s\n%s", f.Title, text(mended.Findings))
				}
			}
		})
	}
}

// An allow may name either of two who meet.
func TestAllowOfEitherWhoMeets(t *testing.T) {
	for _, name := range []string{"mina", "otto"} {
		r := compiled(t, `take "Embrace"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
people
  performer mina
  performer otto
beat "Meet"
  mina walks from M1 to (2.9, 0)
  otto walks from M2 to (3.1, 0)
  allow bump `+name+` because "they embrace"
`)
		assert.Empty(t, worse(r.Findings), name)
	}
}

// An arm of 5 m that stands at the origin with its lens 3.75 m out, at three
// quarters of its reach, has 1.25 m left to push, at the height of its pivot.
func TestPushesOnAnArm(t *testing.T) {
	const crane = "set \"Yard\"\n  mark K0 (0, 0)\nkit\n  camera A sensor 24.9 mm x 14 mm\n  lens w35 35 mm\n  rig lift crane reach 5 m\npeople\n  performer mina\n  crew ida\nbeat \"B\"\n" +
		"  mina stands at (20, 0)\n  lift stands at K0 facing mina\n  A on lift with ida up 1.6 m\n  A takes w35 T5.6\n  A sees mina\n"
	for text, code := range map[string]string{"  A pushes 1.2 m in 6 s\n": "", "  A pushes 4 m in 12 s\n": "arm-short", "  A pulls 2 m in 8 s\n": "", "  A pulls 3 m in 12 s\n": "arm-short"} {
		codes := map[string]bool{}
		for _, s := range serious(moved(t, "take \"Fault\"\n  rate 24 fps\n"+crane+text)) {
			code, _, _ := strings.Cut(s, ":")
			codes[code] = true
		}
		want := map[string]bool{}
		if code != "" {
			want[code] = true
		}
		assert.Equal(t, want, codes, text)
	}
}

// Two who begin aboard a rig of one seat are one too many, although one of them
// gets off soon; two who swap are not.
func TestSeatsFromTheFirstFrame(t *testing.T) {
	const cart = "take \"Fault\"\n  rate 24 fps\nset \"Yard\"\n  mark K0 (0, 0)\nkit\n  rig cart cart seats 1\npeople\n  performer mina\n  crew ida\n  crew jon\nbeat \"B\"\n  cart stands at K0\n  mina stands at (9, 9) for 20 s\n  ida rides cart at (-0.6, 0)\n  ida leaves cart to (-3, 0) starting +3 s\n"
	assert.Len(t, serious(moved(t, cart+"  jon rides cart at (0.6, 0)\n")), 1)
	assert.Empty(t, serious(moved(t, cart+"  jon stands at (2, 0)\n  jon boards cart at (0.6, 0) starting +2.5 s\n")))
}
