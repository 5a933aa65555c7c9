package clock

import (
	"longhand/lang/units"
)

// judge fills in what a solution has to answer for: ends of what is open,
// stated times against what came out, and slack.
func (g *Graph) judge(c *Clock, ts *times) {
	limits := make([]deadline, 0, len(g.deadlines)+2*len(g.acts))
	for _, d := range g.deadlines {
		if g.judged(&d) {
			limits = append(limits, d)
		}
	}
	limits = g.lanesOf(c, ts, limits)
	limits = g.basesOf(c, ts, limits)
	for i := range limits {
		g.hold(c, ts, &limits[i])
	}
	g.slack(c, ts, limits)
	g.free(c, ts)
}

// judged says whether it makes sense to hold the plan to a limit: not where what
// it is about has no time of its own.
func (g *Graph) judged(d *deadline) bool {
	switch d.kind {
	case byLimit, untilLimit:
		return g.sound[d.a]
	case beforeTake:
		if d.a >= 0 {
			return g.sound[d.a]
		}
		return g.soundBeat[d.b]
	case overLength:
		return g.soundBeat[d.a]
	}
	return true
}

// hold reports a limit that is passed.
func (g *Graph) hold(c *Clock, ts *times, d *deadline) {
	measured, limit := ts.t[d.u], ts.t[d.v]+d.c
	if measured <= limit+late {
		return
	}
	switch d.kind {
	case overLength:
		s := int(d.a)
		o := Overrun{Beat: g.scopes[s].beat, Measured: units.Seconds(measured - ts.t[d.v]), Limit: units.Seconds(d.c)}
		if e := ts.cause[d.u]; e >= 0 {
			o.Last = g.edges[e].cause.Action
		}
		c.Overruns = append(c.Overruns, o)
		return
	case rollOut:
		c.RollOuts = append(c.RollOuts, RollOut{
			Camera: g.plan.Kit.Cameras[d.a], From: units.Seconds(ts.t[d.v]), To: units.Seconds(measured), Limit: units.Seconds(d.c),
		})
		return
	case oneAtATime:
		return // told with its lane
	}
	l := Late{Measured: units.Seconds(measured), Limit: units.Seconds(limit)}
	if d.a >= 0 {
		l.Action = g.acts[d.a]
		l.Beat = l.Action.Beat
	}
	switch d.kind {
	case byLimit:
		l.Kind, l.Moment = LateBy, l.Action.Timing.By
	case untilLimit:
		l.Kind, l.Moment = LateUntil, l.Action.Timing.Until
	case beforeTake:
		l.Kind = LateBefore
		if l.Action != nil {
			l.Moment = l.Action.Timing.Start
		} else {
			l.Beat = g.scopes[d.b].beat
			l.Moment = l.Beat.Start
		}
	}
	c.Lates = append(c.Lates, l)
}

// lanesOf ends what is open where its lane goes on, reports overlaps, and adds
// to the limits that each line is to be over when the next of its lane begins.
func (g *Graph) lanesOf(c *Clock, ts *times, limits []deadline) []deadline {
	var buf []int32
	for i := range g.lanes {
		ln := &g.lanes[i]
		buf = g.byTime(ln.acts, ts.t, buf)
		busy, prev := int32(-1), int32(-1) // the line that ends last so far; the last one
		for k, b := range buf {
			if c.Actions[b].Open {
				c.Actions[b].End = c.Length
				if k+1 < len(buf) {
					c.Actions[b].End = c.Actions[buf[k+1]].Start
				}
			}
			if ln.use == Edit {
				continue
			}
			if busy >= 0 {
				limits = g.oneAtATime(c, ts, limits, busy, b, ln.use)
			}
			if prev >= 0 && prev != busy {
				limits = g.oneAtATime(c, ts, limits, prev, b, ln.use)
			}
			if c.Actions[b].Open || !g.sound[b] {
				continue
			}
			if prev = b; busy < 0 || ts.t[g.end(int(b))] >= ts.t[g.end(int(busy))] {
				busy = b
			}
		}
	}
	return limits
}

// oneAtATime says that line a is to be over when b begins.
func (g *Graph) oneAtATime(c *Clock, ts *times, limits []deadline, a, b int32, use Faculty) []deadline {
	if !g.sound[a] || !g.sound[b] {
		return limits
	}
	end, start := g.end(int(a)), g.start(int(b))
	if by := ts.t[end] - ts.t[start]; by > late {
		c.Overlaps = append(c.Overlaps, Overlap{
			First: g.acts[a], Second: g.acts[b], Faculty: use,
			FirstEnds: units.Seconds(ts.t[end]), SecondStarts: units.Seconds(ts.t[start]),
		})
	}
	if g.neverBefore(start, end) {
		return limits // it waits for it anyway
	}
	return append(limits, deadline{kind: oneAtATime, u: end, v: start, a: a, b: b})
}

// basesOf does the same for what moves one camera: the camera's own lines, its
// rig's and its operator's are one lane while it is on that rig.
func (g *Graph) basesOf(c *Clock, ts *times, limits []deadline) []deadline {
	var buf, all []int32
	for i := range g.cameras {
		b := &g.cameras[i]
		if len(b.of) == 0 {
			continue
		}
		buf = g.byTime(b.sets, ts.t, buf)
		for _, s := range g.stretches(b, ts.t, buf) {
			if s.rig == nil {
				continue
			}
			all = all[:0]
			all = within(g, c, ts, all, b.moves, s, false)
			all = within(g, c, ts, all, b.of[s.rig], s, true)
			if s.operator != nil {
				all = within(g, c, ts, all, b.of[s.operator], s, true)
			}
			all = g.byTime(all, ts.t, nil)
			limits = g.baseLane(c, ts, limits, all)
		}
	}
	return limits
}

// within adds the lines that are on during a stretch: a camera's that begin in
// it, a rig's or an operator's that go on in it at all.
func within(g *Graph, c *Clock, ts *times, all, acts []int32, s stretch, any bool) []int32 {
	for _, a := range acts {
		start, end := ts.t[g.start(int(a))], ts.t[g.end(int(a))]
		if start < s.to && (start >= s.from || any && end > s.from) {
			all = append(all, a)
		}
	}
	return all
}

func (g *Graph) baseLane(c *Clock, ts *times, limits []deadline, all []int32) []deadline {
	for k, b := range all {
		for m := k - 1; m >= 0; m-- {
			a := all[m]
			if SubjectOf(g.acts[a]) == SubjectOf(g.acts[b]) {
				continue // its own lane has dealt with it
			}
			open := &c.Actions[a]
			switch {
			case !open.Open:
				limits = g.oneAtATime(c, ts, limits, a, b, Feet)
			case open.Start == c.Actions[b].Start && g.sound[a] && g.sound[b]:
				c.Overlaps = append(c.Overlaps, Overlap{
					First: g.acts[a], Second: g.acts[b], Faculty: Feet, FirstEnds: c.Actions[b].End, SecondStarts: open.Start,
				})
			default:
				open.End = min(open.End, c.Actions[b].Start)
			}
		}
	}
	// Begun at once, but in the text the one that holds comes second.
	for k, b := range all {
		if k == 0 || !c.Actions[b].Open {
			continue
		}
		if a := all[k-1]; !c.Actions[a].Open && c.Actions[a].Start == c.Actions[b].Start {
			c.Actions[b].End = max(c.Actions[b].Start, min(c.Actions[b].End, c.Actions[a].End))
		}
	}
	return limits
}
