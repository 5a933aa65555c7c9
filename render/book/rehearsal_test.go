package book

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/rehearse"
	"longhand/lang/units"
	"longhand/render/pdf"
	"longhand/render/scene"
	"longhand/render/sheets"
)

// rehearsed plays a take by its clock.
func rehearsed(t testing.TB, r *compile.Result) (*rehearse.Outcome, *sheets.Book) {
	t.Helper()
	player := rehearse.ByClock(r.Plan, r.Tracks.Lengths())
	o := rehearse.Options{Runs: 200, Seed: 4}
	out := &rehearse.Outcome{Report: rehearse.Run(context.Background(), player, o), Tries: 3}
	out.Changes, out.Sought = rehearse.Help(context.Background(), player, o, out.Report, 3), true
	b, err := sheets.Rehearsal(r, out)
	require.NoError(t, err)
	return out, b
}

// sectionTexts are the texts of the pages that have a running head.
func sectionTexts(d *pdf.Document, head string) string {
	var b strings.Builder
	for _, p := range d.Pages {
		texts := p.Sheet.Texts()
		mine := false
		for _, x := range texts {
			mine = mine || x.Text == head && x.At.Y == 12
		}
		if !mine {
			continue
		}
		for _, x := range texts {
			b.WriteString(x.Text + "\n")
		}
	}
	return b.String()
}

func TestARehearsalIsASectionOfTheBook(t *testing.T) {
	r := compiled(t, example(t, "eight-bars"))
	_, b := rehearsed(t, r)
	plain, err := Make(context.Background(), r, Options{})
	require.NoError(t, err)
	assert.Empty(t, sectionTexts(plain, "Rehearsal"))
	d, err := Make(context.Background(), r, Options{Rehearsal: b})
	require.NoError(t, err)
	clean(t, d, "rehearsed")
	text := sectionTexts(d, "Rehearsal")
	for _, want := range []string{"What breaks it", "What each cue has to spare", "When each beat begins", sentence(b.Sheets[0].Says[0]), "arvo spins 360° right"} {
		assert.Contains(t, text, want)
	}
	at := -1
	for i, p := range d.Pages {
		for _, m := range p.Bookmarks {
			if m.Level == 0 && m.Text == "Rehearsal" {
				at = i
			}
		}
	}
	require.GreaterOrEqual(t, at, 0, "it is bookmarked")
	linked := false
	for _, p := range d.Pages {
		for _, l := range p.Links {
			linked = linked || l.Page == at
		}
	}
	assert.True(t, linked, "the contents lead there")
}

// Bars are as long as their numbers are large, and say the same where they are
// short of 0.
func TestBarsOfARehearsal(t *testing.T) {
	r := compiled(t, example(t, "last-collection"))
	o, _ := rehearsed(t, r)
	require.NotEmpty(t, o.Causes)
	tight := o.Tightest(1)[0]
	for i := range o.Margins {
		if o.Margins[i].Action == tight.Action { // plainly on either side of 0
			o.Margins[i].Slack = rehearse.Quantiles{P5: -3, P50: -1, P95: 4}
		}
	}
	o.Causes = []rehearse.Cause{{What: "one", First: 100, Runs: 150}, {What: "two", First: 20, Runs: 100}}
	b, err := sheets.Rehearsal(r, o)
	require.NoError(t, err)
	m, err := newMaker(context.Background(), r, Options{Rehearsal: b})
	require.NoError(t, err)
	pages := m.rehearsal(1)
	var solid, frame []scene.Box
	for _, p := range pages {
		var walk func([]scene.Item)
		walk = func(items []scene.Item) {
			for _, it := range items {
				switch x := it.(type) {
				case *scene.Group:
					walk(x.Items)
				case *scene.Rect:
					switch x.Class {
					case "book-solid":
						solid = append(solid, x.Box)
					case "book-frame":
						frame = append(frame, x.Box)
					}
				}
			}
		}
		walk(p.Sheet.Items)
	}
	require.Greater(t, len(solid), 2)
	assert.InDelta(t, 5, solid[0].Width()/solid[1].Width(), 1e-6, "100 playings to 20")
	assert.InDelta(t, 1.5, frame[0].Width()/frame[1].Width(), 1e-6, "150 playings to 100")
	below := solid[2]
	for _, f := range frame {
		if f.Min.Y == below.Min.Y {
			assert.InDelta(t, below.Max.X, f.Min.X, 1e-9, "they meet at 0")
			assert.InDelta(t, 3.0/4, below.Width()/f.Width(), 1e-6, "3 s below to 4 s above")
		}
	}
}

