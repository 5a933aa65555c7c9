package highlight

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/aymanbagabas/go-udiff"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the grammars anew")

const top = "../../"

// The committed grammars say what the tables say.
func TestFilesAreFresh(t *testing.T) {
	for path, want := range Files() {
		file := filepath.Join(top, path)
		if *update {
			require.Empty(t, os.Getenv("CI"), "grammars are not written in CI")
			require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
			require.NoError(t, os.WriteFile(file, want, 0o644))
		}
		got, err := os.ReadFile(file)
		require.NoError(t, err)
		if string(got) != string(want) {
			t.Errorf("make it anew: go generate ./lang/highlight\n%s", udiff.Unified(path, "from the tables", string(got), string(want)))
		}
	}
}

// Made twice, the files are the same byte for byte.
func TestFilesAreStable(t *testing.T) {
	require.Equal(t, Files(), Files())
}
