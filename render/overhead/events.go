package overhead

import (
	"sort"
	"strconv"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/departments"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/label"
	"longhand/render/scene"
)

// event is a number on the floor and in the list: what one subject is told at one
// moment.
type event struct {
	number  int
	at      units.Seconds
	who     string
	what    []string // each line in the plan's own words, without its cue
	cue     string   // "when otto reaches M4, +1 s"
	actions []*plan.Action
	fore    bool // of the department it is drawn for
}

// mine is whether a line belongs to this drawing: it begins in its stretch.
func (d *drawing) mine(a *plan.Action) bool {
	if d.pickup != nil {
		return a.Pickup == d.pickup
	}
	return a.Beat != nil && (d.beat == nil || a.Beat == d.beat)
}

// events are the lines of a beat in order of time, those of one subject that
// begin together as one.
func (d *drawing) events() []*event {
	var acts []*plan.Action
	for _, a := range d.plan.Actions {
		if d.mine(a) {
			acts = append(acts, a)
		}
	}
	c := d.tracks.Clock
	sort.SliceStable(acts, func(i, j int) bool { return c.Of(acts[i]).Start < c.Of(acts[j]).Start })
	var out []*event
	for _, a := range acts {
		i := c.Of(a)
		who := a.Who()
		if s := clock.SubjectOf(a); s != nil {
			who = s.ID().Name
		}
		var e *event
		for _, o := range out {
			if who != "" && o.who == who && i.Start-o.at < units.Seconds(0.5/d.tracks.Rate.PerSecond()) {
				e = o
			}
		}
		if e == nil {
			e = &event{number: len(out) + 1, at: i.Start, who: who, cue: d.cue(a)}
			out = append(out, e)
		}
		e.actions = append(e.actions, a)
		e.what = append(e.what, words(a))
		e.fore = e.fore || d.o.Department == "" || d.looks(a)
	}
	return out
}

// cue is what a line waits for, in words; a pickup has no beats.
func (d *drawing) cue(a *plan.Action) string {
	s := d.tracks.Clock.Words(a)
	if d.pickup != nil && !plainCue(s) {
		s = strings.Replace(s, "the beat", "the pickup", 1)
	}
	return s
}

// looks is whether the department a drawing is for acts on a line.
func (d *drawing) looks(a *plan.Action) bool {
	has := func(names ...departments.Name) bool {
		for _, n := range names {
			if n == d.o.Department {
				return true
			}
		}
		return false
	}
	switch a.Deed.(type) {
	case *plan.Say:
		return has(departments.Sound, departments.Ads, departments.Script, departments.Movement)
	case *plan.Cue:
		return has(departments.Electric, departments.Ads, departments.Camera)
	case *plan.Cut:
		return has(departments.Script, departments.Camera, departments.Effects)
	case *plan.Handoff, *plan.Mount, *plan.Board, *plan.Lift:
		return has(departments.Grip, departments.Camera, departments.Ads)
	case *plan.Hide:
		return has(departments.Camera, departments.Art, departments.Grip)
	case *plan.Operate:
		return has(departments.Art, departments.Ads, departments.Movement)
	}
	if a.Subject != nil {
		return has(lookers[string(a.Subject.Kind())]...)
	}
	return has(departments.Ads)
}

// words is a line as written, without what it waits for and without comments.
func words(a *plan.Action) string {
	if !a.Span.Valid() {
		return clock.Describe(a)
	}
	text := a.Span.Text()
	if m := a.Timing.Start; m != nil && m.Span.Valid() && m.Span.Start >= a.Span.Start && m.Span.End <= a.Span.End {
		before := strings.TrimRight(text[:m.Span.Start-a.Span.Start], " \t\r\n")
		for _, w := range []string{"when", "starting"} {
			before = strings.TrimSuffix(before, w)
		}
		text = before + " " + text[m.Span.End-a.Span.Start:]
	}
	text = strings.Join(strings.Fields(uncomment(text)), " ")
	if a.With { // its entry stands with the line it begins with
		text = strings.TrimSuffix(text, " with")
	}
	return text
}

// uncomment leaves out comments, which run from # to the end of the line outside
// of strings.
func uncomment(text string) string {
	var b strings.Builder
	in, skip := false, false
	for i := 0; i < len(text); i++ {
		ch := text[i]
		switch {
		case ch == '\n':
			in, skip = false, false
		case ch == '\\' && in:
			b.WriteByte(ch)
			if i++; i < len(text) && !skip {
				b.WriteByte(text[i])
			}
			continue
		case ch == '"' && !skip:
			in = !in
		case ch == '#' && !in:
			skip = true
		}
		if !skip {
			b.WriteByte(ch)
		}
	}
	return b.String()
}