func TestABookletHasTheCuesThatConcernIt(t *testing.T) {
	r := compiled(t, example(t, "eight-bars"))
	_, b := rehearsed(t, r)
	booklet := func(d departments.Name) string {
		doc, err := Make(context.Background(), r, Options{For: d, Rehearsal: b})
		require.NoError(t, err)
		clean(t, doc, string(d))
		return sectionTexts(doc, "Rehearsal")
	}
	ads, electric, movement, sound := booklet(departments.Ads), booklet(departments.Electric), booklet(departments.Movement), booklet(departments.Sound)
	for _, all := range []string{ads, electric, movement, sound} {
		assert.Contains(t, all, sentence(b.Sheets[0].Says[0]))
	}
	assert.Contains(t, ads, "When each beat begins")
	assert.Contains(t, ads, "cue lift")
	assert.Contains(t, ads, "arvo spins")
	assert.Contains(t, electric, "cue lift")
	assert.NotContains(t, electric, "arvo spins")
	assert.Contains(t, movement, "arvo spins")
	assert.NotContains(t, movement, "cue lift")
	assert.Contains(t, sound, "No cue of this department's has anything stated that waits for it.")
}

// A rehearsal is neither new nor old where two revisions are compared, and stays
// where only what changed does.
func TestARehearsalBesideAnEarlierRevision(t *testing.T) {
	r := compiled(t, example(t, "eight-bars"))
	_, b := rehearsed(t, r)
	d, err := Make(context.Background(), r, Options{Rehearsal: b, Before: r, OnlyChanged: true})
	require.NoError(t, err)
	clean(t, d, "only changed")
	assert.Contains(t, sectionTexts(d, "Rehearsal"), "arvo spins")
	for _, p := range d.Pages {
		assert.NotContains(t, p.Sheet.Dump(), "book-changed")
	}
}

// Whatever comes of a rehearsal fits on paper.
func TestOddRehearsalsAreClean(t *testing.T) {
	r := compiled(t, example(t, "night-ferry"))
	for name, change := range map[string]func(o *rehearse.Outcome){
		"nothing": func(o *rehearse.Outcome) { o.Causes, o.Margins, o.Beats, o.Changes = nil, nil, nil, nil },
		"much": func(o *rehearse.Outcome) {
			for range 60 {
				o.Causes = append(o.Causes, rehearse.Cause{What: strings.Repeat("something long that breaks ", 6), First: 1, Runs: 3, By: 4})
			}
			for i := range o.Margins {
				o.Margins[i].Slack = rehearse.Quantiles{P5: units.Seconds(-i * i), P50: units.Seconds(i), P95: units.Seconds(40 * i)}
				o.Margins[i].Broken = i
			}
			o.AsPlanned = []rehearse.Broken{{What: "it breaks", At: 3}}
		},
		"on one spot": func(o *rehearse.Outcome) {
			for i := range o.Margins {
				o.Margins[i].Slack = rehearse.Quantiles{}
			}
		},
	} {
		o, _ := rehearsed(t, r)
		change(o)
		b, err := sheets.Rehearsal(r, o)
		require.NoError(t, err)
		m, err := newMaker(context.Background(), r, Options{Rehearsal: b})
		require.NoError(t, err)
		d := &pdf.Document{Title: "x"}
		for _, l := range m.rehearsal(1) {
			d.Pages = append(d.Pages, pdf.Page{Sheet: l.Sheet})
		}
		clean(t, d, name)
	}
}
