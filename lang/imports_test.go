package lang_test

import (
	"encoding/json"
	"maps"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stages are the packages in the order in which they may build on each other:
// a package may import those of earlier lines, never of its own or a later one.
// DEVELOPERS.md has the same table with a sentence for each, and is held to the same.
var stages = [][]string{
	{"lang/source", "lang/units", "lang/geom", "lang/departments", "lang/lanes"},
	{"lang/diag", "lang/pace", "lang/body", "lang/optics", "lang/sky", "lang/light", "lang/timecode", "lang/safety"},
	{"lang/syntax"},
	{"lang/format", "lang/plan", "lang/highlight"},
	{"lang/solid", "lang/drawing", "lang/daylight"},
	{"lang/bind"},
	{"lang/clock"},
	{"lang/motion", "lang/lighting"},
	{"lang/sight"},
	{"lang/staging", "lang/trace"},
	{"lang/check"},
	{"lang/rehearse", "lang/scout"},
	{"lang/compile"},
	{"lang/compare"},
	{"lang/lsp"},
	{"render/fonts"},
	{"render/scene"},
	{"render/scene/sample", "render/flow"}, // the first is a drawing that tests share
	{"render/label", "render/svg", "render/pdf", "render/png"},
	{"render/backdrop", "render/overhead", "render/frames", "render/timeline", "render/sheets"},
	{"render/changes", "render/places", "render/book", "render/page", "render/gltf", "render/cutlist", "render/floor"},
	{"render/reference"},
	{"cmd/longhand"},
}

// onlyHere are libraries that one package alone may know of, so that another
// could take their place by changing that package.
var onlyHere = map[string]string{
	"github.com/ajstarks/svgo/float":      "longhand/render/svg",
	"codeberg.org/go-pdf/fpdf":            "longhand/render/pdf",
	"github.com/srwiley/rasterx":          "longhand/render/png",
	"github.com/alecthomas/participle/v2": "longhand/lang/syntax",
	"github.com/spf13/cobra":              "longhand/cmd/longhand",
	"github.com/sourcegraph/jsonrpc2":     "longhand/lang/lsp",
	"github.com/xuri/excelize/v2":         "longhand/render/sheets",
}

type listed struct {
	ImportPath string
	Imports    []string
}

func TestImportsPointOneWay(t *testing.T) {
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "longhand/...").Output()
	require.NoError(t, err)
	level := map[string]int{}
	for i, names := range stages {
		for _, n := range names {
			level["longhand/"+n] = i
		}
	}
	line := told(t)
	assert.ElementsMatch(t, slices.Collect(maps.Keys(level)), slices.Collect(maps.Keys(line)), "the table of DEVELOPERS.md")
	dec := json.NewDecoder(strings.NewReader(string(out)))
	for dec.More() {
		var p listed
		require.NoError(t, dec.Decode(&p))
		if p.ImportPath == "longhand/lang" {
			continue // this test's own
		}
		own, known := level[trimInternal(p.ImportPath)]
		assert.True(t, known, "%s is not in the table of packages", p.ImportPath)
		for _, imp := range p.Imports {
			if home, ok := onlyHere[imp]; ok {
				assert.Equal(t, home, p.ImportPath, "%s belongs to one package", imp)
			}
			if !strings.HasPrefix(imp, "longhand/") || trimInternal(imp) == trimInternal(p.ImportPath) {
				continue
			}
			assert.Less(t, level[trimInternal(imp)], own, "%s imports %s", p.ImportPath, imp)
			assert.Less(t, line[trimInternal(imp)], line[trimInternal(p.ImportPath)], "%s imports %s, which the table of DEVELOPERS.md has no higher", p.ImportPath, imp)
		}
	}
}

// told is the line of each package in the table of DEVELOPERS.md.
func told(t *testing.T) map[string]int {
	text, err := os.ReadFile("../DEVELOPERS.md")
	require.NoError(t, err)
	_, table, ok := strings.Cut(string(text), "## The packages\n")
	require.True(t, ok)
	table, _, _ = strings.Cut(table, "\n## ")
	out := map[string]int{}
	for i, row := range strings.Split(table, "\n") {
		cells := strings.Split(row, "|")
		if len(cells) < 3 {
			continue
		}
		for k, name := range strings.Split(cells[1], "`") {
			if k%2 == 1 { // between two marks of code
				out["longhand/"+name] = i
			}
		}
	}
	return out
}

// trimInternal counts a package's own inner packages as the package.
func trimInternal(path string) string {
	path, _, _ = strings.Cut(path, "/internal/")
	return path
}
