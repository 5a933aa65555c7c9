package timeline

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/lighting"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
	"longhand/render/fonts"
)

// taker makes the lanes of a take.
type taker struct {
	r      *compile.Result
	p      *plan.Plan
	clock  *clock.Clock
	length units.Seconds
}

func (t *taker) lanes() []lane {
	var out []lane
	if l, ok := t.cuts(); ok {
		out = append(out, l)
	}
	for _, c := range t.p.Kit.Cameras {
		if l, ok := t.camera(c); ok {
			out = append(out, l)
		}
	}
	for _, who := range t.p.People {
		if !who.Crew {
			out = t.subject(out, who, "performer", who.Role)
		}
	}
	for _, who := range t.p.People {
		if who.Crew {
			out = t.subject(out, who, "crew", who.Role)
		}
	}
	for _, v := range t.p.Kit.Vehicles {
		out = t.subject(out, v, "vehicle", "")
	}
	for _, r := range t.p.Kit.Rigs {
		out = t.subject(out, r, "rig", r.Class)
	}
	if l, ok := t.doors(); ok {
		out = append(out, l)
	}
	out = append(out, t.lights()...)
	if l, ok := t.findings(); ok {
		out = append(out, l)
	}
	return out
}

// subject adds the lane of someone, or something, that does anything.
func (t *taker) subject(out []lane, who plan.Thing, kind, role string) []lane {
	l := lane{name: who.ID().Name, under: kind}
	if role != "" && !strings.EqualFold(role, kind) {
		l.under = role
	}
	var does, says group
	for _, a := range t.p.Actions {
		if a.Subject != who {
			continue
		}
		it := t.action(a)
		if d, ok := a.Deed.(*plan.Say); ok {
			it.text, it.bar = "“"+d.Text+"”", "bar-say"
			says.items = append(says.items, it)
			continue
		}
		does.items = append(does.items, it)
	}
	for _, h := range t.r.Tracks.Handoffs {
		if h.Weight != nil && plan.Thing(h.Weight) == who {
			does.items = append(does.items, item{from: h.Start, to: h.End, text: "steps on for weight", bar: "bar-hand"})
		}
	}
	if len(does.items)+len(says.items) == 0 {
		return out
	}
	does.name, says.name = "does", "says"
	if len(does.items) > 0 {
		l.groups = append(l.groups, does)
	}
	if len(says.items) > 0 {
		l.groups = append(l.groups, says)
	}
	return append(out, l)
}

// action is a line as an item: what it does without its subject, for as long as it
// takes, and how much later it could be.
func (t *taker) action(a *plan.Action) item {
	i := t.clock.Of(a)
	it := item{from: i.Start, to: i.End, bar: "bar-do", text: t.short(a)}
	if i.Open {
		it.to, it.hold = i.Start, i.End
	}
	switch a.Deed.(type) {
	case *plan.Move, *plan.Leave, *plan.Board, *plan.Travel, *plan.Circle, *plan.Lift:
		it.bar = "bar-move"
	}
	if !i.Open {
		if i.Free >= 0.05 && !math.IsInf(float64(i.Free), 1) {
			it.slack = i.Free
		}
		switch {
		case i.Slack <= -0.05:
			it.text += ", late by " + (-i.Slack).String()
		case i.Slack >= 0.05 && i.Slack < tight:
			it.text += ", slack " + i.Slack.String()
		}
	}
	if !i.Placed {
		it.text += " (no time)"
	}
	return it
}

// tight is the slack from which on it is worth no words.
const tight units.Seconds = 10

