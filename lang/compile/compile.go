// Package compile runs all stages on a plan: text to statements, statements to
// plan, plan to clock and tracks, tracks to sight, all of it to findings.
//
// Each stage is a pure function of the one before and may be used alone; this
// is the one place that knows their order.
package compile

import (
	"context"
	"fmt"
	"path"

	"longhand/lang/bind"
	"longhand/lang/check"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// Read gives the text of a file by its name. Names have forward slashes; those
// of `use` and `plan` are relative to the file that they stand in.
type Read func(name string) (string, error)

// Options is how Compile goes about it; the zero value does everything.
type Options struct {
	// UpTo is the last stage to run. The zero value is check.Seen: everything.
	UpTo *check.Stage
	// Progress is told how far the longest stage, sight, is.
	Progress func(done, all int)
	// Before is an earlier result of nearly the same plan; what it says of sight
	// is used again where nothing that it rests on has changed, and lines of text
	// that stand in it are not read again.
	Before *Result
	// Workers is how many goroutines look; 0 for one a processor.
	Workers int
}

// Result is a plan and everything computed from it. What a stage could not
// compute, because the text has mistakes, is nil.
type Result struct {
	Files []*syntax.File
	Plan  *plan.Plan
	Played
	Pickups  []*Shot           // the coverage, in the order of the text
	Findings []diag.Diagnostic // sorted
	// Stopped says that the text has mistakes, so that nothing was computed from
	// it.
	Stopped bool
}

// Empty is whether there is no line in the text that says anything.
func (r *Result) Empty() bool {
	for _, f := range r.Files {
		for _, l := range f.Lines {
			if len(l.Words()) > 0 {
				return false
			}
		}
	}
	return true
}

// Errors counts findings that make a check fail.
func (r *Result) Errors() int { return r.count(diag.Error) }

// Warnings counts findings that make a strict check fail.
func (r *Result) Warnings() int { return r.count(diag.Warning) }

func (r *Result) count(s diag.Severity) int {
	n := 0
	for i := range r.Findings {
		if r.Findings[i].Severity == s {
			n++
		}
	}
	return n
}

// Compile runs every stage on the plan in a file. The error is of reading the
// main file, or ctx's; everything that is wrong with the plan is a finding. A
// stage that fails in a way it never should becomes a finding too, so that an
// editor outlives it.
func Compile(ctx context.Context, read Read, name string, o Options) (*Result, error) {
	text, err := read(name)
	if err != nil {
		return nil, err
	}
	again := func(n string) (string, error) {
		if n == name {
			return text, nil
		}
		return read(n)
	}
	var before []*syntax.File
	if o.Before != nil {
		before = o.Before.Files
	}
	files, bag := bind.Load(again, name, before...)
	r := &Result{Files: files}
	return r, r.run(ctx, again, bag, o)
}

// Text compiles a plan that is one text.
func Text(ctx context.Context, name, text string, o Options) (*Result, error) {
	return Compile(ctx, func(n string) (string, error) {
		if path.Clean(n) == path.Clean(name) {
			return text, nil
		}
		return "", fmt.Errorf("%s uses %s, which is not there", name, n)
	}, name, o)
}

func (r *Result) run(ctx context.Context, read Read, bag diag.Bag, o Options) (err error) {
	upTo := check.Seen
	if o.UpTo != nil {
		upTo = *o.UpTo
	}
	stage := "binding names"
	defer func() {
		if v := recover(); v != nil {
			bag.Errorf("internal", r.mainSpan(), "longhand itself failed while %s: %v", stage, v).
				Note("this is a mistake in longhand, not in the plan; the rest of the plan may still be right")
			r.Findings = bag.Sorted()
		}
	}()
	var more diag.Bag
	r.Plan, more = bind.Bind(r.Files, bind.KnownCodes(KnownCodes()...), bind.Drawings(read))
	bag.Merge(more)
	r.Findings = bag.Sorted()
	if bag.Errors() > 0 {
		r.Stopped = true
		return nil
	}
	if upTo >= check.Timed {
		stage = "working out the clock and the tracks"
		r.Tracks = motion.Resolve(ctx, r.Plan)
		if err := ctx.Err(); err != nil {
			return err
		}
	}
	how := playing{upTo: upTo, sight: sight.Options{Workers: o.Workers, Progress: o.Progress}, doing: func(s string) { stage = s }}
	if o.Before != nil {
		how.before = o.Before.Sight
	}
	found, err := r.play(ctx, takeOnly(r.Plan), how)
	if err != nil {
		return err
	}
	bag.Merge(found)
	stage = "working out the pickups"
	for _, u := range r.Plan.Pickups {
		s, found, err := shot(ctx, r.Plan, u, upTo, sight.Options{Workers: o.Workers})
		if err != nil {
			return err
		}
		r.Pickups = append(r.Pickups, s)
		bag.Merge(found)
	}
	r.Findings = bag.Sorted()
	return nil
}

func (r *Result) mainSpan() source.Span {
	if len(r.Files) == 0 {
		return source.Span{}
	}
	return source.Span{File: r.Files[0].Source}
}
