package sheets

import (
	"strings"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// The columns of a moment. Frames count from 0 at the take's first; a pickup has
// a clock of its own.
func clockColumns() []Column {
	return []Column{
		{Key: "clock", Title: "clock", About: "minutes and seconds since the take began"},
		{Key: "frame", Title: "frame", Unit: "frames", About: "number of the first frame at or after it, the take's first being 0"},
		{Key: "timecode", Title: "timecode", About: "hours:minutes:seconds:frames since the take began", Quiet: true},
	}
}

func untilColumns(title string) []Column {
	return []Column{
		{Key: "until", Title: title, About: "when it ends, on the same clock"},
		{Key: "until_frame", Title: "frame", Unit: "frames", About: "frame at which it ends", Quiet: true},
	}
}

func beatColumn() []Column {
	return group("beat", "beat", "number and title of the beat, or the pickup")
}

func cueColumn() []Column {
	return col("cue", "cue", "what to listen or look for")
}

func slipColumns() []Column {
	return []Column{
		{Key: "free", Title: "may slip", Unit: "s", About: "how much later it may happen before anything else does; printed where it is under 2 minutes"},
		{Key: "slack", Title: "breaks after", Unit: "s", About: "how much later it may happen before something stated no longer holds; empty: nothing stated waits for it; printed where it is under 2 minutes"},
	}
}

// atEnd is how near the end something has to be to come with it: focus marks stand
// a little before it.
const atEnd units.Seconds = 2e-3

// frame is the first one at or after a moment, which is the first to show what
// happens then, as on the drawings and in the cut list; of what comes with the end
// of the take, or of a pickup, the last there is.
func (m *maker) frame(t units.Seconds) units.Frame {
	f := m.rate.From(t)
	for _, p := range m.parts {
		if d := t - p.tracks.Length(); d > -atEnd && d < atEnd {
			f = min(f, units.Frame(p.tracks.Frames-1))
		}
	}
	return f
}

// clock is the cells of a moment.
func (m *maker) clock(t units.Seconds) []Cell {
	f := m.frame(t)
	code := ""
	if m.code != nil {
		code = m.code.Label(f)
	}
	return cells(word(t.Clock()), count(int(f)), word(code))
}

func (m *maker) until(t units.Seconds) []Cell {
	return cells(word(t.Clock()), count(int(m.frame(t))))
}

// frameClock is the cells of a frame.
func (m *maker) frameClock(f units.Frame) []Cell {
	c := m.clock(m.rate.Time(f))
	n := float64(f)
	c[1] = number(n, 0, units.Number(n, 0))
	if m.code != nil {
		c[2] = word(m.code.Label(f))
	}
	return c
}

// slip is how much a line may slip.
func (p *part) slip(a *plan.Action) []Cell {
	i := p.clock.Of(a)
	return cells(slack(i.Free), slack(i.Slack))
}

// beat is the cell that says which beat, or pickup, a line is in.
func (p *part) beat(a *plan.Action) []Cell {
	if a != nil && a.Beat != nil {
		return cells(word(beatName(a.Beat)))
	}
	return cells(word(p.name))
}

// beatAt is the same for a time.
func (p *part) beatAt(t units.Seconds) []Cell {
	if p.pickup != nil {
		return cells(word(p.name))
	}
	if b := p.clock.BeatAt(t + 1e-9); b != nil {
		return cells(word(beatName(b)))
	}
	return cells(word(p.name))
}

func beatName(b *plan.Beat) string {
	return units.Number(float64(b.Index+1), 0) + ". " + b.Title
}

// cue is the cell of a line's cue in words.
func (p *part) cue(a *plan.Action) []Cell { return cells(word(p.words(a))) }

// words is a line's cue in words.
func (p *part) words(a *plan.Action) string {
	s := p.clock.Words(a)
	if p.pickup != nil {
		s = strings.Replace(s, "the beat", "the pickup", 1)
	}
	return s
}
