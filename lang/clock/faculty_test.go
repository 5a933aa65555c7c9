package clock_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/bind"
	"longhand/lang/clock"
)

// Every deed there is takes up some part of its subject: one that was forgotten would
// run beside all else that they do.
func TestEveryDeedHasAFaculty(t *testing.T) {
	files, bag := bind.Load(func(path string) (string, error) {
		text, err := os.ReadFile(filepath.Join("../../testdata/bind", path))
		return string(text), err
	}, "every.take")
	require.Zero(t, bag.Len(), "%v", bag.Sorted())
	p, found := bind.Bind(files)
	require.Zero(t, found.Len(), "%v", found.Sorted())
	require.NotEmpty(t, p.Actions)
	for _, a := range p.Actions {
		assert.NotEqual(t, clock.NoFaculty, clock.FacultyOf(a.Deed), "%T (%s)", a.Deed, clock.Describe(a))
	}
}
