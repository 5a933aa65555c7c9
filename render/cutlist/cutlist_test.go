package cutlist

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/timecode"
	"longhand/lang/units"
)

func compiled(t *testing.T, text string) *compile.Result {
	t.Helper()
	timed := check.Timed
	r, err := compile.Text(context.Background(), "plan.take", text, compile.Options{UpTo: &timed})
	require.NoError(t, err)
	require.False(t, r.Stopped, "%v", r.Findings)
	return r
}

// twoCameras runs 70 s: A from the start, B cut to at 10 s, A again at 65 s.
const twoCameras = `take "Ten O’Clock"
  scene 4
  rate %s fps
set "Hall"
  mark M1 (5, 5)
kit
  camera A sensor 24 mm x 14 mm
  camera gallery-left sensor 24 mm x 14 mm
  lens w24 24 mm
  rig legs sticks
  rig low sticks
people
  performer mina
beat "One"
  mina waits at M1 for 70 s
  legs stands at (0, 0)
  A on legs
  A takes w24
  A sees mina
  low stands at (9, 0)
  gallery-left on low
  gallery-left takes w24
  gallery-left sees mina
  cut to gallery-left starting +10 s
  cut to A starting +65 s
`

func edl(t *testing.T, rate string) string {
	r := compiled(t, fmt.Sprintf(twoCameras, rate))
	out, err := EDL(r.Plan, r.Tracks)
	require.NoError(t, err)
	return string(out)
}

func TestEDL(t *testing.T) {
	assert.Equal(t, strings.ReplaceAll(`TITLE: Ten O'Clock 4
FCM: NON-DROP FRAME
001  A        V     C        01:00:00:00 01:00:10:00 01:00:00:00 01:00:10:00
* FROM CLIP NAME: A
002  GALLERYL V     C        01:00:10:00 01:01:05:00 01:00:10:00 01:01:05:00
* FROM CLIP NAME: gallery-left
* COMMENT: cut to gallery-left starting +10 s
003  A        V     C        01:01:05:00 01:01:10:00 01:01:05:00 01:01:10:00
* FROM CLIP NAME: A
* COMMENT: cut to A starting +65 s
`, "\n", "\r\n"), edl(t, "24"))
}

// SMPTE ST 12-1: at 30000/1001 drop-frame skips labels 00 and 01 of each minute
// but every tenth. 10 s are 299.7 frames, so the cut falls on frame 300; 65 s are
// 1948.05, frame 1949, whose label is two on, as a minute has begun: 1951 of 30 a
// second.
func TestDropFrame(t *testing.T) {
	out := edl(t, "29.97")
	assert.Contains(t, out, "FCM: DROP FRAME\r\n")
	assert.Contains(t, out, "01:00:00;00 01:00:10;00 01:00:00;00 01:00:10;00")
	assert.Contains(t, out, "002  GALLERYL V     C        01:00:10;00 01:01:05;01 ")
}

func TestOtherRates(t *testing.T) {
	assert.Contains(t, edl(t, "25"), "01:01:05:00 01:01:10:00")
	assert.Contains(t, edl(t, "23.976"), "01:00:00:00 01:00:10:00", "239.76 frames: the cut is on 240")
	r := compiled(t, fmt.Sprintf(twoCameras, "48"))
	_, err := EDL(r.Plan, r.Tracks)
	assert.ErrorContains(t, err, "at most 30 frames a second, and the take runs at 48")
	_, err = OTIO(r.Plan, r.Tracks)
	assert.NoError(t, err)
}

var editLine = regexp.MustCompile(`^(\d{3})  (\S{1,8}) +V     C        (\S{11}) (\S{11}) (\S{11}) (\S{11})$`)

// Read back line by line: the edits follow each other without gap, as long on the
// source as on the record, and add up to the take.
func TestEditsAddUp(t *testing.T) {
	for _, name := range []string{"last-collection", "eight-bars", "night-ferry"} {
		text, err := os.ReadFile("../../examples/" + name + ".take")
		require.NoError(t, err)
		timed := check.Timed
		r, err := compile.Compile(context.Background(), func(n string) (string, error) {
			data, err := os.ReadFile(filepath.Join("../../examples", n))
			return string(data), err
		}, name+".take", compile.Options{UpTo: &timed})
		require.NoError(t, err)
		out, err := EDL(r.Plan, r.Tracks)
		require.NoError(t, err)
		tc, err := timecode.New(r.Tracks.Rate, false)
		require.NoError(t, err)
		at, edits := units.Frame(3600*tc.Day()/86400), 0
		start := at
		for _, line := range strings.Split(string(out), "\r\n") {
			assert.LessOrEqual(t, len(line), 80)
			m := editLine.FindStringSubmatch(line)
			if m == nil {
				continue
			}
			edits++
			assert.Equal(t, fmt.Sprintf("%03d", edits), m[1])
			var f [4]units.Frame
			for i := range f {
				f[i], err = tc.Parse(m[3+i])
				require.NoError(t, err)
			}
			assert.Equal(t, f[1]-f[0], f[3]-f[2])
			assert.Equal(t, at, f[2])
			at = f[3]
		}
		assert.Equal(t, r.Tracks.Rate.From(r.Tracks.Clock.Length), at-start, name)
		assert.Equal(t, 1+strings.Count(string(text), "\n  cut to"), edits, name)
	}
}

