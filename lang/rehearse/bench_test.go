package rehearse_test

import (
	"context"
	"fmt"
	"testing"

	"longhand/lang/plan"
	"longhand/lang/rehearse"
)

// A thousand rehearsals of three minutes with 60 people and 300 lines, each on
// the cue of another: what the clock alone costs of them.
func BenchmarkThousandRuns(b *testing.B) {
	s := newScript()
	var who []*plan.Person
	for i := range 60 {
		who = append(who, person(fmt.Sprint("p", i)))
	}
	for n := range 10 {
		s.beat(fmt.Sprint("beat ", n)).For = 60
		for i := range 30 {
			a := s.walk(who[(n*30+i)%60], fmt.Sprintf("M%d-%d", n, i), 1.2)
			if i > 0 {
				a.Timing.Start = reached(who[(n*30+i-1)%60], fmt.Sprintf("M%d-%d", n, i-1))
			}
			if i%4 == 0 {
				a.Timing.By = since(50)
			}
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		rehearse.Run(context.Background(), rehearse.ByClock(s.p, s), rehearse.Options{Runs: 1000})
	}
}
