package compile

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const tooQuick = `take "Too quick"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 2.6 m/s
`

func readText(text string) Read {
	return func(name string) (string, error) {
		if name == "a.take" {
			return text, nil
		}
		return "", errors.New("no such file")
	}
}

func TestMendKeepsWhatTakesItsFindingAway(t *testing.T) {
	m, err := Mend(context.Background(), readText(tooQuick), "a.take")
	require.NoError(t, err)
	require.Len(t, m.Applied, 1)
	assert.EqualValues(t, "too-fast", m.Applied[0].Code)
	assert.Zero(t, m.Result.Errors())
	assert.Contains(t, m.Texts["a.take"], "at 2 m/s")
}

func TestMendLeavesDecisionsAndSoundPlansAlone(t *testing.T) {
	for name, text := range map[string]string{
		"sound": shipped(t),
		"somebody in shot, which visual effects would have to answer for": `take "In shot"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
  crew jon
beat "Across" for 4 s
  mina stands at M1
  jon stands at (0.6, 3)
  legs stands at (0, -6)
  A on legs with ida
  A takes w35 T8
  A sees mina
`,
	} {
		m, err := Mend(context.Background(), readText(text), "a.take")
		require.NoError(t, err, name)
		assert.Empty(t, m.Applied, name)
		assert.Empty(t, m.Texts, name)
	}
}
