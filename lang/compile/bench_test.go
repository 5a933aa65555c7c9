package compile

import (
	"context"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func shipped(tb testing.TB) string {
	tb.Helper()
	text, err := os.ReadFile("../../examples/last-collection.take")
	require.NoError(tb, err)
	return string(text)
}

// BenchmarkTextToFindings is everything that check does, on the shipped take.
func BenchmarkTextToFindings(b *testing.B) {
	text := shipped(b)
	for b.Loop() {
		r, err := Text(context.Background(), "a.take", text, Options{})
		require.NoError(b, err)
		require.False(b, r.Stopped)
	}
}

// BenchmarkPlaying is one rehearsal of the shipped take, at every frame, on one
// core.
func BenchmarkPlaying(b *testing.B) {
	r, err := Text(context.Background(), "a.take", shipped(b), Options{})
	require.NoError(b, err)
	play := Player(r.Plan)
	for b.Loop() {
		play(context.Background(), nil)
	}
}
