package rehearse_test

import (
	"fmt"
	"strings"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// script builds a plan by hand, as bind would from text. Every walk takes as
// long as its line says, as a natural length.
type script struct {
	p     *plan.Plan
	takes map[*plan.Action]units.Seconds
}

func newScript() *script {
	return &script{p: &plan.Plan{Take: plan.Take{Rate: units.Rate{Num: 24, Den: 1}}}, takes: map[*plan.Action]units.Seconds{}}
}

func (s *script) Natural(a *plan.Action) units.Seconds { return s.takes[a] }

func (s *script) Passing(a *plan.Action, stop int, took units.Seconds) units.Seconds {
	return took * units.Seconds(stop+1) / units.Seconds(len(a.Deed.(*plan.Move).Path.Stops()))
}

func person(name string) *plan.Person {
	return &plan.Person{Ident: plan.Ident{Name: name}, Spread: -1}
}

func (s *script) beat(title string) *plan.Beat {
	b := &plan.Beat{Index: len(s.p.Beats), Title: title}
	s.p.Beats = append(s.p.Beats, b)
	return b
}

func (s *script) line(who plan.Thing, verb string, d plan.Deed, takes float64) *plan.Action {
	b := s.p.Beats[len(s.p.Beats)-1]
	a := &plan.Action{Index: len(s.p.Actions), Beat: b, Subject: who, Verb: verb, Deed: d}
	s.p.Actions = append(s.p.Actions, a)
	b.Actions = append(b.Actions, a)
	s.takes[a] = units.Seconds(takes)
	return a
}

func place(name string) *plan.Place {
	var x float64
	for _, r := range name {
		x = x*31 + float64(r)
	}
	return &plan.Place{Text: name, Point: geom.Vec{X: x}}
}

func (s *script) walk(who plan.Thing, to string, takes float64) *plan.Action {
	return s.line(who, "walks", &plan.Move{Path: plan.Path{To: place(to)}}, takes)
}

func since(v float64) *plan.Moment {
	return &plan.Moment{Kind: plan.SinceBeat, Offset: units.Seconds(v), Text: "+" + units.Number(v, 2) + " s"}
}

func reached(who plan.Thing, where string) *plan.Moment {
	return &plan.Moment{Kind: plan.OnEvent, Event: &plan.Event{Kind: plan.Reaches, Subject: who, Place: place(where)},
		Text: fmt.Sprintf("%s reaches %s", who.ID().Name, where)}
}

func words(n int) *plan.Say {
	return &plan.Say{Text: strings.TrimSpace(strings.Repeat("word ", n)), Words: n}
}