// place is where on the floor an event happens.
func (d *drawing) place(e *event) (geom.Vec, bool) {
	for _, a := range e.actions {
		if op, ok := a.Deed.(*plan.Operate); ok {
			if p, ok := d.position(op.Door, e.at); ok && a.Subject == plan.Thing(op.Door) {
				return p, true
			}
		}
		if q, ok := a.Deed.(*plan.Cue); ok {
			for _, l := range q.Levels {
				var t plan.Thing
				if l.Wash != nil {
					t = l.Wash
				} else if l.Lamp != nil {
					t = l.Lamp
				}
				if p, ok := d.position(t, e.at); ok && d.shows(p, 3) {
					return p, true
				}
			}
			if m := a.Timing.Start; m != nil && m.Event != nil {
				if m.Event.Place != nil {
					return m.Event.Place.Point, true
				}
				return d.position(m.Event.Subject, e.at)
			}
		}
		if q, ok := a.Deed.(*plan.Cut); ok && q.Camera != nil {
			return d.position(q.Camera, e.at)
		}
		if s := clock.SubjectOf(a); s != nil {
			if p, ok := d.position(s, e.at); ok {
				return p, true
			}
		}
	}
	return geom.Vec{}, false
}

// around is how much wider the numbers of handoffs and light cues are, in
// millimetres.
const around = 0.7

// badge is an event's number in a ring: two rings for a handoff, rays for a light
// cue.
func (e *event) badge(ring, text string, at scene.Point) []scene.Item {
	items, r := scene.Badge(ring, text, at, strconv.Itoa(e.number), scene.Smallest, fonts.Bold)
	switch {
	case e.handoff():
		return append([]scene.Item{&scene.Circle{Class: "badge", Center: at, Radius: r + around}}, items...)
	case e.light():
		for i := range 8 {
			a := float64(i)*45 + 22.5
			items = append(items, scene.Line("sun", at.Polar(r, a), at.Polar(r+around, a)))
		}
	}
	return items
}

func (e *event) handoff() bool {
	for _, a := range e.actions {
		if _, ok := a.Deed.(*plan.Handoff); ok {
			return true
		}
	}
	return false
}

func (e *event) light() bool {
	for _, a := range e.actions {
		if _, ok := a.Deed.(*plan.Cue); ok {
			return true
		}
	}
	return false
}

// onTheWay is whether the subject of an event is walking or driving when it comes.
func (d *drawing) onTheWay(e *event) bool {
	for _, a := range e.actions {
		s := clock.SubjectOf(a)
		if s == nil {
			continue
		}
		if b := d.tracks.Body(s); b != nil {
			return b.Carrier(e.at) == nil && b.Speed(e.at) > slow
		}
	}
	return false
}

// badges put the numbers of events on the floor. Those of one place at one moment
// stand in a row.
func (d *drawing) badges(g *scene.Group, events []*event) {
	const size = scene.Smallest
	for _, e := range events {
		p, ok := d.place(e)
		if !ok || !d.shows(p, 1) {
			continue
		}
		text := strconv.Itoa(e.number)
		r := scene.BadgeRadius(text, size, fonts.Bold)
		if e.handoff() || e.light() {
			r += around
		}
		one := &scene.Group{ID: d.id("cue", text), Title: "cue " + text + ", " + e.at.Clock(), Desc: strings.Join(e.what, "; ")}
		ring, class := "badge", "ink"
		if d.o.Department != "" {
			if e.fore {
				ring, class = "badge-fore", "reversed"
			} else {
				one.Class = "dim"
			}
		}
		if e.at > d.span.from+0.3 && d.onTheWay(e) { // the very place, where the number has to stand off
			dot, free := &scene.Circle{Class: "pause", Center: d.pt(p), Radius: 0.65}, true
			for _, i := range d.initials {
				free = free && i.text.At.Dist(dot.Center) > i.radius+0.7
			}
			if free {
				one.Add(dot)
				d.avoid(0, 0, dot)
			}
		}
		a := ask{into: one, must: true, draw: func(pl label.Place) []scene.Item {
			return e.badge(ring, class, pl.Center)
		}}
		a.ID, a.At, a.Radius, a.W, a.H, a.Priority, a.Reach = one.ID, d.pt(p), 2.6, 2*r, 2*r, 45, 50
		d.say(a)
		g.Add(one)
	}
}
