package bind

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestSlipsOfThePenHaveNoConsequences binds a text of forty lines that cannot be
// read: no other line may be blamed for what they would have said.
func TestSlipsOfThePenHaveNoConsequences(t *testing.T) {
	text, err := os.ReadFile("../../testdata/syntax/forty.take")
	require.NoError(t, err)
	_, found := bindText("forty.take", string(text))
	for _, d := range found {
		line := d.Span.File.Line(d.Span.StartPos().Line)
		assert.Contains(t, line, "#!", "%s: %s", d.Code, d.Message)
	}
	assert.Len(t, found, strings.Count(string(text), "#! "))
}
