package compare

import (
	"sort"
	"strconv"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/departments"
	"longhand/lang/plan"
)

// scope is a beat or a pickup with its lines.
type scope struct {
	title  string
	beat   *plan.Beat
	pickup *plan.Pickup
	at     int // among those of its kind
	lines  []line
}

func (s *scope) what() string {
	if s.pickup != nil {
		return "pickup"
	}
	return "beat"
}

func (s *scope) section() Section {
	if s.pickup != nil {
		return Pickups
	}
	return Beats
}

// order puts beats before pickups, each in the order of the text.
func (s *scope) order() int {
	const many = 1 << 20
	if s.pickup != nil {
		return (many + s.at) * many
	}
	return s.at * many
}

func (s *scope) properties(t *teller) []property {
	if s.pickup != nil {
		return t.properties(s.pickup)
	}
	return t.properties(s.beat)
}

func (c *comparing) scoped(p *plan.Plan) []*scope {
	var out []*scope
	for i, b := range p.Beats {
		out = append(out, &scope{title: b.Title, beat: b, at: i})
	}
	for i, u := range p.Pickups {
		out = append(out, &scope{title: u.Title, pickup: u, at: i})
	}
	return out
}

// beats matches beats and pickups and their lines, and tells what differs.
func (c *comparing) beats() {
	c.was, c.is = c.scoped(c.old.Plan), c.scoped(c.new.Plan)
	c.matchBeats()
	// The titles are known now, so lines that name them can be told.
	for _, s := range c.was {
		s.lines = linesOf(c.from, s)
	}
	for _, s := range c.is {
		s.lines = linesOf(c.to, s)
	}
	older := map[*scope]*scope{}
	for o, n := range c.scopes {
		older[n] = o
	}
	for _, n := range c.is {
		o := older[n]
		if o == nil {
			c.add(Change{Section: n.section(), Kind: Added, What: n.what(), Name: n.title, Departments: departments.All(), order: n.order()})
			continue
		}
		if o.title != n.title {
			c.add(Change{Section: n.section(), Kind: Renamed, What: n.what(), Name: n.title, Was: o.title, Departments: departments.All(), order: n.order()})
		}
		if f := differing(o.properties(c.from), n.properties(c.to)); len(f) > 0 {
			c.add(Change{Section: n.section(), Kind: Changed, What: n.what(), Name: n.title, Fields: f, Departments: concern(departments.Ads, departments.Script, departments.Camera), order: n.order()})
		}
	}
	for _, o := range c.was {
		if c.scopes[o] == nil {
			c.add(Change{Section: o.section(), Kind: Removed, What: o.what(), Name: o.title, Departments: departments.All(), order: o.order()})
		}
	}
	c.shuffled()
	c.matchLines()
}

// matchBeats pairs beats by their titles; those left, where their lines are
// mostly the same.
func (c *comparing) matchBeats() {
	key := func(s *scope, seen map[string]int) string {
		k := s.what() + " " + s.title
		seen[k]++
		return k + " " + strconv.Itoa(seen[k])
	}
	byTitle, seen := map[string]*scope{}, map[string]int{}
	for _, s := range c.is {
		byTitle[key(s, seen)] = s
	}
	seen = map[string]int{}
	taken := map[*scope]bool{}
	pair := func(o, n *scope) {
		c.scopes[o], taken[n] = n, true
		if o.beat != nil {
			c.from.beats[o.beat] = n.title
		}
	}
	var left []*scope
	for _, o := range c.was {
		if n := byTitle[key(o, seen)]; n != nil {
			pair(o, n)
		} else {
			left = append(left, o)
		}
	}
	type likeness struct {
		o, n *scope
		by   float64
	}
	var list []likeness
	for _, o := range left {
		for _, n := range c.is {
			if taken[n] || n.what() != o.what() {
				continue
			}
			if by := alike(linesOf(c.from, o), linesOf(c.to, n)); by >= 0.5 {
				list = append(list, likeness{o, n, by})
			}
		}
	}
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		if a.by != b.by {
			return a.by > b.by
		}
		// The same whichever plan is the older.
		if x, y := a.o.at+a.n.at, b.o.at+b.n.at; x != y {
			return x < y
		}
		return a.o.at*a.n.at < b.o.at*b.n.at
	})
	for _, l := range list {
		if c.scopes[l.o] == nil && !taken[l.n] {
			pair(l.o, l.n)
		}
	}
}

// alike is the part of two beats' lines, 0 to 1, that is the same.
func alike(a, b []line) float64 {
	count := map[string]int{}
	for _, l := range a {
		count[l.who+"\x00"+l.key]++
	}
	both := 0
	for _, l := range b {
		if k := l.who + "\x00" + l.key; count[k] > 0 {
			count[k]--
			both++
		}
	}
	if len(a)+len(b) == 0 {
		return 0
	}
	return 2 * float64(both) / float64(len(a)+len(b))
}

// shuffled tells which of the beats in both plans changed places: those outside
// the longest run that kept its order.
func (c *comparing) shuffled() {
	var kept []*scope // of the older plan, in its order
	for _, o := range c.was {
		if o.beat != nil && c.scopes[o] != nil {
			kept = append(kept, o)
		}
	}
	var news []*scope
	older := map[*scope]*scope{}
	for _, o := range kept {
		older[c.scopes[o]] = o
	}
	for _, n := range c.is {
		if older[n] != nil {
			news = append(news, n)
		}
	}
	a, b := make([]line, len(kept)), make([]line, len(news))
	for i, o := range kept {
		a[i] = line{key: c.scopes[o].title + strconv.Itoa(c.scopes[o].at)}
	}
	for i, n := range news {
		b[i] = line{key: n.title + strconv.Itoa(n.at)}
	}
	stayed := map[*scope]bool{}
	for _, p := range align(a, b) {
		if p[0] >= 0 && p[1] >= 0 {
			stayed[news[p[1]]] = true
		}
	}
	rank := map[*scope]int{}
	for i, o := range kept {
		rank[o] = i
	}
	for i, n := range news {
		if !stayed[n] {
			c.add(Change{Section: Beats, Kind: Moved, What: "beat", Name: n.title, Departments: departments.All(), order: n.order(),
				Fields: []Field{{"place in the take", ordinal(rank[older[n]] + 1), ordinal(i + 1)}}})
		}
	}
}

func ordinal(n int) string {
	end := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			end = "st"
		case 2:
			end = "nd"
		case 3:
			end = "rd"
		}
	}
	return strconv.Itoa(n) + end
}

// subject is whose lines a line is one of.
func subject(t *teller, a *plan.Action) string {
	if s := clock.SubjectOf(a); s != nil {
		return t.name(s)
	}
	if d, ok := a.Deed.(*plan.Cue); ok {
		return "cue " + strings.ToLower(d.Name)
	}
	return "cut"
}
