package scene

import (
	"fmt"
	"strings"
)

// Smallest is the smallest text that reads at arm's length, in points.
const Smallest = 7.0

// Problem is something that would make the sheet hard or impossible to read.
type Problem struct {
	Where string // the id of the innermost group that has one, or ""
	What  string
}

func (p Problem) String() string {
	if p.Where == "" {
		return p.What
	}
	return p.Where + ": " + p.What
}

// Check looks for what a drawing must never have: text that is too small, runs
// off the sheet or has characters its face lacks, ids used twice, classes
// without a rule or with a name no output takes, coordinates that are no
// numbers. An empty result is what drawings are tested for.
func (s *Sheet) Check() []Problem {
	c := checker{sheet: s, ids: map[string]bool{}, rules: map[string]bool{}}
	for _, r := range s.Styles {
		c.rules[r.Class] = true
		if !ValidClass(r.Class) {
			c.report("", "class name %q is not letters, digits, - and _", r.Class)
		}
	}
	if s.Title == "" {
		c.report("", "the sheet has no title")
	}
	c.items("", s.Items)
	return c.found
}

type checker struct {
	sheet *Sheet
	ids   map[string]bool
	rules map[string]bool
	found []Problem
}

func (c *checker) report(where, format string, args ...any) {
	c.found = append(c.found, Problem{where, fmt.Sprintf(format, args...)})
}

func (c *checker) items(where string, items []Item) {
	for _, it := range items {
		switch v := it.(type) {
		case *Group:
			c.group(where, v)
		case *Text:
			c.classes(where, v.Class)
			c.text(where, v)
		case nil:
			c.report(where, "an item is nil")
		default:
			c.path(where, Outline(it))
		}
	}
}

func (c *checker) group(where string, g *Group) {
	if g.ID != "" {
		where = g.ID
		if c.ids[g.ID] {
			c.report(where, "the id is used twice")
		}
		c.ids[g.ID] = true
		if strings.ContainsAny(g.ID, " \t\n\"'<>&#") {
			c.report(where, "the id has characters that ids cannot have")
		}
		if g.Title == "" {
			c.report(where, "the group has an id but no title to read aloud")
		}
	}
	c.classes(where, g.Class)
	c.items(where, g.Items)
}

func (c *checker) classes(where, list string) {
	for class := range strings.FieldsSeq(list) {
		if !c.rules[class] {
			c.report(where, "class %q has no rule", class)
			c.rules[class] = true // once is enough
		}
	}
}

func (c *checker) path(where string, p *Path) {
	if p == nil {
		return
	}
	c.classes(where, p.Class)
	for _, cmd := range p.Cmds {
		if !cmd.At.finite() || !cmd.C1.finite() || !cmd.C2.finite() {
			c.report(where, "a shape of class %q has a coordinate that is no number", p.Class)
			return
		}
	}
}

func (c *checker) text(where string, t *Text) {
	if !t.At.finite() || !finite(t.Size) || !finite(t.Turn) {
		c.report(where, "text %q is at no place", t.Text)
		return
	}
	if t.Size < Smallest-1e-9 {
		c.report(where, "text %q is %s pt, below %s pt", t.Text, Number(t.Size), Number(Smallest))
	}
	if b := t.Box(); !c.sheet.Box().Grow(1e-6).Contains(b) {
		c.report(where, "text %q runs off the sheet: %s,%s to %s,%s mm", t.Text,
			Number(b.Min.X), Number(b.Min.Y), Number(b.Max.X), Number(b.Max.Y))
	}
	if missing := t.Face.Missing(t.Clean()); len(missing) > 0 {
		c.report(where, "text %q has characters the %s face lacks: %s", t.Text, t.Face, string(missing))
	}
}

// Texts lists every text of the sheet in painting order.
func (s *Sheet) Texts() []*Text {
	var out []*Text
	var visit func([]Item)
	visit = func(items []Item) {
		for _, it := range items {
			switch v := it.(type) {
			case *Group:
				visit(v.Items)
			case *Text:
				out = append(out, v)
			}
		}
	}
	visit(s.Items)
	return out
}
