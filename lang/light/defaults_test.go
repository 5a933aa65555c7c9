package light

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDefaultsAreAllSaid(t *testing.T) {
	seen := map[string]bool{}
	for _, d := range Defaults() {
		assert.False(t, seen[d.Name], "%s is listed twice", d.Name)
		seen[d.Name] = true
		assert.NotEmpty(t, d.Value, d.Name)
		assert.NotContains(t, d.Value, "%!", d.Name)
		assert.NotEmpty(t, d.Source, d.Name)
	}
}
