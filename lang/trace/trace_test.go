package trace

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// hall is a wall with a doorway, a door, a platform, and people and a cart that
// pass behind and before each other.
func hall() *sight.Scene {
	const frames = 12
	box := func(x0, y0, x1, y1 float64) []geom.Vec {
		return []geom.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
	}
	s := &sight.Scene{Rate: units.Rate{Num: 24000, Den: 1001}, Frames: frames, Aspect: 1.85}
	s.Solids = []sight.Solid{
		{Name: "north", Kind: "wall", Polygon: box(-5, 3, 0, 3.2), Z: [2]float64{0, 3}},
		{Name: "north", Kind: "wall", Polygon: box(1, 3, 5, 3.2), Z: [2]float64{0, 3}},
		{Name: "north", Kind: "wall", Polygon: box(0, 3, 1, 3.2), Z: [2]float64{2.1, 3}},
		{Name: "swing \"door\"", Kind: "door", Polygon: box(0, 3.05, 1, 3.15), Z: [2]float64{0, 2.1},
			Shut: []sight.Frames{{From: 0, To: 3}}},
		{Name: "stage", Kind: "platform", Polygon: box(-4, 5, 4, 8), Z: [2]float64{0, 0.8}},
	}
	mina := sight.Body{Name: "mina", Kind: "performer", Of: "mina", Radius: 0.23}
	paul := sight.Body{Name: "paul", Kind: "performer", Of: "paul", Radius: 0.23}
	cart := sight.Body{Name: "cart", Kind: "vehicle", Of: "cart", Polygon: box(-0.8, -0.3, 0.8, 0.3)}
	op := sight.Body{Name: "operator", Kind: "crew", Of: "operator", Radius: 0.3}
	c := sight.Camera{Name: "a", Width: 24.89, Height: 13.45, Rolls: []sight.Frames{{From: 1, To: frames - 1}}}
	c.Own = []sight.Own{{Body: "operator", Frames: sight.Frames{From: 0, To: frames - 1}}}
	for f := range frames {
		t := float64(f)
		mina.Track = append(mina.Track, sight.Pose{X: -1 + 0.2*t, Y: 6, Z: 0.8, Heading: 0.1 * t, Height: 1.7})
		paul.Track = append(paul.Track, sight.Pose{X: 0.6 - 0.1*t, Y: 1 + 0.1*t, Height: 1.82})
		cart.Track = append(cart.Track, sight.Pose{X: 1.5 - 0.2*t, Y: 1.8, Heading: 0.3, Height: 1.1})
		op.Track = append(op.Track, sight.Pose{X: 0.4, Y: -2.4, Height: 1.75})
		c.Track = append(c.Track, sight.View{X: 0.4, Y: -2, Z: 1.6, Pan: math.Pi/2 + 0.02*t, Tilt: -0.05, Focal: 20 + t, Focus: 3})
	}
	cart.Track[5].Height = 0
	s.Bodies = []sight.Body{mina, paul, cart, op, {Name: "crate", Kind: "vehicle", Of: "crate", Polygon: box(-0.3, -0.3, 0.3, 0.3),
		Track: []sight.Pose{{X: -0.9, Y: 1.2, Z: 0, Height: 0.5}}}}
	s.Cameras = []sight.Camera{c}
	return s
}

func written(t *testing.T, s *sight.Scene) []byte {
	t.Helper()
	r, err := sight.See(context.Background(), s, sight.Options{})
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, Write(&b, s, r))
	return b.Bytes()
}

