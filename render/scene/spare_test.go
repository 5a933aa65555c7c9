package scene

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Spare keeps the rules that something uses, in their order, and no others.
func TestSpare(t *testing.T) {
	s := &Sheet{Width: 10, Height: 10, Title: "t", Styles: Styles{
		{Class: "group"}, {Class: "unused", Style: Style{Width: 1}}, {Class: "line", Style: Style{Width: 2}}, {Class: "dim", Style: Style{Opacity: 0.5}},
	}}
	s.Add(&Group{Class: "group", Items: []Item{Line("line dim", Pt(1, 1), Pt(2, 2))}})
	var kept []string
	for _, r := range s.Spare().Styles {
		kept = append(kept, r.Class)
	}
	assert.Equal(t, []string{"group", "line", "dim"}, kept)
	assert.Empty(t, s.Check())
}
