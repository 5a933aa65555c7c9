package motion

import (
	"math"
	"sort"

	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/plan"
)

// event is something a base does with its feet or its heading: a line of its
// own, a line of the camera on it, or what follows from a change of hands.
type event struct {
	start, end float64
	open       bool // lasts until the next
	action     *plan.Action
	hold       *hold // of a camera's line
	camera     *plan.Camera

	// What follows from a mount or a handoff; action is that line.
	ride  *riding
	leave *leaving
	wait  *waiting
}

// waiting is for a camera to be handed over: it moves nobody, but says where
// somebody is of whom nothing else is said before.
type waiting struct {
	place *plan.Place // nil: beside the rig that hands over
	from  *hold
}

// riding is getting aboard: at once where nothing was known before.
type riding struct {
	carrier plan.Thing
	at      geom.Vec
	given   bool // at is said, not taken for granted
	tip     bool // on the platform at the end of the arm
	aside   bool // stands on the floor beside it, and goes where it goes
	weight  bool
	quiet   bool // no fact: the operator of a rig worked from beside it
}

// leaving is getting off, to a place near by or to the nearest side.
type leaving struct {
	carrier plan.Thing
	near    *plan.Place
}

// feet says that the event moves its subject over the floor.
func (e *event) feet() bool {
	switch {
	case e.wait != nil:
		return false
	case e.ride != nil || e.leave != nil:
		return true
	}
	return clock.FacultyOf(e.action.Deed) == clock.Feet
}

// gather sorts every line that moves something by what it really moves.
func (b *builder) gather() {
	b.events = make(map[plan.Thing][]event)
	for _, a := range b.r.actions {
		iv := b.c.Of(a)
		e := event{start: float64(iv.Start), end: float64(iv.End), open: iv.Open, action: a}
		switch a.Deed.(type) {
		case *plan.Move, *plan.Stand, *plan.Ride, *plan.Leave, *plan.Board, *plan.Spot, *plan.Turn, *plan.Spin, *plan.Pose:
			if subject := b.mover(a.Subject); subject != nil {
				b.events[subject] = append(b.events[subject], e)
			}
		case *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel:
			camera, ok := a.Subject.(*plan.Camera)
			if !ok {
				continue
			}
			h := holdAt(b.holds[camera], e.start)
			if h == nil || h.base() == nil {
				b.problem(Problem{Kind: NoBase, Subject: camera, Action: a, Note: "it is on no rig that could move"})
				continue
			}
			e.hold, e.camera = h, camera
			if h.armed() {
				b.tipEvents[h.rig] = append(b.tipEvents[h.rig], e)
			} else {
				b.events[h.base()] = append(b.events[h.base()], e)
			}
		}
	}
	for _, camera := range b.p.Kit.Cameras {
		b.implied(camera)
	}
	for _, events := range b.events {
		inOrder(events)
	}
	for _, events := range b.tipEvents {
		inOrder(events)
	}
}

// inOrder sorts by time; at one time what follows from a mount comes first, then
// the lines in the order of the text, a move before a turn that goes with it.
func inOrder(events []event) {
	rank := func(e *event) int {
		switch {
		case e.ride != nil || e.leave != nil || e.wait != nil:
			return 0
		case e.feet():
			return 1
		}
		return 2
	}
	sort.SliceStable(events, func(i, j int) bool {
		a, b := &events[i], &events[j]
		if math.Abs(a.start-b.start) > 1e-9 {
			return a.start < b.start
		}
		if rank(a) != rank(b) {
			return rank(a) < rank(b)
		}
		return a.action.Index < b.action.Index
	})
}

// mover is what a line about a thing moves: itself, or the wearer of a rig that
// is worn.
func (b *builder) mover(t plan.Thing) plan.Thing {
	rig, ok := t.(*plan.Rig)
	if !ok {
		return t
	}
	if who := b.wearer(rig, 0); who != nil {
		return who
	}
	return rig
}

// wearer is who has a worn rig on at a time: who holds the camera on it, before
// that who will first, after that who did last; nil for other rigs.
func (b *builder) wearer(rig *plan.Rig, at float64) *plan.Person {
	var who *plan.Person
	best := math.Inf(1)
	for _, camera := range b.p.Kit.Cameras {
		for i := range b.holds[camera] {
			h := &b.holds[camera][i]
			if h.rig != rig || !h.worn() {
				continue
			}
			miss := max(0, max(h.start-at, at-h.end))
			if h.end <= at { // who had it last keeps it on, unless somebody has it later
				miss = at - h.end
			}
			if miss < best {
				who, best = h.operator, miss
			}
		}
	}
	return who
}

// holdAt is the hold of a time: the one that has the camera, or is taking it.
func holdAt(holds []hold, at float64) *hold {
	for i := len(holds) - 1; i >= 0; i-- {
		if holds[i].start <= at+1e-9 {
			return &holds[i]
		}
	}
	if len(holds) > 0 {
		return &holds[0]
	}
	return nil
}

// implied is what mounts and handoffs do to the people of one camera: they ride
// the rigs that are ridden, stand beside those worked from beside, step on and
// off where hands change, and lend their weight.
func (b *builder) implied(camera *plan.Camera) {
	holds := b.holds[camera]
	for i := range holds {
		h := &holds[i]
		if h.handoff != nil && h.handoff.Weight != nil && i > 0 && holds[i-1].ridden() {
			// Onto a platform the weight is there before, and steps off by a line of
			// its own.
			b.add(h.handoff.Weight, event{start: h.start, end: h.taken, action: h.action, camera: camera,
				ride: &riding{carrier: holds[i-1].rig, tip: holds[i-1].armed(), weight: true}})
		}
		if base := h.base(); i > 0 && h.handoff != nil && base != nil && base != holds[i-1].base() {
			b.add(base, event{start: h.start, end: h.taken, action: h.action, camera: camera, hold: h,
				wait: &waiting{h.handoff.At, &holds[i-1]}})
		}
		who := h.operator
		if who == nil {
			continue
		}
		switch {
		case h.ridden():
			b.add(who, event{start: h.start, end: h.taken, action: h.action, camera: camera, hold: h,
				ride: &riding{carrier: h.rig, at: h.at, tip: h.seated()}})
		case h.rig != nil && !h.worn() && !b.movesItself(who):
			b.add(who, event{start: h.start, end: h.taken, action: h.action, camera: camera, hold: h,
				ride: &riding{carrier: h.rig, at: asideOf(h), aside: true, quiet: true}})
		}
		if i > 0 && holds[i-1].ridden() && holds[i-1].operator == who && h.rig != holds[i-1].rig && !h.ridden() {
			l := &leaving{carrier: holds[i-1].rig}
			if h.handoff != nil {
				l.near = h.handoff.At
			}
			b.add(who, event{start: h.start, end: h.taken, action: h.action, camera: camera, leave: l})
		}
	}
}

// asideOf is where somebody stands who works a rig from beside it: behind its
// middle.
func asideOf(h *hold) geom.Vec {
	return geom.Vec{X: -(float64(h.class.Length)/2 + 0.35)}
}

// movesItself says that a person has a line of their own that takes them
// anywhere.
func (b *builder) movesItself(who *plan.Person) bool {
	for _, a := range b.r.actions {
		if a.Subject != plan.Thing(who) {
			continue
		}
		switch d := a.Deed.(type) {
		case *plan.Move, *plan.Ride:
			return true
		case *plan.Stand:
			if d.At != nil {
				return true
			}
		}
	}
	return false
}

func (b *builder) add(t plan.Thing, e event) { b.events[t] = append(b.events[t], e) }
