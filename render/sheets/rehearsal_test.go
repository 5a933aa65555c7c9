package sheets

import (
	"bytes"
	"context"
	"math"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/rehearse"
	"longhand/lang/units"
)

// tightPlan has a walk that is often late, a line that often is not, and a light
// cue that nothing waits for.
const tightPlan = `take "Tight"
  rate 24 fps
  date 2026-08-20 zone +01:00
  place 53.5 N 2.2 W
  roll in 20:00 to 20:30
  reset 8 min

set "Room"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (6, 5)

people
  performer mina "Sorter"
  performer otto "Clerk"

beat "Across"
  mina walks from M1 to M2 at 1.2 m/s by +6 s
  otto says "There you are." when mina reaches M2 by +9 s

beat "Up" when mina reaches M2
  mina walks to M3 at 1 m/s starting +1 s by +40 s
`

// played rehearses a plan by its clock, which takes no time.
func played(t testing.TB, text string, runs, changes int) (*compile.Result, *rehearse.Outcome) {
	t.Helper()
	r, err := compile.Text(context.Background(), "tight.take", text, compile.Options{Workers: 1})
	require.NoError(t, err)
	require.False(t, r.Stopped, "%v", r.Findings)
	player := rehearse.ByClock(r.Plan, r.Tracks.Lengths())
	o := rehearse.Options{Runs: runs, Seed: 3}
	out := &rehearse.Outcome{Report: rehearse.Run(context.Background(), player, o), ClockOnly: true}
	if changes > 0 {
		out.Changes, out.Sought = rehearse.Help(context.Background(), player, o, out.Report, changes), true
	}
	if day, ok := compile.Daylight(r); ok {
		out.Tries, out.Light = day.Tries.Count(), day.Window.Text(day.Day)
	}
	return r, out
}

func TestARehearsalInAllForms(t *testing.T) {
	r, o := played(t, tightPlan, 400, 3)
	b, err := Rehearsal(r, o)
	require.NoError(t, err)
	files, err := b.Files()
	require.NoError(t, err)
	var all bytes.Buffer
	for _, f := range files {
		data := f.Data
		if strings.HasSuffix(f.Name, ".xlsx") {
			data = dump(t, data)
		}
		all.WriteString("-- " + f.Name + " --\n" + strings.ReplaceAll(string(data), "\r\n", "\n"))
	}
	all.WriteString("-- text --\n")
	require.NoError(t, b.RehearsalText(&all, 8))
	golden(t, "rehearsal.txt", all.Bytes())
}

// What the sheet says in numbers is what the rehearsal came to.
func TestTheNumbersOfARehearsalAreItsOwn(t *testing.T) {
	r, o := played(t, tightPlan, 500, 2)
	b, err := Rehearsal(r, o)
	require.NoError(t, err)
	s := &b.Sheets[0]
	value := func(tab *Table, row int, key string) float64 {
		v, ok := tab.Value(row, key)
		require.True(t, ok, "%s %d %s", tab.Key, row, key)
		return v
	}
	holds, _ := s.Table(HoldsTable)
	require.Len(t, holds.Rows, 2)
	assert.InDelta(t, 100*o.Odds.Chance, value(&holds, 0, "chance"), 0.005)
	assert.InDelta(t, 100*o.Odds.Low, value(&holds, 0, "low"), 0.005)
	assert.InDelta(t, 100*(1-math.Pow(1-o.Odds.Chance, float64(o.Tries))), value(&holds, 1, "chance"), 0.005)
	assert.Greater(t, o.Tries, 1)
	breaks, _ := s.Table(BreaksTable)
	require.Len(t, breaks.Rows, len(o.Causes))
	first := 0.0
	for i, c := range o.Causes {
		assert.Equal(t, c.What, breaks.Text(i, "what"))
		first += value(&breaks, i, "first_playings")
		assert.EqualValues(t, c.Runs, value(&breaks, i, "playings"))
		assert.InDelta(t, float64(c.At.P50)*24, value(&breaks, i, "frame"), 1)
	}
	assert.EqualValues(t, o.Runs-o.Odds.Held, first)
	cues, _ := s.Table(CuesTable)
	require.Len(t, cues.Rows, len(o.Margins))
	last := -1.0
	for i, row := range cues.Rows {
		assert.GreaterOrEqual(t, value(&cues, i, "frame"), last, "in order of time")
		last = value(&cues, i, "frame")
		for _, m := range o.Margins {
			if m.Action == row.Action {
				assert.InDelta(t, float64(m.Slack.P5), value(&cues, i, "spare_5"), 0.0005)
				assert.InDelta(t, float64(m.Slack.P95), value(&cues, i, "spare_95"), 0.0005)
				assert.InDelta(t, float64(o.Share(m.Broken)), value(&cues, i, "short"), 0.005)
			}
		}
	}
	sp := cues.Spread
	assert.Less(t, sp.From, 0.0)
	assert.Greater(t, sp.To, 0.0)
	for i := range cues.Rows {
		if low, _, _, ok := cues.Bar(i); ok {
			assert.GreaterOrEqual(t, low, sp.From)
		}
	}
	changes, _ := s.Table(ChangesTable)
	assert.Len(t, changes.Rows, len(o.Changes))
}

