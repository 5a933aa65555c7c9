package rehearse

import (
	"cmp"
	"fmt"
	"slices"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// What a change may be.
const (
	calmer      = 0.5 // the part of the spread that is left after more rehearsal
	quicker     = 0.9 // the part of the length that is left if it goes faster
	slower      = 1.1
	helpLines   = 6  // lines tried: those with the least to spare
	foundLines  = 12 // lines tried of what the lenses find, in all
	foundCauses = 4  // findings whose lines are tried: what breaks first most often
	helpPeople  = 6
)

// steps are how much sooner and later the lines of a finding are tried, seconds:
// about a reaction, and about a breath.
var steps = []float64{0.4, 1}

// trial is a change and what it does to the drawing of runs.
type trial struct {
	Change
	change  func([]role)
	promise float64 // runs more that would hold, as far as a part of them tells
}

// trying gathers the changes worth a try, each once.
type trying struct {
	base   *clock.Clock
	roles  []role
	names  []string // whose line each is
	trials []trial
	have   map[string]bool
	people []string
}

// trials are the changes worth a try.
func (s *staging) trials(base *clock.Clock, r *Report) []trial {
	t := &trying{base: base, roles: s.roles, have: make(map[string]bool)}
	who := newCast(base.Lines())
	for _, a := range base.Lines() {
		name := ""
		if p := who.performer(a); p != nil {
			name = p.Name
		} else if thing := clock.SubjectOf(a); thing != nil {
			name = thing.ID().Name
		}
		t.names = append(t.names, name)
	}
	t.ofMargins(r)
	for _, i := range t.found(r) {
		t.ofFound(i)
	}
	for _, p := range t.people[:min(len(t.people), helpPeople)] {
		t.calm(p)
	}
	return t.trials
}

// ofMargins tries the lines with nothing to spare, by as much as they lack.
func (t *trying) ofMargins(r *Report) {
	lines := 0
	for _, m := range r.Tightest(len(r.Margins)) {
		if m.Broken == 0 {
			break
		}
		i := indexOf(t.base, m.Action)
		t.meet(i)
		if lines++; lines > helpLines {
			continue
		}
		if t.roles[i].cued {
			t.sooner(i, min(tenthUp(float64(-m.Slack.P5)), float64(m.Start.P5)))
		}
		t.lasting(i, quicker)
	}
}

// found are the lines that the findings came of that break the take first most
// often: of each finding in turn the line that it names most often. Lines of the
// same people before them are as good as those, as what is late comes of them.
func (t *trying) found(r *Report) []int {
	var of [][]int
	for _, c := range r.Causes {
		if len(c.lines) == 0 || c.First == 0 {
			continue
		}
		lines := make([]int, 0, 2*len(c.lines))
		for i := range c.lines {
			lines = append(lines, i)
		}
		slices.SortFunc(lines, func(a, b int) int {
			return cmp.Or(cmp.Compare(c.lines[b], c.lines[a]), cmp.Compare(a, b))
		})
		for _, i := range slices.Clone(lines) {
			if k := t.before(i); k >= 0 && !slices.Contains(lines, k) {
				lines = append(lines, k)
			}
		}
		lines = slices.DeleteFunc(lines, func(i int) bool { return !t.movable(i) })
		if len(lines) == 0 {
			continue
		}
		of = append(of, lines)
		if len(of) == foundCauses {
			break
		}
	}
	var out []int
	for k, any := 0, true; any && len(out) < foundLines; k++ {
		any = false
		for _, lines := range of {
			if k < len(lines) {
				any = true
				if !slices.Contains(out, lines[k]) && len(out) < foundLines {
					out = append(out, lines[k])
				}
			}
		}
	}
	return out
}

// before is the last thing the same subject does before a line of the text, words
// apart, that takes time; -1 where there is none.
func (t *trying) before(i int) int {
	lines := t.base.Lines()
	for k := i - 1; k >= 0; k-- {
		_, words := lines[k].Deed.(*plan.Say)
		if !words && clock.SubjectOf(lines[k]) == clock.SubjectOf(lines[i]) && t.movable(k) {
			return k
		}
	}
	return -1
}

// movable says that a line's start or its length can be changed.
func (t *trying) movable(i int) bool {
	return t.base.Actions[i].Placed && (t.roles[i].cued || hasLength(t.base.Lines()[i]) && t.base.Actions[i].Length() > 0)
}

// ofFound tries a line that a finding came of, both ways.
func (t *trying) ofFound(i int) {
	t.meet(i)
	for _, by := range steps {
		if t.roles[i].cued {
			t.sooner(i, min(by, float64(t.base.Actions[i].Start)))
		}
		t.later(i, by)
	}
	t.lasting(i, quicker)
	t.lasting(i, slower)
}

// meet notes whose line it is: they may be rehearsed.
func (t *trying) meet(i int) {
	if who := t.names[i]; who != "" && !slices.Contains(t.people, who) {
		t.people = append(t.people, who)
	}
}

func (t *trying) add(c Change, change func([]role)) {
	if t.have[c.What] {
		return
	}
	t.have[c.What] = true
	t.trials = append(t.trials, trial{Change: c, change: change})
}

func (t *trying) sooner(i int, by float64) {
	if by <= 0 {
		return
	}
	a := t.base.Lines()[i]
	t.add(Change{What: fmt.Sprintf("cue %s sooner: %s", seconds(units.Seconds(by)), clock.Describe(a)), Action: a, By: units.Seconds(by)},
		func(roles []role) { roles[i].sooner = by })
}

// later is a later cue, or a pause before what follows on its own.
func (t *trying) later(i int, by float64) {
	a := t.base.Lines()[i]
	what := "wait %s first: %s"
	if t.roles[i].cued {
		what = "cue %s later: %s"
	} else if t.base.Actions[i].Start <= 0 {
		return // what the take begins with
	}
	t.add(Change{What: fmt.Sprintf(what, seconds(units.Seconds(by)), clock.Describe(a)), Action: a, By: units.Seconds(by)},
		func(roles []role) { roles[i].sooner = -by })
}

// lasting is a line done in a part of its time, or in more than it.
func (t *trying) lasting(i int, part float64) {
	a := t.base.Lines()[i]
	by := units.Seconds((1 - part) * float64(t.base.Actions[i].Length()))
	if !hasLength(a) || by == 0 {
		return
	}
	how := "quicker"
	if by < 0 {
		how, by = "slower", -by
	}
	t.add(Change{What: fmt.Sprintf("%s %s: %s", seconds(by), how, clock.Describe(a)), Action: a, By: by},
		func(roles []role) { roles[i].length.mean *= part; roles[i].length.sd *= part })
}

// calm is somebody rehearsed.
func (t *trying) calm(who string) {
	t.add(Change{What: fmt.Sprintf("rehearse %s until the timing varies half as much", who)},
		func(roles []role) {
			for i, name := range t.names {
				if name == who {
					roles[i].length.sd *= calmer
					roles[i].react.sd *= calmer
				}
			}
		})
}

func indexOf(c *clock.Clock, a *plan.Action) int { return slices.Index(c.Lines(), a) }
