package clock_test

import (
	"fmt"
	"testing"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// quick has no table to look things up in, so that the graph alone is measured.
type quick struct{}

func (quick) Natural(*plan.Action) units.Seconds { return 2 }

func (quick) Passing(_ *plan.Action, _ int, took units.Seconds) units.Seconds { return took / 2 }

// bigPlan is three minutes with 60 bodies and some 300 lines in ten beats:
// everybody walks on the cue of somebody else, with deadlines.
func bigPlan() *script {
	s := newScript()
	var who []*plan.Person
	for i := range 60 {
		who = append(who, person(fmt.Sprint("p", i)))
	}
	a := s.camera("A")
	s.p.Take.Record = &plan.Record{Duration: 600}
	for b := range 10 {
		s.beat(fmt.Sprint("beat ", b), nil, 18)
		s.line(a, "sees", &plan.See{Targets: []plan.Target{{Thing: who[b]}}})
		s.line(a, "follows", &plan.Keep{Target: plan.Target{Thing: who[b]}, By: 2})
		for i := range 30 {
			p := who[(b*30+i)%60]
			var opts []opt
			if i > 0 {
				opts = append(opts, starting(when(s.reaches(who[(b*30+i-1)%60], fmt.Sprintf("V%d-%d", b, i-1)), 0.25)))
			}
			if i%4 == 0 {
				opts = append(opts, by(plus(30)))
			}
			s.walk(p, fmt.Sprintf("V%d-%d T%d-%d", b, i, b, i), append(opts, in(1.2))...)
		}
	}
	return s
}

func BenchmarkPrepare(b *testing.B) {
	s := bigPlan()
	b.ReportAllocs()
	for b.Loop() {
		clock.Prepare(s.p)
	}
}

func BenchmarkSolve(b *testing.B) {
	s := bigPlan()
	g := clock.Prepare(s.p)
	b.ReportAllocs()
	for b.Loop() {
		g.Solve(quick{}, nil)
	}
}
