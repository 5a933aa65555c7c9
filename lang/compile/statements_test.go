package compile_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"longhand/lang/compile"
	"longhand/lang/syntax"
)

// What is found in plans with every kind of slip, and in the shipped ones, stands at
// statements that the explanation of the finding names. The rules' own tests do the
// same for plans that read well.
func TestFindingsStandAtTheStatementsTheyName(t *testing.T) {
	var plans []*txtar.Archive
	slips, err := filepath.Glob("../../testdata/bind/*.txtar")
	require.NoError(t, err)
	for _, p := range slips {
		ar, err := txtar.ParseFile(p)
		require.NoError(t, err)
		plans = append(plans, ar)
	}
	for _, pattern := range []string{"../../examples/*.take", "../../examples/*/*.take"} {
		shipped, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, p := range shipped {
			text, err := os.ReadFile(p)
			require.NoError(t, err)
			plans = append(plans, &txtar.Archive{Files: []txtar.File{{Name: filepath.Base(p), Data: text}}})
		}
	}
	found := 0
	for _, ar := range plans {
		read := func(name string) (string, error) {
			for _, f := range ar.Files {
				if f.Name == name {
					return string(f.Data), nil
				}
			}
			return "", fmt.Errorf("%s is not there", name)
		}
		r, err := compile.Compile(context.Background(), read, ar.Files[0].Name, compile.Options{})
		require.NoError(t, err)
		for i := range r.Findings {
			d := &r.Findings[i]
			e, ok := compile.Explained(d.Code)
			k := compile.StatementAt(r.Files, d.Span)
			if !ok || e.At == nil || k == nil {
				continue
			}
			found++
			assert.True(t, compile.Concerns(e, k), "%s stands at %q, which its explanation does not name: %s", d.Code, k.Name(), d.Message)
		}
	}
	assert.Greater(t, found, 40)
}

// The statements that explanations name are there, and no code names the same one
// twice.
func TestExplanationsNameStatementsThatAreThere(t *testing.T) {
	names := map[string]bool{}
	for _, k := range syntax.Statements {
		assert.False(t, names[k.Name()], "two statements are called %q", k.Name())
		names[k.Name()], names[k.Section] = true, true
	}
	for _, e := range compile.Catalog() {
		seen := map[string]bool{}
		for _, n := range e.At {
			assert.True(t, names[n], "%s: there is no statement %q", e.Code, n)
			assert.False(t, seen[n], "%s names %q twice", e.Code, n)
			seen[n] = true
		}
	}
}
