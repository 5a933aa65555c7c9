package compare

import (
	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Section is a part of the report.
type Section string

// The sections, in the order of the report.
const (
	Take     Section = "take"
	Set      Section = "set"
	Marks    Section = "marks"
	Kit      Section = "kit"
	People   Section = "people"
	Look     Section = "look"
	Beats    Section = "beats"  // new, gone, renamed, told to begin otherwise, in another order
	Lines    Section = "lines"  // what is told to somebody
	Ways     Section = "ways"   // how far somebody goes, and how fast
	Timing   Section = "timing" // when beats and lines happen, and how long they take
	Pickups  Section = "pickups"
	Remarks  Section = "notes" // notes, and what the plan accepts
	Findings Section = "findings"
)

// Sections lists the sections in the order of the report.
func Sections() []Section {
	return []Section{Take, Set, Marks, Kit, People, Look, Beats, Lines, Ways, Timing, Pickups, Remarks, Findings}
}

// Kind is what became of a thing.
type Kind string

// What may become of a thing.
const (
	Added   Kind = "added"
	Removed Kind = "removed"
	Changed Kind = "changed"
	Renamed Kind = "renamed" // all else equal
	Moved   Kind = "moved"   // a mark, by metres; a line or beat, to another place in the text
)

// Field is a property that differs. Old or New is "" where it is not given.
type Field struct {
	Name     string
	Old, New string
}

// Change is one difference.
type Change struct {
	Section Section
	Kind    Kind
	What    string // "mark", "wall", "line", "beat", "finding"...
	Name    string // in the newer plan, or in the older one where it is removed
	Was     string // its name or wording in the older plan, where that differs
	Beat    string // title of the beat or pickup it is in; "" where it is in none
	Fields  []Field
	// Distance is how far a mark moved, or how much longer a way is; Later and
	// Longer are how much later something begins and how much longer it takes.
	// Each is 0 where it does not apply.
	Distance      units.Metres
	Later, Longer units.Seconds
	From, To      *geom.Vec // of a mark that moved, or is removed (From) or added (To)
	Code          diag.Code // of a finding
	Severity      diag.Severity
	Departments   []departments.Name // whom it concerns, in the order of Departments; never empty

	order int // within its section
}

// Report is all that differs between two plans.
type Report struct {
	Old, New *compile.Result
	// OldName and NewName say where the plans are from; the names of their files
	// unless set.
	OldName, NewName string
	Changes          []Change // by section; within one, in the order of the newer text
	// System is the units that lengths are told in.
	System units.System

	only   departments.Name          // "" for the whole report
	things map[plan.Thing]plan.Thing // of the older plan to those of the newer
}

// Empty reports whether the plans mean the same.
func (r *Report) Empty() bool { return len(r.Changes) == 0 }

// In is the changes of a section.
func (r *Report) In(s Section) []Change {
	var out []Change
	for _, c := range r.Changes {
		if c.Section == s {
			out = append(out, c)
		}
	}
	return out
}

// For is the report with what concerns one department only.
func (r *Report) For(d departments.Name) *Report {
	out := *r
	out.Changes, out.only = nil, d
	for _, c := range r.Changes {
		if c.Concerns(d) {
			out.Changes = append(out.Changes, c)
		}
	}
	return &out
}

// Concerns reports whether a department has to know of it.
func (c *Change) Concerns(d departments.Name) bool {
	for _, x := range c.Departments {
		if x == d {
			return true
		}
	}
	return false
}

// Newer is the thing of the newer plan that a thing of the older one became; nil
// where it is gone.
func (r *Report) Newer(old plan.Thing) plan.Thing { return r.things[old] }
