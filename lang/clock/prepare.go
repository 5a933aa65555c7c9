package clock

import (
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Prepare finds what every start and end of the take waits for.
func Prepare(p *plan.Plan) *Graph {
	scopes := make([]scope, len(p.Beats))
	index := make(map[*plan.Action]int, len(p.Actions))
	home := make([]int, len(p.Actions))
	for i, a := range p.Actions {
		index[a] = i
		home[i] = -1
	}
	for s, b := range p.Beats {
		scopes[s].beat = b
		for _, a := range b.Actions {
			if i, ok := index[a]; ok && home[i] < 0 {
				home[i] = s
				scopes[s].acts = append(scopes[s].acts, i)
			}
		}
	}
	return prepare(&Graph{plan: p, acts: p.Actions, index: index, scopes: scopes, home: home})
}

// PreparePickup finds what every start and end of a pickup waits for. Its clock
// is its own: nothing of the take happens on it.
func PreparePickup(p *plan.Plan, pickup *plan.Pickup) *Graph {
	g := &Graph{
		plan: p, pickup: pickup,
		acts:   pickup.Actions,
		index:  make(map[*plan.Action]int, len(pickup.Actions)),
		scopes: make([]scope, 1),
		home:   make([]int, len(pickup.Actions)),
	}
	for i, a := range pickup.Actions {
		g.index[a] = i
		g.scopes[0].acts = append(g.scopes[0].acts, i)
	}
	return prepare(g)
}

func prepare(g *Graph) *Graph {
	g.findOrigins()
	g.soundBeat = make([]bool, len(g.scopes))
	for s := range g.soundBeat {
		g.soundBeat[s] = true
	}
	g.sound = make([]bool, len(g.acts))
	for a := range g.sound {
		g.sound[a] = g.home[a] >= 0
	}
	// A loop is broken where its cues are and what is left is looked at again,
	// until nothing waits for itself. Without cues every line waits for earlier
	// text only, so this ends.
	broken := make(map[int32]bool)
	for {
		b := &builder{g: g, broken: broken, passes: make(map[hit]int32)}
		b.build()
		loops := g.sort()
		if len(loops) == 0 {
			break
		}
		for _, way := range loops {
			g.loops = append(g.loops, g.wayAround(way))
			for _, n := range way {
				if a := g.nodes[n].act; a >= 0 {
					g.sound[a] = false
				} else if s := int(n-2) / 3; n == g.beatStart(s) {
					g.soundBeat[s] = false
				}
			}
			g.breakCues(way, broken)
		}
	}
	g.findLanes()
	return g
}

// builder lays out nodes and edges; in-edges are gathered per node first.
type builder struct {
	g      *Graph
	broken map[int32]bool // starts, ends: what is stated of them is left out to break a loop
	in     [][]edge
	passes map[hit]int32

	lastOf map[lineKey]int    // last line so far, by subject and faculty
	prev   map[plan.Thing]int // last line so far in this beat, by subject
	spins  map[int]int        // by countering line: the spin it counters
}

type lineKey struct {
	who plan.Thing
	use Faculty
}

func (b *builder) build() {
	g := b.g
	g.nodes = g.nodes[:0]
	g.deadlines = g.deadlines[:0]
	g.unmatched = g.unmatched[:0]
	g.length = make([]lengthRule, len(g.acts))
	b.lastOf = make(map[lineKey]int)
	b.in = nil
	b.add(node{act: -1}) // origin
	b.add(node{act: -1}) // takeEnd
	for range g.scopes {
		for range 3 {
			b.add(node{act: -1})
		}
	}
	for a := range g.acts {
		b.add(node{act: int32(a)})
		b.add(node{act: int32(a), end: true})
	}
	b.findSpins()
	b.rules()
	for s := range g.scopes {
		b.beat(s)
		b.prev = make(map[plan.Thing]int)
		for _, a := range g.scopes[s].acts {
			b.line(s, a)
		}
	}
	for a := range g.acts {
		if g.home[a] < 0 { // of no beat: nothing is known of it
			b.join(g.start(a), edge{from: origin, act: -1})
			b.join(g.end(a), edge{from: g.start(a), act: -1})
		}
	}
	b.records()
	g.edges = g.edges[:0]
	for n := range g.nodes {
		g.nodes[n].first = int32(len(g.edges))
		g.edges = append(g.edges, b.in[n]...)
		g.nodes[n].last = int32(len(g.edges))
	}
}

func (b *builder) add(n node) int32 {
	b.g.nodes = append(b.g.nodes, n)
	b.in = append(b.in, nil)
	return int32(len(b.g.nodes) - 1)
}

func (b *builder) join(to int32, e edge) { b.in[to] = append(b.in[to], e) }

// rules says how each line's length is found.
func (b *builder) rules() {
	g := b.g
	for a, act := range g.acts {
		_, counters := b.spins[a]
		_, light := act.Deed.(*plan.Cue)
		switch {
		case act.Deed == nil:
			g.length[a] = none
		case act.Timing.In != nil:
			g.length[a] = stated
		case act.Timing.Until != nil:
			g.length[a] = bounded
		case counters:
			g.length[a] = bounded
		case light:
			g.length[a] = stated
		case Instant(act):
			g.length[a] = none
		default:
			g.length[a] = natural
		}
	}
}

// beat joins a beat's three nodes.
func (b *builder) beat(s int) {
	g := b.g
	bt := g.scopes[s].beat
	start, content, end := g.beatStart(s), g.beatContent(s), g.beatEnd(s)
	b.join(content, edge{from: start, act: -1})
	b.join(end, edge{from: content, act: -1})
	b.join(takeEnd, edge{from: end, act: -1})
	after := origin
	cause := Cause{Kind: TakeBegins}
	if s > 0 {
		after = g.beatEnd(s - 1)
		cause = Cause{Kind: BeatOver, Beat: g.scopes[s-1].beat}
	}
	if bt == nil {
		b.join(start, edge{from: origin, act: -1, cause: cause})
		return
	}
	if bt.For > 0 {
		b.join(end, edge{from: start, act: -1, add: tidy(bt.For)})
		g.deadlines = append(g.deadlines, deadline{kind: overLength, u: content, v: start, c: tidy(bt.For), a: int32(s)})
	}
	if bt.Start != nil && !b.broken[start] {
		// `+9 s` of a beat counts from the start of the beat before it.
		since, sinceBeat := origin, (*plan.Beat)(nil)
		if s > 0 {
			since, sinceBeat = g.beatStart(s-1), g.scopes[s-1].beat
		}
		e, ok := b.moment(bt.Start, context{scope: s, act: -1, header: true}, since, sinceBeat)
		if ok {
			b.join(start, e)
			b.notBefore(start, e, bt.Start, -1, s)
			return
		}
		b.miss(bt.Start, nil, bt)
		g.soundBeat[s] = false
	}
	b.join(start, edge{from: after, act: -1, cause: cause})
}

// line joins a line's start and end.
func (b *builder) line(s, a int) {
	g := b.g
	act := g.acts[a]
	who, use := SubjectOf(act), FacultyOf(act.Deed)
	start, end := g.start(a), g.end(a)
	key := lineKey{who, use}
	b.begin(s, a, who, key)
	if who != nil {
		b.prev[who] = a
		b.lastOf[key] = a
	}
	b.join(g.beatContent(s), edge{from: end, act: -1, cause: Cause{Kind: AfterLine, Action: act}})

	if spin, ok := b.spins[a]; ok && g.length[a] == bounded && act.Timing.Until == nil {
		b.join(end, edge{from: start, act: -1})
		b.join(end, edge{from: g.end(spin), act: -1})
		b.by(s, a)
		return
	}
	if g.length[a] != bounded {
		b.join(end, edge{from: start, act: int32(a)})
	}
	if until := act.Timing.Until; until != nil {
		e, ok := b.moment(until, context{scope: s, act: a}, g.beatStart(s), g.scopes[s].beat)
		if ok && b.broken[end] {
			ok = false
		} else if !ok {
			b.miss(until, act, act.Beat)
			g.sound[a] = false
		}
		switch {
		case !ok && g.length[a] == bounded:
			// As if it had no `until`: its natural length, or none.
			bare := *act
			bare.Timing.Until = nil
			if g.length[a] = natural; Instant(&bare) {
				g.length[a] = none
			}
			b.join(end, edge{from: start, act: int32(a)})
		case !ok:
		case g.length[a] == bounded:
			b.join(end, edge{from: start, act: -1})
			b.join(end, e)
			g.deadlines = append(g.deadlines, deadline{kind: untilLimit, u: start, v: e.from, c: e.add, a: int32(a)})
		default: // `in` and `until`: the length holds, the end is checked
			g.deadlines = append(g.deadlines, deadline{kind: untilLimit, u: end, v: e.from, c: e.add, a: int32(a)})
		}
	}
	b.by(s, a)
}

// begin joins what a line's start waits for.
func (b *builder) begin(s, a int, who plan.Thing, key lineKey) {
	g := b.g
	act := g.acts[a]
	start := g.start(a)
	if m := act.Timing.Start; m != nil && !b.broken[start] {
		e, ok := b.moment(m, context{scope: s, act: a}, g.beatStart(s), g.scopes[s].beat)
		if ok {
			b.join(start, e)
			b.notBefore(start, e, m, a, s)
			return
		}
		b.miss(m, act, act.Beat)
		g.sound[a] = false
	}
	if spin, ok := b.spins[a]; ok && act.Timing.Start == nil && !b.broken[start] {
		b.join(start, edge{from: g.start(spin), act: -1, cue: true, cause: Cause{Kind: WithLine, Action: g.acts[spin]}})
		return
	}
	prev, follows := b.prev[who]
	if who == nil {
		follows = false
	}
	if follows && act.With {
		b.join(start, edge{from: g.start(prev), act: -1, cause: Cause{Kind: WithLine, Action: g.acts[prev]}})
		return
	}
	if follows {
		b.join(start, edge{from: g.end(prev), act: -1, cause: Cause{Kind: AfterLine, Action: g.acts[prev]}})
	} else {
		b.join(start, edge{from: g.beatStart(s), act: -1, cause: Cause{Kind: BeatBegins, Beat: g.scopes[s].beat}})
	}
	// The same part of the subject may still be busy with an earlier line.
	if last, ok := b.lastOf[key]; ok && who != nil && (!follows || last != prev) {
		b.join(start, edge{from: g.end(last), act: -1, cause: Cause{Kind: AfterLine, Action: g.acts[last]}})
	}
}

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
				default:
					rolled, to = true, g.start(a)
				}
			}
		}
		if used {
			g.deadlines = append(g.deadlines, deadline{kind: rollOut, u: to, v: from, c: tidy(r.Duration), a: int32(i)})
		}
	}
}
