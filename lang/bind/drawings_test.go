package bind

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// boundFrom binds plan.take with files beside it.
func boundFrom(t *testing.T, files map[string]string) (*plan.Plan, []diag.Diagnostic) {
	t.Helper()
	read := func(name string) (string, error) {
		if text, ok := files[name]; ok {
			return text, nil
		}
		return "", fmt.Errorf("open %s: %w", name, os.ErrNotExist)
	}
	loaded, bag := Load(read, "plan.take")
	p, found := Bind(loaded, Drawings(read))
	bag.Merge(found)
	return p, bag.Sorted()
}

const drawnHall = `<svg width="200mm" height="100mm" viewBox="0 0 200 100">
<g id="wall 4m"><polyline id="street" points="0,100 200,100"/></g>
<g id="block"><rect id="bench" x="20" y="20" width="40" height="20"/></g>
<g id="platform"><rect id="rostrum" x="120" y="20" width="40" height="20"/></g>
<g id="pillar"><circle cx="100" cy="50" r="5"/></g></svg>`

func TestADrawingDeclaresWhatIsOnIt(t *testing.T) {
	p, found := boundFrom(t, map[string]string{
		"plan.take": `use "places/hall.take"
set "T"
  door dock on street 4 m to 6 m high 2.6 m
  hole pigeon on street at 8 m up 1.4 m wide 90 mm
`,
		"places/hall.take":      "set \"Hall\"\n  plan \"drawn/hall.svg\" scale 1:50\n",
		"places/drawn/hall.svg": drawnHall,
	})
	require.Empty(t, found)
	street := p.Set.Walls[0]
	assert.Equal(t, "street", street.Name)
	assert.Equal(t, units.Metres(10), lengthOf(street.Line))
	assert.Equal(t, plan.Range{High: 4}, street.High)
	assert.Same(t, street, p.Set.Doors[0].Wall)
	assert.Equal(t, units.Metres(0.02), street.Thick, "it has a lens hole in it and says no thickness")
	assert.Equal(t, "bench", p.Set.Blocks[0].Name)
	assert.Equal(t, plan.Range{High: wallHigh}, p.Set.Blocks[0].High)
	assert.Equal(t, plan.Range{High: drawnPlatform}, p.Set.Platforms[0].High)
	assert.Equal(t, "pillar-1", p.Set.Pillars[0].Name)
	assert.InDelta(t, 0.5, float64(p.Set.Pillars[0].Round), 1e-9)
}

func TestDrawingMistakes(t *testing.T) {
	const use = "set \"T\"\n  plan \"hall.svg\" scale 1:50\n  door dock on nowhere 1 m to 2 m\n"
	for what, c := range map[string]struct {
		plan, svg string
		code      diag.Code
		says      string
	}{
		"missing":      {use, "", CodeNoFile, "hall.svg cannot be read: file does not exist"},
		"broken":       {use, "<svg><g", CodeBadDrawing, "line 1 is no XML"},
		"nothing":      {use, `<svg><g id="chairs"><rect/></g></svg>`, CodeBadDrawing, "nothing in hall.svg"},
		"taken before": {"set \"T\"\n  wall street (0, 0) (4, 0)\n  plan \"hall.svg\" scale 1:50\n", drawnHall, CodeNameTwice, "a shape called `street`, and so is something else"},
		"taken after":  {"set \"T\"\n  plan \"hall.svg\" scale 1:50\n  wall street (0, 0) (4, 0)\n", drawnHall, CodeNameTwice, "`street` is declared twice"},
		"twice in it": {"set \"T\"\n  plan \"hall.svg\" scale 1:50\n", `<svg><g id="wall"><path id="a" d="M0 0H99"/><path id="a" d="M0 9H99"/></g></svg>`,
			CodeNameTwice, "two shapes called `a`"},
		"a note": {"set \"T\"\n  plan \"hall.svg\" scale 1:50\n", `<svg><g id="wall"><path d="M0 0H99"/></g><g id="chairs"><path d="M0 9H99"/></g></svg>`,
			CodeDrawingNote, "1 shape taken, 1 left out"},
	} {
		files := map[string]string{"plan.take": c.plan}
		if c.svg != "" {
			files["hall.svg"] = c.svg
		}
		_, found := boundFrom(t, files)
		require.Len(t, found, 1, what)
		assert.Equal(t, c.code, found[0].Code, what)
		assert.Contains(t, found[0].Message, c.says, what)
		assert.Contains(t, found[0].Span.File.Text, found[0].Span.Text(), what)
		assert.Equal(t, c.code == CodeDrawingNote, found[0].Severity == diag.Note, what)
	}
}
