package compare

import (
	"fmt"
	"math"
	"strings"

	"longhand/lang/units"
)

// Sentence says a change in a line: "M2 moves 1.2 m, from (6.6, 5.4) to (7.8, 5.4)".
func (r *Report) Sentence(c *Change) string {
	switch c.Section {
	case Timing:
		return timingSentence(c)
	case Ways:
		return r.waySentence(c)
	case Findings:
		return findingSentence(c)
	}
	name := c.Name
	if c.What != "line" && c.What != "take" && c.What != "rule" {
		name = c.What + " " + c.titled()
	}
	switch c.Kind {
	case Added:
		return name + " is new" + inBrackets(c.Fields, false)
	case Removed:
		return name + " is gone" + inBrackets(c.Fields, true)
	case Renamed:
		return fmt.Sprintf("%s was called %s", name, c.quoted(c.Was))
	case Moved:
		if c.What == "mark" {
			s := fmt.Sprintf("%s moves %s", name, c.Distance.Text(r.System))
			if c.From != nil && c.To != nil {
				s += ", from " + point(*c.From, r.System).show + " to " + point(*c.To, r.System).show
			}
			if rest := c.Fields[1:]; len(rest) > 0 { // the first is its place
				s += "; " + list(rest)
			}
			return s
		}
		f := c.Fields[0]
		if f.Old == "" && f.New == "" {
			return name + " has another " + f.Name
		}
		return fmt.Sprintf("%s moves from %s to %s", name, f.Old, f.New)
	}
	if c.What == "take" || c.What == "rule" {
		return list(c.Fields)
	}
	s := name + ": " + list(c.Fields)
	if c.Was != "" {
		s += " (was: " + c.Was + ")"
	}
	return s
}

// titled is the name as it is written: titles in quotes.
func (c *Change) titled() string { return c.quoted(c.Name) }

func (c *Change) quoted(name string) string {
	switch c.What {
	case "beat", "pickup", "set", "drawing", "take":
		return `"` + name + `"`
	}
	if strings.HasPrefix(c.What, "note") {
		return `"` + name + `"`
	}
	return name
}

func list(fields []Field) string {
	var out []string
	for _, f := range fields {
		old, new := f.Old, f.New
		switch {
		case old == "":
			out = append(out, fmt.Sprintf("%s %s, was not given", f.Name, new))
		case new == "":
			out = append(out, fmt.Sprintf("%s not given, was %s", f.Name, old))
		default:
			out = append(out, fmt.Sprintf("%s %s, was %s", f.Name, new, old))
		}
	}
	return strings.Join(out, "; ")
}

func inBrackets(fields []Field, older bool) string {
	var out []string
	for _, f := range fields {
		v := f.New
		if older {
			v = f.Old
		}
		switch {
		case v == "yes":
			out = append(out, f.Name)
		case v != "":
			out = append(out, f.Name+" "+v)
		}
	}
	if len(out) == 0 {
		return ""
	}
	return " (" + strings.Join(out, ", ") + ")"
}

func timingSentence(c *Change) string {
	name := c.Name
	if c.What != "line" {
		name = c.What + ` "` + c.Name + `"`
	}
	var out []string
	for _, f := range c.Fields {
		by, more, less := c.Longer, "longer", "shorter"
		verb := "takes"
		if strings.HasPrefix(f.Name, "begins") {
			by, more, less = c.Later, "later", "sooner"
			verb = "begins"
		}
		if by < 0 {
			more = less
		}
		in := ""
		if f.Name == "begins into the beat" {
			in = " into the beat"
		}
		out = append(out, fmt.Sprintf("%s %s %s (%s, was %s)", verb, units.Seconds(math.Abs(float64(by))), more+in, f.New, f.Old))
	}
	return name + " " + strings.Join(out, " and ")
}

func (r *Report) waySentence(c *Change) string {
	var out []string
	for _, f := range c.Fields {
		if f.Name == "length" {
			word := "further"
			if c.Distance < 0 {
				word = "less far"
			}
			by := units.Metres(math.Abs(float64(c.Distance)))
			out = append(out, fmt.Sprintf("%s %s (%s, was %s)", by.Text(r.System), word, f.New, f.Old))
			continue
		}
		out = append(out, fmt.Sprintf("%s %s, was %s", f.Name, f.New, f.Old))
	}
	return c.Name + ": " + strings.Join(out, "; ")
}

func findingSentence(c *Change) string {
	s := fmt.Sprintf("%s %s: %s", c.Severity, c.Code, c.Name)
	switch c.Kind {
	case Added:
		return "new " + s
	case Removed:
		return "gone: " + s
	}
	if f := c.Fields; len(f) > 0 {
		return fmt.Sprintf("%s, was %s %s: %s", s, f[0].Old, c.Code, c.Was)
	}
	return fmt.Sprintf("%s; it was: %s", s, c.Was)
}
