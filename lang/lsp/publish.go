package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"sync"
	"time"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/diag"
)

var bound = check.Bound

// update brings the plans up to date after the files named have changed, tells
// what is wrong with their texts, and has the rest checked. The server is
// locked.
func (s *server) update(names ...string) {
	keep := map[string]bool{}
	for _, root := range s.work.roots() {
		keep[root] = true
		p := s.work.plans[root]
		changed := p == nil
		if p == nil {
			p = &planState{root: root, cancel: func() {}}
			s.work.plans[root] = p
		}
		for _, n := range names {
			changed = changed || p.needs[n] || n == root
		}
		if changed {
			s.rebind(p)
		}
	}
	for root, p := range s.work.plans {
		if !keep[root] {
			p.stop()
			delete(s.work.plans, root)
		}
	}
	s.publish()
}

// stop gives up the check that runs.
func (p *planState) stop() {
	p.turn++
	p.cancel()
}

// rebind reads a plan anew, as far as names, and has the rest checked.
func (s *server) rebind(p *planState) {
	p.stop()
	p.fresh = false
	p.needs = s.work.uses(p.root)
	read := s.work.read()
	r, err := textOnly(read, p.root, s.work.isPlan(p.root), p.bound)
	if err != nil { // the file is gone
		p.bound, p.names = &compile.Result{Stopped: true}, nil
		return
	}
	p.bound = r
	p.names = sync.OnceValue(func() *names { return namesOf(r.Files) })
	if r.Stopped {
		return
	}
	ctx, cancel := context.WithCancel(s.ctx)
	p.cancel = cancel
	go s.check(ctx, p, p.turn, read, p.whole)
}

// check computes everything for a plan, unless the text changes first.
func (s *server) check(ctx context.Context, p *planState, turn int, read compile.Read, before *compile.Result) {
	if s.options.Pause > 0 {
		rest := time.NewTimer(s.options.Pause)
		defer rest.Stop()
		select {
		case <-rest.C:
		case <-ctx.Done():
			return
		}
	}
	select {
	case s.checks <- struct{}{}:
		defer func() { <-s.checks }()
	case <-ctx.Done():
		return
	}
	var r *compile.Result
	err := s.guard("the check", func() (err error) {
		r, err = compile.Compile(ctx, read, p.root, compile.Options{Before: before})
		return err
	})
	if ctx.Err() != nil {
		return
	}
	if err != nil {
		s.log.Printf("%s: %s", p.root, err)
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if p.turn != turn {
		return
	}
	p.whole, p.fresh = r, true
	s.publish()
	if s.client.refresh {
		s.post(message{method: "workspace/inlayHint/refresh", request: true})
	}
}

// publish tells the editor the findings of every file of every plan, where they
// are others than before.
func (s *server) publish() {
	byFile := map[string][]Diagnostic{}
	for _, name := range s.files() {
		byFile[name] = []Diagnostic{}
	}
	said := map[string]bool{}
	for _, root := range s.work.order() {
		p := s.work.plans[root]
		if p.bound == nil {
			continue
		}
		snap := s.dress(&Snapshot{Files: p.bound.Files, Plan: p.bound.Plan})
		for _, d := range p.findings() {
			name := root
			if d.Span.Valid() {
				name = d.Span.File.Name
			}
			out := snap.diagnostic(d)
			key := fmt.Sprint(name, out.Range, out.Code, out.Message)
			if !said[key] {
				said[key] = true
				byFile[name] = append(byFile[name], out)
			}
		}
	}
	for name := range s.published {
		if _, ok := byFile[name]; !ok {
			byFile[name] = []Diagnostic{}
		}
	}
	for _, name := range sortedKeys(byFile) {
		s.publishFile(name, byFile[name])
	}
}

// files are those that are open or part of a plan.
func (s *server) files() []string {
	seen := map[string]bool{}
	for name := range s.work.docs {
		seen[name] = true
	}
	for _, p := range s.work.plans {
		if p.bound != nil {
			for _, f := range p.bound.Files {
				seen[f.Source.Name] = true
			}
		}
	}
	return sortedKeys(seen)
}

func (s *server) publishFile(name string, list []Diagnostic) {
	params := publishParams{URI: uriOf(name), Diagnostics: list}
	d := s.work.docs[name]
	if d != nil {
		params.URI, params.Version = d.uri, &d.version
	}
	text, err := json.Marshal(params)
	before, told := s.published[name]
	if err != nil || string(text) == before {
		return
	}
	if d == nil && len(list) == 0 {
		delete(s.published, name)
		if !told {
			return // a file that is not open and has nothing is not spoken of
		}
	} else {
		s.published[name] = string(text)
	}
	s.post(message{method: "textDocument/publishDiagnostics", params: params})
}

// diagnostic is a finding as the editor shows it.
func (s *Snapshot) diagnostic(d diag.Diagnostic) Diagnostic {
	out := Diagnostic{
		Range: s.location(d.Span).Range, Severity: severities[d.Severity], Code: string(d.Code), Source: "longhand", Message: d.Message,
	}
	for _, n := range d.Notes {
		out.Message += "\n" + n
	}
	for _, r := range d.Related {
		if !r.Span.Valid() {
			continue
		}
		if s.Related {
			out.Related = append(out.Related, RelatedDiagnostic{s.location(r.Span), r.Message})
		} else {
			at := r.Span.StartPos()
			out.Message += fmt.Sprintf("\nline %d: %s", at.Line, r.Message)
		}
	}
	for _, f := range d.Fixes {
		if out.Data == nil {
			out.Data = &diagnosticData{}
		}
		out.Data.Fixes = append(out.Data.Fixes, fixData{f.Title, s.workspaceEdit(f.Edits)})
	}
	return out
}

var severities = map[diag.Severity]int{diag.Error: 1, diag.Warning: 2, diag.Note: 3}
