package clock

import (
	"longhand/lang/plan"
	"longhand/lang/units"
)

// by collects a line's deadline.
func (b *builder) by(s, a int) {
	g := b.g
	m := g.acts[a].Timing.By
	if m == nil {
		return
	}
	e, ok := b.moment(m, context{scope: s, act: a}, g.beatStart(s), g.scopes[s].beat)
	if !ok {
		b.miss(m, g.acts[a], g.acts[a].Beat)
		return
	}
	g.deadlines = append(g.deadlines, deadline{kind: byLimit, u: g.end(a), v: e.from, c: e.add, a: int32(a)})
}

// moment is a stated time as an edge.
func (b *builder) moment(m *plan.Moment, from context, since int32, beat *plan.Beat) (edge, bool) {
	add := tidyOffset(m.Offset)
	e := edge{act: -1, add: add, cause: Cause{Offset: units.Seconds(add), Text: m.Text}}
	switch m.Kind {
	case plan.SinceBeat:
		e.from = since
		e.cause.Kind, e.cause.Beat = BeatBegins, beat
	case plan.OnClock:
		e.from = origin
		e.cause.Kind = OnTheClock
	default:
		if m.Event == nil {
			return edge{}, false
		}
		h, ok := b.g.find(m.Event, from)
		if !ok {
			return edge{}, false
		}
		e.from = b.nodeOf(h)
		e.cue = true
		e.cause.Kind, e.cause.Event = OnEvent, m.Event
		if h.act >= 0 {
			e.cause.Action = b.g.acts[h.act]
		}
	}
	return e, true
}

// notBefore keeps a stated start inside the take.
func (b *builder) notBefore(n int32, e edge, m *plan.Moment, a, s int) {
	if e.add >= 0 {
		return
	}
	b.join(n, edge{from: origin, act: -1, cause: e.cause})
	b.g.deadlines = append(b.g.deadlines, deadline{kind: beforeTake, u: origin, v: e.from, c: e.add, a: int32(a), b: int32(s)})
}

// nodeOf is the node of a hit; a place on the way gets one when first asked for.
func (b *builder) nodeOf(h hit) int32 {
	g := b.g
	switch h.kind {
	case hitBeatStart:
		return g.beatStart(h.scope)
	case hitBeatEnd:
		return g.beatEnd(h.scope)
	case hitStart:
		return g.start(h.act)
	case hitEnd:
		return g.end(h.act)
	}
	if n, ok := b.passes[h]; ok {
		return n
	}
	n := node{kind: passing, act: int32(h.act), stop: int32(h.stop), frac: h.frac, stretch: g.length[h.act] == bounded}
	if h.kind == hitWord {
		n.kind = spoken
	}
	id := b.add(n)
	b.join(id, edge{from: g.start(h.act), act: -1})
	if n.stretch {
		b.join(id, edge{from: g.end(h.act), act: -1})
	}
	b.passes[h] = id
	return id
}

// lasts reports whether a line says how long it is.
func lasts(a *plan.Action) bool { return a.Timing.In != nil || a.Timing.Until != nil }

// records collects, for each camera of the plan, how long it may roll.
func (b *builder) records() {
	g := b.g
	r := g.plan.Take.Record
	if r == nil || !(r.Duration > 0) || g.pickup != nil {
		return
	}
	for i, c := range g.plan.Kit.Cameras {
		from, to, used := origin, takeEnd, false
		rolled := false
		for a, act := range g.acts {
			h, _ := act.Deed.(*plan.Handoff)
			if act.Subject != plan.Thing(c) && (h == nil || h.Camera != c) {
				continue
			}
			used = true
			if d, ok := act.Deed.(*plan.Roll); ok {
				switch {
				case d.On:
					if !rolled {
						from = g.start(a)
					}
					rolled, to = true, takeEnd
					if lasts(act) {
						to = g.end(a)
					}
				case !lasts(act):
					rolled, to = true, g.start(a)
				}
			}
		}
		if used {
			g.deadlines = append(g.deadlines, deadline{kind: rollOut, u: to, v: from, c: tidy(r.Duration), a: int32(i)})
		}
	}
}
