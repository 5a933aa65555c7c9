package lsp

import (
	"fmt"
	"slices"

	"longhand/lang/bind"
	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// planState is a plan that is kept up to date.
type planState struct {
	root   string
	needs  map[string]bool // files it uses, there or not
	bound  *compile.Result // of the texts as they are, as far as names
	whole  *compile.Result // the last that everything was computed for
	fresh  bool            // whole is of the texts as they are
	cancel func()          // gives up the check that runs
	names  func() *names   // of bound, found once
	turn   int             // counts its changes
}

// workspace is what is open and the plans that it belongs to. The server locks
// it.
type workspace struct {
	disk    *disk
	folders []string
	docs    map[string]*document
	plans   map[string]*planState
	found   []string // .take files in the folders
	looked  bool
}

func newWorkspace() *workspace {
	return &workspace{disk: newDisk(), docs: map[string]*document{}, plans: map[string]*planState{}}
}

// open keeps a document, in place of an older one.
func (w *workspace) open(uri string, version int, text string) *document {
	name := nameOf(uri)
	d := &document{uri: uri, name: name, version: version, src: source.NewFile(name, text), skimmed: skim(text)}
	w.docs[name] = d
	return d
}

// read is a reader of the texts as they are now: what is open wins over files.
func (w *workspace) read() compile.Read {
	texts := make(map[string]string, len(w.docs))
	for name, d := range w.docs {
		texts[name] = d.src.Text
	}
	files := w.disk
	return func(name string) (string, error) {
		if text, ok := texts[name]; ok {
			return text, nil
		}
		if isURI(name) {
			return "", fmt.Errorf("there is no document %s", name)
		}
		return files.read(name)
	}
}

// isURI reports whether a name is that of a document that is no file.
func isURI(name string) bool { return uriOf(name) == name }

// roots are the plans to keep: those open, those that use what is open, and open
// parts that no plan uses. Sorted.
func (w *workspace) roots() []string {
	var out []string
	var parts []*document
	used := map[string]bool{}
	for _, d := range w.docs {
		if !d.skimmed.plan {
			parts = append(parts, d)
			continue
		}
		out = append(out, d.name)
		for name := range w.uses(d.name) {
			used[name] = true
		}
	}
	for _, d := range parts {
		if used[d.name] {
			continue
		}
		users := w.usersOf(d.name)
		if len(users) == 0 {
			users = []string{d.name}
		}
		out = append(out, users...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// usersOf are the plans of the folders that use a file.
func (w *workspace) usersOf(name string) []string {
	var out []string
	for _, f := range w.inFolders() {
		if f != name && w.isPlan(f) && w.uses(f)[name] {
			out = append(out, f)
		}
	}
	return out
}

// inFolders lists the .take files of the folders; they are looked for once.
func (w *workspace) inFolders() []string {
	if !w.looked {
		w.found, w.looked = plansIn(w.folders), true
	}
	return w.found
}

// others reads the files of every plan there is, open or in the folders, but
// one, when it is asked to.
func (w *workspace) others(but string) func() [][]*syntax.File {
	read, roots := w.read(), append(w.order(), w.inFolders()...)
	return func() [][]*syntax.File {
		var out [][]*syntax.File
		done := map[string]bool{but: true}
		for _, root := range roots {
			if done[root] {
				continue
			}
			done[root] = true
			if files, _ := bind.Load(read, root); len(files) > 0 && skim(files[0].Source.Text).plan {
				out = append(out, files)
			}
		}
		return out
	}
}

func (w *workspace) isPlan(name string) bool { return w.skim(name).plan }

// skim looks at a file as it is open, or as it is on disk; one that is nowhere
// has nothing in it.
func (w *workspace) skim(name string) skimmed {
	if d := w.docs[name]; d != nil {
		return d.skimmed
	}
	if isURI(name) {
		return skimmed{}
	}
	text, err := w.disk.read(name)
	if err != nil {
		return skimmed{}
	}
	return skim(text)
}

// uses is all files a plan uses, drawings and those that its parts use, too, and
// those that are not there; itself included.
func (w *workspace) uses(name string) map[string]bool {
	seen := map[string]bool{}
	w.follow(name, seen)
	return seen
}

func (w *workspace) follow(name string, seen map[string]bool) {
	if seen[name] {
		return
	}
	seen[name] = true
	s := w.skim(name)
	for _, d := range s.drawings {
		seen[bind.Resolve(name, d)] = true
	}
	for _, u := range s.uses {
		w.follow(bind.Resolve(name, u), seen)
	}
}

// planOf is the plan a document is looked at in; nil if there is none.
func (w *workspace) planOf(name string) *planState {
	if p := w.plans[name]; p != nil && p.has(name) {
		return p
	}
	for _, root := range w.order() {
		if p := w.plans[root]; p.has(name) {
			return p
		}
	}
	return nil
}

// order is the plans' names, sorted.
func (w *workspace) order() []string {
	out := make([]string, 0, len(w.plans))
	for root := range w.plans {
		out = append(out, root)
	}
	slices.Sort(out)
	return out
}

// has reports whether a file is one of the plan's.
func (p *planState) has(name string) bool {
	if p.bound == nil {
		return false
	}
	return slices.ContainsFunc(p.bound.Files, func(f *syntax.File) bool { return f.Source.Name == name })
}

// snapshot is a document as it is now; nil if it is not open.
func (w *workspace) snapshot(name string) *Snapshot {
	d, p := w.docs[name], w.planOf(name)
	if d == nil || p == nil {
		return nil
	}
	s := &Snapshot{Files: p.bound.Files, Plan: p.bound.Plan, Findings: p.findings(), names: p.names}
	if p.whole != nil && p.whole.Tracks != nil {
		s.Whole = p.whole
	}
	for _, f := range s.Files {
		if f.Source.Name == name {
			s.File = f
		}
	}
	s.others = w.others(p.root)
	uris, versions := map[string]string{}, map[string]int{}
	for n, d := range w.docs {
		uris[n], versions[n] = d.uri, d.version
	}
	s.uri = func(n string) string {
		if u, ok := uris[n]; ok {
			return u
		}
		return uriOf(n)
	}
	s.version = func(n string) *int {
		if v, ok := versions[n]; ok {
			return &v
		}
		return nil
	}
	return s
}

// findings are those about the texts as they are.
func (p *planState) findings() []diag.Diagnostic {
	switch {
	case p.bound == nil:
		return nil
	case p.bound.Stopped || p.whole == nil:
		return p.bound.Findings
	case p.fresh:
		return p.whole.Findings
	}
	var bag diag.Bag
	for _, d := range p.bound.Findings {
		bag.Add(d)
	}
	moved := shiftsBetween(p.whole, p.bound.Files)
	for _, d := range p.whole.Findings {
		if ofText[d.Code] {
			continue
		}
		if d, ok := moved.finding(d); ok {
			bag.Add(d)
		}
	}
	return bag.Sorted()
}

// ofText are the codes of what is wrong with the text alone.
var ofText = func() map[diag.Code]bool {
	m := map[diag.Code]bool{}
	for _, e := range bind.Codes {
		m[e.Code] = true
	}
	return m
}()
