package compile

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/rehearse"
)

// Per walks across behind Mina. The finding stands at her way and comes of what A
// sees; both are lines that can be changed.
const crossed = `take "Crossed"
set "Yard"
  mark M1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew per
beat "Across"
  legs stands at (0, -4)
  A on legs up 1.6 m
  A takes w35 T4
  A sees mina
  mina stands at M1 for 10 s
  per stands at (-6, 3) for 3 s
  per walks to (6, 3)
`

func TestThePlayerNamesTheLinesOfAFinding(t *testing.T) {
	r, err := Text(context.Background(), "crossed.take", crossed, Options{})
	require.NoError(t, err)
	play := Player(r.Plan)
	_, broken := play(context.Background(), nil)
	var found *rehearse.Broken
	for i := range broken {
		if broken[i].What == "crew-in-shot per in A" {
			found = &broken[i]
		}
	}
	require.NotNil(t, found, "%v", broken)
	var lines []string
	for _, a := range found.Lines {
		lines = append(lines, a.Span.Text())
		assert.Same(t, a, r.Plan.Actions[a.Index])
	}
	assert.Contains(t, lines, "per walks to (6, 3)")
	assert.Contains(t, lines, "A sees mina")
}
