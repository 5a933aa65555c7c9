package sheets

import (
	"context"
	"fmt"
	"math"
	"sort"

	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/rehearse"
	"longhand/lang/safety"
	"longhand/lang/units"
)

// rehearsal stands where a sheet's department does: it is everybody's.
const rehearsal departments.Name = "rehearsal"

// The tables of a rehearsal's sheet.
const (
	HoldsTable   = "holds"   // how often it holds, what the tries are worth
	BreaksTable  = "breaks"  // what breaks it, what does so first most often first
	CuesTable    = "cues"    // what each cue has to spare, in order of time
	ChangesTable = "changes" // what would help most
	BeginsTable  = "begins"  // when each beat begins, and the take ends
	FlawsTable   = "flaws"   // what breaks with nobody late
	PlayedTable  = "played"  // how it was played
)

// People is what a rehearsal of paper has to say of itself.
const People = "people are not dice: this is arithmetic on paper, and no try is worth a safety margin"

// Rehearsal is what came of a rehearsal of a take, as a book of one sheet. All
// that people read of a rehearsal, in whatever form, is taken from here.
func Rehearsal(r *compile.Result, o *rehearse.Outcome) (*Book, error) {
	m, err := newMaker(context.Background(), r)
	if err != nil {
		return nil, err
	}
	b := m.book()
	b.name = string(rehearsal)
	s := Sheet{Department: rehearsal, Title: "Rehearsal", Says: m.comesTo(o)}
	for _, t := range []*Table{m.holds(o), m.breaks(o), m.spare(o), m.changes(o), m.begins(o), m.flaws(o), m.played(o)} {
		s.Tables = append(s.Tables, *t)
	}
	s.Cautions = []string{People}
	if len(m.p.Kit.Vehicles) > 0 {
		s.Cautions = append(s.Cautions, safety.Vehicles.Caution())
	}
	b.Sheets = []Sheet{s}
	return b, nil
}

// comesTo is the whole of it in a few sentences.
func (m *maker) comesTo(o *rehearse.Outcome) []string {
	var out []string
	if n := len(o.AsPlanned); n > 0 {
		out = append(out, "as planned, with nobody late, it breaks already: "+o.AsPlanned[0].What+more(n-1))
	}
	out = append(out, "it holds "+chance(o.Odds.Chance)+" of the time"+interval(o.Odds, ", 95 times in 100"))
	if o.Tries > 0 {
		once := o.Odds.Once(o.Tries)
		works := "one of them works with "
		if o.Tries == 1 {
			works = "it works with "
		}
		out = append(out, m.tried(o)+": "+works+chance(once.Chance)+interval(once, ""))
	}
	return append(out, fmt.Sprintf("it takes %s as planned, %s, %s and %s at 5, 50 and 95 %%", o.Planned.Clock(), o.Length.P5.Clock(), o.Length.P50.Clock(), o.Length.P95.Clock()))
}

func more(n int) string {
	if n <= 0 {
		return ""
	}
	return fmt.Sprintf(", and %d more", n)
}

// tried is how many tries there are, and why so many.
func (m *maker) tried(o *rehearse.Outcome) string {
	n, fit := fmt.Sprintf("%d tries", o.Tries), " fit"
	if o.Tries == 1 {
		n, fit = "1 try", " fits"
	}
	if o.Light == "" {
		return n
	}
	return n + fit + " in the light, " + o.Light
}

// chance prints a chance so that what can happen is never told as sure.
func chance(p float64) string {
	switch per := math.Round(100 * p); {
	case per >= 100 && p < 1:
		return "over 99 %"
	case per <= 0 && p > 0:
		return "under 1 %"
	default:
		return units.Number(per, 0) + " %"
	}
}

// interval is that of a chance, in brackets; "" where it would print as the
// chance itself.
func interval(o rehearse.Odds, more string) string {
	low, high := chance(o.Low), chance(o.High)
	if low == high {
		return ""
	}
	return " (" + low + " to " + high + more + ")"
}

func chanceCell(p float64) Cell { return number(100*p, 2, chance(p)) }

func chances(o rehearse.Odds) []Cell {
	return cells(chanceCell(o.Chance), chanceCell(o.Low), chanceCell(o.High))
}

func chanceColumns(title string) []Column {
	return []Column{
		{Key: "chance", Title: title, Unit: "%", About: "part of the playings"},
		{Key: "low", Title: "at least", Unit: "%", About: "lower end of the interval that holds the true chance 95 times in 100"},
		{Key: "high", Title: "at most", Unit: "%", About: "upper end of it"},
	}
}

