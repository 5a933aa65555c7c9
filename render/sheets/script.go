package sheets

import (
	"fmt"

	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

func (m *maker) script() ([]*Table, []safety.Topic) {
	return []*Table{m.takeFacts(), m.beatList(), m.cuts(), m.rollTimes(), m.spoken(), m.coverage(), m.coverageLines(), m.allowed()}, nil
}

// takeFacts is the take at a glance.
func (m *maker) takeFacts() *Table {
	t := table("take", "The take", col("item", "item", "what it is about"), col("value", "value", "what the take says"))
	row := func(item, value string) { t.add(nil, cells(word(item), word(value))) }
	c := m.take.clock
	row("length", fmt.Sprintf("%s, %d frames at %s fps", c.Length.Clock(), m.take.tracks.Frames, m.rate))
	row("beats", units.Number(float64(len(m.p.Beats)), 0))
	row("cuts", units.Number(float64(len(m.take.tracks.Cuts)), 0))
	row("pickups", units.Number(float64(len(m.p.Pickups)), 0))
	words := 0
	lines := 0
	for _, a := range m.p.Actions {
		if s, ok := a.Deed.(*plan.Say); ok {
			words += s.Words
			lines++
		}
	}
	row("spoken", fmt.Sprintf("%d lines, %d words", lines, words))
	if s := m.record(); s != "" {
		row("record", s)
	}
	return t
}

// beatList is the beats with in and out.
func (m *maker) beatList() *Table {
	t := table("beats", "Beats", measure("number", "no.", "no.", "in the order of the text"), col("beat", "beat", "title"), clockColumns(), col("cue", "begins", "what to listen or look for"), untilColumns("out"), measure("length", "length", "s", "from in to out"), measure("frames", "frames", "frames", "from in to out"), col("cameras", "rolling", "cameras that roll in it"), measure("lines", "lines", "lines", "spoken lines that begin in it"), measure("slack", "breaks after", "s", "how much later it may begin before something stated no longer holds"))
	for i := range t.Columns {
		if t.Columns[i].Key == "timecode" {
			t.Columns[i].Quiet = false
		}
	}
	t.Empty = "There are no beats in this plan."
	c := m.take.clock
	for _, s := range c.Spans() {
		if s.Beat == nil {
			continue
		}
		var cameras []string
		for _, ct := range m.take.tracks.Cameras {
			for _, r := range ct.Rolls {
				if r.From < s.To-1e-9 && r.To > s.From+1e-9 {
					cameras = append(cameras, ct.Camera.Name)
				}
			}
		}
		lines := 0
		for _, a := range s.Beat.Actions {
			if _, ok := a.Deed.(*plan.Say); ok {
				lines++
			}
		}
		frames := int(m.rate.From(s.To) - m.rate.From(s.From))
		t.add(nil, cells(count(s.Beat.Index+1), word(s.Beat.Title)), m.clock(s.From), cells(word(c.BeatWords(s.Beat))), m.until(s.To), cells(seconds(s.To-s.From), count(frames), word(listed(unique(cameras))), count(lines), slack(c.Beats[s.Beat.Index].Slack)))
	}
	return t
}

// cuts is which camera the edit uses from when.
func (m *maker) cuts() *Table {
	t := table("cuts", "Cuts", beatColumn(), clockColumns(), cueColumn(), col("from", "from", "camera used before"), col("to", "to", "camera used from here"), col("shows", "shows", "what that camera sees then"), slipColumns())
	t.Columns[t.Column("timecode")].Quiet = false
	t.Empty = "There are no cuts: the take plays as it is rolled."
	for _, p := range m.parts {
		before := ""
		for _, ct := range p.cameras() {
			if ct.Rolling(0) && before == "" {
				before = ct.Camera.Name
			}
		}
		for _, k := range p.tracks.Cuts {
			shows := ""
			if ct := p.tracks.Camera(k.Camera); ct != nil {
				shows = targets(ct.Targets(k.At))
			}
			t.add(k.Action, p.beatAt(k.At), m.clock(k.At), p.cue(k.Action), cells(word(before), word(k.Camera.Name), word(shows)), p.slip(k.Action))
			before = k.Camera.Name
		}
	}
	return t
}

// rollTimes is when each camera rolls.
func (m *maker) rollTimes() *Table {
	t := table("rolls", "Rolls", beatColumn(), col("camera", "camera", "name"), clockColumns(), col("cue", "cue", "what to listen or look for"), untilColumns("rests"), measure("length", "length", "s", "of the roll"), measure("frames", "frames", "frames", "of the roll"))
	t.Columns[t.Column("timecode")].Quiet = false
	t.Empty = "No camera rolls in this plan."
	for _, p := range m.parts {
		for _, ct := range p.cameras() {
			for _, r := range ct.Rolls {
				cue := "from first to last frame"
				if r.Action != nil {
					cue = p.words(r.Action)
				}
				t.add(r.Action, p.beatAt(r.From), cells(word(ct.Camera.Name)), m.clock(r.From), cells(word(cue)), m.until(r.To), cells(seconds(r.To-r.From), count(int(m.rate.From(r.To)-m.rate.From(r.From)))))
			}
		}
	}
	return t
}

// spoken is what is said, in order.
func (m *maker) spoken() *Table {
	t := table("lines", "Spoken", beatColumn(), clockColumns(), untilColumns("out"), col("who", "who", "speaks"), col("line", "line", "as written"), col("seen_by", "on", "rolling cameras that have the speaker in frame as the line begins"))
	t.Columns[t.Column("timecode")].Quiet = false
	t.Empty = "Nobody speaks in this plan."
	for _, p := range m.parts {
		for _, a := range p.inTime() {
			d, ok := a.Deed.(*plan.Say)
			if !ok {
				continue
			}
			i := p.clock.Of(a)
			on := listed(p.seenBy(a.Subject, m.rate.From(i.Start)))
			if on == "" {
				on = "nobody's frame"
			}
			t.add(a, p.beat(a), m.clock(i.Start), m.until(i.End), cells(word(a.Who()), word(d.Text), word(on)))
		}
	}
	return t
}

func (p *part) seenBy(thing plan.Thing, f units.Frame) []string {
	var out []string
	for _, c := range p.stage.Cameras {
		for _, r := range p.showing(c, thing) {
			if f >= r.From && f <= r.To {
				out = append(out, c.Name)
			}
		}
	}
	return out
}

// allowed is what was found and the plan accepts, with its reasons.
func (m *maker) allowed() *Table {
	t := table("allowed", "Accepted findings", beatColumn(), clockColumns(), col("code", "code", "of the finding"), col("found", "found", "the finding"), col("because", "why", "as the plan says"))
	t.Empty = "No finding is accepted by an allow."
	for _, p := range m.parts {
		for i := range p.accepted {
			a := &p.accepted[i]
			if a.Allow == nil {
				continue
			}
			beat, when := cells(word(p.name)), cells(word(""), word(""), word(""))
			if len(a.Finding.Frames) > 0 {
				f := a.Finding.Frames[0].From
				beat, when = p.beatAt(m.rate.Time(f)), m.frameClock(f)
			}
			t.add(nil, beat, when, cells(word(string(a.Finding.Code)), word(a.Finding.Message), word(a.Allow.Because)))
		}
	}
	return t
}
