package compare

import (
	"sort"

	"longhand/lang/departments"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// order in which things are matched: what others are told from comes first, so
// that by then its new name is known.
var matching = []plan.Kind{
	plan.KindMark, plan.KindWall, plan.KindLamp, plan.KindGrid,
	plan.KindPillar, plan.KindBlock, plan.KindPlatform, plan.KindStairs,
	plan.KindDoor, plan.KindWindow, plan.KindHole, plan.KindMirror, plan.KindGlow, plan.KindSupply,
	plan.KindCamera, plan.KindLens, plan.KindRig, plan.KindVehicle, plan.KindWash, plan.KindCard,
	plan.KindPerformer, plan.KindCrew,
}

func sectionOf(t plan.Thing) Section {
	switch t.Kind() {
	case plan.KindMark:
		return Marks
	case plan.KindPerformer, plan.KindCrew:
		return People
	case plan.KindCamera, plan.KindLens, plan.KindRig, plan.KindVehicle, plan.KindLamp, plan.KindWash, plan.KindCard:
		return Kit
	}
	return Set
}

// things matches everything declared by name, then by being equal in all else,
// and tells what differs.
func (c *comparing) things() {
	group := func(p *plan.Plan) map[plan.Kind][]plan.Thing {
		out := map[plan.Kind][]plan.Thing{}
		for _, t := range p.Things() {
			out[t.Kind()] = append(out[t.Kind()], t)
		}
		return out
	}
	old, new := group(c.old.Plan), group(c.new.Plan)
	for _, kind := range matching {
		c.kind(old[kind], new[kind])
	}
}

func (c *comparing) kind(old, new []plan.Thing) {
	byName := map[string]plan.Thing{}
	for _, t := range new {
		byName[t.ID().Name] = t
	}
	taken := map[plan.Thing]bool{}
	var gone []plan.Thing
	for _, t := range old {
		if n := byName[t.ID().Name]; n != nil && !taken[n] {
			c.pair(t, n)
			taken[n] = true
			continue
		}
		gone = append(gone, t)
	}
	// What is left and equal in all but the name has been renamed, in the order of
	// the text.
	equal := map[string][]plan.Thing{}
	var fresh []plan.Thing
	for _, t := range new {
		if !taken[t] {
			fresh = append(fresh, t)
			k := keyOf(c.to.properties(t))
			equal[k] = append(equal[k], t)
		}
	}
	for _, t := range gone {
		k := keyOf(c.from.properties(t))
		if list := equal[k]; len(list) > 0 {
			n := list[0]
			equal[k] = list[1:]
			taken[n] = true
			c.pair(t, n)
			c.add(Change{Section: sectionOf(n), Kind: Renamed, What: string(n.Kind()), Name: n.ID().Name, Was: t.ID().Name, Departments: ofThing(n)})
			continue
		}
		ch := Change{Section: sectionOf(t), Kind: Removed, What: string(t.Kind()), Name: t.ID().Name, Departments: ofThing(t)}
		for _, p := range c.from.properties(t) {
			if p.show != "" {
				ch.Fields = append(ch.Fields, Field{Name: p.name, Old: p.show})
			}
		}
		if m, ok := t.(*plan.Mark); ok {
			ch.From = &geom.Vec{X: m.Point.X, Y: m.Point.Y}
		}
		c.add(ch)
	}
	for _, t := range fresh {
		if taken[t] {
			continue
		}
		ch := Change{Section: sectionOf(t), Kind: Added, What: string(t.Kind()), Name: t.ID().Name, Departments: ofThing(t)}
		for _, p := range c.to.properties(t) {
			if p.show != "" {
				ch.Fields = append(ch.Fields, Field{Name: p.name, New: p.show})
			}
		}
		if m, ok := t.(*plan.Mark); ok {
			ch.To = &geom.Vec{X: m.Point.X, Y: m.Point.Y}
		}
		c.add(ch)
	}
}

// pair notes that a thing became another and tells how that differs.
func (c *comparing) pair(old, new plan.Thing) {
	c.report.things[old] = new
	c.from.names[old] = new.ID().Name
	fields := differing(c.from.properties(old), c.to.properties(new))
	if len(fields) == 0 {
		return
	}
	ch := Change{Section: sectionOf(new), Kind: Changed, What: string(new.Kind()), Name: new.ID().Name, Fields: fields, Departments: ofThing(new)}
	if a, ok := old.(*plan.Mark); ok {
		b := new.(*plan.Mark)
		if d := b.Point.Dist(a.Point); d > 1e-6 {
			ch.Kind, ch.Distance = Moved, units.Metres(d)
			from, to := a.Point, b.Point
			ch.From, ch.To = &from, &to
			ch.Departments = concern(append(ch.Departments, c.users(b)...)...)
		}
	}
	c.add(ch)
}

// users is whom the lines that name a mark concern.
func (c *comparing) users(m *plan.Mark) []departments.Name {
	var out []departments.Name
	for _, a := range c.new.Plan.Actions {
		for _, p := range placesOf(a.Deed) {
			if p.Mark == m {
				out = append(out, a.Concerns()...)
			}
		}
	}
	return out
}

// placesOf are the places a line names.
func placesOf(d plan.Deed) []plan.Place {
	var out []plan.Place
	add := func(p *plan.Place) {
		if p != nil {
			out = append(out, *p)
		}
	}
	switch d := d.(type) {
	case *plan.Move:
		add(d.Path.From)
		out = append(out, d.Path.Stops()...)
		out = append(out, d.Path.Centre, d.Path.Other)
	case *plan.Stand:
		add(d.At)
	case *plan.Leave:
		add(d.To)
	case *plan.Handoff:
		add(d.At)
	}
	return out
}

// placed matches the lamps that stand in the set, which have no name of their
// own, by lamp and order.
func (c *comparing) placed() {
	type key struct {
		lamp string
		nth  int
	}
	index := func(t *teller, list []*plan.PlacedLamp) (map[key]*plan.PlacedLamp, []key) {
		out, count := map[key]*plan.PlacedLamp{}, map[string]int{}
		var keys []key
		for _, l := range list {
			n := t.name(l.Lamp)
			k := key{n, count[n]}
			count[n]++
			out[k] = l
			keys = append(keys, k)
		}
		return out, keys
	}
	old, was := index(c.from, c.old.Plan.Set.Placed)
	new, is := index(c.to, c.new.Plan.Set.Placed)
	who := concern(departments.Electric, departments.Camera)
	for _, k := range is {
		n := new[k]
		if o := old[k]; o != nil {
			if f := differing(c.from.properties(o), c.to.properties(n)); len(f) > 0 {
				c.add(Change{Section: Set, Kind: Changed, What: "lamp in the set", Name: k.lamp, Fields: f, Departments: who})
			}
			continue
		}
		c.add(Change{Section: Set, Kind: Added, What: "lamp in the set", Name: k.lamp, Departments: who, Fields: given(c.to.properties(n), false)})
	}
	for _, k := range was {
		if new[k] == nil {
			c.add(Change{Section: Set, Kind: Removed, What: "lamp in the set", Name: k.lamp, Departments: who, Fields: given(c.from.properties(old[k]), true)})
		}
	}
}

// given are properties of something that is only in one of the plans.
func given(list []property, older bool) []Field {
	var out []Field
	for _, p := range list {
		if p.show == "" {
			continue
		}
		f := Field{Name: p.name, New: p.show}
		if older {
			f = Field{Name: p.name, Old: p.show}
		}
		out = append(out, f)
	}
	return out
}

// settings tells what differs in the take, the set's title and drawings, and the
// look.
func (c *comparing) settings() {
	o, n := c.old.Plan, c.new.Plan
	for _, f := range differing(c.from.properties(o.Take), c.to.properties(n.Take)) {
		c.add(Change{Section: Take, Kind: Changed, What: "take", Name: n.Take.Title, Fields: []Field{f}, Departments: departments.All()})
	}
	if o.Set.Title != n.Set.Title {
		c.add(Change{Section: Set, Kind: Changed, What: "set", Name: n.Set.Title, Fields: []Field{{"title", o.Set.Title, n.Set.Title}}, Departments: departments.All()})
	}
	drawings := func(t *teller, s plan.Set) []string {
		var out []string
		for _, d := range s.Drawings {
			p := t.properties(d)
			out = append(out, p[0].show+" 1:"+p[1].show)
		}
		sort.Strings(out)
		return out
	}
	gone, fresh := apart(drawings(c.from, o.Set), drawings(c.to, n.Set))
	for _, d := range gone {
		c.add(Change{Section: Set, Kind: Removed, What: "drawing", Name: d, Departments: concern(departments.Art, departments.Grip, departments.Camera)})
	}
	for _, d := range fresh {
		c.add(Change{Section: Set, Kind: Added, What: "drawing", Name: d, Departments: concern(departments.Art, departments.Grip, departments.Camera)})
	}
	who := concern(departments.Camera, departments.Electric, departments.Effects)
	speeds := func(l plan.Look) plan.Look { l.Speeds = nil; return l }
	for _, f := range differing(c.from.properties(speeds(o.Look)), c.to.properties(speeds(n.Look))) {
		c.add(Change{Section: Look, Kind: Changed, What: "rule", Name: f.Name, Fields: []Field{f}, Departments: who})
	}
	rules := func(t *teller, l plan.Look) []string {
		var out []string
		for _, s := range l.Speeds {
			text := s.Class + " at most " + s.Speed.Text(c.report.System)
			if s.Back != 0 {
				text += ", backwards " + s.Back.Text(c.report.System)
			}
			out = append(out, text)
		}
		return out
	}
	gone, fresh = apart(rules(c.from, o.Look), rules(c.to, n.Look))
	for _, s := range gone {
		c.add(Change{Section: Look, Kind: Removed, What: "speed", Name: s, Departments: concern(departments.Grip, departments.Camera, departments.Vehicles)})
	}
	for _, s := range fresh {
		c.add(Change{Section: Look, Kind: Added, What: "speed", Name: s, Departments: concern(departments.Grip, departments.Camera, departments.Vehicles)})
	}
}

// apart is what only one of two lists holds, counted.
func apart(old, new []string) (gone, fresh []string) {
	count := map[string]int{}
	for _, s := range new {
		count[s]++
	}
	for _, s := range old {
		if count[s] > 0 {
			count[s]--
			continue
		}
		gone = append(gone, s)
	}
	count = map[string]int{}
	for _, s := range old {
		count[s]++
	}
	for _, s := range new {
		if count[s] > 0 {
			count[s]--
			continue
		}
		fresh = append(fresh, s)
	}
	return gone, fresh
}
