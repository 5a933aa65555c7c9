package main

import (
	"context"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/render/overhead"
)

// BenchmarkBuild is everything that a build makes of the shipped plan, text to
// files, without the disk.
func BenchmarkBuild(b *testing.B) {
	text, err := os.ReadFile("../../examples/last-collection.take")
	require.NoError(b, err)
	for b.Loop() {
		r, err := compile.Text(context.Background(), "last-collection.take", string(text), compile.Options{})
		require.NoError(b, err)
		_, err = everything(context.Background(), r, overhead.Options{}, nil)
		require.NoError(b, err)
	}
}
