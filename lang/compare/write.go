package compare

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"longhand/lang/departments"
	"longhand/lang/geom"
	"longhand/lang/units"
)

// Summary says in a line how much differs.
func (r *Report) Summary() string {
	whom := ""
	if r.only != "" {
		whom = " for " + string(r.only)
	}
	if r.Empty() {
		return "the plans mean the same" + whom
	}
	added, gone := 0, 0
	others := 0
	for _, c := range r.Changes {
		switch {
		case c.Section != Findings:
			others++
		case c.Kind == Added:
			added++
		case c.Kind == Removed:
			gone++
		}
	}
	return fmt.Sprintf("%s%s, %s new, %s gone", count(others, "change"), whom, count(added, "finding"), count(gone, "finding"))
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// concerns is how much each department has to know of.
func (r *Report) concerns() string {
	var out []string
	for _, d := range departments.All() {
		if n := len(r.For(d).Changes); n > 0 {
			out = append(out, fmt.Sprintf("%s %d", d, n))
		}
	}
	return strings.Join(out, ", ")
}

// WriteText writes the report for a terminal.
func (r *Report) WriteText(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n", r.New.Plan.Take.Title, r.Summary())
	for _, s := range Sections() {
		changes := r.In(s)
		if len(changes) == 0 {
			continue
		}
		fmt.Fprintf(&b, "\n%s\n", s)
		beat := ""
		for i := range changes {
			c := &changes[i]
			indent := "  "
			if home := c.home(); home != "" {
				if home != beat {
					fmt.Fprintf(&b, "  %q\n", home)
				}
				indent = "    "
			}
			beat = c.home()
			fmt.Fprintf(&b, "%s%s\n", indent, r.Sentence(c))
		}
	}
	if !r.Empty() && r.only == "" {
		fmt.Fprintf(&b, "\nwhom it concerns: %s\n", r.concerns())
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// home is the beat a change is listed under; findings say theirs themselves.
func (c *Change) home() string {
	if c.Section == Findings {
		return ""
	}
	return c.Beat
}

// WriteMarkdown writes the report to be pasted into a merge request.
func (r *Report) WriteMarkdown(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "### %s: %s\n", marked(r.New.Plan.Take.Title), r.Summary())
	// What is new of what is wrong is what a reviewer looks for first.
	order := []Section{Findings}
	for _, s := range Sections() {
		if s != Findings {
			order = append(order, s)
		}
	}
	for _, s := range order {
		if changes := r.In(s); len(changes) > 0 {
			fmt.Fprintf(&b, "\n#### %s\n\n", heading(string(s)))
			r.bullets(&b, changes)
		}
	}
	for _, d := range departments.All() {
		changes := r.For(d).Changes
		if len(changes) == 0 || r.only != "" {
			continue
		}
		fmt.Fprintf(&b, "\n<details><summary>For %s: %d</summary>\n\n", d, len(changes))
		r.bullets(&b, changes)
		b.WriteString("\n</details>\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (r *Report) bullets(b *strings.Builder, changes []Change) {
	for i := range changes {
		c := &changes[i]
		in := ""
		if home := c.home(); home != "" {
			in = " *(" + marked(home) + ")*"
		}
		fmt.Fprintf(b, "- %s%s\n", marked(r.Sentence(c)), in)
	}
}

func heading(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// marked escapes what Markdown would take for its own.
func marked(s string) string {
	return strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", ">", "&gt;", "&", "&amp;", "[", `\[`, "]", `\]`, "|", `\|`, "#", `\#`, "\n", " ", "@", "&#64;").Replace(s)
}

type (
	jsonReport struct {
		Schema      int            `json:"schema"`
		Take        string         `json:"take"`
		Old         string         `json:"old"`
		New         string         `json:"new"`
		Same        bool           `json:"same"`
		Changes     []jsonChange   `json:"changes"`
		Departments map[string]int `json:"departments"`
	}
	jsonChange struct {
		Section     Section            `json:"section"`
		Kind        Kind               `json:"kind"`
		What        string             `json:"what"`
		Name        string             `json:"name"`
		Was         string             `json:"was,omitempty"`
		Beat        string             `json:"beat,omitempty"`
		Fields      []jsonField        `json:"fields"`
		Distance    float64            `json:"distance_m,omitempty"`
		Later       float64            `json:"later_s,omitempty"`
		Longer      float64            `json:"longer_s,omitempty"`
		From        *[2]float64        `json:"from,omitempty"`
		To          *[2]float64        `json:"to,omitempty"`
		Code        string             `json:"code,omitempty"`
		Severity    string             `json:"severity,omitempty"`
		Departments []departments.Name `json:"departments"`
		Text        string             `json:"text"`
	}
	jsonField struct {
		Name string `json:"name"`
		Old  string `json:"old"`
		New  string `json:"new"`
	}
)

// WriteJSON writes the report for other programs: schema 1.
func (r *Report) WriteJSON(w io.Writer) error {
	out := jsonReport{Schema: 1, Take: r.New.Plan.Take.Title, Old: r.OldName, New: r.NewName, Same: r.Empty(), Changes: []jsonChange{}, Departments: map[string]int{}}
	for i := range r.Changes {
		c := &r.Changes[i]
		j := jsonChange{Section: c.Section, Kind: c.Kind, What: c.What, Name: c.Name, Was: c.Was, Beat: c.Beat, Fields: []jsonField{},
			Distance: units.Thousandth(float64(c.Distance)), Later: units.Thousandth(float64(c.Later)), Longer: units.Thousandth(float64(c.Longer)),
			From: pair(c.From), To: pair(c.To), Code: string(c.Code), Departments: c.Departments, Text: r.Sentence(c)}
		if c.Section == Findings {
			j.Severity = c.Severity.String()
		}
		for _, f := range c.Fields {
			j.Fields = append(j.Fields, jsonField(f))
		}
		out.Changes = append(out.Changes, j)
	}
	for _, d := range departments.All() {
		out.Departments[string(d)] = len(r.For(d).Changes)
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

func pair(p *geom.Vec) *[2]float64 {
	if p == nil {
		return nil
	}
	return &[2]float64{units.Thousandth(p.X), units.Thousandth(p.Y)}
}