func (m *maker) holds(o *rehearse.Outcome) *Table {
	t := table(HoldsTable, "How often it holds", col("what", "what", "holds or works"), chanceColumns("chance"), col("of", "of", "the playings, or the tries, it is about"))
	of := units.Number(float64(o.Runs), 0) + " playings"
	if o.Runs == 1 {
		of = "1 playing"
	}
	t.add(nil, cells(word("the take holds")), chances(o.Odds), cells(word(of)))
	if o.Tries > 0 {
		t.add(nil, cells(word("one try at least works")), chances(o.Odds.Once(o.Tries)), cells(word(m.tried(o))))
		t.note("tries are taken to be as good as each other, and to know nothing of each other")
	} else {
		t.note("the plan gives no window of light that tells how many tries there are")
	}
	return t
}

// moment is the cells of a moment in the take, and the beat it is in.
func (m *maker) moment(t units.Seconds) []Cell {
	c := m.clock(min(max(t, 0), m.take.clock.Length))
	if last := float64(m.take.tracks.Frames - 1); c[1].Value != nil && *c[1].Value > last && last >= 0 {
		c[1] = count(int(last))
	}
	return c
}

func (m *maker) breaks(o *rehearse.Outcome) *Table {
	t := table(BreaksTable, "What breaks it", col("what", "what", "finding, who, and the lens it is before; or what the clock shows"),
		measure("first", "first", "%", "part of the playings in which it is the first thing to break"),
		measure("all", "at all", "%", "part of the playings in which it breaks"),
		measure("by", "by", "s", "how much is missing when it breaks: the median; empty where that is no time"),
		clockColumns(), col("in", "in", "beat in which that is"),
		measure("from", "from", "s", "5 of 100 times it shows before this, on the plan's clock"),
		measure("until", "until", "s", "5 of 100 times it shows after this"),
		measure("first_playings", "first", "playings", "number of playings in which it is the first thing to break"),
		measure("playings", "at all", "playings", "number of playings in which it breaks"))
	for _, key := range []string{"from", "until", "first_playings", "playings"} {
		t.Columns[t.Column(key)].Quiet = true
	}
	t.Columns[t.Column("clock")].Title, t.Columns[t.Column("clock")].About = "about at", "where in the take it shows, on the plan's clock: the median"
	t.Empty = "Nothing broke in any playing."
	part := func(runs int) Cell {
		p := float64(o.Share(runs))
		return number(p, 2, chance(p/100))
	}
	for _, c := range o.Causes {
		by := word("")
		if c.By > 0 {
			by = number(float64(c.By), 3, c.By.String())
		}
		when := m.moment(c.At.P50)
		t.add(nil, cells(word(c.What), part(c.First), part(c.Runs), by), when, m.take.beatAt(c.At.P50),
			cells(number(float64(c.At.P5), 3, units.Number(float64(c.At.P5), 1)), number(float64(c.At.P95), 3, units.Number(float64(c.At.P95), 1)), count(c.First), count(c.Runs)))
	}
	if len(t.Rows) > 0 {
		t.note("first: the earliest thing to break in a playing; what comes after it may be its doing")
	}
	return t
}

// Breaking is what a row of the table of what breaks is about, in words: what, and
// by how much when it does.
func Breaking(t *Table, row int) string {
	what := t.Text(row, "what")
	if by := t.Text(row, "by"); by != "" {
		what += ", by " + by
	}
	return what
}

// Going is who does what in a row of the table of cues.
func Going(t *Table, row int) string { return t.Text(row, "who") + " " + t.Text(row, "does") }

// spare is what each cue has to spare: how much later it could come before
// something that waits for it breaks.
func (m *maker) spare(o *rehearse.Outcome) *Table {
	quantiles := func(key, title, about string) []Column {
		return []Column{
			{Key: key + "_5", Title: "5 %", Unit: "s", About: about + ", which 5 of 100 playings stay at or below"},
			{Key: key + "_50", Title: "50 %", Unit: "s", About: about + ", in the middle of the playings"},
			{Key: key + "_95", Title: "95 %", Unit: "s", About: about + ", which 95 of 100 playings stay at or below"},
		}
	}
	t := table(CuesTable, "What each cue has to spare", beatColumn(), clockColumns(), col("who", "who", "goes"), col("does", "does", "the line in full"), cueColumn(),
		measure("planned", "planned", "s", "how much later it could come as planned before something stated no longer holds; printed where it is under 2 minutes"),
		quantiles("spare", "", "what it has to spare, less than nothing where it breaks something"),
		measure("short", "short", "%", "part of the playings in which it has less than nothing to spare"),
		quantiles("start", "", "when it comes, on the take's clock"))
	for _, key := range []string{"start_5", "start_50", "start_95"} {
		t.Columns[t.Column(key)].Quiet = true
	}
	t.Empty = "No cue has anything stated that waits for it."
	margins := append([]rehearse.Margin(nil), o.Margins...)
	c := m.take.clock
	sort.SliceStable(margins, func(i, j int) bool { return c.Of(margins[i].Action).Start < c.Of(margins[j].Action).Start })
	three := func(q rehearse.Quantiles, cell func(units.Seconds) Cell) []Cell {
		return cells(cell(q.P5), cell(q.P50), cell(q.P95))
	}
	start := func(s units.Seconds) Cell { return number(float64(s), 3, s.Clock()) }
	for _, k := range margins {
		short := float64(o.Share(k.Broken))
		text := chance(short / 100)
		if k.Broken == 0 {
			text = ""
		}
		t.add(k.Action, m.take.beat(k.Action), m.clock(c.Of(k.Action).Start), cells(word(whoGoes(k.Action)), word(m.says(k.Action))), m.take.cue(k.Action),
			cells(spareCell(k.Planned)), three(k.Slack, spareCell), cells(number(short, 2, text)), three(k.Start, start))
	}
	if len(t.Rows) > 0 {
		t.note("to spare: how much later it could come before something the plan states no longer holds; below 0 it did not hold; printed where it is under 2 minutes")
		spreadOver(t, "5 % to 95 %, in seconds", "spare_5", "spare_50", "spare_95")
	}
	return t
}

