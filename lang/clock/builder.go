package clock

import "longhand/lang/plan"

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
		b.join(end, edge{from: start, act: -1, floor: true})
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
			b.join(end, edge{from: start, act: -1, floor: true})
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
