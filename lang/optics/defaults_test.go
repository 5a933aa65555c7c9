package optics

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/units"
)

func TestDefaultsAreAllSaid(t *testing.T) {
	for _, s := range []units.System{units.Metric, units.Feet} {
		seen := map[string]bool{}
		for _, d := range Defaults(s) {
			assert.False(t, seen[d.Name], "%s is listed twice", d.Name)
			seen[d.Name] = true
			assert.NotEmpty(t, d.Value, d.Name)
			assert.NotContains(t, d.Value, "%!", d.Name)
			assert.NotEmpty(t, d.Source, d.Name)
		}
	}
}
