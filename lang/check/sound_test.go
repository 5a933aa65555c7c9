package check_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Plans that a crew would call sound: nothing may be found in them.
var soundPlans = map[string]string{
	"two walk side by side through a dock door, an operator after them": `
set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 4.5 m to 7.5 m high 2.6 m open
  mark M1 (6, -6)
  mark M2 (6, 8)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig vest body-rig
people
  performer mina
  performer otto
  crew ida
beat "In"
  mina walks from (5.6, -6) to (5.6, 8) at 1.1 m/s
  otto walks from (6.4, -6) to (6.4, 8) at 1.1 m/s
  A on vest with ida
  A takes w35 T4
  A follows mina by 2 m
  A sees mina, otto
`,
	"a van with riders, a cart beside it, a step off at rest": `
set "Yard"
  mark D0 (-30, 0)
  mark D1 (0, 0)
  mark C0 (-30, -3.4)
  mark C1 (1, -3.4)
  mark M1 (6, 4)
kit
  camera A sensor 24.9 mm x 14 mm weighs 6 kg
  lens w35 35 mm weighs 1.4 kg
  rig cart cart size 2.4 m x 1.2 m high 0.5 m seats 3
  rig vest body-rig
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina
  performer otto
  crew ida
beat "Yard"
  van drives from D0 to D1 at 2.2 m/s
  mina rides van at (0.4, 0.5)
  otto rides van at (-0.7, 0.5)
  cart drives from C0 to C1 when van leaves D0 plus 0.2 s at 2.2 m/s
  A on cart with ida up 1.7 m
  A takes w35 T4
  A sees mina
beat "Down" when cart reaches C1
  mina leaves van
  mina walks to M1
  handoff A from cart to vest at C1
`,
	"up a flight of stairs and along a gallery with a rail": `
set "Hall"
  platform gallery (0, 6) (12, 6) (12, 9) (0, 9) high 2 m to 2.2 m
  stairs flight (2, 1.5) (2, 6) width 1.4 m rise 2.2 m
  wall rail (2.8, 6.1) (12, 6.1) high 2.2 m to 3.3 m
  wall back (0, 9.1) (12, 9.1) high 5 m
  wall side (-0.1, 6) (-0.1, 9) high 5 m
  wall end (12.1, 6) (12.1, 9) high 5 m
people
  performer mina
beat "Up"
  mina walks from (2, 0) to (2, 7.4) straight at 0.8 m/s
  mina walks to (8, 7.4)
`,
	"under a gallery, and past a bench": `
set "Hall"
  platform gallery (0, 6) (12, 6) (12, 9) (0, 9) high 3 m to 3.2 m
  block bench (4, 2) (8, 2) (8, 3) (4, 3) high 1 m
people
  performer mina
  performer otto
beat "Along"
  otto stands at (3, 7.5)
  mina walks from (0, 4) to (10, 4)
  mina walks to (6, 8)
`,
	"through a door that somebody opens": `
set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 4 m to 5 m high 2.1 m shut
people
  performer mina
beat "In"
  mina walks from (4.5, -4) to (4.5, -0.7)
  mina opens dock
  mina walks to (4.5, 4)
`,
	"sits on a low bench": `
set "Hall"
  block bench (2, 0) (4, 0) (4, 0.5) (2, 0.5) high 0.45 m
people
  performer mina
beat "Sit"
  mina walks from (3, -3) to (3, 0.2)
  mina sits
  mina waits in 3 s
`,
	"a dolly pushed along with who walks, on its own side of the room": `
set "Hall"
  mark M1 (0, 4)
  mark M2 (8, 4)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig wheels dolly
people
  performer mina
  crew ida
beat "Along"
  mina walks from M1 to M2 at 0.9 m/s
  wheels moves from (0, 0) to (8, 0) at 0.8 m/s
  A on wheels with ida
  A takes w35 T4
  A sees mina
`,
	"they pass each other in a corridor": `
set "Hall"
  wall north (-1, 1) (20, 1) high 3 m
  wall south (-1, -1) (20, -1) high 3 m
people
  performer mina
  performer otto
beat "Past"
  mina walks from (0, -0.4) to (18, -0.4)
  otto walks from (18, 0.4) to (0, 0.4)
`,
	"a hand-to-hand handoff, at rest": `
set "Yard"
  mark W1 (0, -9)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
  rig more handheld
people
  crew ida
  crew rolf
beat "Over"
  ida stands at (0, 0)
  rolf stands at (0.8, 0)
  A on arms with ida
  A takes w35 T4
  A sees W1
  handoff A from arms to more with rolf starting +2 s
  rolf walks to (4, 0) starting +7 s
`,
	"a van drives by at a distance": `
set "Yard"
  mark D0 (-20, 0)
  mark D1 (20, 0)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer otto
beat "By"
  van drives from D0 to D1 at 2.2 m/s
  otto stands at (0, 4)
`,
	"walks along with a cart, at its side": `
set "Yard"
  mark C0 (0, 0)
  mark C1 (12, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig cart cart size 2.4 m x 1.2 m high 0.5 m
people
  performer mina
  crew ida
beat "Along"
  mina walks from (0, 1.6) to (12, 1.6) at 1 m/s
  cart drives from C0 to C1 at 1 m/s
  A on cart with ida
  A takes w35 T4
`,
	"up onto the stage and back from its edge": `
set "Hall"
  platform stage (6, 0) (12, 0) (12, 6) (6, 6) high 0 m to 1 m
  stairs steps (4.4, 3) (6, 3) width 1.4 m rise 1 m
people
  performer mina
beat "Up"
  mina walks from (2, 3) via (5, 3), (7, 3) to (9, 3) at 0.8 m/s
  mina walks via (7, 3), (5, 3) to (2, 3) at 0.8 m/s
`,
	"round the crane, clear of its arm": `
set "Hall"
  mark K0 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig boom crane reach 5 m
people
  performer mina
  crew ida
beat "Round"
  boom stands at K0
  A on boom with ida up 2.4 m at (4, 0)
  A takes w35 T4
  A sees mina
  mina walks from (7, -4) via (8, 0) to (7, 4)
  A rises to 3.4 m in 4 s
`,
	"gets on where the van stops, from nowhere in particular": `
set "Yard"
  mark D0 (-20, 0)
  mark D1 (0, 0)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina
beat "In"
  van drives from D0 to D1 at 2 m/s
beat "On"
  mina rides van at (0.3, 0.5)
`,
	"in feet": `
set "Yard"
  mark D0 (-20, 0)
  mark D1 (20, 0)
people
  performer otto
beat "By"
  otto walks from D0 to D1 at 4 ft/s
`,
	"walks round a pillar, and stands at a wall": `
set "Hall"
  wall back (-6, 3) (6, 3) high 4 m
  pillar post (0, 0) round 0.4 m high 4 m
people
  performer mina
  performer otto
beat "Round"
  otto stands at (3, 2.7)
  mina walks from (0, -1.2) round (0, 0) 180 deg left at 1.2 m
  mina walks to (-4, 2.6)
`,
}

func TestSoundPlansAreSilent(t *testing.T) {
	for name, body := range soundPlans {
		t.Run(name, func(t *testing.T) {
			head := "take \"Sound\"\n  rate 24 fps\n"
			if strings.HasPrefix(name, "in feet") {
				head += "  units feet\n"
			}
			r := moved(t, head+strings.TrimPrefix(body, "\n"))
			assert.Empty(t, serious(r), text(r.Findings))
		})
	}
}
