package compile

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/check"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/sight"
	"longhand/lang/staging"
	"longhand/lang/units"
)

// everyPlan is the examples, the lessons, the cuts of the reference load, and what
// the rules give as wrong and right.
func everyPlan(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, pattern := range []string{"../../examples/*.take", "../../examples/lessons/*.take", "../../testdata/load/*-cut.take"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, f := range files {
			text, err := os.ReadFile(f)
			require.NoError(t, err)
			out[f] = string(text)
		}
	}
	for _, r := range check.Rules {
		out[string(r.Code)+", bad"], out[string(r.Code)+", good"] = r.Bad, r.Good
	}
	return out
}

// What makes a check fail is found as well where nothing else is looked for, in room
// that other scenes had before.
func TestErrorsOnlyFindsAllErrors(t *testing.T) {
	errorsIn := func(bag diag.Bag) []string {
		var out []string
		for _, d := range bag.Sorted() {
			if d.Severity != diag.Error {
				continue
			}
			first := units.Frame(-1)
			if len(d.Frames) > 0 {
				first = d.Frames[0].From
			}
			var related []string
			for _, r := range d.Related {
				related = append(related, r.Span.Text())
			}
			out = append(out, fmt.Sprintf("%s %q %s %s from %d worst %d, with %q", d.Code, d.Span.Text(), d.Subject, d.Camera, first, d.Worst, related))
		}
		return out
	}
	var room staging.Room
	for name, text := range everyPlan(t) {
		r, err := Text(context.Background(), "a.take", text, Options{})
		require.NoError(t, err)
		if r.Stopped || r.Stage == nil {
			continue
		}
		room.Clear()
		var all, only Played
		all.Tracks, only.Tracks = r.Tracks, r.Tracks
		p := takeOnly(r.Plan)
		want, err := all.play(context.Background(), p, playing{upTo: check.Seen})
		require.NoError(t, err)
		got, err := only.play(context.Background(), p, playing{upTo: check.Seen, errorsOnly: true, room: &room})
		require.NoError(t, err)
		assert.Equal(t, errorsIn(want), errorsIn(got), name)
	}
}

// A report about some bodies has of them what one about all has, bit by bit.
func TestWatchedBodiesAreSeenAlike(t *testing.T) {
	for name, text := range everyPlan(t) {
		r, err := Text(context.Background(), "a.take", text, Options{})
		require.NoError(t, err)
		if r.Stopped || r.Stage == nil {
			continue
		}
		watch := func(_, body int) bool { return body%3 == 0 }
		got, err := sight.See(context.Background(), r.Stage.Scene, sight.Options{Watch: watch})
		require.NoError(t, err)
		for _, list := range [][2][]sight.Run{{r.Sight.Sight, got.Sight}, {r.Sight.Reflected, got.Reflected}} {
			var want []sight.Run
			for _, run := range list[0] {
				if watch(run.Camera, run.Body) {
					want = append(want, run)
				}
			}
			require.Len(t, list[1], len(want), name)
			for i := range want {
				require.Equal(t, want[i], list[1][i], name)
			}
		}
	}
}

// Frame by frame a track is where it is at any other time.
func TestSampledTracksAreWhereTheyAre(t *testing.T) {
	for name, text := range everyPlan(t) {
		r, err := Text(context.Background(), "a.take", text, Options{})
		require.NoError(t, err)
		if r.Stopped || r.Tracks == nil || r.Tracks.Frames > check.MostFrames {
			continue
		}
		times := make([]units.Seconds, r.Tracks.Frames)
		for f := range times {
			times[f] = r.Tracks.Rate.Time(units.Frame(f))
		}
		poses := make([]motion.Pose, len(times))
		for _, track := range r.Tracks.Bodies {
			for _, from := range []int{0, len(times) / 3} {
				track.Sample(times[from:], poses[from:])
				for f := from; f < len(times); f++ {
					require.Equal(t, track.At(times[f]), poses[f], "%s: %s at frame %d", name, track.Thing.ID().Name, f)
				}
			}
		}
	}
}

// A rule that nobody watches for would find nothing and say nothing.
func TestWatchingRulesAskAboutSomething(t *testing.T) {
	r, err := Text(context.Background(), "a.take", shipped(t), Options{})
	require.NoError(t, err)
	all := &check.Pass{Plan: r.Plan, Tracks: r.Tracks, Clock: r.Tracks.Clock}
	few := &check.Pass{Plan: r.Plan, Tracks: r.Tracks, Clock: r.Tracks.Clock, ErrorsOnly: true}
	var everything, some int
	for _, c := range r.Stage.Cameras {
		for _, thing := range r.Stage.Things {
			if all.Watches(c, thing) {
				everything++
			}
			if few.Watches(c, thing) {
				some++
				assert.True(t, all.Watches(c, thing), thing.ID().Name)
			}
		}
	}
	assert.Equal(t, len(r.Stage.Cameras)*len(r.Stage.Things), everything)
	assert.Positive(t, some)
	assert.Less(t, some, everything)
}
