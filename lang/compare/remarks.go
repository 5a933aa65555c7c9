package compare

import (
	"strings"

	"longhand/lang/departments"
	"longhand/lang/plan"
)

// remark is a note, or something accepted.
type remark struct {
	what, name, beat string
	props            []property
	who              []departments.Name
}

// remarks tells which notes, paint outs and allowances are new, gone, or different.
func (c *comparing) remarks() {
	was, is := c.remarksOf(c.from, c.old.Plan), c.remarksOf(c.to, c.new.Plan)
	id := func(r remark) string { return r.what + "\x00" + r.name + "\x00" + r.beat }
	left := map[string][]remark{}
	for _, r := range was {
		left[id(r)] = append(left[id(r)], r)
	}
	order := 0
	for _, pass := range []bool{true, false} { // equal ones first
		var rest []remark
		for _, r := range is {
			list := left[id(r)]
			found := -1
			for i, o := range list {
				if keyOf(o.props) == keyOf(r.props) || !pass {
					found = i
					break
				}
			}
			if found < 0 {
				rest = append(rest, r)
				continue
			}
			o := list[found]
			left[id(r)] = append(append([]remark(nil), list[:found]...), list[found+1:]...)
			if f := differing(o.props, r.props); len(f) > 0 {
				order++
				c.add(Change{Section: Remarks, Kind: Changed, What: r.what, Name: r.name, Beat: r.beat, Fields: f, Departments: r.who, order: order})
			}
		}
		is = rest
	}
	for _, r := range is {
		order++
		c.add(Change{Section: Remarks, Kind: Added, What: r.what, Name: r.name, Beat: r.beat, Fields: given(r.props, false), Departments: r.who, order: order})
	}
	for _, r := range was {
		list := left[id(r)]
		if len(list) == 0 || keyOf(list[0].props) != keyOf(r.props) {
			continue
		}
		left[id(r)] = list[1:]
		order++
		c.add(Change{Section: Remarks, Kind: Removed, What: r.what, Name: r.name, Beat: r.beat, Fields: given(r.props, true), Departments: r.who, order: order})
	}
}

func (c *comparing) remarksOf(t *teller, p *plan.Plan) []remark {
	pickup := func(u *plan.Pickup) string {
		for o, n := range c.scopes {
			if u != nil && o.pickup == u {
				return n.title
			}
		}
		if u != nil {
			return u.Title
		}
		return ""
	}
	var out []remark
	for _, n := range p.Notes {
		out = append(out, remark{what: "note for " + n.Department.Noted(), name: n.Text, beat: t.beat(n.Beat), who: concern(n.Department)})
	}
	words := func(parts ...string) string { return strings.Join(strings.Fields(strings.Join(parts, " ")), " ") }
	during := func(beats []*plan.Beat) property {
		var out []string
		for _, b := range beats {
			out = append(out, `"`+t.beat(b)+`"`)
		}
		p := same(strings.Join(out, ", "))
		p.name = "during"
		return p
	}
	because := func(s string) property { return property{name: "because", key: s, show: s} }
	for _, o := range p.PaintOuts {
		from := ""
		if o.Camera != nil {
			from = "from " + t.name(o.Camera)
		}
		out = append(out, remark{what: "paint out", name: words(t.name(o.Thing), from), beat: t.beat(o.Beat) + pickup(o.Pickup),
			props: []property{during(o.During), because(o.Because)}, who: concern(departments.Effects, departments.Camera)})
	}
	for _, a := range p.Allows {
		in := ""
		if a.Camera != nil {
			in = "in " + t.name(a.Camera)
		}
		out = append(out, remark{what: "allowance", name: words(a.Code, t.name(a.Thing), in), beat: t.beat(a.Beat) + pickup(a.Pickup),
			props: []property{during(a.During), because(a.Because)}, who: concern(departments.Camera, departments.Script)})
	}
	return out
}
