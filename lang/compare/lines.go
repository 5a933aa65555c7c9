package compare

import (
	"fmt"
	"sort"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/plan"
)

// line is a line of a beat as it is compared.
type line struct {
	act   *plan.Action
	who   string // whose lines it is one of, as the newer plan has it
	deed  string // the kind of thing done
	props []property
	key   string
}

func linesOf(t *teller, s *scope) []line {
	acts := []*plan.Action(nil)
	if s.beat != nil {
		acts = s.beat.Actions
	} else {
		acts = s.pickup.Actions
	}
	out := make([]line, 0, len(acts))
	for _, a := range acts {
		l := line{act: a, who: subject(t, a), deed: fmt.Sprintf("%T", a.Deed)}
		l.props = append(t.properties(a.Deed), t.properties(a.Timing)...)
		with := property{name: "with the line before"}
		if a.With {
			with.key, with.show = "yes", "yes"
		}
		l.props = append(l.props, with)
		l.key = l.deed + "\x00" + keyOf(l.props)
		out = append(out, l)
	}
	return out
}

// What it costs to take two lines for one another, or to leave one out.
const (
	leftOut  = 1.0
	mostAway = 1.2 // of two lines that do the same kind of thing and share nothing
)

// cost of taking one line for another; too much to be taken where they do
// different things.
func cost(a, b line) float64 {
	switch {
	case a.key == b.key:
		return 0
	case a.deed != b.deed || a.deed == "":
		return 4 * leftOut
	}
	differ, all := 0, 0
	for i := range a.props {
		if a.props[i].key != "" || b.props[i].key != "" {
			all++
			if a.props[i].key != b.props[i].key {
				differ++
			}
		}
	}
	return 0.1 + (mostAway-0.1)*float64(differ)/float64(max(1, all))
}

// align pairs two sequences so that the least is left out and what is paired
// differs least; -1 stands for none. The answer is the same, mirrored, with the
// two exchanged.
func align(a, b []line) [][2]int {
	if joined(a) > joined(b) {
		out := align(b, a)
		for i := range out {
			out[i][0], out[i][1] = out[i][1], out[i][0]
		}
		return out
	}
	n, m := len(a), len(b)
	best := make([][]float64, n+1)
	for i := range best {
		best[i] = make([]float64, m+1)
	}
	for i := n; i >= 0; i-- {
		for j := m; j >= 0; j-- {
			switch {
			case i == n:
				best[i][j] = float64(m-j) * leftOut
			case j == m:
				best[i][j] = float64(n-i) * leftOut
			default:
				best[i][j] = min(best[i+1][j+1]+cost(a[i], b[j]), best[i+1][j]+leftOut, best[i][j+1]+leftOut)
			}
		}
	}
	var out [][2]int
	for i, j := 0, 0; i < n || j < m; {
		switch {
		case i < n && j < m && best[i][j] == best[i+1][j+1]+cost(a[i], b[j]):
			out = append(out, [2]int{i, j})
			i++
			j++
		case i < n && (j == m || best[i][j] == best[i+1][j]+leftOut):
			out = append(out, [2]int{i, -1})
			i++
		default:
			out = append(out, [2]int{-1, j})
			j++
		}
	}
	return out
}

func joined(list []line) string {
	keys := make([]string, len(list))
	for i, l := range list {
		keys[i] = l.key
	}
	return strings.Join(keys, "\x01")
}

// matchLines pairs the lines of each subject in each beat, then those that are
// in another beat now, and tells what differs.
func (c *comparing) matchLines() {
	var gone, fresh []homed
	for _, o := range c.was {
		n := c.scopes[o]
		if n == nil {
			for _, l := range o.lines {
				gone = append(gone, homed{l, o})
			}
			continue
		}
		a, b := bySubject(o.lines), bySubject(n.lines)
		for _, who := range subjects(a, b) {
			for _, p := range align(a[who], b[who]) {
				switch {
				case p[1] < 0:
					gone = append(gone, homed{a[who][p[0]], o})
				case p[0] < 0:
					fresh = append(fresh, homed{b[who][p[1]], n})
				default:
					c.paired(a[who][p[0]], b[who][p[1]], n)
				}
			}
		}
	}
	for _, n := range c.is {
		if !c.matched(n) {
			for _, l := range n.lines {
				fresh = append(fresh, homed{l, n})
			}
		}
	}
	c.elsewhere(gone, fresh)
}

func (c *comparing) matched(n *scope) bool {
	for _, x := range c.scopes {
		if x == n {
			return true
		}
	}
	return false
}

// homed is a line with the beat it is in.
type homed struct {
	line
	in *scope
}

func bySubject(list []line) map[string][]line {
	out := map[string][]line{}
	for _, l := range list {
		out[l.who] = append(out[l.who], l)
	}
	return out
}

func subjects(a, b map[string][]line) []string {
	var out []string
	for s := range a {
		out = append(out, s)
	}
	for s := range b {
		if _, ok := a[s]; !ok {
			out = append(out, s)
		}
	}
	sort.Strings(out)
	return out
}

// paired notes that a line became another and tells how that differs.
func (c *comparing) paired(a, b line, in *scope) {
	c.lines[a.act] = b.act
	f := differing(a.props, b.props)
	if len(f) == 0 {
		return
	}
	ch := c.ofLine(Changed, b, in)
	ch.Fields = f
	if was := clock.Describe(a.act); was != ch.Name {
		ch.Was = was
	}
	ch.Departments = concern(append(a.act.Concerns(), b.act.Concerns()...)...)
	c.add(ch)
}

// elsewhere finds lines that are word for word in another beat now; the others
// are gone or new.
func (c *comparing) elsewhere(gone, fresh []homed) {
	at := map[string][]int{}
	for i, l := range fresh {
		k := l.who + "\x00" + l.key
		at[k] = append(at[k], i)
	}
	taken := map[int]bool{}
	for _, l := range gone {
		k := l.who + "\x00" + l.key
		if list := at[k]; len(list) > 0 && fresh[list[0]].in.what() == l.in.what() {
			at[k] = list[1:]
			taken[list[0]] = true
			n := fresh[list[0]]
			c.lines[l.act] = n.act
			ch := c.ofLine(Moved, n.line, n.in)
			if from := c.titled(l.in); from != n.in.title {
				ch.Fields = []Field{{n.in.what(), from, n.in.title}}
			} else {
				ch.Fields = []Field{{"place among " + l.who + "'s lines", "", ""}}
			}
			c.add(ch)
			continue
		}
		ch := c.ofLine(Removed, l.line, l.in)
		ch.Fields = given(l.props, true)
		c.add(ch)
	}
	for i, l := range fresh {
		if taken[i] {
			continue
		}
		ch := c.ofLine(Added, l.line, l.in)
		ch.Fields = given(l.props, false)
		c.add(ch)
	}
}

// titled is a beat of the older plan as the newer one calls it.
func (c *comparing) titled(o *scope) string {
	if n := c.scopes[o]; n != nil {
		return n.title
	}
	return o.title
}

func (c *comparing) ofLine(k Kind, l line, in *scope) Change {
	home := in
	if n := c.scopes[in]; n != nil {
		home = n
	}
	section := Lines
	if in.pickup != nil {
		section = Pickups
	}
	return Change{Section: section, Kind: k, What: "line", Name: clock.Describe(l.act), Beat: c.titled(in), Departments: l.act.Concerns(), order: home.order() + l.act.Index + 1}
}
