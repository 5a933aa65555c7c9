package flow

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/render/fonts"
	"longhand/render/label"
	"longhand/render/scene"
)

func a4() Options {
	return Options{Paper: scene.A4, Margins: Margins{18, 15, 20, 20}, Title: "running order"}
}

func texts(p Page) (out []string) {
	for _, t := range p.Sheet.Texts() {
		out = append(out, t.Text)
	}
	return out
}

// sound is what every page must be: nothing outside the margins, no text on
// text, no text too small.
func sound(t require.TestingT, o Options, pages []Page) {
	inner := scene.Box{Min: scene.Pt(o.Margins.Left, o.Margins.Top), Max: scene.Pt(o.Paper.Width-o.Margins.Right, o.Paper.Height-o.Margins.Bottom)}.Grow(1e-6)
	for i, p := range pages {
		for _, problem := range p.Sheet.Check() {
			require.Fail(t, problem.String(), "page %d", i+1)
		}
		all := p.Sheet.Texts()
		require.NotEmpty(t, all, "page %d is empty", i+1)
		for _, text := range all {
			require.True(t, inner.Contains(text.Box()), "page %d: %q is in the margin: %v", i+1, text.Text, text.Box())
		}
		require.Empty(t, label.Overlaps(label.Quads(all)), "page %d", i+1)
	}
}

func TestAnyTableFlows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := a4()
		o.Paper = rapid.SampledFrom([]scene.Paper{scene.A4, scene.A6, scene.Letter.Landscape()}).Draw(t, "paper")
		o.Margins = Margins{10, 10, 10, 10}
		columns := rapid.IntRange(1, 5).Draw(t, "columns")
		table := Table{ID: "t", Title: "a table"}
		for i := range columns {
			table.Columns = append(table.Columns, Column{Head: fmt.Sprintf("H%d", i), Right: i%2 == 1, Face: fonts.Face(i % 3)})
		}
		word := rapid.StringMatching(`[a-z]{1,12}`)
		var want []string
		for i := range rapid.IntRange(0, 40).Draw(t, "rows") {
			n := len(table.Rows)
			third := n > 1 && table.Rows[n-1].Group != "" && table.Rows[n-2].Group != "" // a page of them would have to end with one
			if rapid.IntRange(0, 7).Draw(t, "grouped") == 0 && !third {
				table.Rows = append(table.Rows, Row{Group: fmt.Sprintf("G%d", i)})
				continue
			}
			r := Row{Changed: i%5 == 0}
			for c := range columns {
				most := rapid.SampledFrom([]int{2, 2, 6, 90}).Draw(t, "most")
				words := rapid.SliceOfN(word, max(0, 1-c), most).Draw(t, "words")
				r.Cells = append(r.Cells, strings.Join(words, " "))
				want = append(want, strings.Join(words, ""))
			}
			table.Rows = append(table.Rows, r)
		}
		f := New(o)
		f.Heading(1, "HEADING")
		f.Table(table)
		pages := f.Pages(nil)
		sound(t, o, pages)
		got := ""
		for i, p := range pages {
			all := strings.Join(texts(p), "")
			if !strings.Contains(all, "H0") && len(table.Rows) > 0 {
				t.Fatalf("page %d has no head", i+1)
			}
			last := p.Sheet.Texts()[len(p.Sheet.Texts())-1]
			if i < len(pages)-1 && strings.HasPrefix(last.Text, "G") {
				t.Fatalf("page %d ends with %q", i+1, last.Text)
			}
			got += strings.ReplaceAll(all, ", continued", "")
		}
		// Every letter comes out, whichever way the cells were cut; only cells
		// have small ones.
		for r := 'a'; r <= 'z'; r++ {
			if n := strings.Count(strings.Join(want, ""), string(r)); strings.Count(got, string(r)) != n {
				t.Fatalf("letter %q: %d, not %d", r, strings.Count(got, string(r)), n)
			}
		}
	})
}

