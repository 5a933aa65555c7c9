package bind

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// clean binds a text that has no mistake.
func clean(t *testing.T, text string) *plan.Plan {
	p, found := bindText("plan.take", text)
	for _, d := range found {
		t.Errorf("line %d: %s: %s %v", d.Span.StartPos().Line, d.Code, d.Message, d.Notes)
	}
	require.Empty(t, found)
	return p
}

// TestFilm: running times of film. 35 mm film of four perforations has 16 frames
// a foot, so that 1000 ft run 11 min 6 2/3 s at 24 fps and 10 min 40 s at 25; of
// three perforations 14 min 48.9 s, of two 22 min 13.3 s; 16 mm film has 40 frames
// a foot, so that 400 ft run as long as 1000 ft of 35 mm (RUN-1 to RUN-9: film
// archive glossaries and a handbook of 1938).
func TestFilm(t *testing.T) {
	for _, c := range []struct {
		film, rate string
		want       units.Seconds
	}{
		{"35mm-4perf 1000 ft", "24", 666.67},
		{"35mm-4perf 400 ft", "24", 266.67},
		{"35mm-4perf 1000 ft", "25", 640},
		{"35mm-3perf 1000 ft", "24", 888.89},
		{"35mm-2perf 400 ft", "24", 533.33},
		{"16mm 400 ft", "24", 666.67},
		{"16mm 100 ft", "24", 166.67},
		{"35mm-4perf 304.8 m", "24", 666.67},
	} {
		p := clean(t, "take \"T\"\n  film "+c.film+"\n  rate "+c.rate+" fps\n")
		require.NotNil(t, p.Take.Record)
		assert.InDelta(t, float64(c.want), float64(p.Take.Record.Duration), 0.01, c.film)
	}
}

func TestTake(t *testing.T) {
	p := clean(t, `take "Last Collection"
  scene 31A
  rate 23.976 fps
  aspect 16:9
  shutter 172.8 deg
  sensitivity 800
  pace 160 words/min
  units feet
  tempo 120 bpm in 3
  place 33.9 S 70.7 W
  date 2026-08-20 zone -04:30
  roll in golden-evening
  reset 11 min
  record 1:04:00
  revision "Blue" 2026-08-02
`)
	k := p.Take
	assert.Equal(t, "Last Collection", k.Title)
	assert.Equal(t, "31A", k.Scene)
	assert.Equal(t, units.Rate{Num: 24000, Den: 1001}, k.Rate)
	assert.InDelta(t, 16.0/9, k.Aspect, 1e-12)
	assert.InDelta(t, 172.8, float64(k.Shutter), 1e-9)
	assert.Equal(t, 800, k.Sensitivity)
	assert.InDelta(t, 160, k.Pace, 0)
	assert.Equal(t, units.Feet, k.Units)
	assert.Equal(t, 120.0, k.Tempo.BPM)
	assert.Equal(t, 3, k.Tempo.In)
	assert.Equal(t, units.Degrees(-33.9), k.Place.Lat)
	assert.Equal(t, units.Degrees(-70.7), k.Place.Lon)
	assert.Equal(t, units.Seconds(-4.5*3600), k.Date.Zone)
	assert.Equal(t, "golden-evening", k.Roll.Name)
	assert.Equal(t, units.Seconds(660), k.Reset)
	assert.Equal(t, units.Seconds(3840), k.Record.Duration)
	assert.Equal(t, "Blue", k.Revision)
	assert.Equal(t, "2026-08-02", k.RevisionDate)
}

func TestDefaultsOfATake(t *testing.T) {
	p := clean(t, "take \"T\"\n")
	assert.Equal(t, units.Rate{Num: 24, Den: 1}, p.Take.Rate)
	assert.Equal(t, units.Degrees(180), p.Take.Shutter)
	assert.Equal(t, 150.0, p.Take.Pace)
	assert.Equal(t, units.Metric, p.Take.Units)
	assert.Zero(t, p.Take.Aspect)
}

