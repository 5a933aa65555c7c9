package check_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/diag"
)

// moved compiles a plan up to what its movement shows.
func moved(t testing.TB, text string) *compile.Result {
	t.Helper()
	upTo := check.Moved
	r, err := compile.Text(context.Background(), "test.take", text, compile.Options{UpTo: &upTo})
	require.NoError(t, err)
	standsWhereListed(t, r)
	return r
}

// serious are the findings above a note, as "code: message".
func serious(r *compile.Result) []string {
	var out []string
	for _, d := range r.Findings {
		if d.Severity > diag.Note {
			out = append(out, string(d.Code)+": "+d.Message)
		}
	}
	return out
}

// applied is a text with a fix's edits made.
func applied(t *testing.T, text string, f diag.Fix) string {
	t.Helper()
	require.NotEmpty(t, f.Edits)
	name := f.Edits[0].Span.File.Name
	out, ok := f.Apply(map[string]string{name: text})
	require.True(t, ok, f.Title)
	return out[name]
}

func text(list []diag.Diagnostic) string {
	var b strings.Builder
	_ = diag.WriteText(&b, list, diag.Paint{})
	return b.String()
}

// TestMovementExamples holds every rule's own two plans against all rules of
// movement, and every fix against the finding it is offered for.
func TestMovementExamples(t *testing.T) {
	for _, rule := range check.Rules {
		if rule.Needs != check.Moved {
			continue
		}
		t.Run(string(rule.Code), func(t *testing.T) {
			bad := moved(t, rule.Bad)
			t.Log(text(bad.Findings))
			require.NotEmpty(t, serious(bad))
			for _, d := range bad.Findings {
				if d.Severity > diag.Note {
					assert.Equal(t, rule.Code, d.Code, d.Message)
				}
			}
			for _, d := range bad.Findings {
				for _, f := range d.Fixes {
					mended := moved(t, applied(t, rule.Bad, f))
					assert.NotContains(t, text(mended.Findings), d.Message)
					assert.Less(t, len(serious(mended)), len(serious(bad)), "%s\n%s", f.Title, text(mended.Findings))
				}
			}
			assert.Empty(t, serious(moved(t, rule.Good)))
		})
	}
}
