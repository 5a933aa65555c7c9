package motion

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"longhand/lang/clock"
	"longhand/lang/units"
)

func BenchmarkResolve(b *testing.B) {
	text, err := os.ReadFile("testdata/collection.take")
	require.NoError(b, err)
	r := NewResolver(parse(b, string(text)))
	for b.Loop() {
		r.Resolve(context.Background(), nil)
	}
}

// BenchmarkFrames asks for everything that moves at every frame.
func BenchmarkFrames(b *testing.B) {
	text, err := os.ReadFile("testdata/collection.take")
	require.NoError(b, err)
	tr := Resolve(context.Background(), parse(b, string(text)))
	for b.Loop() {
		for k := range tr.Frames {
			at := tr.Rate.Time(units.Frame(k))
			for _, t := range tr.Bodies {
				t.At(at)
			}
			for _, c := range tr.Cameras {
				c.At(at)
			}
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*tr.Frames), "ns/frame")
}

// crowd is a three-minute plan of 60 bodies and two cameras.
func crowd() string {
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	random := rand.New(rand.NewPCG(1, 2))
	say("set \"Crowd\"")
	for i := range 80 {
		say("  mark M%d (%.2f, %.2f)", i, 30*random.Float64(), 20*random.Float64())
	}
	say("kit\n  camera A sensor 24.9 mm x 14 mm\n  camera B sensor 24.9 mm x 14 mm\n  lens w24 24 mm\n  rig vest body-rig\n  rig dolly dolly\npeople")
	for i := range 56 {
		say("  performer p%d", i)
	}
	say("  crew ida\n  crew bo\nbeat \"one\"\n  A takes w24 T4\n  B takes w24 T4\n  A on vest with ida\n  B on dolly with bo")
	for i := range 56 {
		at := random.IntN(80)
		say("  p%d stands at M%d", i, at)
		for range 8 {
			via, to := (at+1+random.IntN(30))%80, (at+40+random.IntN(30))%80
			say("  p%d walks via M%d to M%d in 20 s", i, via, to)
			at = to
		}
	}
	say("  A sees p0, p1\n  A follows p0 by 2.5 m\n  B sees p2\n  B beside p2 left 3 m")
	return b.String()
}

// BenchmarkReplay is one playing of many: the same plan, its times varied.
func BenchmarkReplay(b *testing.B) {
	p := parse(b, crowd())
	r := NewResolver(p)
	random := rand.New(rand.NewPCG(3, 4))
	vary := &clock.Vary{Length: make([]float64, len(p.Actions))}
	for b.Loop() {
		for i := range vary.Length {
			vary.Length[i] = 0.95 + 0.1*random.Float64()
		}
		r.Resolve(context.Background(), vary)
	}
}
