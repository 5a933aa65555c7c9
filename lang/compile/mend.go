package compile

import (
	"context"

	"longhand/lang/diag"
)

// Mended is a plan after its fixes.
type Mended struct {
	Texts   map[string]string // the new texts of the files that changed
	Applied []diag.Diagnostic // what was mended, each with the one fix that did it
	Result  *Result           // of the mended plan
}

// Mend applies the fixes that findings offer, one after the other, and keeps each
// only if it takes its finding away and brings no new one. What is a person's
// decision is left to them. Nothing is written.
func Mend(ctx context.Context, read Read, name string) (*Mended, error) {
	m := &Mended{Texts: map[string]string{}}
	patched := func(over map[string]string) Read {
		return func(n string) (string, error) {
			if text, ok := over[n]; ok {
				return text, nil
			}
			if text, ok := m.Texts[n]; ok {
				return text, nil
			}
			return read(n)
		}
	}
	r, err := Compile(ctx, patched(nil), name, Options{})
	if err != nil {
		return nil, err
	}
	tried := map[string]bool{}
	for {
		d, next, texts, err := better(ctx, patched, name, r, tried)
		if err != nil {
			return nil, err
		}
		if next == nil {
			m.Result = r
			return m, nil
		}
		for n, text := range texts {
			m.Texts[n] = text
		}
		m.Applied = append(m.Applied, *d)
		r = next
	}
}

// better finds the first fix that makes a plan better by a finding and worse by
// none.
func better(ctx context.Context, patched func(map[string]string) Read, name string, r *Result, tried map[string]bool) (*diag.Diagnostic, *Result, map[string]string, error) {
	texts := map[string]string{}
	for _, f := range r.Files {
		texts[f.Source.Name] = f.Source.Text
	}
	for i := range r.Findings {
		d := &r.Findings[i]
		for _, fix := range d.Fixes {
			key := keyOf(d) + "\x00" + fix.Title
			if fix.Decision || tried[key] {
				continue
			}
			tried[key] = true
			changed, ok := fix.Apply(texts)
			if !ok {
				continue
			}
			next, err := Compile(ctx, patched(changed), name, Options{Before: r})
			if err != nil {
				return nil, nil, nil, err
			}
			if mends(r, next, d) {
				done := *d
				done.Fixes = []diag.Fix{fix}
				return &done, next, changed, nil
			}
		}
	}
	return nil, nil, nil, nil
}

// mends says that a finding is gone and that there is none that was not there
// before. Notes do not count.
func mends(before, after *Result, gone *diag.Diagnostic) bool {
	had := counts(before)
	has := counts(after)
	if has[keyOf(gone)] >= had[keyOf(gone)] {
		return false
	}
	for key, n := range has {
		if n > had[key] {
			return false
		}
	}
	// A text that no longer reads has lost what was found in it, not mended it.
	return !after.Stopped || before.Stopped
}

func counts(r *Result) map[string]int {
	out := map[string]int{}
	for i := range r.Findings {
		if r.Findings[i].Severity > diag.Note {
			out[keyOf(&r.Findings[i])]++
		}
	}
	return out
}

// keyOf tells findings apart whose places and numbers may move.
func keyOf(d *diag.Diagnostic) string {
	if d.Subject == "" && d.Camera == "" {
		// The words of the statement, not where it stands.
		return string(d.Code) + "\x00" + d.Message
	}
	return string(d.Code) + "\x00" + d.Subject + "\x00" + d.Camera + "\x00" + d.Beat
}
