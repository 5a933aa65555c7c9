package check_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/diag"
)

// TestNoPlanBreaksARule takes lines out of plans and doubles others: whatever is
// left is checked to the end, and says the same each time.
func TestNoPlanBreaksARule(t *testing.T) {
	var plans []string
	for _, code := range lensRules {
		for _, rule := range check.Rules {
			if rule.Code == code {
				plans = append(plans, rule.Bad, rule.Good)
			}
		}
	}
	shipped, err := filepath.Glob("../../cmd/longhand/new/*.take")
	require.NoError(t, err)
	for _, name := range shipped {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		plans = append(plans, string(text))
	}
	rapid.Check(t, func(r *rapid.T) {
		lines := strings.SplitAfter(rapid.SampledFrom(plans).Draw(r, "plan"), "\n")
		for range rapid.IntRange(1, 3).Draw(r, "changes") {
			i := rapid.IntRange(0, len(lines)-1).Draw(r, "line")
			if rapid.Bool().Draw(r, "out") {
				lines = append(lines[:i:i], lines[i+1:]...)
			} else {
				k := rapid.IntRange(0, len(lines)-1).Draw(r, "to")
				lines[i], lines[k] = lines[k], lines[i]
			}
			if len(lines) == 0 {
				return
			}
		}
		text := strings.Join(lines, "")
		said := func() string {
			c, err := compile.Text(t.Context(), "plan.take", text, compile.Options{Workers: 1})
			require.NoError(r, err)
			standsWhereListed(r, c)
			var out []string
			for i := range c.Findings {
				d := &c.Findings[i]
				require.NotEqual(r, diag.Code("internal"), d.Code, "%s\n%s", d.Message, text)
				out = append(out, line(d))
			}
			return strings.Join(out, "\n")
		}
		first := said()
		require.Equal(r, first, said())
		require.NotContains(r, first, "NaN")
		require.NotContains(r, first, "-0 ")
	})
}