func TestWriteIsReadBack(t *testing.T) {
	s := hall()
	out := written(t, s)
	assert.Equal(t, out, written(t, s), "same scene, same bytes")
	tr, err := Read(bytes.NewReader(out))
	require.NoError(t, err)
	assert.InDelta(t, 24000.0/1001, tr.Rate, 1e-5)
	assert.Equal(t, 12, tr.Frames)
	assert.Equal(t, [][2]int{{0, 3}}, tr.Solids[3].Shut)
	assert.Nil(t, tr.Solids[0].Shut)
	assert.Equal(t, `swing "door"`, tr.Solids[3].Name)
	assert.Equal(t, [5]float64{-0.8, 6, 0.8, 5.72958, 1.7}, tr.Bodies[0].Track[1])
	assert.Len(t, tr.Bodies[4].Track, 12, "a row a frame also for what never moves")
	assert.Equal(t, []Own{{"operator", 0, 11}}, tr.Cameras[0].Own)
	assert.Equal(t, Shot{0.4, -2, 1.6, 91.14592, -2.86479, 21, 3}, tr.Cameras[0].Track[1])
	assert.Equal(t, [][2]int{{1, 11}}, tr.Cameras[0].Rolls)
	assert.Nil(t, tr.Cameras[0].Roll)
	assert.NotContains(t, string(out), "-0,")
	require.NotEmpty(t, tr.Sight)
	for _, seen := range tr.Sight {
		assert.NotEqual(t, "operator", seen.Body)
		assert.GreaterOrEqual(t, seen.Runs[0].From, 1)
	}
}

// TestFocusOnNothing holds a camera that looks at nothing in particular to what
// JSON can say (RFC 8259, section 6: no infinities).
func TestFocusOnNothing(t *testing.T) {
	s := hall()
	s.Cameras[0].Track[4].Focus = math.Inf(1)
	out := written(t, s)
	assert.True(t, json.Valid(out))
	tr, err := Read(bytes.NewReader(out))
	require.NoError(t, err)
	assert.True(t, math.IsInf(tr.Cameras[0].Track[4][6], 1))
	assert.Equal(t, 3.0, tr.Cameras[0].Track[3][6])
}

// TestEveryFieldIsDescribed holds README.md to the fields there are.
func TestEveryFieldIsDescribed(t *testing.T) {
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	var fields func(typ reflect.Type)
	fields = func(typ reflect.Type) {
		for typ.Kind() == reflect.Slice || typ.Kind() == reflect.Array {
			typ = typ.Elem()
		}
		for i := range typ.NumField() {
			f := typ.Field(i)
			if name := f.Tag.Get("json"); name != "" {
				assert.Contains(t, string(text), "`"+name+"`")
			}
			switch inner := f.Type; inner.Kind() {
			case reflect.Slice:
				if inner.Elem().Kind() == reflect.Struct {
					fields(inner)
				}
			}
		}
	}
	fields(reflect.TypeFor[Trace]())
}

func TestAppendNumber(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", -0.000001: "0", 1: "1", -1.5: "-1.5", 0.00001: "0.00001", 123.456789: "123.45679", -0.1: "-0.1", 1e20: "100000000000000000000", 2.99999999: "3",
		math.Inf(1): "null",
	} {
		assert.Equal(t, want, string(appendNumber(nil, v)))
	}
}

func TestReadRefuses(t *testing.T) {
	for text, want := range map[string]string{
		`{`:           "not a trace",
		`{"rate": 0}`: "no take",
		`{"rate": 24, "frames": 1, "bodies": [{"name": "x", "radius": 1}]}`:                    "0 frames of track",
		`{"rate": 24, "frames": 0, "cameras": [{"name": "a", "own": [["x", 1]]}], "other": 1}`: "not a trace",
		`{"rate": 24, "frames": 3, "sight": [{"runs": [{"from": 1, "to": 5}]}]}`:               "run 1 to 5",
	} {
		_, err := Read(strings.NewReader(text))
		assert.ErrorContains(t, err, want, text)
	}
}

func TestWriteReportsTheWriter(t *testing.T) {
	s := hall()
	r, err := sight.See(context.Background(), s, sight.Options{})
	require.NoError(t, err)
	assert.Error(t, Write(broken{}, s, r))
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("full") }