// spareCell is slack in a column of its own, in seconds.
func spareCell(s units.Seconds) Cell {
	if s >= farSlack {
		return number(float64(s), 3, "")
	}
	return number(float64(s), 3, units.Number(float64(s), 1))
}

func (m *maker) changes(o *rehearse.Outcome) *Table {
	t := table(ChangesTable, "What would help most", col("change", "change", "tried by itself, with the same luck"),
		measure("gain", "gain", "points", "per cent of all playings by which it holds more often"), chanceColumns("then holds"))
	switch {
	case o.Partly && !o.Sought:
		t.Empty = "Interrupted before changes were looked for."
	case o.Partly:
		t.Empty = "Interrupted before a change was found that makes it hold more often."
	case o.Sought:
		t.Empty = "None of the changes that were tried makes it hold more often."
	case len(o.Causes) == 0:
		t.Empty = "Nothing broke, so nothing would help."
	default:
		t.Empty = "Changes were not looked for; they are if asked for, with --changes."
	}
	for _, k := range o.Changes {
		gain := fmt.Sprintf("%+.0f", 100*k.Gain)
		if math.Abs(k.Gain) < 0.005 {
			gain = "under +1"
		}
		t.add(k.Action, cells(word(k.What), number(100*k.Gain, 2, gain)), chances(k.Odds))
	}
	if o.Partly && o.Sought {
		t.note("interrupted: not all that could help was tried")
	}
	if len(t.Rows) > 0 {
		t.note("a change here is arithmetic: whoever is to go quicker or sooner, and whoever is in charge of their safety, says whether they can")
	}
	return t
}

func (m *maker) begins(o *rehearse.Outcome) *Table {
	at := func(key, title, about string) []Column {
		return []Column{{Key: key, Title: title, Unit: "s", About: about}}
	}
	t := table(BeginsTable, "When each beat begins", col("beat", "beat", "number and title, or the end of the take"),
		at("planned", "planned", "on the take's clock"), at("begins_5", "5 %", "5 of 100 playings are there by then"), at("begins_50", "50 %", "half of the playings are"), at("begins_95", "95 %", "95 of 100 playings are"))
	cell := func(s units.Seconds) Cell { return number(float64(s), 3, s.Clock()) }
	row := func(name string, planned units.Seconds, q rehearse.Quantiles) {
		t.add(nil, cells(word(name), cell(planned), cell(q.P5), cell(q.P50), cell(q.P95)))
	}
	for _, b := range o.Beats {
		if b.Beat != nil {
			row(beatName(b.Beat), b.Planned, b.Start)
		}
	}
	row("the end", o.Planned, o.Length)
	return t
}

// flaws are what breaks with everybody on time.
func (m *maker) flaws(o *rehearse.Outcome) *Table {
	t := table(FlawsTable, "What breaks with nobody late", col("what", "what", "finding, who, and the lens it is before; or what the clock shows"), clockColumns())
	t.Empty = "Nothing breaks while everybody is on time."
	for _, x := range o.AsPlanned {
		t.add(nil, cells(word(x.What)), m.moment(x.At))
	}
	return t
}

func (m *maker) played(o *rehearse.Outcome) *Table {
	t := table(PlayedTable, "How it was played", col("item", "item", "what it is about"), col("value", "value", "what was done"))
	row := func(item, value string) { t.add(nil, cells(word(item), word(value))) }
	row("playings", units.Number(float64(o.Runs), 0))
	if o.Runs < o.Asked {
		row("asked for", fmt.Sprintf("%d; interrupted", o.Asked))
	}
	row("seed", fmt.Sprint(o.Seed))
	if o.ClockOnly {
		row("looked at", "the clock alone, not what the lenses see")
	} else {
		row("looked at", "clock, ways, what the lenses see at each frame, findings")
	}
	from := "the plan's spreads, else what is usual"
	switch {
	case o.Measured == 1:
		from = "1 time measured at rehearsal, else " + from
	case o.Measured > 1:
		from = fmt.Sprintf("%d times measured at rehearsal, else %s", o.Measured, from)
	}
	row("timing from", from)
	return t
}
