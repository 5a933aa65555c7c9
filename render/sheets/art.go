package sheets

import (
	"sort"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

func (m *maker) art() ([]*Table, []safety.Topic) {
	var topics []safety.Topic
	if len(m.p.Set.Holes) > 0 {
		topics = append(topics, safety.Holes)
	}
	if len(m.p.Set.Mirrors) > 0 {
		topics = append(topics, safety.Glass)
	}
	if len(m.p.Set.Platforms)+len(m.p.Set.Stairs) > 0 {
		topics = append(topics, safety.Height)
	}
	return []*Table{m.openings(), m.doorTimes(), m.holes(), m.cards(), m.wild(), m.mirrors(), m.pieceList()}, topics
}

// openings is every door, window and bright opening as built.
func (m *maker) openings() *Table {
	t := table("openings", "Openings", col("opening", "opening", "name"), col("kind", "kind", "door, window or bright opening"), col("wall", "in", "the wall"),
		measure("from", "from", "m", "along the wall, from its first point"), measure("to", "to", "m", "along the wall"), measure("wide", "wide", "m", "clear width"), measure("low", "sill", "m", "lower edge"), measure("high", "head", "m", "upper edge"), col("start", "first position", "as the take begins"))
	t.Empty = "The set has no openings."
	row := func(id, kind string, on plan.On, h plan.Range, start string) {
		t.add(nil, cells(word(id), word(kind), word(name(on.Wall)), m.length(on.From), m.length(on.To), m.length(on.To-on.From), m.length(h.Low), m.length(h.High), word(start)))
	}
	for _, d := range m.p.Set.Doors {
		start := "shut"
		if d.Open {
			start = "open"
		}
		row(d.Name, "door", d.On, d.High, start)
	}
	for _, w := range m.p.Set.Windows {
		row(w.Name, "window", w.On, w.High, "")
	}
	for _, g := range m.p.Set.Glows {
		row(g.Name, "bright opening", g.On, g.High, g.Nits.String())
	}
	return t
}

// doorTimes is when doors are opened and shut, and by whom.
func (m *maker) doorTimes() *Table {
	t := table("doors", "Doors opened and shut", beatColumn(), clockColumns(), cueColumn(), col("door", "door", "name"), col("becomes", "becomes", "open or shut"), col("by", "by", "who does it; crew where the plan names nobody"), untilColumns("done"), slipColumns())
	t.Empty = "No door is opened or shut in this plan."
	for _, p := range m.parts {
		for _, a := range p.inTime() {
			d, ok := a.Deed.(*plan.Operate)
			if !ok || d.Door == nil {
				continue
			}
			by, becomes := "crew", "shut"
			if _, self := a.Subject.(*plan.Door); !self {
				by = a.Who()
			}
			if d.Open {
				becomes = "open"
			}
			i := p.clock.Of(a)
			t.add(a, p.beat(a), m.clock(i.Start), p.cue(a), cells(word(d.Door.Name), word(becomes), word(by)), m.until(i.End), p.slip(a))
		}
	}
	return t
}

// holes is what is to be cut.
func (m *maker) holes() *Table {
	t := table("holes", "Holes to cut", holeColumns(), col("for", "for", "the camera behind it"), col("beat", "from", "when it is used"))
	t.Empty = "No lens hole is to be cut."
	used := map[*plan.Hole]bool{}
	for _, o := range m.hidden() {
		used[o.hole] = true
		t.add(o.action, m.holeCells(o), cells(word(o.camera.Name)), o.p.beatAt(o.from))
	}
	for _, h := range m.p.Set.Holes {
		if !used[h] {
			t.add(nil, m.holeCells(hole{hole: h}), cells(word("no camera"), word("")))
		}
	}
	if len(t.Rows) > 0 {
		t.note("square holes, bevelled from behind; the width is at the face the room sees")
	}
	return t
}

// wild is the walls that come out.
func (m *maker) wild() *Table {
	t := table("wild", "Wild walls", col("wall", "wall", "name"), measure("length", "long", "m", "along its line"), measure("low", "from", "m", "lower edge"), measure("high", "to", "m", "upper edge"), col("between", "between", "where it stands"))
	t.Empty = "No wall is wild: none comes out."
	for _, w := range m.p.Set.Walls {
		if !w.Wild || len(w.Line) < 2 {
			continue
		}
		t.add(nil, cells(word(w.Name), m.length(wallLength(w)), m.length(w.High.Low), m.length(w.High.High), word(m.spot(w.Line[0])+" and "+m.spot(w.Line[len(w.Line)-1]))))
	}
	return t
}

func wallLength(w *plan.Wall) units.Metres {
	sum := 0.0
	for i := 0; i+1 < len(w.Line); i++ {
		sum += w.Line[i].Dist(w.Line[i+1])
	}
	return units.Metres(sum)
}

// mirrors is what each mirror shows to a lens of what is not to be seen.
func (m *maker) mirrors() *Table {
	t := table("mirrors", "Mirrors", col("mirror", "mirror", "name"), col("wall", "on", "the wall"), measure("wide", "wide", "m", "across"), measure("low", "from", "m", "lower edge"), measure("high", "to", "m", "upper edge"),
		col("camera", "camera", "that looks into it"), col("shows", "shows", "what it shows"), clockColumns(), untilColumns("until"))
	t.Empty = "There are no mirrors in the set."
	for _, q := range m.p.Set.Mirrors {
		base := cells(word(q.Name), word(name(q.Wall)), m.length(q.To-q.From), m.length(q.High.Low), m.length(q.High.High))
		rows := m.reflected(q.Name)
		if len(rows) == 0 {
			t.add(nil, base, cells(word("none"), word("nothing that moves"), word(""), word(""), word(""), word(""), word("")))
		}
		for _, r := range rows {
			t.add(nil, base, cells(word(r.camera), word(r.thing)), m.frameClock(r.from), m.until(m.rate.Time(r.to)))
		}
	}
	return t
}

type reflection struct {
	camera, thing string
	from, to      units.Frame
}

// reflected is what cameras see in the mirrors of a name, a row a camera and
// thing, from the first frame to the last.
func (m *maker) reflected(mirror string) []reflection {
	sc := m.r.Stage.Scene
	all := map[[2]string]reflection{}
	for i := range m.r.Sight.Reflected {
		r := &m.r.Sight.Reflected[i]
		if r.Mirror < 0 || r.Mirror >= len(sc.Mirrors) || sc.Mirrors[r.Mirror].Name != mirror || float64(r.Peak().Share) < leastSeen {
			continue
		}
		k := [2]string{sc.Cameras[r.Camera].Name, sc.Bodies[r.Body].Of}
		was, ok := all[k]
		if !ok {
			was = reflection{k[0], k[1], r.From, r.To}
		}
		was.from, was.to = min(was.from, r.From), max(was.to, r.To)
		all[k] = was
	}
	var out []reflection
	for _, r := range all {
		out = append(out, r)
	}
	sort.Slice(out, func(i, j int) bool {
		if out[i].from != out[j].from {
			return out[i].from < out[j].from
		}
		return out[i].camera+" "+out[i].thing < out[j].camera+" "+out[j].thing
	})
	return out
}

// pieceList is what the set is built of.
func (m *maker) pieceList() *Table {
	t := table("pieces", "Set pieces", col("piece", "piece", "name"), col("kind", "kind", "what it is"), measure("long", "long", "m", "of a wall, along it; else along x"), measure("deep", "deep", "m", "of a wall, its thickness; else along y"), measure("low", "from", "m", "lower face"), measure("high", "to", "m", "upper face"), col("where", "around", "its middle"))
	t.Empty = "Nothing is built in this plan."
	row := func(id, kind string, long, deep float64, h plan.Range, at geom.Vec) {
		t.add(nil, cells(word(id), word(kind), m.length(units.Metres(long)), m.length(units.Metres(deep)), m.length(h.Low), m.length(h.High), word(m.spot(at))))
	}
	for _, w := range m.p.Set.Walls {
		if len(w.Line) < 2 {
			continue
		}
		kind := "wall"
		if w.Glass {
			kind = "glass wall"
		}
		mid, _ := plan.On{Wall: w, To: wallLength(w)}.Middle()
		row(w.Name, kind, float64(wallLength(w)), float64(w.Thick), w.High, mid)
	}
	of := func(id, kind string, poly []geom.Vec, h plan.Range) {
		if len(poly) < 3 {
			return
		}
		low, high := geom.Bounds(poly)
		row(id, kind, high.X-low.X, high.Y-low.Y, h, geom.Polygon(poly).Centroid())
	}
	for _, b := range m.p.Set.Blocks {
		of(b.Name, "block", b.Polygon, b.High)
	}
	for _, c := range m.p.Set.Pillars {
		row(c.Name, "pillar", float64(c.Round), float64(c.Round), c.High, c.Centre)
	}
	for _, f := range m.p.Set.Platforms {
		of(f.Name, "platform", f.Polygon, f.High)
	}
	for _, s := range m.p.Set.Stairs {
		row(s.Name, "stairs", s.Foot.Dist(s.Head), float64(s.Width), plan.Range{Low: s.FootZ, High: s.FootZ + s.Rise}, s.Foot.Lerp(s.Head, 0.5))
	}
	return t
}
