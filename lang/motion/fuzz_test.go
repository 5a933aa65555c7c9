package motion

import (
	"context"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/bind"
	"longhand/lang/units"
)

// Whatever is left of a plan after its mistakes have been found is played
// without a panic and without a place that is no number.
func TestBrokenPlansAreStillPlayed(t *testing.T) {
	text, err := os.ReadFile("testdata/collection.take")
	require.NoError(t, err)
	lines := strings.Split(string(text)+extraLines, "\n")
	rapid.Check(t, func(rt *rapid.T) {
		kept := append([]string(nil), lines...)
		for range rapid.IntRange(0, 30).Draw(rt, "changes") {
			i, k := rapid.IntRange(0, len(kept)-1).Draw(rt, "i"), rapid.IntRange(0, len(kept)-1).Draw(rt, "k")
			switch rapid.IntRange(0, 3).Draw(rt, "change") {
			case 0:
				kept[i], kept[k] = kept[k], kept[i]
			case 1:
				kept[i] = ""
			case 2:
				kept[i] = kept[k]
			case 3: // words of one line in another
				a, b := strings.Fields(kept[i]), strings.Fields(kept[k])
				if len(a) > 1 && len(b) > 1 {
					kept[i] = strings.Join(append(a[:len(a)/2:len(a)/2], b[len(b)/2:]...), " ")
				}
			}
		}
		playsWhole(rt, strings.Join(kept, "\n"))
	})
}

// extraLines are deeds that the plan of the archive has none of.
const extraLines = `
  mina spins 200 deg left in 3 s with
  A leads mina by 2 m
  A beside otto right 2 m
  A counters mina at 2 m
  A pushes 2 m
  A rises to 1.8 m
  A pans 20 deg left in 2 s
  A racks to otto
  mina boards cart
  ida stands at M1
  otto turns to A
  A sees B
  mina sits
  mina walks round M2 200 deg left at 2 m
  mina walks eight round M1, M3
  handoff A from vest to cart at C1 weight ida
  mina walks to 2 m before M3 backwards facing A in 3 s
  van drives to D0 by +5 s
  cart rides van
  van rides cart
`

func playsWhole(t require.TestingT, text string) {
	files, _ := bind.Load(func(string) (string, error) { return text, nil }, "broken.take")
	p, _ := bind.Bind(files)
	tr := Resolve(context.Background(), p)
	tr.LensDemands()
	for k := 0; k < min(tr.Frames, 5000); k += 37 {
		at := tr.Rate.Time(units.Frame(k))
		for _, b := range tr.Bodies {
			q := b.At(at)
			for _, v := range []float64{float64(q.X), float64(q.Y), float64(q.Z), q.Heading, float64(q.Height), float64(b.Speed(at))} {
				require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%s", b.Thing.ID().Name)
			}
		}
		for _, c := range tr.Cameras {
			q := c.At(at)
			for _, v := range []float64{q.X, q.Y, q.Z, q.Pan, q.Tilt, q.Focal} {
				require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%s", c.Camera.Name)
			}
			c.Arm(at)
		}
	}
}

func FuzzResolve(f *testing.F) {
	text, err := os.ReadFile("testdata/collection.take")
	require.NoError(f, err)
	f.Add(string(text))
	f.Add(string(text) + extraLines)
	f.Add(stage + extraLines)
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1<<16 {
			t.Skip()
		}
		playsWhole(t, text)
	})
}