// Short columns get what they need on one line, and what is left goes to the
// long one.
func TestShortColumnsAreNotBroken(t *testing.T) {
	table := Table{Columns: []Column{{Head: "When"}, {Head: "Cue"}, {Head: "What"}, {Head: "Fixed", Width: 30}},
		Rows: []Row{{Cells: []string{"0:12.08", "on the third bell", strings.Repeat("a long story ", 40), ""}}}}
	w := table.columnWidths(170, 8)
	assert.InDelta(t, fonts.Regular.Width(8, "0:12.08")+2*padding, w[0], 0.01)
	assert.InDelta(t, fonts.Regular.Width(8, "on the third bell")+2*padding, w[1], 0.01)
	assert.Equal(t, 30.0, w[3])
	assert.InDelta(t, 170, w[0]+w[1]+w[2]+w[3], 1e-6)
}

func TestRowsStayWhole(t *testing.T) {
	table := Table{ID: "t", Title: "t", Columns: []Column{{Head: "When"}, {Head: "What", Width: 40}}}
	for i := range 60 {
		table.Rows = append(table.Rows, Row{Cells: []string{fmt.Sprint(i), fmt.Sprintf("first%d second third fourth fifth sixth seventh last%d", i, i)}})
	}
	f := New(a4())
	f.Table(table)
	pages := f.Pages(nil)
	require.Greater(t, len(pages), 1)
	for i, p := range pages {
		all := strings.Join(texts(p), " ")
		assert.Equal(t, strings.Count(all, "first"), strings.Count(all, "last"), "page %d", i+1)
	}
}

// A page that goes on within a group says which, the last row never stands alone,
// and the notes stand where the table ends.
func TestTablesGoOn(t *testing.T) {
	for rows := 30; rows < 130; rows++ {
		table := Table{ID: "t", Title: "t", Columns: []Column{{Head: "When"}, {Head: "What"}}, Notes: []string{"note: a", "note: b"}}
		for i := range rows {
			if i%47 == 0 {
				table.Rows = append(table.Rows, Row{Group: fmt.Sprintf("group %d", i/47)})
			}
			table.Rows = append(table.Rows, Row{Cells: []string{fmt.Sprint(i), "row"}})
		}
		f := New(a4())
		f.Table(table)
		pages := f.Pages(nil)
		sound(t, a4(), pages)
		for i, p := range pages {
			all := texts(p)
			n := strings.Count(strings.Join(all, "\n"), "row")
			require.True(t, n > 1 || rows%47 == 1, "%d rows, page %d: %q", rows, i+1, all) // a group of one may
			require.True(t, strings.HasPrefix(all[2], "group "), "%d rows, page %d begins with %q", rows, i+1, all[2])
			if i > 0 {
				first, _ := strconv.Atoi(all[3])
				want := fmt.Sprintf("group %d", first/47)
				if first%47 > 0 {
					want += ", continued"
				}
				require.Equal(t, want, all[2], "%d rows, page %d", rows, i+1)
			}
		}
		require.Equal(t, table.Notes, texts(pages[len(pages)-1])[len(texts(pages[len(pages)-1]))-2:])
	}
}

func TestHeadingsStayWithWhatFollows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := a4()
		o.Paper = scene.A6
		f := New(o)
		for i := range rapid.IntRange(1, 25).Draw(t, "parts") {
			f.Heading(rapid.IntRange(0, 2).Draw(t, "level"), fmt.Sprintf("heading %d", i))
			f.Paragraph(fonts.Regular, strings.Repeat("word and more ", rapid.IntRange(1, 60).Draw(t, "length")))
		}
		pages := f.Pages(nil)
		sound(t, o, pages)
		for i, p := range pages {
			all := p.Sheet.Texts()
			if strings.HasPrefix(all[len(all)-1].Text, "heading") {
				t.Fatalf("page %d ends with a heading", i+1)
			}
			for _, e := range p.Entries {
				if e.Page != i {
					t.Fatalf("an entry of page %d says %d", i, e.Page)
				}
			}
		}
	})
}