// TestFeet: bare numbers are feet where the plan says so, and feet and inches
// may stand anywhere (the foot is 0.3048 m by the agreement of 1959).
func TestFeet(t *testing.T) {
	p := clean(t, `take "T"
  units feet

set "S"
  wall street (0, 0) (80, 0) high 16' thick 4 in
  door dock on street 16' to 24'6" high 8'6"
  mark M1 (10, 6'6", 3)
  mark M2 6'6" left of M1
  pillar post (1 m, 2) round 1 ft

kit
  camera A sensor 0.98 in x 0.735 in
  rig cart cart size 8' x 4'

people
  performer mina height 5'4 1/2"
`)
	const foot = 0.3048
	w, d, m1, m2 := p.Set.Walls[0], p.Set.Doors[0], p.Set.Marks[0], p.Set.Marks[1]
	assert.InDelta(t, 80*foot, w.Line[1].X, 1e-9)
	assert.InDelta(t, 16*foot, float64(w.High.High), 1e-9)
	assert.InDelta(t, 0.1016, float64(w.Thick), 1e-9)
	assert.InDelta(t, 24.5*foot, float64(d.To), 1e-9)
	assert.InDelta(t, 8.5*foot, float64(d.High.High), 1e-9)
	assert.InDelta(t, 6.5*foot, m1.Point.Y, 1e-9)
	require.NotNil(t, m1.Z)
	assert.InDelta(t, 3*foot, float64(*m1.Z), 1e-9)
	assert.InDelta(t, 3.5*foot, m2.Point.X, 1e-9)
	assert.InDelta(t, 1, p.Set.Pillars[0].Centre.X, 1e-9)
	assert.InDelta(t, 2*foot, p.Set.Pillars[0].Centre.Y, 1e-9)
	// The full aperture of 35 mm film, 24.892 x 18.669 mm (SMPTE ST 59, from memory).
	assert.InDelta(t, 24.892, float64(p.Kit.Cameras[0].Width), 1e-3)
	assert.InDelta(t, 18.669, float64(p.Kit.Cameras[0].Height), 1e-3)
	assert.InDelta(t, 8*foot, float64(p.Kit.Rigs[0].Length), 1e-9)
	assert.InDelta(t, 5*foot+4.5*0.0254, float64(p.People[0].Height), 1e-9)
	assert.True(t, p.People[0].HeightGiven)
}

func TestPlaces(t *testing.T) {
	p := clean(t, `take "T"

set "S"
  mark M1 (6, 2)
  mark M2 M1 + (1, 2, 0.5)
  mark M3 80 cm right of M2

people
  performer mina

beat "One"
  mina walks from M1 via 2 m left of M2, (3, 4) to 1.5 m before M3 at 1.2 m/s facing M1
  mina walks round M1 270 deg right at 2 m
  mina walks to 0.5 m after M1 straight backwards
  mina walks eight round M1, M2 at 1 m
`)
	move := func(i int) plan.Path { return p.Actions[i].Deed.(*plan.Move).Path }
	first := move(0)
	assert.Equal(t, plan.Curved, first.Shape)
	assert.True(t, first.From.Exact())
	require.Len(t, first.Via, 2)
	assert.Equal(t, geom.Vec{X: 5, Y: 4}, first.Via[0].Point)
	assert.Equal(t, "2 m left of M2", first.Via[0].Text)
	assert.False(t, first.Via[0].Exact())
	assert.InDelta(t, 0.5, float64(*first.Via[0].Z), 1e-12)
	assert.Nil(t, first.Via[1].Mark)
	assert.InDelta(t, 7.8, first.To.Point.X, 1e-12)
	assert.InDelta(t, 1.5, float64(first.To.Before), 1e-12)
	assert.Equal(t, "M1", first.Facing.Name())
	assert.Equal(t, "from M1 via 2 m left of M2, (3, 4) to 1.5 m before M3", first.Span.Text())
	assert.InDelta(t, 1.2, float64(*p.Actions[0].Timing.At), 0)
	assert.Equal(t, plan.Round, move(1).Shape)
	assert.Equal(t, plan.Right, move(1).Turn)
	assert.InDelta(t, 270, float64(move(1).Angle), 0)
	assert.InDelta(t, 2, float64(move(1).Radius), 0)
	assert.Equal(t, plan.Straight, move(2).Shape)
	assert.True(t, move(2).Backwards)
	assert.InDelta(t, -0.5, float64(move(2).To.Before), 1e-12)
	assert.Equal(t, plan.Eight, move(3).Shape)
	assert.Equal(t, geom.Vec{X: 7, Y: 4}, move(3).Other.Point)
}

