package sheets

import (
	"math"
	"sort"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// fallbackStop is the stop reckoned with where the plan gives none: common
// practice, no source.
const fallbackStop units.Stop = 2.8

// sameMoment is how near two moments of the focus sheet are one.
const sameMoment units.Seconds = 0.25

// focusMark is a moment at which the assistant has to be somewhere.
type focusMark struct {
	at     units.Seconds
	words  []string
	action *plan.Action
}

// focus is a focus sheet a camera: where the focus is at each thing that happens
// to the camera or to what it is focused on, and how long the pull to the next
// takes.
func (m *maker) focus() []*Table {
	var out []*Table
	for _, c := range m.p.Kit.Cameras {
		t := focusTable("focus-"+c.Name, "Focus, "+c.Name)
		for _, p := range m.parts {
			for _, ct := range p.cameras() {
				if ct.Camera == c {
					m.focusOf(t, p, ct)
				}
			}
		}
		if len(t.Rows) > 0 {
			t.note("depth of field is by the thin lens, the circle of confusion being the frame's diagonal on the sensor / 1500; a T-stop is taken for an f-number")
		}
		t.Empty = c.Name + " rolls on nothing that its lens could be focused on."
		out = append(out, t)
	}
	if len(out) == 0 {
		t := focusTable("focus", "Focus")
		t.Empty = "There is no camera in this plan to keep in focus."
		out = append(out, t)
	}
	return out
}

func focusTable(key, title string) *Table {
	return table(key, title, beatColumn(), clockColumns(), col("cue", "cue", "what to watch"),
		col("target", "on", "what the focus is on"), col("where", "mark", "where that is"),
		measure("distance", "distance", "m", "from the lens along its axis"), measure("distance_ft", "ft-in", "ft", "the same in feet"),
		measure("near", "near", "m", "nearest that is sharp"), measure("far", "far", "m", "farthest that is sharp; infinity: no limit"),
		measure("pull", "time to pull", "s", "from here to the next row"), measure("pull_speed", "pull", "m/s", "how fast on average"),
		measure("depths", "depths", "depths", "depths of field that the pull goes through: below 1 it hardly shows"))
}

func (m *maker) focusOf(t *Table, p *part, ct *motion.CameraTrack) {
	marks := m.focusMarks(p, ct)
	circle := ct.Frame.Circle()
	for i, k := range marks {
		v := ct.At(k.at)
		if v.Focal <= 0 {
			continue
		}
		stop := ct.Stop(k.at)
		if stop <= 0 {
			stop = fallbackStop
			t.note("where the plan gives no stop, " + stop.String() + " is taken")
		}
		target, where, in := m.focusTarget(p, ct, k.at)
		if target == "" {
			continue
		}
		if in != nil {
			t.note(byWayOfGlass)
		}
		lens := optics.Focus{Focal: units.Millimetres(v.Focal), Stop: stop, Circle: circle}
		s := units.Metres(v.Focus)
		near, far := lens.Limits(s)
		pull, speed, depths := word(""), word(""), word("")
		if i+1 < len(marks) {
			next := ct.At(marks[i+1].at)
			took := marks[i+1].at - k.at
			way := math.Abs(next.Focus - v.Focus)
			if !math.IsInf(way, 0) && !math.IsNaN(way) && ct.Rolling(k.at) && ct.Rolling(marks[i+1].at-0.01) {
				pull = seconds(took)
				speed = m.speed(units.MetresPerSecond(way / float64(took)))
				d := math.Abs(lens.Depths(s, units.Metres(next.Focus)))
				depths = number(d, 2, units.Number(d, 1))
			}
		}
		feet := word("infinity")
		if !math.IsInf(v.Focus, 0) {
			feet = number(v.Focus/float64(units.Foot), 3, feetToo(s))
		}
		t.add(k.action, p.beatAt(k.at), m.clock(k.at), cells(word(strings.Join(k.words, "; ")), word(target), word(where),
			m.length(s), feet, m.length(near), m.length(far), pull, speed, depths))
	}
}

// focusTarget is what a camera is focused on, where that is, and the mirror it is seen
// in.
func (m *maker) focusTarget(p *part, ct *motion.CameraTrack, at units.Seconds) (target, where string, in *plan.Mirror) {
	var rack *plan.Action
	for _, a := range p.actions {
		if _, ok := a.Deed.(*plan.Rack); ok && a.Subject == plan.Thing(ct.Camera) {
			if s := p.clock.Of(a).Start; s <= at && (rack == nil || s >= p.clock.Of(rack).Start) {
				rack = a
			}
		}
	}
	aim := ct.Aim(at)
	if rack != nil && (aim == nil || p.clock.Of(rack).Start >= aim.Start) {
		d := rack.Deed.(*plan.Rack)
		if d.To == nil {
			return "a distance", "", nil
		}
		return m.targetAt(p, *d.To, at)
	}
	if aim == nil || aim.See == nil || len(aim.See.Targets) == 0 {
		return "", "", nil
	}
	return m.targetAt(p, aim.See.Targets[0], at)
}

func (m *maker) targetAt(p *part, t plan.Target, at units.Seconds) (target, where string, in *plan.Mirror) {
	if t.Thing == nil {
		return t.Name(), t.Itself(), t.Glass
	}
	return t.Name(), m.where(p, t.Thing, at), t.Glass
}

// focusMarks are the moments at which the focus of a rolling camera changes its
// mind: its rolls, its own lines, and what its target does.
func (m *maker) focusMarks(p *part, ct *motion.CameraTrack) []focusMark {
	var all []focusMark
	put := func(at units.Seconds, words string, a *plan.Action) {
		for _, r := range ct.Rolls {
			if at >= r.From-1e-9 && at <= r.To+1e-9 {
				all = append(all, focusMark{min(at, r.To-1e-3), []string{words}, a})
				return
			}
		}
	}
	for _, r := range ct.Rolls {
		put(r.From, ct.Camera.Name+" rolls", r.Action)
		put(r.To, ct.Camera.Name+" rests", nil)
	}
	for _, a := range p.actions {
		i := p.clock.Of(a)
		if cameraOf(a) == ct.Camera {
			switch a.Deed.(type) {
			case *plan.See:
				put(i.Start, ct.Camera.Name+" "+m.says(a), a)
			case *plan.Rack, *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel, *plan.Lift, *plan.Handoff:
				put(i.Start, ct.Camera.Name+" "+m.says(a), a)
				if !i.Open {
					put(i.End, "end: "+ct.Camera.Name+" "+a.Verb, a)
				}
			}
			continue
		}
		if a.Subject == nil || !m.focusedOn(p, ct, a.Subject, i) {
			continue
		}
		switch d := a.Deed.(type) {
		case *plan.Move:
			put(i.Start, a.Who()+" "+a.Verb+" off", a)
			for _, s := range m.passings(p, a) {
				put(s.at, a.Who()+" reaches "+s.place, a)
			}
			if d.Path.To == nil {
				put(i.End, a.Who()+" stops", a)
			}
		case *plan.Leave, *plan.Pose:
			put(i.Start, a.Who()+" "+m.says(a), a)
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].at < all[j].at })
	var out []focusMark
	for _, k := range all {
		if n := len(out); n > 0 && k.at-out[n-1].at < sameMoment {
			if !strings.Contains(strings.Join(out[n-1].words, "; "), k.words[0]) {
				out[n-1].words = append(out[n-1].words, k.words[0])
			}
			continue
		}
		out = append(out, k)
	}
	return out
}

