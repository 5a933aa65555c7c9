// Package cutlist hands the cuts of a take on to editing: as an edit decision
// list in the form of SMPTE ST 258 and as a timeline in OpenTimelineIO's schema.
//
// The cameras are taken to run on one timecode, which is 01:00:00:00 at the
// take's first frame (common practice, no source), so that source and record
// times are the same. It knows the clock and the cameras, nothing of what they
// see, and leaves coverage out: pickups are rolled after the take, on clocks of
// their own.
package cutlist

import (
	"errors"
	"fmt"
	"slices"

	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/timecode"
	"longhand/lang/units"
)

// startHour is the hour at the take's first frame.
const startHour = 1

// Event is a stretch of the edit, its last frame excluded.
type Event struct {
	Camera   *plan.Camera // nil where the camera cut to does not roll
	From, To units.Frame
	Cut      *plan.Action // the line that cuts to it; nil for the first camera
}

// Events are the edit: what each `cut to` shows until the next one. Before the
// first cut, and in a take without any, it is the first camera of the kit that
// rolls at the take's first frame, or else that rolls at all.
func Events(t *motion.Tracks) ([]Event, error) {
	first := firstCamera(t)
	length := t.Rate.From(t.Clock.Length) // a frame at the very end lasts for nothing
	if first == nil || length <= 0 {
		return nil, errors.New("no camera rolls in the take, so there is nothing to cut")
	}
	type change struct {
		at  units.Frame
		cam *plan.Camera
		cut *plan.Action
	}
	changes := []change{{0, first, nil}}
	for _, c := range t.Cuts {
		at := max(0, t.Rate.From(c.At))
		if at >= length {
			continue
		}
		last := &changes[len(changes)-1]
		switch {
		case last.at == at:
			*last = change{at, c.Camera, c.Action}
		case last.cam != c.Camera:
			changes = append(changes, change{at, c.Camera, c.Action})
		}
	}
	var out []Event
	for i, c := range changes {
		end := length
		if i+1 < len(changes) {
			end = changes[i+1].at
		}
		out = append(out, rolled(t, c.cam, c.cut, c.at, end)...)
	}
	return out, nil
}

// rolled cuts a stretch where its camera starts and stops.
func rolled(t *motion.Tracks, cam *plan.Camera, cut *plan.Action, from, end units.Frame) []Event {
	var out []Event
	add := func(c *plan.Camera, a, b units.Frame) {
		if b > a {
			out = append(out, Event{c, a, b, cut})
		}
	}
	at := from
	if track := t.Camera(cam); track != nil {
		for _, r := range track.Rolls {
			a, b := max(at, t.Rate.From(r.From)), min(end, t.Rate.From(r.To))
			if b <= a {
				continue
			}
			add(nil, at, a)
			add(cam, a, b)
			at = b
		}
	}
	add(nil, at, end)
	return out
}

func firstCamera(t *motion.Tracks) *plan.Camera {
	var later *plan.Camera
	for _, c := range t.Cameras {
		for _, r := range c.Rolls {
			if r.To <= r.From {
				continue
			}
			if t.Rate.From(r.From) <= 0 {
				return c.Camera
			}
			if later == nil {
				later = c.Camera
			}
		}
	}
	return later
}

// code is the timecode of a take's rate, drop-frame where it is defined, and the
// frame at which the take starts.
func code(rate units.Rate) (timecode.Code, units.Frame, error) {
	c, err := timecode.New(rate, true)
	if err != nil {
		c, err = timecode.New(rate, false)
	}
	if err != nil {
		return c, 0, err
	}
	zero := fmt.Sprintf("%02d:00:00:00", startHour)
	if c.DropFrame() {
		zero = fmt.Sprintf("%02d:00:00;00", startHour)
	}
	start, err := c.Parse(zero)
	return c, start, err
}

// reels gives each camera a name of at most eight letters and digits, as edit
// decision lists need.
func reels(cameras []*plan.Camera) map[*plan.Camera]string {
	out := map[*plan.Camera]string{}
	var used []string
	for _, c := range cameras {
		name := ascii(c.Name, func(r rune) bool { return r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' }, 8)
		if name == "" || name == "BL" || name == "AX" { // black, and no reel at all
			name = "CAM" + name
		}
		for n := 2; slices.Contains(used, name); n++ {
			tail := fmt.Sprint(n)
			name = name[:min(len(name), 8-len(tail))] + tail
		}
		used = append(used, name)
		out[c] = name
	}
	return out
}
