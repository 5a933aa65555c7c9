package overhead

import (
	"fmt"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/render/scene"
)

// generated is a made-up plan: a room with things in it, two to six performers who
// walk about on each other's cues, one or two cameras. Its findings don't matter.
func generated(seed int64) string {
	r := rand.New(rand.NewSource(seed))
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	w, h := 8+r.Float64()*20, 6+r.Float64()*14
	at := func() string { return fmt.Sprintf("(%.1f, %.1f)", 0.6+r.Float64()*(w-1.2), 0.6+r.Float64()*(h-1.2)) }
	say("take \"Generated %d\"\n  scene %d\n  rate 25 fps", seed, seed)
	if seed%3 == 0 {
		say("  place 56 N 12 E\n  date 2026-06-%02d zone +02:00\n  roll in night", 1+r.Intn(28))
	}
	say("set \"Room %d\"", seed)
	say("  wall outer (0, 0) (%.1f, 0) (%.1f, %.1f) (0, %.1f) (0, 0) high 3 m", w, w, h, h)
	say("  door entry on outer 1 m to 2.2 m high 2.1 m open")
	say("  window light on outer %.1f m to %.1f m high 1 m to 2 m", w/2, w/2+2)
	for i := range r.Intn(4) {
		x, y := 1+r.Float64()*(w-4), 1+r.Float64()*(h-3)
		say("  block table-%d (%.1f, %.1f) (%.1f, %.1f) (%.1f, %.1f) (%.1f, %.1f) high 0.8 m", i, x, y, x+1.6, y, x+1.6, y+0.8, x, y+0.8)
	}
	marks := 5 + r.Intn(16)
	for i := range marks {
		say("  mark K%d %s", i, at())
	}
	say("kit\n  camera A sensor 24.9 mm x 14 mm\n  camera B sensor 24.9 mm x 14 mm\n  lens w24 24 mm stops T2 to T22\n  rig vest body-rig\n  rig legs sticks\n  vehicle lorry 5 m x 2 m high 3 m")
	say("people\n  crew olga\n  crew ulf")
	n := 2 + r.Intn(5)
	for i := range n {
		say("  performer %s", []string{"anna", "anton", "bertil", "cilla", "david", "elsa"}[i])
	}
	mark := func() string { return fmt.Sprintf("K%d", r.Intn(marks)) }
	for k := range 2 {
		say("beat \"Part %d\"", k+1)
		for i := range n {
			name := []string{"anna", "anton", "bertil", "cilla", "david", "elsa"}[i]
			if k == 0 {
				say("  %s stands at %s", name, mark())
			}
			switch r.Intn(4) {
			case 0:
				say("  %s walks via %s to %s", name, mark(), mark())
			case 1:
				say("  %s walks to %s starting +%d s", name, mark(), 1+r.Intn(4))
			case 2:
				say("  %s says \"Here is a line of some length, number %d.\"", name, i)
			default:
				say("  %s walks round %s 270 deg left at 1 m", name, mark())
			}
		}
		if k == 0 {
			say("  A on vest with olga up 1.5 m\n  A takes w24 T2.8\n  A sees anna\n  A follows anna by 2 m")
			if seed%2 == 0 {
				say("  B on legs with ulf up 1.5 m\n  legs stands at %s\n  ulf stands at %s\n  B takes w24 T2.8\n  B sees anton", at(), at())
			}
			say("  lorry drives from (%.1f, -4) to (%.1f, -4) at 4 m/s", -10-r.Float64()*20, w)
		}
	}
	return b.String()
}

// Plans nobody looked at are held to the same as those in the repository.
func TestGeneratedPlansRead(t *testing.T) {
	papers := []scene.Paper{scene.A4, scene.A3, scene.Letter, scene.Tabloid}
	for seed := int64(1); seed <= 12; seed++ {
		upTo := check.Timed
		r, err := compile.Text(t.Context(), "generated.take", generated(seed), compile.Options{UpTo: &upTo})
		require.NoError(t, err)
		require.False(t, r.Stopped, "%v\n%s", r.Findings, generated(seed))
		for what, sheets := range drawings(r, Options{Paper: papers[seed%4]}) {
			for i, s := range sheets {
				assertReads(t, s, fmt.Sprintf("plan %d, %s, sheet %d", seed, what, i+1))
			}
		}
		for _, b := range r.Plan.Beats {
			assert.NotEmpty(t, Beat(r, b, Options{}))
		}
	}
}
