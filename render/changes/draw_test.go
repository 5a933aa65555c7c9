package changes

import (
	"context"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compare"
	"longhand/lang/compile"
	"longhand/lang/geom"
	"longhand/render/label"
	"longhand/render/scene"
	"longhand/render/svg"
)

var update = flag.Bool("update", false, "rewrite the drawing that is expected")

func compiled(t *testing.T, text string) *compile.Result {
	t.Helper()
	r, err := compile.Text(context.Background(), "plan.take", text, compile.Options{})
	require.NoError(t, err)
	require.False(t, r.Stopped, "%v", r.Findings)
	return r
}

func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile("../../examples/" + name)
	require.NoError(t, err)
	return string(text)
}

var revise = strings.NewReplacer(
	"mark M2 (6.6, 5.4)", "mark M2 (7.2, 6.2)", "block bench-1 (9, 3) (12, 3) (12, 4) (9, 4)", "block bench-1 (9, 3.3) (12, 3.3) (12, 4.3) (9, 4.3)",
	"eight round T2, T1 at 1.3 m", "eight round T2, T1 at 1.6 m")

// titles are those of all groups, to see what is drawn.
func titles(items []scene.Item) []string {
	var out []string
	for _, it := range items {
		if g, ok := it.(*scene.Group); ok {
			out = append(out, g.Title)
			out = append(out, titles(g.Items)...)
		}
	}
	return out
}

func TestDrawing(t *testing.T) {
	text := read(t, "last-collection.take")
	s := Draw(compare.Compare(compiled(t, text), compiled(t, revise.Replace(text))))
	assert.Empty(t, s.Check())
	assert.Empty(t, label.Overlaps(label.Quads(s.Texts())))
	got := titles(s.Items)
	for _, want := range []string{"mark M2 moves 1 m, from (6.6, 5.4) to (7.2, 6.2)", "bench-1, as it was", "bench-1, new or changed", "mina", "mina, as it was", "otto", "A", "A, as it was"} {
		assert.Contains(t, got, want)
	}
	assert.NotContains(t, got, "nora", "her way is the same")
	out := svg.Write(s, svg.Options{})
	path := filepath.Join("testdata", "revised.svg")
	if *update && os.Getenv("CI") == "" {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, out, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), string(out), "run with -update, and look at it")
}

func TestNothingDiffers(t *testing.T) {
	for _, name := range []string{"last-collection.take", "night-ferry.take", "eight-bars.take"} {
		r := compiled(t, read(t, name))
		s := Draw(compare.Compare(r, r))
		assert.Empty(t, s.Check(), name)
		for _, title := range titles(s.Items) {
			assert.NotContains(t, title, "as it was")
		}
	}
}

func TestDifferingStretches(t *testing.T) {
	straight := []geom.Vec{{X: 0}, {X: 1}, {X: 2}, {X: 3}, {X: 4}}
	bent := []geom.Vec{{X: 0}, {X: 1}, {X: 2, Y: 1}, {X: 3}, {X: 4}}
	assert.Empty(t, differing(straight, straight))
	assert.Equal(t, [][]geom.Vec{{{X: 1}, {X: 2, Y: 1}, {X: 3}}}, differing(bent, straight))
	assert.Equal(t, [][]geom.Vec{straight}, differing(straight, nil), "where there is no other way, all of it")
	assert.Equal(t, [][]geom.Vec{{{X: 9}}}, differing([]geom.Vec{{X: 9}}, straight))
}
