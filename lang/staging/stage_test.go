package staging_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/bind"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/sight"
	"longhand/lang/source"
	"longhand/lang/staging"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

func stage(t *testing.T, text string) (*staging.Stage, *motion.Tracks) {
	t.Helper()
	file, bag := syntax.Parse(source.NewFile("a.take", text))
	require.Zero(t, bag.Len(), "%v", bag.Sorted())
	p, found := bind.Bind([]*syntax.File{file})
	require.Zero(t, found.Errors(), "%v", found.Sorted())
	tracks := motion.Resolve(context.Background(), p)
	s := staging.Build(p, tracks)
	require.NoError(t, s.Scene.Check())
	return s, tracks
}

const hall = `take "A"
  rate 24 fps
  aspect 1.85
set "Hall"
  wall north (0, 6) (12, 6) high 3 m
  door gate on north 2 m to 3 m high 2 m
  window pane on north 5 m to 6 m high 1 m to 2 m
  wall glass (0, 0) (0, 6) high 3 m glass
  hole eye on north at 9 m up 1.4 m wide 90 mm
  mark M1 (8.6, 2)
  mark M2 (2.4, 5.4)
kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T16
  rig vest body-rig
  rig lift crane reach 4 m seats 2
  vehicle van 4 m x 2 m high 2 m
  vehicle tank 4 m x 2 m high 2 m
people
  performer mina height 1.7 m
  performer otto height 1.8 m
  crew ida
beat "One"
  mina walks from M1 to M2 at 1 m/s
  mina opens gate
  otto rides van at (0, 0)
  van drives from (2, -6) to (10, -6) at 2 m/s
  tank stands at (20, -6)
  A on vest with ida
  A takes w35
  A follows mina by 2 m
  A sees mina
  B hides behind eye
  B takes w35
  B sees mina
`

func named(t *testing.T, s *staging.Stage, name string) *sight.Body {
	t.Helper()
	i, ok := s.Scene.Body(name)
	require.True(t, ok, "no body %s", name)
	return &s.Scene.Bodies[i]
}

func TestGlassStopsNobodysLook(t *testing.T) {
	s, _ := stage(t, hall)
	for _, o := range s.Scene.Solids {
		assert.NotEqual(t, "glass", o.Name)
		assert.NotEqual(t, "eye", o.Name, "a plug is a body, not a solid")
	}
}

func TestADoorIsThereUntilItOpens(t *testing.T) {
	s, tracks := stage(t, hall)
	for _, o := range s.Scene.Solids {
		if o.Name != "gate" {
			continue
		}
		require.Len(t, o.Shut, 1)
		assert.EqualValues(t, 0, o.Shut[0].From)
		// It leaves its opening as it begins to open.
		for _, a := range tracks.Clock.Lines() {
			if a.Verb == "opens" {
				assert.Equal(t, tracks.Rate.From(tracks.Clock.Of(a).Start)-1, o.Shut[0].To)
			}
		}
		return
	}
	t.Fatal("no gate")
}

func TestAVehicleWithPeopleInItIsOpenAboveItsSill(t *testing.T) {
	s, _ := stage(t, hall)
	van := named(t, s, "van")
	assert.InDelta(t, 0.8, van.At(0).Height, 1e-9, "two fifths of 2 m")
	roof := named(t, s, "van roof")
	assert.InDelta(t, 1.9, roof.At(0).Z, 1e-9)
	assert.Equal(t, "van", roof.Of)
	tank := named(t, s, "tank")
	assert.InDelta(t, 2, tank.At(0).Height, 1e-9, "a closed one is a box")
	assert.Len(t, tank.Track, 1, "what never moves has one pose")
	_, ok := s.Scene.Body("tank roof")
	assert.False(t, ok)
}

func TestOwnIsNoMoreThanCannotBeInShot(t *testing.T) {
	s, _ := stage(t, hall)
	own := func(camera string) map[string]bool {
		i, ok := s.Scene.Camera(camera)
		require.True(t, ok)
		out := map[string]bool{}
		for _, o := range s.Scene.Cameras[i].Own {
			out[o.Body] = true
		}
		return out
	}
	assert.Equal(t, map[string]bool{"A": true, "ida": true, "vest": true}, own("A"))
	assert.Equal(t, map[string]bool{"B": true, "eye": true}, own("B"))
	require.Len(t, s.Hides, 1)
	assert.Equal(t, "B", s.Hides[0].Camera.Name)
}

