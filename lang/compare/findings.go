package compare

import (
	"regexp"
	"strconv"
	"strings"

	"longhand/lang/departments"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
)

// found is a finding as it is compared.
type found struct {
	d       *diag.Diagnostic
	anchor  string // the statement it is about, as both plans call it
	message string // with names as the newer plan has them and without clock times
	bare    string // and without any number
	subject string
	camera  string
	who     []departments.Name
}

var (
	clockTime = regexp.MustCompile(`\d+:\d\d(\.\d)?( to |–)?|\(?frames? \d+((–|-| to )\d+)?\)?`)
	digits    = regexp.MustCompile(`-?\d+(\.\d+)?`)
	wordLike  = regexp.MustCompile(`[\pL][\pL\pN-]*`)
)

// findings tells which findings are new, which are gone and which say something
// else than they did. That one is said of another time of the clock, because
// what comes before it got longer, is no difference.
func (c *comparing) findings() {
	was, is := c.foundIn(c.old.Findings, c.old.Plan, true), c.foundIn(c.new.Findings, c.new.Plan, false)
	of := func(f found) string { return string(f.d.Code) + "\x00" + strconv.Itoa(int(f.d.Severity)) + "\x00" }
	keys := []func(f found) string{
		func(f found) string { return of(f) + f.anchor + "\x00" + f.message },
		func(f found) string { return of(f) + f.message },
		func(f found) string { return string(f.d.Code) + "\x00" + f.anchor + "\x00" + f.bare },
		func(f found) string {
			return string(f.d.Code) + "\x00" + f.anchor + "\x00" + f.subject + "\x00" + f.camera
		},
	}
	pair := map[int]int{} // of the newer to the older
	used := map[int]bool{}
	exact := map[int]bool{}
	for k, key := range keys {
		left := map[string][]int{}
		for i, f := range was {
			if !used[i] {
				left[key(f)] = append(left[key(f)], i)
			}
		}
		for j, f := range is {
			if _, ok := pair[j]; ok {
				continue
			}
			if list := left[key(f)]; len(list) > 0 {
				pair[j] = list[0]
				used[list[0]] = true
				left[key(f)] = list[1:]
				exact[j] = k < 2
			}
		}
	}
	for j, f := range is {
		ch := Change{Section: Findings, Kind: Added, What: "finding", Name: f.d.Message, Beat: f.d.Beat, Code: f.d.Code, Severity: f.d.Severity, Departments: f.who, order: 2 + j}
		if i, ok := pair[j]; ok {
			o := was[i].d
			if exact[j] || o.Severity == f.d.Severity && was[i].message == f.message {
				continue
			}
			ch.Kind, ch.Was = Changed, o.Message
			if o.Severity != f.d.Severity {
				ch.Fields = []Field{{"severity", o.Severity.String(), f.d.Severity.String()}}
			}
		}
		c.add(ch)
	}
	for i, f := range was {
		if !used[i] {
			c.add(Change{Section: Findings, Kind: Removed, What: "finding", Name: f.d.Message, Beat: f.d.Beat, Code: f.d.Code, Severity: f.d.Severity, Departments: f.who, order: -1<<20 + i})
		}
	}
}

// now is a name of the older plan as the newer one has it.
func (c *comparing) now(name string) string {
	for _, t := range c.old.Plan.Things() {
		if t.ID().Name == name {
			return c.from.name(t)
		}
	}
	return name
}

func (c *comparing) foundIn(list []diag.Diagnostic, p *plan.Plan, older bool) []found {
	renamed, titles := map[string]string{}, []string{}
	if older {
		for _, t := range p.Things() {
			if n := c.from.name(t); t.ID().Name != n {
				renamed[t.ID().Name] = n
			}
		}
		for _, o := range c.was {
			if n := c.scopes[o]; n != nil && o.title != n.title {
				titles = append(titles, `"`+o.title+`"`, `"`+n.title+`"`)
			}
		}
	}
	title := strings.NewReplacer(titles...)
	var out []found
	for i := range list {
		d := &list[i]
		f := found{d: d, message: d.Message, subject: d.Subject, camera: d.Camera}
		if older {
			f.subject, f.camera = c.now(d.Subject), c.now(d.Camera)
			f.message = wordLike.ReplaceAllStringFunc(title.Replace(f.message), func(w string) string {
				if n, ok := renamed[w]; ok {
					return n
				}
				return w
			})
		}
		f.message = clockTime.ReplaceAllString(f.message, "@")
		f.bare = digits.ReplaceAllString(f.message, "#")
		f.anchor, f.who = c.anchor(d.Span, p, older)
		out = append(out, f)
	}
	return out
}

// anchor is the statement a span is of, as both plans call it, and whom that
// concerns.
func (c *comparing) anchor(s source.Span, p *plan.Plan, older bool) (string, []departments.Name) {
	within := func(o source.Span) bool {
		return o.Valid() && s.Valid() && o.File == s.File && o.Start <= s.Start && s.Start < o.End
	}
	lines := append([]*plan.Action(nil), p.Actions...)
	for _, u := range p.Pickups {
		lines = append(lines, u.Actions...)
	}
	for _, a := range lines {
		if !within(a.Span) {
			continue
		}
		who := a.Concerns()
		if older {
			n := c.lines[a]
			if n == nil {
				return "a line that is gone", who
			}
			a = n
		}
		home := "beat"
		if a.Pickup != nil {
			home = "pickup " + strconv.Itoa(a.Pickup.Index)
		}
		return home + " line " + strconv.Itoa(a.Index), who
	}
	for _, t := range p.Things() {
		if within(t.ID().Decl) {
			n := t.ID().Name
			if older {
				n = c.from.name(t)
			}
			return string(t.Kind()) + " " + n, ofThing(t)
		}
	}
	for _, b := range p.Beats {
		if within(b.Span) {
			t := c.to
			if older {
				t = c.from
			}
			return "beat " + t.beat(b), concern(departments.Camera, departments.Ads, departments.Script)
		}
	}
	return "", departments.All()
}
