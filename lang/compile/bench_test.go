package compile

import (
	"context"
	"os"
	"runtime"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/require"

	"longhand/lang/rehearse"
)

func shipped(tb testing.TB) string {
	tb.Helper()
	text, err := os.ReadFile("../../examples/last-collection.take")
	require.NoError(tb, err)
	return string(text)
}

// measured is what the benchmarks run on: the take that is shipped, and the
// reference load with its cut.
func measured(b *testing.B, run func(b *testing.B, text string)) {
	b.Run("shipped", func(b *testing.B) { run(b, shipped(b)) })
	for _, name := range []string{"walled", "open", "walled-cut", "open-cut"} {
		b.Run(name, func(b *testing.B) { run(b, loadText(b, name)) })
	}
}

// BenchmarkTextToFindings is everything that check does.
func BenchmarkTextToFindings(b *testing.B) {
	measured(b, func(b *testing.B, text string) {
		b.ReportAllocs()
		for b.Loop() {
			r, err := Text(context.Background(), "a.take", text, Options{})
			require.NoError(b, err)
			require.False(b, r.Stopped)
		}
	})
}

// BenchmarkMemory is the most that the heap holds while it does, as found where
// it is swept.
func BenchmarkMemory(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(25))
	measured(b, func(b *testing.B, text string) {
		most := uint64(0)
		for b.Loop() {
			done, stopped := make(chan struct{}), make(chan struct{})
			go func() {
				defer close(stopped)
				var m runtime.MemStats
				for {
					runtime.ReadMemStats(&m)
					most = max(most, m.HeapAlloc)
					select {
					case <-done:
						return
					default:
						runtime.Gosched()
					}
				}
			}()
			_, err := Text(context.Background(), "a.take", text, Options{})
			close(done)
			<-stopped
			require.NoError(b, err)
		}
		b.ReportMetric(float64(most)/1e6, "MB-at-most")
	})
}

// BenchmarkRehearsal is one rehearsal, as drawn, at every frame, on one core.
func BenchmarkRehearsal(b *testing.B) {
	measured(b, func(b *testing.B, text string) {
		r, err := Text(context.Background(), "a.take", text, Options{})
		require.NoError(b, err)
		b.ResetTimer()
		rehearse.Run(context.Background(), Player(r.Plan), rehearse.Options{Runs: b.N, Workers: 1})
	})
}