func TestARehearsalKeepsToTheSchema(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(JSONSchema))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("schema.json", doc))
	schema, err := c.Compile("schema.json")
	require.NoError(t, err)
	r, o := played(t, tightPlan, 50, 0)
	b, err := Rehearsal(r, o)
	require.NoError(t, err)
	data, err := b.JSON()
	require.NoError(t, err)
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	require.NoError(t, err)
	require.NoError(t, schema.Validate(v))
}

// Nothing that can fail is told as sure, nor anything that can work as hopeless.
func TestChancesInWords(t *testing.T) {
	for p, want := range map[float64]string{
		0: "0 %", 0.0001: "under 1 %", 0.004: "under 1 %", 0.006: "1 %", 0.5: "50 %", 0.994: "99 %", 0.996: "over 99 %", 0.99999: "over 99 %", 1: "100 %",
	} {
		assert.Equal(t, want, chance(p), p)
	}
}

func TestWhatARehearsalComesTo(t *testing.T) {
	says := func(change func(o *rehearse.Outcome)) string {
		r, o := played(t, tightPlan, 60, 0)
		change(o)
		b, err := Rehearsal(r, o)
		require.NoError(t, err)
		files, err := b.Files(HTML, Markdown, CSV, JSON)
		require.NoError(t, err)
		for _, f := range files {
			assert.NotRegexp(t, `NaN|[+-]Inf|%!|<nil>|-0(\.0)? `, string(f.Data), f.Name)
		}
		var text bytes.Buffer
		require.NoError(t, b.RehearsalText(&text, 4))
		return text.String()
	}
	assert.Contains(t, says(func(o *rehearse.Outcome) { o.Tries, o.Light = 1, "dusk" }), "1 try fits in the light, dusk: it works with ")
	assert.NotContains(t, says(func(o *rehearse.Outcome) { o.Tries, o.Light = 0, "" }), "tries")
	assert.Contains(t, says(func(o *rehearse.Outcome) { o.Light = "" }), " tries: one of them works with ")
	assert.Contains(t, says(func(o *rehearse.Outcome) { o.Asked = 900 }), "played 60 times (seed 3), of 900; interrupted")
	assert.Contains(t, says(func(o *rehearse.Outcome) { o.AsPlanned = []rehearse.Broken{{What: "mina is late", At: 4}} }), "as planned, with nobody late, it breaks already: mina is late\n")
	nothing := says(func(o *rehearse.Outcome) { o.Causes, o.Margins, o.Odds = nil, nil, rehearse.NewOdds(60, 60) })
	assert.Contains(t, nothing, "it holds 100 % of the time (94 % to 100 %")
	assert.Contains(t, nothing, "Nothing broke in any playing.")
	assert.Contains(t, nothing, "No cue has anything stated that waits for it.")
	endless := rehearse.Quantiles{P5: 1, P50: 2, P95: units.Seconds(math.Inf(1))}
	assert.Contains(t, says(func(o *rehearse.Outcome) { o.Margins[0].Slack = endless }), " 1        2           0:00.0 mina walks")
}

func TestNoRehearsalOfABrokenPlan(t *testing.T) {
	r, err := compile.Text(context.Background(), "broken.take", "take \"X\"\nbeat \"B\"\n  mina walks to M1\n", compile.Options{})
	require.NoError(t, err)
	_, err = Rehearsal(r, &rehearse.Outcome{})
	assert.Error(t, err)
}
