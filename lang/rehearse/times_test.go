package rehearse_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/clock"
	"longhand/lang/rehearse"
	"longhand/lang/units"
)

func TestTemplate(t *testing.T) {
	s := scene()
	var b bytes.Buffer
	require.NoError(t, rehearse.WriteTemplate(&b, clock.Solve(s.p, s), 3))
	assert.Equal(t, `beat,line,what,measured,planned s,try 1,try 2,try 3
one,2,mina walks to M1,took,6,,,
one,3,"mina says ""word word word word word word""",took,3,,,
one,4,otto walks to M2,took,4,,,
one,4,"otto walks to M2, when mina reaches M1",after cue,0,,,
two,1,A circles otto,took,5,,,
two,1,"A circles otto, as the beat begins",after cue,0,,,
two,2,"cue dusk, as the beat begins",after cue,0,,,
two,3,otto walks to M3,took,7,,,
two,3,"otto walks to M3, as the beat begins",after cue,0,,,
`, b.String())
	times, err := rehearse.ReadTimes(&b, clock.Solve(s.p, s))
	require.NoError(t, err, "an empty template is no mistake")
	assert.Zero(t, times.Len())
}

const head = "beat,line,what,measured,planned s,try 1,try 2,try 3\n"

func read(s *script, rows string) (*rehearse.Times, error) {
	return rehearse.ReadTimes(strings.NewReader(rows), clock.Solve(s.p, s))
}

func TestMeasuredTimesReplaceSpreads(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one")
	first := s.walk(mina, "M1", 6)
	second := s.walk(otto, "M2", 4)
	second.Timing.Start = reached(mina, "M1")
	second.Timing.By = since(20)
	times, err := read(s, head+
		"one,1,mina walks to M1,took,6,7.8,8.0,8.2\n"+
		"one,2,otto walks to M2,took,4,0:05,,\n"+
		"one,2,\"otto walks to M2, when mina reaches M1\",after cue,0,0.4,0.6,0.5\n")
	require.NoError(t, err)
	assert.Equal(t, 7, times.Len())
	assert.Equal(t, []units.Seconds{7.8, 8, 8.2}, times.Took(first))
	assert.Equal(t, []units.Seconds{0.4, 0.6, 0.5}, times.AfterCue(second))
	// Means 8, 0.5 and 5; spreads 0.2 and 0.1 as measured, and 5 % of 5 s where one
	// try tells none.
	r := play(s, rehearse.Options{Shape: rehearse.Normal, Times: times})
	sd := 0.335410 // of 0.2, 0.1 and 0.25
	assert.InDelta(t, 13.5, float64(r.Length.P50), 0.02)
	assert.InDelta(t, 13.5+1.6449*sd, float64(r.Length.P95), 0.03)
	assert.InDelta(t, 13.5-1.6449*sd, float64(r.Length.P5), 0.03)
}

func TestTablesFromSpreadsheets(t *testing.T) {
	s := newScript()
	s.beat("one")
	a := s.walk(person("mina"), "M1", 6)
	for _, table := range []string{
		"\ufeff" + head + "one,1,mina walks to M1,took,6,7.8,1:08.2,\n",
		"beat;line;what;measured;planned s;a;b\r\none;1;mina walks to M1;took;6;7,8;1:08,2\r\n",
		head + " one , 1, mina walks to M1 , took ,6, 7.8 s, 1:08.2\n",
	} {
		times, err := read(s, table)
		require.NoError(t, err, table)
		assert.Equal(t, []units.Seconds{7.8, 68.2}, times.Took(a))
	}
}

func TestLinesThatReadTheSame(t *testing.T) {
	s := newScript()
	mina := person("mina")
	s.beat("one")
	s.walk(mina, "M1", 6)
	s.walk(mina, "M2", 6)
	again := s.walk(mina, "M1", 6)
	times, err := read(s, head+"one,3,mina walks to M1,took,6,7\n")
	require.NoError(t, err)
	assert.Len(t, times.Took(again), 1)
	assert.Equal(t, 1, times.Len())
}

func TestTablesThatCannotBeRead(t *testing.T) {
	for _, row := range []struct{ table, want string }{
		{"", "rehearsal times: the table is empty; longhand rehearse --template writes one to fill in"},
		{"\ufeff\n", "rehearsal times: the table is empty; longhand rehearse --template writes one to fill in"},
		{"who,what\n", "rehearsal times: the first row has to begin with beat, line, what, measured, planned s"},
		{head + "one,1,mina walks to M7,took,6,7\n", `rehearsal times, row 2: beat "one" has no "mina walks to M7" to time`},
		{head + "six,1,mina walks to M1,took,6,7\n", `rehearsal times, row 2: the plan has no beat "six" with something to time`},
		{head + "one,2,mina walks to M1,tooked,6,7\n", `rehearsal times, row 2: measured is "tooked", not "took" or "after cue"`},
		{head + "one,2,mina walks to M1,took,6,7,fast\n", `rehearsal times, row 2: try 2: "fast" is not a time in seconds like 7.4 or 1:07.4`},
		{head + "one,2,mina walks to M1,took,6,-7\n", `rehearsal times, row 2: try 1: "-7" is not a time in seconds like 7.4 or 1:07.4`},
		{head + "one,2,mina walks to M1,took,6,NaN\n", `rehearsal times, row 2: try 1: "NaN" is not a time in seconds like 7.4 or 1:07.4`},
		{head + "one,2,mina walks to M1,took,6,1:77\n", `rehearsal times, row 2: try 1: "1:77" is not a time in seconds like 7.4 or 1:07.4`},
		{head + "one,2,mina walks to M1,took,6,7\none,2,mina walks to M1,took,6,8\n", "rehearsal times, row 3: mina walks to M1 was timed in row 2 already"},
		{head + "one,2\n", "rehearsal times, row 2: has 2 fields, not the 5 it begins with"},
		{head + "one,9,x,took,6,7\none,8,y,took,6,7\n", "rehearsal times, row 2: beat \"one\" has no \"x\" to time\nrehearsal times, row 3: beat \"one\" has no \"y\" to time"},
		{head + "one,2,\"mina,took\n", "rehearsal times, row 2: a quotation mark is missing or one too many"},
	} {
		_, err := read(scene(), row.table)
		require.Error(t, err, row.table)
		assert.Equal(t, row.want, err.Error())
	}
	times, err := read(scene(), head)
	require.NoError(t, err)
	assert.Zero(t, times.Len())
	// A line that went from the plan may stay in the table while nobody timed it.
	times, err = read(scene(), head+"one,9,ida waits,took,6,,\n")
	require.NoError(t, err)
	assert.Zero(t, times.Len())
}

func FuzzReadTimes(f *testing.F) {
	f.Add(head + "one,2,mina walks to M1,took,6,7.5\n")
	f.Add("beat;line;what;measured;planned s\none;2;mina walks to M1;took;6;7,5")
	f.Add("\ufeff\"")
	s := scene()
	c := clock.Solve(s.p, s)
	f.Fuzz(func(t *testing.T, table string) {
		times, err := rehearse.ReadTimes(strings.NewReader(table), c)
		if (times == nil) == (err == nil) {
			t.Fatal("either times or an error")
		}
	})
}
