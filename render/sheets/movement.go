package sheets

import (
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/timecode"
	"longhand/lang/units"
)

// movement is each performer's, and each crew member's, own list.
func (m *maker) movement() ([]*Table, []safety.Topic) {
	var out []*Table
	for _, who := range m.p.People {
		if t := m.movesOf(who); len(t.Rows) > 0 || !who.Crew {
			out = append(out, t)
		}
	}
	if len(out) == 0 {
		t := table("nobody", "Movement", col("who", "who", "name"))
		t.Empty = "There are no people in this plan."
		out = append(out, t)
	}
	var topics []safety.Topic
	if len(m.p.Set.Platforms)+len(m.p.Set.Stairs) > 0 {
		topics = append(topics, safety.Height)
	}
	if m.dark() {
		topics = append(topics, safety.Darkness)
	}
	for _, tr := range m.take.tracks.Bodies {
		if m.wheeled(tr.Thing) && len(m.runs(tr)) > 0 {
			return out, append(topics, safety.Vehicles)
		}
	}
	return out, topics
}

func (m *maker) movesOf(who *plan.Person) *Table {
	title := who.Name
	if who.Role != "" {
		title += ", " + who.Role
	}
	t := table("moves-"+who.Name, title, beatColumn(), clockColumns(), cueColumn(), col("does", "does", "the line in full"), col("from", "from", "where it begins"), col("to", "to", "where it ends"), col("passes", "passes", "marks on the way, with the clock"),
		measure("length", "way", "m", "over the floor"), untilColumns("done"), measure("takes", "takes", "s", "from start to end"), measure("pace", "pace", "m/s", "the most speed on the way"), col("counts", "counts", "where the plan has a tempo"), slipColumns())
	if m.p.Take.Tempo == nil {
		t.Columns[t.Column("counts")].Quiet = true
	}
	t.Empty = who.Name + " has no lines in this plan."
	for _, p := range m.parts {
		for _, a := range p.inTime() {
			if !m.does(p, who, a) {
				continue
			}
			i := p.clock.Of(a)
			tr := p.tracks.Body(who)
			from, to, way, pace := "", "", word(""), word("")
			if tr != nil {
				from, to = m.where(p, who, i.Start), m.where(p, who, i.End)
				if n := m.way3(tr, i.Start, i.End); walks(a) && n > 0.02 && tr.Carrier(i.Start+1e-6) == nil {
					way = m.length(n)
					pace = m.speed(m.topSpeed(tr, i.Start, i.End))
				}
			}
			if to == from || !walks(a) {
				to = ""
			}
			takes, done := seconds(i.Length()), m.until(i.End)
			if i.Open && !walks(a) {
				takes, done = word("holds"), cells(word(""), word(""))
			}
			does := m.says(a)
			if a.Subject != plan.Thing(who) {
				does = "with " + nameOf(clockSubject(a)) + ": " + does
			}
			t.add(a, p.beat(a), m.clock(i.Start), p.cue(a), cells(word(does), word(from), word(to), word(m.passed(p, a)), way), done, cells(takes, pace, word(m.counts(i.Start, i.End, i.Open))), p.slip(a))
		}
	}
	return t
}

// walks says whether a line takes somebody over the floor.
func walks(a *plan.Action) bool {
	switch a.Deed.(type) {
	case *plan.Move, *plan.Leave, *plan.Board, *plan.Spot, *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel, *plan.Handoff:
		return true
	}
	return false
}

// does says whether a line is one for a person: their own, or that of a camera
// they carry that takes them somewhere.
func (m *maker) does(p *part, who *plan.Person, a *plan.Action) bool {
	if a.Subject == plan.Thing(who) {
		return true
	}
	if h, ok := a.Deed.(*plan.Handoff); ok {
		for _, f := range p.tracks.Handoffs {
			if f.Action == a {
				return f.Giver == who || f.Taker == who || f.Weight == who
			}
		}
		return h.With == who || h.Weight == who
	}
	if mount, ok := a.Deed.(*plan.Mount); ok {
		return mount.With == who
	}
	thing, ok := m.carried(p, a)
	return ok && thing == plan.Thing(who)
}

func clockSubject(a *plan.Action) plan.Thing {
	if c := cameraOf(a); c != nil {
		return c
	}
	return a.Subject
}

// passed is the marks on a move's way with the clock at each.
func (m *maker) passed(p *part, a *plan.Action) string {
	s := ""
	list := m.passings(p, a)
	for i, k := range list {
		if i == len(list)-1 && a.Deed.(*plan.Move).Path.To != nil {
			break
		}
		if s != "" {
			s += ", "
		}
		s += k.place + " " + k.at.Clock()
	}
	return s
}

// counts is a stretch in counts, and the bar it begins in.
func (m *maker) counts(from, to units.Seconds, open bool) string {
	k := m.p.Take.Tempo
	if k == nil || k.BPM <= 0 || k.In <= 0 {
		return ""
	}
	music := timecode.Tempo{BPM: k.BPM, In: k.In}
	bar, c := music.Position(from)
	s := "from bar " + units.Number(float64(bar), 0) + "." + units.Number(c, 1)
	if open {
		return s
	}
	return units.Number(float64(to-from)/float64(music.Beat()), 1) + " " + s
}
