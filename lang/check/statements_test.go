package check_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/syntax"
)

// fatalist is what the tests of this package share, rapid's too.
type fatalist interface {
	Errorf(format string, args ...any)
}

// standsWhereListed holds the findings of a plan to the statements that their
// explanations name, so that the reference says of each statement what can be found
// there. What a finding refers to is held to it where it is no line of a beat: any
// line may be what put somebody there.
func standsWhereListed(t fatalist, r *compile.Result) {
	for i := range r.Findings {
		d := &r.Findings[i]
		e, ok := compile.Explained(d.Code)
		if !ok || e.At == nil {
			continue
		}
		if k := compile.StatementAt(r.Files, d.Span); k != nil && !compile.Concerns(e, k) {
			t.Errorf("%s stands at %q, which the rule does not list: %s", d.Code, k.Name(), d.Message)
		}
		for _, s := range d.Related {
			if k := compile.StatementAt(r.Files, s.Span); k != nil && k.Section != "beat" && !compile.Concerns(e, k) {
				t.Errorf("%s refers to %q, which the rule does not list: %s", d.Code, k.Name(), s.Message)
			}
		}
	}
}

// Every rule names statements that there are, each once, and its own bad plan's
// finding stands at one of them.
func TestRulesNameTheirStatements(t *testing.T) {
	names := map[string]bool{}
	for _, k := range syntax.Statements {
		names[k.Name()], names[k.Section] = true, true
	}
	for _, r := range check.Rules {
		assert.NotEmpty(t, r.At, string(r.Code))
		seen := map[string]bool{}
		for _, name := range r.At {
			assert.True(t, names[name], "%s: there is no statement %q", r.Code, name)
			assert.False(t, seen[name], "%s: %q twice", r.Code, name)
			seen[name] = true
		}
		bad := compiled(t, r.Bad)
		for _, d := range bad.Findings {
			if d.Code == r.Code {
				k := compile.StatementAt(bad.Files, d.Span)
				if assert.NotNil(t, k, "%s stands at no statement", r.Code) {
					assert.True(t, compile.Concerns(r.Entry, k), "%s stands at %q", r.Code, k.Name())
				}
			}
		}
	}
}
