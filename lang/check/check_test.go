package check_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/bind"
	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/diag"
)

// compiled runs every stage on one text.
func compiled(t *testing.T, text string) *compile.Result {
	t.Helper()
	r, err := compile.Text(context.Background(), "plan.take", text, compile.Options{Workers: 1})
	require.NoError(t, err)
	standsWhereListed(t, r)
	return r
}

// worse is the findings above notes, as they would be printed.
func worse(found []diag.Diagnostic) []string {
	var out []string
	for _, d := range found {
		if d.Severity > diag.Note {
			out = append(out, line(&d))
		}
	}
	return out
}

func line(d *diag.Diagnostic) string {
	s := string(d.Code) + ": " + d.Message
	for _, n := range d.Notes {
		s += "\n    " + n
	}
	for _, r := range d.Related {
		s += "\n    > " + strings.TrimSpace(r.Span.Text()) + ": " + r.Message
	}
	return s
}

// mended is a text with a fix done.
func mended(text string, f diag.Fix) string {
	for i := len(f.Edits) - 1; i >= 0; i-- {
		e := f.Edits[i]
		text = text[:e.Span.Start] + e.Text + text[e.Span.End:]
	}
	return text
}

func TestRulesHaveTheirPlans(t *testing.T) {
	seen := map[diag.Code]bool{}
	for _, e := range bind.Codes {
		seen[e.Code] = true
	}
	for _, r := range check.Rules {
		t.Run(string(r.Code), func(t *testing.T) {
			assert.False(t, seen[r.Code], "the code is used twice")
			seen[r.Code] = true
			assert.NotEmpty(t, r.Title)

			bad := compiled(t, r.Bad)
			found := 0
			for _, d := range bad.Findings {
				t.Log(line(&d))
				if d.Code == r.Code {
					found++
					continue
				}
				assert.Equal(t, diag.Note, d.Severity, "the plan that is to show %s shows also %s", r.Code, line(&d))
			}
			assert.Positive(t, found, "the plan that is to show it doesn't")
			good := compiled(t, r.Good).Findings
			assert.Empty(t, worse(good), "the mended plan")
			for _, d := range good {
				assert.False(t, r.Severity == diag.Note && d.Code == r.Code, "the mended plan: %s", line(&d))
			}

			for _, d := range bad.Findings {
				for _, f := range d.Fixes {
					after := compiled(t, mended(r.Bad, f))
					for _, left := range after.Findings {
						assert.False(t, left.Code == d.Code && left.Subject == d.Subject && left.Camera == d.Camera, "%q leaves %s", f.Title, line(&left))
					}
					want := len(worse(bad.Findings))
					if d.Severity != diag.Note {
						want--
					}
					assert.LessOrEqual(t, len(worse(after.Findings)), want, "%q: %v", f.Title, worse(after.Findings))
				}
			}
		})
	}
}

// Words of those who write programs, not plans.
var jargon = []string{
	"compiler", "parse", "token", "syntax tree", "boolean", "integer", "string", "null", "array", "algorithm", "API",
	"runtime", "pixel", "polygon", "prism", "interval", "function", "variable", "segment", "rasteri", "ray cast", "bounding box",
}

func TestExplanationsAreForTheCrew(t *testing.T) {
	for _, r := range check.Rules {
		assert.Greater(t, len(r.Explain), 200, "%s: too short to explain anything", r.Code)
		for _, word := range jargon {
			assert.NotContains(t, strings.ToLower(r.Explain), strings.ToLower(word), string(r.Code))
		}
		assert.NotContains(t, r.Explain, "\t", string(r.Code))
	}
}
