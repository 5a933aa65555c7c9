package check_test

import (
	"context"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/lang/check"
	"longhand/lang/compile"
)

func mangle(t *rapid.T, plan string) *compile.Result {
	upTo := check.Moved
	r, err := compile.Text(context.Background(), "test.take", plan, compile.Options{UpTo: &upTo})
	assert.NoError(t, err)
	standsWhereListed(t, r)
	return r
}

// Whatever lines are missing from a plan, no rule fails on what is left, and the
// same text has the same findings.
func TestRulesBearMangledPlans(t *testing.T) {
	var plans []string
	for _, r := range check.Rules {
		if r.Needs == check.Moved {
			plans = append(plans, r.Bad)
		}
	}
	for _, body := range soundPlans {
		plans = append(plans, "take \"Sound\"\n  rate 24 fps\n"+strings.TrimPrefix(body, "\n"))
	}
	sort.Strings(plans)
	rapid.Check(t, func(t *rapid.T) {
		lines := strings.SplitAfter(rapid.SampledFrom(plans).Draw(t, "plan"), "\n")
		drop := rapid.SliceOfN(rapid.IntRange(0, len(lines)-1), 1, 3).Draw(t, "without")
		for _, i := range drop {
			lines[i] = ""
		}
		mangled := strings.Join(lines, "")
		r := mangle(t, mangled)
		out := text(r.Findings)
		assert.NotContains(t, out, "longhand itself failed", mangled)
		assert.NotContains(t, out, "NaN")
		assert.NotContains(t, out, "Inf")
		assert.Equal(t, out, text(mangle(t, mangled).Findings))
	})
}