func TestTheHiddenLensLooksThroughItsHole(t *testing.T) {
	s, _ := stage(t, hall)
	report, err := sight.See(context.Background(), s.Scene, sight.Options{})
	require.NoError(t, err)
	b, _ := s.Scene.Camera("B")
	mina, _ := s.Scene.Body("mina")
	m, ok := report.Moment(b, mina, 0)
	require.True(t, ok)
	assert.Greater(t, m.Visible, 0.0)
	eye, _ := s.Scene.Body("eye")
	assert.Equal(t, "hole", s.Scene.Bodies[eye].Kind)
}

// Whoever casts rays from the trace must not start inside something that would
// stop them: what holds the lens is the camera's own.
func TestWhatHoldsTheLensIsItsOwn(t *testing.T) {
	s, _ := stage(t, `take "A"
  rate 24 fps
set "Hall"
  mark M1 (0, 0)
  mark K (5, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig lift crane reach 4 m seats 2
people
  performer mina
  crew ida
beat "One" for 4 s
  mina stands at M1
  lift stands at K
  A on lift with ida
  A takes w35
  A sees mina
`)
	for i := range s.Scene.Cameras {
		c := &s.Scene.Cameras[i]
		for f := range units.Frame(s.Scene.Frames) {
			v := c.At(f)
			own := map[string]bool{}
			for _, o := range c.Own {
				if f >= o.From && f <= o.To {
					own[o.Body] = true
				}
			}
			for j := range s.Scene.Bodies {
				b := &s.Scene.Bodies[j]
				p := b.At(f)
				near := geom.Polygon(b.Polygon).Placed(geom.Vec{X: p.X, Y: p.Y}, p.Heading)
				if b.Radius == 0 && near.Contains(geom.Vec{X: v.X, Y: v.Y}) && v.Z > p.Z && v.Z < p.Z+p.Height {
					require.True(t, own[b.Name], "%s holds the lens at frame %d", b.Name, f)
				}
			}
		}
	}
	_, ok := s.Scene.Body("lift arm 6")
	require.True(t, ok)
}

// TestAnArmEndsAtItsLens is a crane's arm that gets shorter as the lens comes in:
// its pieces reach from the pivot to the lens and no further, so that what is the
// camera's own does not come and go.
func TestAnArmEndsAtItsLens(t *testing.T) {
	for _, at := range []string{"", " at (0.09, 0.15)", " at (-0.19, 0.18)", " at (3, 0)"} {
		s, _ := stage(t, `take "A"
  rate 24 fps
set "Hall"
  mark M1 (0, 0)
  mark M2 (0, 3)
  mark K (5, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig lift crane
people
  performer mina
beat "One"
  lift stands at K
  A on lift`+at+`
  A takes w35
  A sees mina
  A circles mina 60 deg left at 3 m in 6 s
  mina walks from M1 to M2
`)
		c := &s.Scene.Cameras[0]
		own := map[string][]sight.Own{}
		for _, o := range c.Own {
			own[o.Body] = append(own[o.Body], o)
		}
		for name, list := range own {
			require.Len(t, list, 1, "%s%s", name, at)
			assert.Equal(t, sight.Frames{To: units.Frame(s.Scene.Frames - 1)}, list[0].Frames, "%s%s", name, at)
		}
		require.Contains(t, own, "lift arm 6", at)
		assert.NotContains(t, own, "lift arm 5", at)
		first, last := named(t, s, "lift arm 1"), named(t, s, "lift arm 6")
		half := first.Polygon[0].X
		for f := range units.Frame(s.Scene.Frames) {
			base := named(t, s, "lift").At(f)
			lens := geom.Vec{X: c.At(f).X - base.X, Y: c.At(f).Y - base.Y}
			along := func(b *sight.Body) float64 {
				p := b.At(f)
				return geom.Vec{X: p.X - base.X, Y: p.Y - base.Y}.Dot(lens.Unit())
			}
			require.InDelta(t, 0, along(first)-half, 1e-6, "frame %d%s", f, at)
			require.InDelta(t, lens.Len(), along(last)+half, 1e-6, "frame %d%s", f, at)
		}
	}
}
