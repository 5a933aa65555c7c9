// Package check holds everything that can be wrong with a plan that reads well:
// one rule a file, each with its explanation and a plan that breaks it.
//
// Rules read what the stages before have computed and report findings; they
// compute nothing twice and change nothing. They know spans and text, but not
// the syntax tree.
package check

import (
	"context"
	"runtime"

	"longhand/lang/diag"
	"longhand/lang/lanes"
	"longhand/lang/plan"
	"longhand/lang/source"
)

// Rule is one kind of finding.
type Rule struct {
	diag.Entry
	Needs Stage
	// Watches is whether the rule asks what a camera sees of a thing; nil where it
	// asks about everything.
	Watches func(p *Pass, camera *plan.Camera, thing plan.Thing) bool
	Run     func(p *Pass)
}

// Stage is what has to have been computed before a rule can run.
type Stage int

const (
	Bound Stage = iota // the plan
	Timed              // and its clock
	Moved              // and all tracks
	Seen               // and what every camera sees
)

// Run runs the rules up to a stage and returns what they found, with paint-outs
// and allows taken into account.
//
// The rules about movement run one after another, since most of them ask where
// bodies are; beside them, as processors allow, each of those about what is seen.
// What they find is in the order of the rules, whichever is done first.
func Run(ctx context.Context, p *Pass, upTo Stage) (diag.Bag, error) {
	jobs := []job{{p.beside(), p.rules(Bound, min(Moved, upTo))}}
	for _, r := range p.rules(Seen, upTo) {
		jobs = append(jobs, job{p.beside(), []*Rule{r}})
	}
	lanes.Do(len(jobs), runtime.GOMAXPROCS(0), func(i int) { jobs[i].run(ctx) })
	for i := range jobs {
		p.take(jobs[i].pass)
	}
	if err := ctx.Err(); err != nil {
		return diag.Bag{}, err
	}
	p.accept()
	return p.bag, nil
}

// job is rules to be run one after another.
type job struct {
	pass  *Pass
	rules []*Rule
}

// run runs the rules until ctx is done.
func (j *job) run(ctx context.Context) {
	for _, r := range j.rules {
		if ctx.Err() != nil {
			return
		}
		j.pass.rule = r
		r.Run(j.pass)
	}
}

// rules are those that need a stage from one to another, in their order.
func (p *Pass) rules(from, to Stage) []*Rule {
	var out []*Rule
	for _, r := range Rules {
		if r.Needs >= from && r.Needs <= to && !p.leavesOut(r) {
			out = append(out, r)
		}
	}
	return out
}

// Report files a finding of the rule that runs now.
func (p *Pass) Report(span source.Span, format string, args ...any) *diag.Diagnostic {
	d := p.bag.Errorf(p.rule.Code, span, format, args...)
	d.Severity = p.rule.Severity
	return d
}
