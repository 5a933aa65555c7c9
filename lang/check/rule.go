// Package check holds everything that can be wrong with a plan that reads well:
// one rule a file, each with its explanation and a plan that breaks it.
//
// Rules read what the stages before have computed and report findings; they
// compute nothing twice and change nothing. They know spans and text, but not
// the syntax tree.
package check

import (
	"context"
	"sync"

	"longhand/lang/diag"
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
// The rules about what is seen run beside the others, with a pass of their own,
// since neither needs what the other has worked out.
func Run(ctx context.Context, p *Pass, upTo Stage) (diag.Bag, error) {
	moved := p.fork()
	var lane sync.WaitGroup
	var failed any
	lane.Go(func() {
		defer func() { failed = recover() }()
		moved.runAll(ctx, Bound, min(Moved, upTo))
	})
	p.runAll(ctx, Seen, upTo)
	lane.Wait()
	if failed != nil {
		panic(failed)
	}
	if err := ctx.Err(); err != nil {
		return diag.Bag{}, err
	}
	p.precede(moved.bag)
	p.accept()
	return p.bag, nil
}

// fork is a pass over the same plan that has worked out and found nothing yet.
func (p *Pass) fork() *Pass {
	return &Pass{Ctx: p.Ctx, Plan: p.Plan, Clock: p.Clock, Tracks: p.Tracks, Stage: p.Stage, Sight: p.Sight, ErrorsOnly: p.ErrorsOnly}
}

// runAll runs the rules that need a stage from one to another, in their order, until
// ctx is done.
func (p *Pass) runAll(ctx context.Context, from, to Stage) {
	for _, r := range Rules {
		if r.Needs < from || r.Needs > to || p.leavesOut(r) {
			continue
		}
		if ctx.Err() != nil {
			return
		}
		p.rule = r
		r.Run(p)
	}
}

// precede puts findings before those of the pass, whose places in the bag are
// known by number.
func (p *Pass) precede(first diag.Bag) {
	n := first.Len()
	first.Merge(p.bag)
	p.bag = first
	later := make(map[int]told, len(p.told))
	for i, t := range p.told {
		later[i+n] = t
	}
	p.told = later
}

// Report files a finding of the rule that runs now.
func (p *Pass) Report(span source.Span, format string, args ...any) *diag.Diagnostic {
	d := p.bag.Errorf(p.rule.Code, span, format, args...)
	d.Severity = p.rule.Severity
	return d
}
