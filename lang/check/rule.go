// Package check holds everything that can be wrong with a plan that reads well:
// one rule a file, each with its explanation and a plan that breaks it.
//
// Rules read what the stages before have computed and report findings; they
// compute nothing twice and change nothing. They know spans and text, but not
// the syntax tree.
package check

import (
	"context"

	"longhand/lang/diag"
	"longhand/lang/source"
)

// Rule is one kind of finding.
type Rule struct {
	diag.Entry
	Needs Stage
	Run   func(p *Pass)
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
func Run(ctx context.Context, p *Pass, upTo Stage) (diag.Bag, error) {
	for _, r := range Rules {
		if r.Needs > upTo {
			continue
		}
		if err := ctx.Err(); err != nil {
			return diag.Bag{}, err
		}
		p.rule = r
		r.Run(p)
	}
	p.accept()
	return p.bag, nil
}

// Report files a finding of the rule that runs now.
func (p *Pass) Report(span source.Span, format string, args ...any) *diag.Diagnostic {
	d := p.bag.Errorf(p.rule.Code, span, format, args...)
	d.Severity = p.rule.Severity
	return d
}
