package lsp

import (
	"slices"
	"strings"

	"longhand/lang/departments"
	"longhand/lang/optics"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// value offers the values of a part that has a list of them.
func (c *completer) value(kind *syntax.Kind, t term) {
	switch t.want {
	case "SIZE":
		c.listed(syntax.Sizes, aboutSize)
	case "CLASS":
		c.listed(syntax.Classes, aboutClass)
	case "WINDOWNAME":
		c.listed(syntax.Windows, nil)
	case "DEPARTMENT":
		c.listed(departments.Noted(), nil)
	case "GAUGE":
		c.listed([]string{"35mm-4perf", "35mm-3perf", "16mm"}, nil)
	case "COLOUR":
		c.listed(c.colours(), nil)
	case "CODE":
		for _, e := range entries() {
			if ofText[e.Code] {
				continue // a mistake of the text is mended, not allowed
			}
			c.add(CompletionItem{Label: string(e.Code), Kind: itemConstant, Detail: e.Title, Documentation: markdown(strings.TrimSpace(e.Explain))}, string(e.Code))
		}
	case "T", "STOP":
		for _, stop := range c.stops() {
			c.add(CompletionItem{Label: stop, Kind: itemValue, Detail: "a stop"}, stop)
		}
	case "CUE":
		for _, k := range c.declared(ofCues) {
			c.add(CompletionItem{Label: k, Kind: itemEvent, Detail: "a cue"}, k)
		}
	case "BEAT":
		for _, k := range c.declared(ofTitles) {
			q := syntax.Quote(k)
			c.add(CompletionItem{Label: q, Kind: itemEvent, Detail: "a beat"}, q)
		}
	case "SAID":
		for _, line := range c.spoken() {
			c.add(CompletionItem{Label: line, Kind: itemEvent, Detail: "a line"}, line)
		}
	case "QUANTITY":
		c.units([]term{t}, nil)
	}
}

func (c *completer) listed(words []string, about func(string) string) {
	for _, w := range words {
		item := CompletionItem{Label: w, Kind: itemEnumMember}
		if about != nil {
			if text := about(w); text != "" {
				item.Documentation = markdown(text)
			}
		}
		c.add(item, w)
	}
}

// declared are the names of a space, in the order of the text.
func (c *completer) declared(sp space) []string {
	var out []string
	for _, m := range c.names().all {
		if m.space == sp && m.decl && m.line.Kind != nil && m.line.Kind.Words[0] != "pickup" {
			out = append(out, m.name)
		}
	}
	return out
}

// spoken are the lines said by the one whose line is waited for.
func (c *completer) spoken() []string {
	who := ""
	if n := len(c.before); n > 1 {
		who = c.before[n-2].Value
	}
	var out []string
	for _, f := range c.Files {
		for _, l := range f.Lines {
			if say, ok := l.Stmt.(*syntax.Say); ok && say.Who.Text == who {
				out = append(out, say.Line.Raw)
			}
		}
	}
	return out
}

// colours are those that the plan names, and usual ones.
func (c *completer) colours() []string {
	out := []string{"amber", "blue", "green", "grey", "red", "white"}
	for _, l := range c.Plan.Kit.Lamps {
		out = append(out, l.Colour)
	}
	slices.Sort(out)
	return slices.DeleteFunc(slices.Compact(out), func(s string) bool { return s == "" })
}

// usualStops is the smallest stop that is offered: few lenses close farther.
const usualStops units.Stop = 22

// stops are the full stops that the lens of the line has.
func (c *completer) stops() []string {
	low, high := units.Stop(0), units.Stop(100)
	for _, l := range c.Plan.Kit.Lenses {
		for _, w := range c.before {
			if w.Value == l.Name && l.Widest > 0 {
				low, high = l.Widest, l.Closest
			}
		}
	}
	var out []string
	for _, t := range optics.FullStops() {
		if low <= t && t <= high && t <= usualStops {
			out = append(out, t.String())
		}
	}
	return out
}

// units offers the units of what a number may measure: after the number that is
// being written, or after one that is complete.
func (c *completer) units(next []term, number *syntax.Token) {
	digits := ""
	if number != nil {
		digits = strings.TrimRight(c.typed[:numberLength(c.typed)], " ")
	}
	for _, t := range next {
		if t.want != "QUANTITY" {
			continue
		}
		for _, u := range units.Table {
			if u.Dimension != t.dim || u.Same != "" {
				continue
			}
			item := CompletionItem{Label: u.Text, Kind: itemUnit, Detail: t.dim.String() + ": " + t.dim.Example()}
			switch {
			case number != nil:
				item.Label = digits + " " + u.Text
				c.add(item, item.Label)
			case len(c.before) > 0 && c.before[len(c.before)-1].Type == syntax.TokNumber:
				c.add(item, u.Text)
			}
		}
	}
}

// numberLength is how much of a text is digits and what goes with them.
func numberLength(s string) int {
	n := 0
	for n < len(s) && strings.IndexByte("+-.0123456789", s[n]) >= 0 {
		n++
	}
	return n
}
