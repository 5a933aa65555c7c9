package compare

import (
	"sort"

	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Compare tells what the newer plan changes of the older one. Both have to be
// compiled without mistakes in their text; what was not computed (sight, with
// compile.Options.UpTo) is not compared.
func Compare(old, new *compile.Result) *Report {
	c := &comparing{
		old: old, new: new,
		report: &Report{Old: old, New: new, things: map[plan.Thing]plan.Thing{}, System: new.Plan.Take.Units},
		lines:  map[*plan.Action]*plan.Action{},
		scopes: map[*scope]*scope{},
	}
	c.report.OldName, c.report.NewName = mainFile(old), mainFile(new)
	if old.Plan.Take.Units != new.Plan.Take.Units {
		c.report.System = units.Metric
	}
	c.from, c.to = c.teller(), c.teller()
	c.things()
	c.placed()
	c.beats()
	c.settings()
	c.ways()
	c.timing()
	c.remarks()
	c.findings()
	c.arrange()
	return c.report
}

func mainFile(r *compile.Result) string {
	if len(r.Files) == 0 {
		return ""
	}
	return r.Files[0].Source.Name
}

// comparing is a comparison on its way.
type comparing struct {
	old, new *compile.Result
	report   *Report
	from, to *teller
	lines    map[*plan.Action]*plan.Action // of the older plan to those of the newer
	scopes   map[*scope]*scope
	was, is  []*scope // beats and pickups of both
}

func (c *comparing) teller() *teller {
	return &teller{names: map[plan.Thing]string{}, beats: map[*plan.Beat]string{}, sys: c.report.System}
}

func (c *comparing) add(ch Change) { c.report.Changes = append(c.report.Changes, ch) }

// arrange puts the changes in the order of the sections.
func (c *comparing) arrange() {
	at := map[Section]int{}
	for i, s := range Sections() {
		at[s] = i
	}
	list := c.report.Changes
	sort.SliceStable(list, func(i, j int) bool {
		if list[i].Section != list[j].Section {
			return at[list[i].Section] < at[list[j].Section]
		}
		return list[i].order < list[j].order
	})
	for i := range list {
		if len(list[i].Departments) == 0 {
			list[i].Departments = departments.All()
		}
	}
}
