package lsp

import (
	"cmp"
	"reflect"
	"slices"

	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// space keeps names apart that may be spelled alike: things share one, cues have
// theirs, and so have the titles of beats and pickups.
type space int

const (
	ofThings space = iota
	ofCues
	ofTitles
)

// mention is a place where a name stands.
type mention struct {
	name  string
	space space
	at    source.Span // of the name; of a title without its quotes
	line  *syntax.Line
	decl  bool
}

// names is every mention of every name of some files.
type names struct {
	all   []mention // in the order of the files and of the text
	decls map[key]*mention
	kinds map[string]plan.Kind // of the things that are declared
}

type key struct {
	space space
	name  string
}

// namesOf collects the names of files: from the statements where lines could be
// read, from their words where they could not.
func namesOf(files []*syntax.File) *names {
	n := &names{decls: map[key]*mention{}, kinds: map[string]plan.Kind{}}
	for _, f := range files {
		for _, line := range f.Lines {
			c := collector{file: f.Source, line: line, seen: map[int]bool{}}
			if line.Stmt != nil {
				c.statement()
			}
			n.all = append(n.all, c.found...)
		}
	}
	for i := range n.all {
		n.declare(&n.all[i])
	}
	n.unread(files)
	return n
}

func (n *names) declare(m *mention) {
	k := key{m.space, m.name}
	if !m.decl || n.decls[k] != nil {
		return
	}
	kept := *m
	n.decls[k] = &kept
	if m.space == ofThings {
		n.kinds[m.name] = plan.Kind(m.line.Kind.Words[0])
	}
}

// unread adds the names in lines that could not be read: those they would have
// declared, and words that are names of things.
func (n *names) unread(files []*syntax.File) {
	for _, f := range files {
		for _, line := range f.Lines {
			if line.Stmt != nil || line.Kind == nil {
				continue
			}
			words := line.Words()
			if len(words) < 2 || !declares(line.Kind) || !syntax.IsNameToken(words[1]) {
				continue
			}
			n.add(mention{name: words[1].Value, at: wordSpan(f.Source, words[1]), line: line, decl: true})
		}
	}
	for _, f := range files {
		for _, line := range f.Lines {
			if line.Stmt != nil {
				continue
			}
			for i, w := range line.Words() {
				isClass := i > 1 && line.Words()[0].Value == "rig"
				if _, known := n.kinds[w.Value]; !known || !syntax.IsNameToken(w) || isClass {
					continue
				}
				m := mention{name: w.Value, at: wordSpan(f.Source, w), line: line}
				if !slices.ContainsFunc(n.all, func(o mention) bool { return o.at == m.at }) {
					n.add(m)
				}
			}
		}
	}
	order := map[*source.File]int{}
	for i, f := range files {
		order[f.Source] = i
	}
	slices.SortStableFunc(n.all, func(a, b mention) int {
		return cmp.Or(order[a.at.File]-order[b.at.File], a.at.Start-b.at.Start)
	})
}

func (n *names) add(m mention) {
	n.all = append(n.all, m)
	n.declare(&m)
}

// declares reports whether a kind of statement gives a thing its name.
func declares(k *syntax.Kind) bool {
	switch k.Section {
	case "set", "kit", "people":
		return !k.Head && !k.Verb && k.Words[0] != "place" && k.Words[0] != "plan"
	}
	return false
}

func wordSpan(f *source.File, t syntax.Token) source.Span {
	return source.Span{File: f, Start: t.Pos.Offset, End: t.Pos.Offset + len(t.Value)}
}

// at is the mention that a place in a file touches.
func (n *names) at(file string, offset int) *mention {
	var best *mention
	for i := range n.all {
		m := &n.all[i]
		if m.at.File.Name == file && m.at.Start <= offset && offset <= m.at.End {
			if best == nil || m.at.Start == offset {
				best = m
			}
		}
	}
	return best
}

// same are all mentions of a name.
func (n *names) same(k key) []mention {
	var out []mention
	for _, o := range n.all {
		if o.name == k.name && o.space == k.space {
			out = append(out, o)
		}
	}
	return out
}

// collector gathers the names of one statement.
type collector struct {
	file  *source.File
	line  *syntax.Line
	found []mention
	seen  map[int]bool
	decl  *syntax.Name
}

func (c *collector) statement() {
	c.decl = syntax.Declared(c.line.Stmt)
	c.walk(reflect.ValueOf(c.line.Stmt), "", "")
	slices.SortFunc(c.found, func(a, b mention) int { return a.at.Start - b.at.Start })
}

var (
	nameType   = reflect.TypeFor[*syntax.Name]()
	stringType = reflect.TypeFor[*syntax.String]()
)

// walk visits the parts of a statement; owner and field say where one is kept.
func (c *collector) walk(v reflect.Value, owner, field string) {
	switch v.Kind() {
	case reflect.Interface:
		if !v.IsNil() {
			c.walk(v.Elem(), owner, field)
		}
	case reflect.Pointer:
		if v.IsNil() {
			return
		}
		switch v.Type() {
		case nameType:
			c.name(v.Interface().(*syntax.Name), owner, field)
		case stringType:
			c.title(v.Interface().(*syntax.String), owner, field)
		default:
			c.walk(v.Elem(), owner, field)
		}
	case reflect.Slice:
		for i := range v.Len() {
			c.walk(v.Index(i), owner, field)
		}
	case reflect.Struct:
		t := v.Type()
		for i := range t.NumField() {
			if f := t.Field(i); f.IsExported() && f.Name != "Node" {
				c.walk(v.Field(i), t.Name(), f.Name)
			}
		}
	}
}

// name files a name, unless it is one of the language's own words.
func (c *collector) name(n *syntax.Name, owner, field string) {
	m := mention{name: n.Text, at: n.Span(c.file), line: c.line}
	switch {
	case owner == "Window" || owner == "Colour" || owner == "Allow" && field == "Code",
		n.Text == "camera-left" || n.Text == "camera-right":
		return
	case owner == "Cue" && field == "Name":
		m.space, m.decl = ofCues, true
	case owner == "Event" && field == "Cue":
		m.space = ofCues
	default:
		m.decl = n == c.decl
	}
	c.keep(m)
}

// title files the title of a beat or a pickup.
func (c *collector) title(s *syntax.String, owner, field string) {
	m := mention{name: s.Value(), space: ofTitles, at: s.Span(c.file), line: c.line}
	switch {
	case (owner == "BeatHead" || owner == "PickupHead") && field == "Title":
		m.decl = true
	case field == "During", field == "Beat":
	default:
		return
	}
	m.at.Start++
	m.at.End--
	c.keep(m)
}

func (c *collector) keep(m mention) {
	if !c.seen[m.at.Start] {
		c.seen[m.at.Start] = true
		c.found = append(c.found, m)
	}
}
