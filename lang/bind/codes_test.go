package bind

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

func loadAlone(text string) []diag.Diagnostic {
	read := func(path string) (string, error) {
		switch path {
		case "plan.take":
			return text, nil
		case "hall.svg":
			return `<svg viewBox="0 0 200 100"><g id="wall"><path d="M0 0H100"/></g><g id="chairs"><rect width="5" height="5"/></g></svg>`, nil
		}
		return "", errors.New("file does not exist")
	}
	files, bag := Load(read, "plan.take")
	_, found := Bind(files, Drawings(read))
	bag.Merge(found)
	return bag.Sorted()
}

func TestCodesAreFoundAndMended(t *testing.T) {
	seen := map[diag.Code]bool{}
	for _, e := range Codes {
		assert.False(t, seen[e.Code], "%s is explained twice", e.Code)
		seen[e.Code] = true
		assert.NotEmpty(t, e.Title, e.Code)
		assert.Greater(t, len(e.Explain), 200, "%s: too short to explain anything", e.Code)
		bad := loadAlone(e.Bad)
		if assert.Len(t, bad, 1, "%s: %v", e.Code, bad) {
			assert.Equal(t, e.Code, bad[0].Code)
		}
		assert.Empty(t, loadAlone(e.Good), e.Code)
	}
}

// TestEveryCodeIsExplained reads the constants of the packages that make codes.
func TestEveryCodeIsExplained(t *testing.T) {
	explained := map[string]bool{}
	for _, e := range Codes {
		explained[string(e.Code)] = true
	}
	n := 0
	for _, dir := range []string{".", "../syntax"} {
		paths, err := filepath.Glob(filepath.Join(dir, "*.go"))
		require.NoError(t, err)
		for _, path := range paths {
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			require.NoError(t, err)
			ast.Inspect(file, func(node ast.Node) bool {
				v, ok := node.(*ast.ValueSpec)
				if !ok || len(v.Names) != 1 || !strings.HasPrefix(v.Names[0].Name, "Code") || len(v.Values) != 1 {
					return true
				}
				if lit, ok := v.Values[0].(*ast.BasicLit); ok {
					code, err := strconv.Unquote(lit.Value)
					require.NoError(t, err)
					assert.True(t, explained[code] || code == "no-such-cue", "%s is not explained", code)
					n++
				}
				return true
			})
		}
	}
	assert.GreaterOrEqual(t, n, len(Codes))
}
