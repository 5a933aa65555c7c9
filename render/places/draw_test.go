package places

import (
	"context"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/scout"
	"longhand/lang/sight"
	"longhand/lang/units"
	"longhand/render/label"
	"longhand/render/scene"
)

// titles are those of all groups, to see what is drawn.
func titles(items []scene.Item) []string {
	var out []string
	for _, it := range items {
		if g, ok := it.(*scene.Group); ok {
			out = append(append(out, g.Title), titles(g.Items)...)
		}
	}
	return out
}

func TestMaps(t *testing.T) {
	for _, name := range []string{"last-collection", "night-ferry", "eight-bars"} {
		text, err := os.ReadFile("../../examples/" + name + ".take")
		require.NoError(t, err)
		r, err := compile.Text(context.Background(), name+".take", string(text), compile.Options{})
		require.NoError(t, err)
		take := scout.Take{Plan: r.Plan, Tracks: r.Tracks, Stage: r.Stage}
		frames := sight.Frames{From: 0, To: units.Frame(min(72, r.Tracks.Frames-1))}
		who := r.Plan.People[0]
		sensor := r.Plan.Kit.Cameras[0]
		frame, err := optics.NewFrame(sensor.Width, sensor.Height, sensor.Squeeze, r.Plan.Take.Aspect)
		require.NoError(t, err)
		if name == "last-collection" { // one with walls is enough on the floor
			frames.To = 24
		}
		found, err := scout.Cameras(context.Background(), scout.Ask{Take: take, Frame: frame, Focal: 28, Sees: []plan.Thing{who}, Frames: frames, Floor: true, Count: 3})
		require.NoError(t, err)
		require.NotEmpty(t, found.Places, name)
		s := Cameras(found, "the beginning")
		assert.Empty(t, s.Check(), name)
		got := titles(s.Items)
		assert.Contains(t, got, "1: "+found.Places[0].In(r.Plan.Take.Units))
		assert.Contains(t, got, who.Name)
		stands, err := scout.Stands(context.Background(), scout.StandAsk{Take: take, For: scout.Person, Near: who, Frames: frames})
		require.NoError(t, err)
		s = Stands(stands, "the beginning")
		assert.Empty(t, s.Check(), name)
		// The names keep off each other; numbers lie where the places are.
		for _, it := range s.Items {
			if g, ok := it.(*scene.Group); ok && g.ID == "names" {
				assert.Empty(t, label.Overlaps(label.Quads((&scene.Sheet{Items: g.Items}).Texts())), name)
			}
		}
	}
}
