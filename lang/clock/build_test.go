package clock_test

import (
	"strings"

	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// script builds plans by hand, as bind would make them from text.
type script struct {
	p      *plan.Plan
	pickup *plan.Pickup
	marks  map[string]*plan.Mark
}

func newScript() *script {
	return &script{p: &plan.Plan{Take: plan.Take{Rate: units.Rate{Num: 24, Den: 1}}}, marks: map[string]*plan.Mark{}}
}

func person(name string) *plan.Person { return &plan.Person{Ident: plan.Ident{Name: name}} }
func crew(name string) *plan.Person   { return &plan.Person{Ident: plan.Ident{Name: name}, Crew: true} }
func vehicle(name string) *plan.Vehicle {
	return &plan.Vehicle{Ident: plan.Ident{Name: name}}
}
func rig(name, class string) *plan.Rig {
	return &plan.Rig{Ident: plan.Ident{Name: name}, Class: class}
}
func (s *script) camera(name string) *plan.Camera {
	c := &plan.Camera{Ident: plan.Ident{Name: name}}
	s.p.Kit.Cameras = append(s.p.Kit.Cameras, c)
	return c
}

func (s *script) place(name string) *plan.Place {
	m, ok := s.marks[name]
	if !ok {
		m = &plan.Mark{Ident: plan.Ident{Name: name}, Point: geom.Vec{X: float64(len(s.marks)) * 3, Y: 1}}
		s.marks[name] = m
	}
	return &plan.Place{Point: m.Point, Mark: m, Text: name}
}

// opt changes a line's or a beat's timing.
type opt func(a *plan.Action)

func sec(v float64) *units.Seconds { s := units.Seconds(v); return &s }

func in(v float64) opt { return func(a *plan.Action) { a.Timing.In = sec(v) } }
func with(a *plan.Action) {
	a.With = true
}
func starting(m *plan.Moment) opt { return func(a *plan.Action) { a.Timing.Start = m } }
func until(m *plan.Moment) opt    { return func(a *plan.Action) { a.Timing.Until = m } }
func by(m *plan.Moment) opt       { return func(a *plan.Action) { a.Timing.By = m } }

func plus(v float64) *plan.Moment {
	return &plan.Moment{Kind: plan.SinceBeat, Offset: units.Seconds(v), Text: "+" + units.Number(v, 2) + " s"}
}
func onClock(v float64) *plan.Moment {
	return &plan.Moment{Kind: plan.OnClock, Offset: units.Seconds(v), Text: units.Seconds(v).Clock()}
}
func when(e *plan.Event, offset ...float64) *plan.Moment {
	m := &plan.Moment{Kind: plan.OnEvent, Event: e}
	for _, o := range offset {
		m.Offset += units.Seconds(o)
	}
	return m
}

func (s *script) reaches(who plan.Thing, place string) *plan.Event {
	return &plan.Event{Kind: plan.Reaches, Subject: who, Place: s.place(place)}
}
func (s *script) leaves(who plan.Thing, place string) *plan.Event {
	return &plan.Event{Kind: plan.Leaves, Subject: who, Place: s.place(place)}
}
func leavesCarrier(who, carrier plan.Thing) *plan.Event {
	return &plan.Event{Kind: plan.Leaves, Subject: who, Carrier: carrier}
}
func says(who plan.Thing, part string) *plan.Event {
	return &plan.Event{Kind: plan.Says, Subject: who, Text: part}
}
func cueFires(name string) *plan.Event { return &plan.Event{Kind: plan.CueFires, Cue: name} }
func beatStarts(b *plan.Beat) *plan.Event {
	return &plan.Event{Kind: plan.BeatStarts, Beat: b}
}
func beatEnds(b *plan.Beat) *plan.Event { return &plan.Event{Kind: plan.BeatEnds, Beat: b} }

func (s *script) beat(title string, start *plan.Moment, length ...float64) *plan.Beat {
	b := &plan.Beat{Index: len(s.p.Beats), Title: title, Start: start}
	for _, l := range length {
		b.For = units.Seconds(l)
	}
	s.p.Beats = append(s.p.Beats, b)
	s.pickup = nil
	return b
}

func (s *script) newPickup(title string) *plan.Pickup {
	s.pickup = &plan.Pickup{Index: len(s.p.Pickups), Title: title}
	s.p.Pickups = append(s.p.Pickups, s.pickup)
	return s.pickup
}

func (s *script) line(who plan.Thing, verb string, d plan.Deed, opts ...opt) *plan.Action {
	a := &plan.Action{Subject: who, Verb: verb, Deed: d}
	for _, o := range opts {
		o(a)
	}
	if s.pickup != nil {
		a.Pickup = s.pickup
		a.Index = len(s.pickup.Actions)
		s.pickup.Actions = append(s.pickup.Actions, a)
		return a
	}
	b := s.p.Beats[len(s.p.Beats)-1]
	a.Beat = b
	a.Index = len(s.p.Actions)
	s.p.Actions = append(s.p.Actions, a)
	b.Actions = append(b.Actions, a)
	return a
}

// walk goes by way of all but the last place to the last.
func (s *script) walk(who plan.Thing, places string, opts ...opt) *plan.Action {
	var path plan.Path
	stops := strings.Fields(places)
	for i, name := range stops {
		if i == len(stops)-1 {
			path.To = s.place(name)
		} else {
			path.Via = append(path.Via, *s.place(name))
		}
	}
	return s.line(who, "walks", &plan.Move{Path: path}, opts...)
}

func (s *script) from(a *plan.Action, name string) *plan.Action {
	a.Deed.(*plan.Move).Path.From = s.place(name)
	return a
}

func (s *script) say(who plan.Thing, text string, opts ...opt) *plan.Action {
	return s.line(who, "says", &plan.Say{Text: text, Words: len(strings.Fields(text))}, opts...)
}

func (s *script) cue(name string, over float64, opts ...opt) *plan.Action {
	return s.line(nil, "cue", &plan.Cue{Name: name, Over: units.Seconds(over)}, opts...)
}

// lengths gives every line a length; a move passes its stops evenly in time.
// What it has no length for takes 4 s, a spoken line what its words take at 120
// a minute, so that a word takes half a second.
type lengths map[*plan.Action]float64

func (l lengths) Natural(a *plan.Action) units.Seconds {
	if v, ok := l[a]; ok {
		return units.Seconds(v)
	}
	if d, ok := a.Deed.(*plan.Say); ok {
		return clock.Spoken(d.Words, 120)
	}
	return 4
}

func (l lengths) Passing(a *plan.Action, stop int, took units.Seconds) units.Seconds {
	n := 1
	if d, ok := a.Deed.(*plan.Move); ok {
		n = len(d.Path.Stops())
	}
	return took * units.Seconds(stop+1) / units.Seconds(n)
}
