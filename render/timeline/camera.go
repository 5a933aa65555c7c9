package timeline

import (
	"sort"
	"strings"

	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
	"longhand/render/fonts"
)

// camera is a camera's lane: what it is on, what it is told to see, what it does
// and who is really in frame.
func (t *taker) camera(c *plan.Camera) (lane, bool) {
	ct := t.r.Tracks.Camera(c)
	if ct == nil {
		return lane{}, false
	}
	l := lane{name: c.Name, under: "camera", heavy: true}
	var rolls, on, sees, does group
	rolls.name, on.name, sees.name, does.name = "rolls", "on", "sees", "does"
	for _, r := range ct.Rolls {
		rolls.items = append(rolls.items, item{from: r.From, to: r.To, bar: "bar-roll"})
	}
	for _, h := range ct.Holds {
		if h.Taken > h.Start {
			text := "handoff"
			if h.Rig != nil {
				text += " to " + h.Rig.Name
			}
			on.items = append(on.items, item{from: h.Start, to: h.Taken, text: text, bar: "bar-hand", face: fonts.Bold})
		}
		text := ""
		switch {
		case h.Hide != nil && h.Hide.Hole != nil:
			text = "behind " + h.Hide.Hole.Name
		case h.Rig != nil:
			text = h.Rig.Name
		}
		if h.Operator != nil {
			text += " with " + h.Operator.Name
		}
		on.items = append(on.items, item{from: h.Taken, to: h.End, text: text, bar: "bar-see"})
	}
	for i, a := range ct.Aims {
		end := t.length
		if i+1 < len(ct.Aims) {
			end = ct.Aims[i+1].Start
		}
		text := ""
		if a.See != nil {
			var names []string
			for _, g := range a.See.Targets {
				names = append(names, g.Name())
			}
			text = strings.Join(names, ", ")
			if a.See.Size != "" {
				text += " " + a.See.Size
			}
			if a.See.Even {
				text += " fifty-fifty"
			}
		}
		sees.items = append(sees.items, item{from: a.Start, to: end, text: text, bar: "bar-see"})
	}
	for _, a := range t.p.Actions {
		if a.Subject != plan.Thing(c) {
			continue
		}
		switch a.Deed.(type) {
		case *plan.Mount, *plan.See, *plan.Roll, *plan.Hide:
			continue
		}
		does.items = append(does.items, t.action(a))
	}
	for _, g := range []group{rolls, on, sees, does} {
		if len(g.items) > 0 {
			l.groups = append(l.groups, g)
		}
	}
	if g := t.inFrame(c); len(g.items) > 0 {
		l.groups = append(l.groups, g)
	}
	return l, true
}

// inFrame is who and what really shows, and when.
func (t *taker) inFrame(c *plan.Camera) group {
	g := group{name: "in frame", keyed: true}
	if t.r.Stage == nil || t.r.Sight == nil {
		return g
	}
	scene := t.r.Stage.Scene
	camera, ok := scene.Camera(c.Name)
	if !ok {
		return g
	}
	spans := map[string][]sight.Frames{}
	kinds := map[string]string{}
	var names []string
	for i := range scene.Bodies {
		b := &scene.Bodies[i]
		if b.Kind == "hole" || b.Kind == "card" {
			continue
		}
		if _, ok := kinds[b.Of]; !ok {
			names = append(names, b.Of)
			kinds[b.Of] = b.Kind
		}
		for _, run := range t.r.Sight.Of(camera, i) {
			spans[b.Of] = append(spans[b.Of], run.Showing(0.02)...)
		}
	}
	rate := t.r.Tracks.Rate
	for _, name := range names {
		list := spans[name]
		sort.Slice(list, func(i, j int) bool { return list[i].From < list[j].From })
		var merged []sight.Frames
		for _, f := range list {
			if n := len(merged); n > 0 && rate.Time(f.From)-rate.Time(merged[n-1].To) < gap {
				merged[n-1].To = max(merged[n-1].To, f.To)
				continue
			}
			merged = append(merged, f)
		}
		for _, f := range merged {
			from, to := rate.Time(f.From), rate.Time(f.To+1)
			if to-from < glimpse {
				continue
			}
			it := item{from: from, to: to, text: name, bar: "bar-frame"}
			if kinds[name] != "performer" {
				it.bar, it.text = "bar-spoil", name+" ("+kinds[name]+")"
			}
			g.items = append(g.items, it)
		}
	}
	return g
}

func (t *taker) cuts() (lane, bool) {
	cuts := t.r.Tracks.Cuts
	if len(cuts) == 0 {
		return lane{}, false
	}
	g := group{name: "uses"}
	for i, c := range cuts {
		end := t.length
		if i+1 < len(cuts) {
			end = cuts[i+1].At
		}
		name := ""
		if c.Camera != nil {
			name = c.Camera.Name
		}
		g.items = append(g.items, item{from: c.At, to: end, text: name, bar: "bar-move", face: fonts.Bold})
	}
	return lane{name: "edit", under: "cuts", groups: []group{g}}, true
}

// gap is how long somebody must be out of frame to be told as gone; shorter than
// glimpse is not told at all.
const (
	gap     units.Seconds = 0.5
	glimpse units.Seconds = 0.2
)
