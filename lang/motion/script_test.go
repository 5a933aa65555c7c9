package motion

import (
	"context"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// script writes plans by hand, as binding would make them from text.
type script struct {
	p     *plan.Plan
	marks map[string]*plan.Mark
}

func newScript() *script {
	p := &plan.Plan{}
	p.Take.Rate = units.Rate{Num: 24, Den: 1}
	p.Take.Aspect = 1.85
	s := &script{p: p, marks: make(map[string]*plan.Mark)}
	return s
}

func id(name string) plan.Ident { return plan.Ident{Name: name} }

func (s *script) performer(name string, height units.Metres) *plan.Person {
	who := &plan.Person{Ident: id(name), Height: height, Weight: 70}
	s.p.People = append(s.p.People, who)
	return who
}

func (s *script) crew(name string) *plan.Person {
	who := s.performer(name, 1.78)
	who.Crew = true
	return who
}

func (s *script) vehicle(name string, long, wide units.Metres) *plan.Vehicle {
	v := &plan.Vehicle{Ident: id(name), Length: long, Width: wide, High: plan.Range{High: 2.3}}
	s.p.Kit.Vehicles = append(s.p.Kit.Vehicles, v)
	return v
}

func (s *script) rig(name, class string) *plan.Rig {
	r := &plan.Rig{Ident: id(name), Class: class}
	s.p.Kit.Rigs = append(s.p.Kit.Rigs, r)
	return r
}

func (s *script) camera(name string) *plan.Camera {
	c := &plan.Camera{Ident: id(name), Width: 24.9, Height: 14, Squeeze: 1, Weight: 2.6}
	s.p.Kit.Cameras = append(s.p.Kit.Cameras, c)
	return c
}

func (s *script) lens(name string, focal units.Millimetres) *plan.Lens {
	l := &plan.Lens{Ident: id(name), Short: focal, Long: focal, Widest: 2, Closest: 22, Weight: 1.2}
	s.p.Kit.Lenses = append(s.p.Kit.Lenses, l)
	return l
}

func (s *script) mark(name string, x, y float64) *plan.Mark {
	m := &plan.Mark{Ident: id(name), Point: geom.Vec{X: x, Y: y}}
	s.p.Set.Marks = append(s.p.Set.Marks, m)
	s.marks[name] = m
	return m
}

func (s *script) at(name string) *plan.Place {
	m := s.marks[name]
	return &plan.Place{Point: m.Point, Mark: m, Text: name}
}

func (s *script) beat(title string, start *plan.Moment) *plan.Beat {
	b := &plan.Beat{Index: len(s.p.Beats), Title: title, Start: start}
	s.p.Beats = append(s.p.Beats, b)
	return b
}

type opt func(*plan.Action)

func (s *script) line(who plan.Thing, d plan.Deed, opts ...opt) *plan.Action {
	if len(s.p.Beats) == 0 {
		s.beat("one", nil)
	}
	b := s.p.Beats[len(s.p.Beats)-1]
	a := &plan.Action{Index: len(s.p.Actions), Beat: b, Subject: who, Deed: d}
	if _, ok := d.(*plan.Handoff); ok {
		a.Subject = nil
	}
	for _, o := range opts {
		o(a)
	}
	s.p.Actions = append(s.p.Actions, a)
	b.Actions = append(b.Actions, a)
	return a
}

// walk goes via all names but the last, to the last.
func (s *script) walk(who plan.Thing, names []string, opts ...opt) *plan.Action {
	m := &plan.Move{}
	for _, n := range names[:len(names)-1] {
		m.Path.Via = append(m.Path.Via, *s.at(n))
	}
	m.Path.To = s.at(names[len(names)-1])
	return s.line(who, m, opts...)
}

func (s *script) stand(who plan.Thing, name string, opts ...opt) *plan.Action {
	return s.line(who, &plan.Stand{At: s.at(name)}, opts...)
}

func with(a *plan.Action) { a.With = true }

func in(v units.Seconds) opt { return func(a *plan.Action) { a.Timing.In = &v } }

func paced(v units.MetresPerSecond) opt { return func(a *plan.Action) { a.Timing.At = &v } }

func after(v units.Seconds) opt {
	return func(a *plan.Action) { a.Timing.Start = &plan.Moment{Kind: plan.SinceBeat, Offset: v} }
}

func from(s *script, name string) opt {
	return func(a *plan.Action) { a.Deed.(*plan.Move).Path.From = s.at(name) }
}

func when(e *plan.Event, offset units.Seconds) opt {
	return func(a *plan.Action) { a.Timing.Start = moment(e, offset) }
}

func moment(e *plan.Event, offset units.Seconds) *plan.Moment {
	return &plan.Moment{Kind: plan.OnEvent, Event: e, Offset: offset}
}

func (s *script) reaches(who plan.Thing, name string) *plan.Event {
	return &plan.Event{Kind: plan.Reaches, Subject: who, Place: s.at(name)}
}

func on(t plan.Thing) plan.Target { return plan.Target{Thing: t} }

func (s *script) resolve() *Tracks { return Resolve(context.Background(), s.p) }

func v(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }
