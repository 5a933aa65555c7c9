package bind

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestForty binds forty different mistakes: each is found once, on its own line,
// and no other line is blamed.
func TestForty(t *testing.T) {
	text := readTestdata(t, "forty.take")
	_, found := bindText("forty.take", text)
	meet(t, "forty.take", text, found)
	assert.Len(t, found, 40)
	lines := map[int]bool{}
	for _, d := range found {
		lines[d.Span.StartPos().Line] = true
	}
	assert.Len(t, lines, 40)
}
