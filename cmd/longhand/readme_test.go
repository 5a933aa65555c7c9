package main

import (
	"context"
	"os"
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

// Pictures in the project's pages are what the tool draws of the plans beside
// them: `go test ./cmd/longhand -update` redraws them.
func TestPicturesAreFresh(t *testing.T) {
	for _, p := range []struct {
		plan, drawing, picture string
		colour                 bool
	}{
		{"last-collection.take", "beat-06-the-eight", "last-collection.svg", false},
		{"lessons/lesson-1.take", "take", "lessons/lesson-1.svg", true},
		{"lessons/lesson-2.take", "take", "lessons/lesson-2.svg", true},
		{"lessons/lesson-3.take", "take", "lessons/lesson-3.svg", true},
		{"lessons/lesson-4.take", "take", "lessons/lesson-4.svg", true},
		{"lessons/lesson-5.take", "beat-05-one-hour", "lessons/lesson-5.svg", true},
	} {
		text, err := os.ReadFile("../../examples/" + p.plan)
		require.NoError(t, err)
		r, err := compile.Text(context.Background(), "examples/"+p.plan, string(text), compile.Options{})
		require.NoError(t, err)
		files, err := drawings(context.Background(), r, overhead.Options{Colour: p.colour})
		require.NoError(t, err)
		drawn := false
		for _, f := range files {
			if f.name != "overhead/"+p.drawing+".svg" {
				continue
			}
			drawn = true
			picture := "../../examples/" + p.picture
			if *update && os.Getenv("CI") == "" {
				require.NoError(t, os.WriteFile(picture, f.data, 0o644))
			}
			got, err := os.ReadFile(picture)
			require.NoError(t, err)
			assert.True(t, string(f.data) == string(got), "%s: run `go test ./cmd/longhand -update`, and look at it", p.picture)
		}
		assert.True(t, drawn, p.picture)
	}
}

func TestTheFirstPlanOfTheReadme(t *testing.T) {
	_, rest, ok := strings.Cut(readme(t), "## A first plan\n\n```\n")
	require.True(t, ok)
	plan, rest, ok := strings.Cut(rest, "```")
	require.True(t, ok)
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("plan.take", []byte(plan), 0o644))
	_, errs, code := cli(t, "", "check", "--fail-on", "note", "plan.take")
	assert.Equal(t, exitClean, code, errs)
	_, _, code = cli(t, "", "fmt", "--check", "plan.take")
	assert.Equal(t, exitClean, code, "it is in the standard form")

	// What it says of the same plan with a walk that can't be done in time.
	_, rest, ok = strings.Cut(rest, "$ longhand check plan.take\n")
	require.True(t, ok)
	said, _, ok := strings.Cut(rest, "```")
	require.True(t, ok)
	const walk = "runa walks from M1 via M2 to M3 at 1.1 m/s"
	require.Contains(t, plan, walk)
	require.NoError(t, os.WriteFile("plan.take", []byte(strings.Replace(plan, walk, walk+" by +6 s", 1)), 0o644))
	_, errs, code = cli(t, "", "check", "--color", "never", "plan.take")
	assert.Equal(t, exitFindings, code)
	assert.Equal(t, said, errs)
}

func TestTheReadmeListsEveryCommand(t *testing.T) {
	text := readme(t)
	for _, c := range (&app{}).commands() {
		assert.Contains(t, text, "`longhand "+c.Name(), "the table of commands")
	}
}