// TestTimes: counts and bars by their definition: at 96 beats a minute a count
// lasts 0.625 s.
func TestTimes(t *testing.T) {
	p := clean(t, `take "T"
  rate 25 fps
  tempo 96 bpm in 4

people
  performer mina
  performer otto

beat "One" 1:04.5 for 1:30
  mina says "Last collection was at six."
  mina waits in 90 f
  mina waits in 16 counts
  mina waits for 2 bars
  mina waits starting +9 s until 2:00
  otto waits starting bar 12.3 in 500 ms by +2 min
  otto waits until mina says "COLLECTION"
  otto waits when mina says "at six." minus 0.5 s
  otto says "So it was." with

beat "Two" when beat "One" ends plus 1 s
`)
	timing := func(i int) plan.Timing { return p.Actions[i].Timing }
	assert.Equal(t, plan.OnClock, p.Beats[0].Start.Kind)
	assert.InDelta(t, 64.5, float64(p.Beats[0].Start.Offset), 1e-12)
	assert.InDelta(t, 90, float64(p.Beats[0].For), 1e-12)
	assert.Equal(t, 5, p.Actions[0].Deed.(*plan.Say).Words)
	assert.InDelta(t, 3.6, float64(*timing(1).In), 1e-12)
	assert.InDelta(t, 10, float64(*timing(2).In), 1e-12)
	assert.InDelta(t, 5, float64(*timing(3).In), 1e-12)
	assert.Equal(t, plan.SinceBeat, timing(4).Start.Kind)
	assert.InDelta(t, 9, float64(timing(4).Start.Offset), 1e-12)
	assert.Equal(t, plan.OnClock, timing(4).Until.Kind)
	assert.InDelta(t, 120, float64(timing(4).Until.Offset), 1e-12)
	assert.Equal(t, plan.OnClock, timing(5).Start.Kind)
	assert.InDelta(t, 46*0.625, float64(timing(5).Start.Offset), 1e-12)
	assert.InDelta(t, 120, float64(timing(5).By.Offset), 1e-12)
	assert.Equal(t, "COLLECTION", timing(6).Until.Event.Text)
	assert.InDelta(t, -0.5, float64(timing(7).Start.Offset), 1e-12)
	assert.Equal(t, `mina says "at six." minus 0.5 s`, timing(7).Start.Text)
	assert.True(t, p.Actions[8].With)
	assert.Equal(t, plan.BeatEnds, p.Beats[1].Start.Event.Kind)
	assert.Same(t, p.Beats[0], p.Beats[1].Start.Event.Beat)
	assert.InDelta(t, 1, float64(p.Beats[1].Start.Offset), 1e-12)
}

// TestUsedFile: a file that is used counts in its own units.
func TestUsedFile(t *testing.T) {
	texts := map[string]string{
		"plans/main.take": "use \"../sets/hall.take\"\ntake \"T\"\nset \"Main\"\n  mark M1 (1, 1)\n",
		"sets/hall.take":  "take \"Other\"\n  units feet\nset \"Hall\"\n  mark M2 (10, 10)\n  mark M3 1 m left of M1\npeople\n  performer mina\nbeat \"Not taken\"\n",
	}
	files, bag := Load(func(path string) (string, error) { return texts[path], nil }, "plans/main.take")
	require.Zero(t, bag.Len())
	p, bag := Bind(files)
	require.Zero(t, bag.Len(), bag.Sorted())
	require.Len(t, p.Files, 2)
	assert.Equal(t, "sets/hall.take", p.Files[1].Name)
	assert.Equal(t, "T", p.Take.Title)
	assert.Equal(t, "Main", p.Set.Title)
	require.Len(t, p.Set.Marks, 3)
	assert.InDelta(t, 3.048, p.Set.Marks[1].Point.X, 1e-9)
	assert.InDelta(t, 0, p.Set.Marks[2].Point.X, 1e-9)
	assert.Len(t, p.People, 1)
	assert.Empty(t, p.Beats)
}

func TestNothingToBind(t *testing.T) {
	p, bag := Bind(nil)
	assert.NotNil(t, p)
	assert.Zero(t, bag.Len())
	files, bag := Load(func(string) (string, error) { return "", assert.AnError }, "none.take")
	assert.Empty(t, files)
	assert.Equal(t, 1, bag.Errors())
}

func TestDefaultsAreListedInBothSystems(t *testing.T) {
	metric, feet := Defaults(units.Metric), Defaults(units.Feet)
	require.Equal(t, len(metric), len(feet))
	seen := map[string]bool{}
	for i, d := range metric {
		assert.False(t, seen[d.Name], d.Name)
		seen[d.Name] = true
		assert.NotEmpty(t, d.Value)
		assert.NotEmpty(t, d.Source)
		assert.Equal(t, d.Name, feet[i].Name)
	}
}

// A line is as long as the words one says in it: marks of punctuation are none,
// two words without a blank between them are two.
func TestSpokenWordsAreCountedAsSpoken(t *testing.T) {
	for text, words := range map[string]int{"Wait - not that one.": 4, "Wait — not—that one.": 4, "Well-known? 2.5 m!": 3, "No…no.": 2, "You & me": 3, "Half, 50 %.": 3} {
		p, found := bindText("t.take", "people\n  performer mina\nbeat \"B\"\n  mina says \""+text+"\"\n")
		require.Empty(t, found, text)
		require.Equal(t, words, p.Actions[0].Deed.(*plan.Say).Words, text)
	}
	_, found := bindText("t.take", "people\n  performer mina\nbeat \"B\"\n  mina says \" - \"\n")
	require.Len(t, found, 1, "a dash alone is no line")
}
