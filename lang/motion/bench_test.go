package motion

import (
	"context"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

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