// focusedOn says whether a thing is what a camera is focused on at the start or
// the end of a stretch.
func (m *maker) focusedOn(p *part, ct *motion.CameraTrack, thing plan.Thing, i clock.Interval) bool {
	for _, at := range []units.Seconds{i.Start, i.End} {
		if aim := ct.Aim(at); aim != nil && aim.See != nil && len(aim.See.Targets) > 0 && aim.See.Targets[0].Thing == thing {
			return true
		}
	}
	return false
}

// passing is a stop of a move and when it is reached.
type passing struct {
	at    units.Seconds
	place string
}

// passings are the stops of a move, the last included, with their times.
func (m *maker) passings(p *part, a *plan.Action) []passing {
	d, ok := a.Deed.(*plan.Move)
	tr := p.tracks.Body(a.Subject)
	if !ok || tr == nil {
		return nil
	}
	var out []passing
	stops := d.Path.Stops()
	for i := range tr.Segments {
		s := &tr.Segments[i]
		if s.Action != a || s.Path == nil || s.Profile == nil {
			continue
		}
		lengths := s.Path.Stops()
		// A way begins where its subject is; its stops are the last of the path's.
		skip := len(lengths) - len(stops)
		for k, stop := range stops {
			if skip+k < 0 || skip+k >= len(lengths) {
				continue
			}
			out = append(out, passing{s.Start + s.Profile.TimeAt(units.Metres(lengths[skip+k])), stop.Text})
		}
	}
	return out
}
