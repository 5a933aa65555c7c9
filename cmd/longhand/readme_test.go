package main

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/render/overhead"
)

func readme(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	return string(text)
}

// The picture at the top of the README is what the tool draws of the shipped
// plan: `go test ./cmd/longhand -update` redraws it.
func TestThePictureIsFresh(t *testing.T) {
	text, err := os.ReadFile("../../examples/last-collection.take")
	require.NoError(t, err)
	r, err := compile.Text(context.Background(), "examples/last-collection.take", string(text), compile.Options{})
	require.NoError(t, err)
	files, err := drawings(context.Background(), r, overhead.Options{})
	require.NoError(t, err)
	const picture = "../../examples/last-collection.svg"
	for _, f := range files {
		if f.name != "overhead/beat-06-the-eight.svg" {
			continue
		}
		if *update && os.Getenv("CI") == "" {
			require.NoError(t, os.WriteFile(picture, f.data, 0o644))
		}
		got, err := os.ReadFile(picture)
		require.NoError(t, err)
		assert.Equal(t, string(f.data), string(got), "run `go test ./cmd/longhand -update`, and look at it")
		return
	}
	t.Fatal("the beat of the picture is not drawn")
}

func TestTheFirstPlanOfTheReadmeCompiles(t *testing.T) {
	_, rest, ok := strings.Cut(readme(t), "## A first plan\n\n```\n")
	require.True(t, ok)
	plan, _, ok := strings.Cut(rest, "```")
	require.True(t, ok)
	path := filepath.Join(t.TempDir(), "plan.take")
	require.NoError(t, os.WriteFile(path, []byte(plan), 0o644))
	_, errs, code := cli(t, "", "check", "--fail-on", "note", path)
	assert.Equal(t, exitClean, code, errs)
	_, _, code = cli(t, "", "fmt", "--check", path)
	assert.Equal(t, exitClean, code, "it is in the standard form")
}

func TestTheReadmeListsEveryCommand(t *testing.T) {
	text := readme(t)
	for _, c := range (&app{}).commands() {
		assert.Contains(t, text, "`longhand "+c.Name(), "the table of commands")
	}
}