func TestContentsAndDrawings(t *testing.T) {
	f := New(a4())
	f.Heading(0, "Cover")
	f.Paragraph(fonts.Regular, "The take at a glance.")
	f.Drawing(&scene.Sheet{Width: scene.A3.Height, Height: scene.A3.Width, Title: "overhead"}, 1, "Beat 1 from above")
	f.Heading(1, "Beat 1")
	f.Paragraph(fonts.Regular, "Running order.")
	pages := f.Pages(func(p *Page, n, of int) {
		p.Sheet.Add(&scene.Text{At: scene.Pt(190, 290), Text: fmt.Sprintf("%d of %d", n, of), Size: 8, Anchor: scene.End})
	})
	require.Len(t, pages, 3)
	assert.Equal(t, []Entry{{0, "Cover", 0, 18}, {1, "Beat 1 from above", 1, 0}, {1, "Beat 1", 2, 18}}, Entries(pages))
	assert.Contains(t, texts(pages[2]), "3 of 3")
	contents := Contents(a4(), "Contents", Entries(pages), 1, func(page int) string { return fmt.Sprint(page + 2) })
	require.Len(t, contents, 1)
	sound(t, a4(), contents)
	assert.Equal(t, []string{"Contents", "Cover", "2", "Beat 1 from above", "3", "Beat 1", "4"}, texts(contents[0]))
	require.Len(t, contents[0].Links, 3)
	assert.Equal(t, 1, contents[0].Links[1].Page)
}

func TestEmptyFlow(t *testing.T) {
	assert.Empty(t, New(a4()).Pages(nil))
	f := New(a4())
	f.Break()
	f.Space(10)
	f.Table(Table{})
	assert.Empty(t, f.Pages(nil))
	f.Heading(0, "only a heading")
	assert.Len(t, f.Pages(nil), 1)
}

func TestAFigureIsKeptWhole(t *testing.T) {
	f := New(a4())
	f.Paragraph(fonts.Regular, strings.Repeat("word ", 1800))
	before := len(f.pages)
	f.Heading(1, "Frame")
	f.Figure(100, f.height()-40, []scene.Item{&scene.Text{At: scene.Pt(0, 10), Text: "in it", Size: 8}})
	pages := f.Pages(nil)
	sound(t, a4(), pages)
	assert.Len(t, pages, before+1)
	assert.Equal(t, []string{"Frame", "in it"}, texts(pages[before]))
}

// What is drawn into cells is drawn once a row, within its cell, and on every
// page's head.
func TestCellsAreDrawnInto(t *testing.T) {
	drawn, heads := 0, 0
	draw := func(count *int) func(int, scene.Box) []scene.Item {
		return func(column int, cell scene.Box) []scene.Item {
			if column != 1 {
				return nil
			}
			*count++
			assert.InDelta(t, 40, cell.Width(), 1e-9)
			assert.Positive(t, cell.Height())
			return []scene.Item{&scene.Rect{Class: "flow-shade", Box: cell}}
		}
	}
	table := Table{ID: "t", Title: "t", Columns: []Column{{Head: "What"}, {Width: 40}}, DrawHead: draw(&heads)}
	for i := range 80 {
		table.Rows = append(table.Rows, Row{Cells: []string{fmt.Sprint(i)}, Draw: draw(&drawn)})
	}
	table.Rows = append(table.Rows, Row{Cells: []string{strings.Repeat("a line\n", 200)}, Draw: draw(&drawn)})
	f := New(a4())
	f.Table(table)
	pages := f.Pages(nil)
	sound(t, a4(), pages)
	assert.Equal(t, 81, drawn)
	assert.Equal(t, len(pages), heads)
}