// short is a line without its subject, with its lengths.
func (t *taker) short(a *plan.Action) string {
	s := clock.Describe(a)
	if who := a.Who(); who != "" {
		s = strings.TrimPrefix(strings.TrimPrefix(s, who), " ")
	}
	length := func(m units.Metres) string { return " " + m.Text(t.p.Take.Units) }
	switch d := a.Deed.(type) {
	case *plan.Fit:
		if d.Focal > 0 {
			s += " " + d.Focal.String()
		}
		if d.Stop > 0 {
			s += " " + d.Stop.String()
		}
	case *plan.Keep:
		s += " by" + length(d.By)
	case *plan.Beside:
		s += " " + d.Side.String() + length(d.By)
	case *plan.Circle:
		if !d.Counter {
			s += " " + d.Angle.String() + " " + d.Turn.String()
		}
		if d.At > 0 {
			s += " at" + length(d.At)
		}
	case *plan.Travel:
		s += length(d.By)
	case *plan.Lift:
		s += " to" + length(d.To)
	case *plan.Rack:
		if d.Distance != nil {
			s += " to" + length(*d.Distance)
		}
	}
	return s
}

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

// gap is how long somebody must be out of frame to be told as gone; shorter than
// glimpse is not told at all.
const (
	gap     units.Seconds = 0.5
	glimpse units.Seconds = 0.2
)

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

func (t *taker) doors() (lane, bool) {
	g := group{}
	for _, d := range t.p.Set.Doors {
		type change struct {
			at   units.Seconds
			open bool
		}
		var list []change
		for _, a := range t.p.Actions {
			if op, ok := a.Deed.(*plan.Operate); ok && op.Door == d {
				i := t.clock.Of(a)
				at := i.Start
				if !op.Open {
					at = i.End
				}
				list = append(list, change{at, op.Open})
			}
		}
		if len(list) == 0 {
			continue
		}
		sort.SliceStable(list, func(i, j int) bool { return list[i].at < list[j].at })
		open, since := d.Open, units.Seconds(0)
		for _, c := range append(list, change{t.length, !open}) {
			if c.at > since {
				state, bar := "shut", "bar-say"
				if open {
					state, bar = "open", "bar-move"
				}
				g.items = append(g.items, item{from: since, to: c.at, text: d.Name + " " + state, bar: bar})
			}
			open, since = c.open, c.at
		}
	}
	return lane{name: "doors", groups: []group{g}}, len(g.items) > 0
}

// lights is the cues, and a curve for each wash and each lamp that moves.
func (t *taker) lights() []lane {
	cues := group{name: "cues"}
	for _, a := range t.p.Actions {
		d, ok := a.Deed.(*plan.Cue)
		if !ok {
			continue
		}
		var levels []string
		for _, l := range d.Levels {
			name := ""
			switch {
			case l.Wash != nil:
				name = l.Wash.Name
			case l.Lamp != nil:
				name = l.Lamp.Name
			}
			levels = append(levels, name+" "+l.Per.String())
		}
		i := t.clock.Of(a)
		cues.items = append(cues.items, item{from: i.Start, to: i.End, text: d.Name + ": " + strings.Join(levels, ", "), bar: "bar-move", face: fonts.Bold})
	}
	l := lane{name: "light", under: "0 to 100 %"}
	if len(cues.items) > 0 {
		l.groups = append(l.groups, cues)
	}
	all := lighting.Of(t.p, t.clock)
	for i := range all.Units {
		u := &all.Units[i]
		if len(u.Cues) > 0 {
			l.groups = append(l.groups, group{name: u.Name, curve: &u.Curve})
		}
	}
	if len(l.groups) == 0 {
		return nil
	}
	return []lane{l}
}

// findings is when what was found happens.
func (t *taker) findings() (lane, bool) {
	g := group{}
	rate := t.r.Tracks.Rate
	for i := range t.r.Findings {
		f := &t.r.Findings[i]
		bar := map[diag.Severity]string{diag.Error: "bar-error", diag.Warning: "bar-warning", diag.Note: "bar-note"}[f.Severity]
		text := strconv.Itoa(i+1) + " " + string(f.Code)
		if f.Subject != "" {
			text += " " + f.Subject
		}
		face := fonts.Regular
		if f.Severity == diag.Error {
			face = fonts.Bold
		}
		for _, fr := range f.Frames {
			g.items = append(g.items, item{from: rate.Time(fr.From), to: rate.Time(fr.To + 1), text: text, bar: bar, face: face})
		}
	}
	return lane{name: "findings", under: "number, code", groups: []group{g}, heavy: true}, len(g.items) > 0
}
