package motion

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// lengths answers the clock: how long lines take by themselves and when a move
// passes its places, as far as one round of tracks knows; what it doesn't know
// comes from the sketch.
type lengths struct {
	r       *Resolver
	natural map[*plan.Action]units.Seconds
	ways    map[*plan.Action]lined
}

// lined is a line's way and who goes it.
type lined struct {
	m     mover
	r     route
	leave bool // a step off a carrier comes first
}

func newLengths(r *Resolver) *lengths {
	return &lengths{r: r,
		natural: make(map[*plan.Action]units.Seconds),
		ways:    make(map[*plan.Action]lined),
	}
}

func (l *lengths) move(a *plan.Action, m mover, r route) {
	l.ways[a] = lined{m: m, r: r}
	l.natural[a] = m.natural(r).Duration()
}

func (l *lengths) leave(a *plan.Action, m mover, r route) {
	l.ways[a] = lined{m: m, r: r, leave: true}
	l.natural[a] = stepTime + m.natural(r).Duration()
}

// Natural is how long a line takes where its text fixes nothing.
func (l *lengths) Natural(a *plan.Action) units.Seconds {
	if _, hands := a.Deed.(*plan.Handoff); hands {
		// What the operator's feet need is a part of it, not all of it.
		return l.r.sketch.natural[a]
	}
	if s, ok := l.natural[a]; ok && !math.IsInf(float64(s), 0) && !math.IsNaN(float64(s)) {
		return s
	}
	return l.r.sketch.natural[a]
}

// Passing is when a move passes one of its places, from its start.
func (l *lengths) Passing(a *plan.Action, stop int, took units.Seconds) units.Seconds {
	w, ok := l.ways[a]
	if !ok {
		if w, ok = l.r.sketch.ways[a]; !ok {
			return took
		}
	}
	if stop < 0 || stop >= len(w.r.stops) {
		return took
	}
	step := units.Seconds(0)
	if w.leave {
		step = min(stepTime, took*0.4)
	}
	p := w.m.in(w.r, took-step)
	return step + p.TimeAt(units.Metres(w.r.stops[stop]))
}

// Lengths answers a clock as these tracks do, for whoever plays the take by its
// clock alone.
func (t *Tracks) Lengths() clock.Lengths { return t.lengths }
