package page

import (
	"context"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
)

// examples are the plans that come with the project.
var examples = []string{"last-collection", "eight-bars", "night-ferry"}

func shipped(tb testing.TB, name string) *compile.Result {
	tb.Helper()
	text, err := os.ReadFile("../../examples/" + name + ".take")
	require.NoError(tb, err)
	r, err := compile.Text(context.Background(), name+".take", string(text), compile.Options{})
	require.NoError(tb, err)
	require.False(tb, r.Stopped, "%v", r.Findings)
	return r
}

// BenchmarkData is all that the page knows of the shipped take.
func BenchmarkData(b *testing.B) {
	r := shipped(b, "last-collection")
	for b.Loop() {
		_, err := Data(context.Background(), r, Options{})
		require.NoError(b, err)
	}
}