// OpenTimelineIO's schema, field by field as its specification lists them.
func TestOTIO(t *testing.T) {
	r := compiled(t, fmt.Sprintf(twoCameras, "24"))
	out, err := OTIO(r.Plan, r.Tracks)
	require.NoError(t, err)
	var doc map[string]any
	require.NoError(t, json.Unmarshal(out, &doc))
	fields := map[string][]string{
		"Timeline.1":         {"name", "metadata", "global_start_time", "tracks"},
		"Stack.1":            {"name", "metadata", "source_range", "effects", "markers", "enabled", "children"},
		"Track.1":            {"name", "metadata", "source_range", "effects", "markers", "enabled", "children", "kind"},
		"Clip.2":             {"name", "metadata", "source_range", "effects", "markers", "enabled", "media_references", "active_media_reference_key"},
		"Gap.1":              {"name", "metadata", "source_range", "effects", "markers", "enabled"},
		"Marker.2":           {"name", "metadata", "color", "marked_range", "comment"},
		"MissingReference.1": {"name", "metadata", "available_range", "available_image_bounds"},
		"TimeRange.1":        {"start_time", "duration"},
		"RationalTime.1":     {"rate", "value"},
	}
	count := map[string]int{}
	var visit func(v any)
	visit = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			if schema, ok := v["OTIO_SCHEMA"].(string); ok {
				count[schema]++
				want := append([]string{"OTIO_SCHEMA"}, fields[schema]...)
				have := make([]string, 0, len(v))
				for k := range v {
					have = append(have, k)
				}
				assert.ElementsMatch(t, want, have, schema)
			}
			for _, x := range v {
				visit(x)
			}
		case []any:
			for _, x := range v {
				visit(x)
			}
		}
	}
	visit(doc)
	assert.Equal(t, 3, count["Clip.2"])
	assert.Equal(t, 1, count["Marker.2"])
	clips := doc["tracks"].(map[string]any)["children"].([]any)[0].(map[string]any)["children"].([]any)
	second := clips[1].(map[string]any)["source_range"].(map[string]any)
	assert.Equal(t, map[string]any{"OTIO_SCHEMA": "RationalTime.1", "rate": 24.0, "value": 3610 * 24.0}, second["start_time"])
	assert.Equal(t, 55*24.0, second["duration"].(map[string]any)["value"])
}

func TestACameraThatRestsIsBlack(t *testing.T) {
	text := strings.Replace(fmt.Sprintf(twoCameras, "24"), "  cut to A", "  gallery-left rests starting +30 s\n  cut to A", 1)
	r := compiled(t, text)
	events, err := Events(r.Tracks)
	require.NoError(t, err)
	require.Len(t, events, 4)
	assert.Nil(t, events[2].Camera)
	assert.Equal(t, units.Frame(30*24), events[2].From)
	out, err := EDL(r.Plan, r.Tracks)
	require.NoError(t, err)
	assert.Contains(t, string(out), "003  BL       V     C        00:00:00:00 00:00:35:00 01:00:30:00 01:01:05:00\r\n")
	otio, err := OTIO(r.Plan, r.Tracks)
	require.NoError(t, err)
	assert.Contains(t, string(otio), "Gap.1")
}

func TestNothingRolls(t *testing.T) {
	r := compiled(t, "take \"T\"\npeople\n  performer mina\nbeat \"One\"\n  mina waits for 2 s\n")
	_, err := EDL(r.Plan, r.Tracks)
	assert.ErrorContains(t, err, "no camera rolls")
	_, err = OTIO(r.Plan, r.Tracks)
	assert.ErrorContains(t, err, "no camera rolls")
}

func TestReelsAreTold(t *testing.T) {
	var cams []*plan.Camera
	for _, n := range []string{"A", "a", "gallery-left", "gallery-low", "BL", "Ö"} {
		cams = append(cams, &plan.Camera{Ident: plan.Ident{Name: n}})
	}
	got := reels(cams)
	var names []string
	for _, c := range cams {
		names = append(names, got[c])
	}
	assert.Equal(t, []string{"A", "A2", "GALLERYL", "GALLERY2", "CAMBL", "O"}, names)
}
