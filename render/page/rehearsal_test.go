package page

import (
	"context"
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/rehearse"
	"longhand/render/sheets"
)

// rehearsed plays a take by its clock, and says that one thing more broke.
func rehearsed(t testing.TB, r *compile.Result) *sheets.Book {
	t.Helper()
	player := rehearse.ByClock(r.Plan, r.Tracks.Lengths())
	o := &rehearse.Outcome{Report: rehearse.Run(context.Background(), player, rehearse.Options{Runs: 200, Seed: 4}), Tries: 3}
	half := r.Tracks.Length() / 2
	o.Causes = append(o.Causes, rehearse.Cause{What: "a <b>lens</b> finds it", First: 20, Runs: 80, At: rehearse.Quantiles{P5: half - 3, P50: half, P95: half + 3}})
	b, err := sheets.Rehearsal(r, o)
	require.NoError(t, err)
	return b
}

// weakPlaces holds the strip and the list to the sheet, by eye, by pointer and by
// key.
func weakPlaces(p *opened, r *compile.Result, book *sheets.Book) {
	s := &book.Sheets[0]
	breaks, _ := s.Table(sheets.BreaksTable)
	all, _ := s.Table(sheets.CuesTable)
	near, _ := all.Near()
	count := func(selector string) int {
		return value[int](p, fmt.Sprintf("document.querySelectorAll(%q).length", selector))
	}
	assert.Equal(p, len(breaks.Rows), count("#breaks button"))
	assert.Equal(p, len(breaks.Rows), count("#rehearsallist .breaks li"))
	assert.Equal(p, len(near.Rows), count("#spares button"))
	assert.Equal(p, len(near.Rows), count("#rehearsallist .spares li"))
	for _, line := range s.Says {
		assert.Contains(p, value[string](p, `document.getElementById("rehearsallist").textContent`), line)
	}
	assert.Contains(p, value[string](p, `document.getElementById("rehearsallist").textContent`), sheets.People)
	assert.Contains(p, value[string](p, `document.querySelector("#rehearsallist .breaks li:last-child").textContent`), "a <b>lens</b> finds it", "words stay words")

	// A tick stands where it belongs along the time, as far as the scrubber does.
	at := func(table *sheets.Table, row int) float64 {
		v, ok := table.Value(row, "frame")
		require.True(p, ok)
		return v
	}
	box := value[[]float64](p, `(() => { const r = document.getElementById("breaks").getBoundingClientRect(); return [r.left, r.width]; })()`)
	frames := float64(r.Tracks.Frames)
	last := len(breaks.Rows) - 1
	left := value[float64](p, fmt.Sprintf(`document.querySelectorAll("#breaks button")[%d].getBoundingClientRect().left`, last))
	assert.InDelta(p, box[0]+at(&breaks, last)/frames*box[1], left, 1)
	assert.LessOrEqual(p, value[float64](p, `Math.max(...[...document.querySelectorAll("#rehearsed button")].map((e) => e.getBoundingClientRect().right))`), box[0]+box[1]+8)

	// Bars are as long as the numbers say.
	for i := range near.Rows {
		low, _, high, _ := near.Bar(i)
		if low < 0 || high > near.Spread.To {
			continue
		}
		bar := value[[]float64](p, fmt.Sprintf(`(() => { const e = document.querySelectorAll("#spares button")[%d], b = e.getBoundingClientRect(), r = e.querySelector(".over").getBoundingClientRect(); return [(b.bottom - r.bottom) / b.height, (b.bottom - r.top) / b.height, 3 / b.height]; })()`, i))
		from, _ := near.Spread.Part(low)
		to, _ := near.Spread.Part(high)
		assert.InDelta(p, from, bar[0], 0.03, near.Text(i, "does"))
		assert.InDelta(p, max(to, from+bar[2]), bar[1], 0.03, near.Text(i, "does"))
	}

	// By pointer, from the strip and from the list.
	p.do(chromedp.Click(chromedp.CSS(fmt.Sprintf("#breaks button:nth-of-type(%d)", last+1))))
	p.drawn()
	assert.InDelta(p, at(&breaks, last), float64(p.frame()), 0)
	assert.True(p, value[bool](p, `document.querySelector("#rehearsallist .breaks li:last-child").matches(".chosen.now")`))
	assert.Contains(p, value[string](p, `document.getElementById("said").textContent`), "finds it")
	if tight := near.Least("spare_5"); len(tight) > 0 {
		p.do(chromedp.Click(chromedp.CSS("#rehearsallist .spares li:first-child button")))
		p.drawn()
		assert.InDelta(p, at(near, tight[0]), float64(p.frame()), 0)
	}

	// By key, all around; and each place has a name to be read.
	seen := map[string]bool{}
	places := count("#rehearsed button")
	for range places {
		p.key("r")
		seen[value[string](p, `document.getElementById("said").textContent`)] = true
	}
	assert.Len(p, seen, places, "each place is come by")
	here := value[string](p, `document.getElementById("said").textContent`)
	p.key("r")
	if places > 1 {
		assert.NotEqual(p, here, value[string](p, `document.getElementById("said").textContent`))
	}
	p.key("e")
	assert.Equal(p, here, value[string](p, `document.getElementById("said").textContent`), "back where it was")
	assert.Equal(p, places, value[int](p, `new Set([...document.querySelectorAll("#rehearsallist .place")].map((e) => e.getAttribute("aria-label"))).size`))
	assert.Contains(p, value[string](p, `document.getElementById("keylist").textContent`), "weak place")

	// In the dark it is still told apart from what it lies on.
	p.key("i")
	assert.NotEqual(p, value[string](p, `getComputedStyle(document.body).backgroundColor`), value[string](p, `getComputedStyle(document.querySelector("#breaks .first") || document.querySelector("#breaks .all")).borderBottomColor`))
	assert.LessOrEqual(p, value[int](p, "document.documentElement.scrollWidth"), value[int](p, "innerWidth"), "nothing sticks out sideways")
	// A pickup was not rehearsed.
	if len(r.Pickups) > 0 {
		p.key("t")
		assert.True(p, value[bool](p, `document.getElementById("rehearsal").hidden && document.getElementById("rehearsed").hidden`))
	}
	assert.Empty(p, p.complaints())
}

func unrehearsed(p *opened) {
	assert.True(p, value[bool](p, `document.getElementById("rehearsal").hidden && document.getElementById("rehearsed").hidden`))
	assert.NotContains(p, value[string](p, `document.getElementById("keylist").textContent`), "weak place")
	p.key("r")
	assert.Zero(p, p.frame())
	assert.Empty(p, p.complaints())
}

func TestRehearsalOnThePage(t *testing.T) {
	r := shipped(t, "eight-bars")
	book := rehearsed(t, r)
	got := rehearsalOf(book, r.Tracks.Rate, r.Tracks.Frames)
	assert.Equal(t, book.Sheets[0].Says, got.Says)
	assert.NotEmpty(t, got.Cues.List)
	assert.Len(t, got.Cues.Tight, len(got.Cues.List))
	for _, w := range got.Breaks.List {
		assert.LessOrEqual(t, w.From, w.At)
		assert.LessOrEqual(t, w.At, w.To)
		assert.Less(t, w.To, r.Tracks.Frames)
	}
	first := got.Cues.List[got.Cues.Tight[0]]
	for _, c := range got.Cues.List {
		assert.LessOrEqual(t, *first.Bar[0], *c.Bar[0])
	}
	assert.Regexp(t, `^[-0-9.]+ s at 5 %, [-0-9.]+ s at 50 %, [-0-9.]+ s at 95 %; [-0-9.]+ s as planned`, first.Spare)
}
