package sheets

import (
	"context"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/check"
	"longhand/lang/compile"
)

// Every plan that explains a finding, broken or mended, has sheets: whatever is
// wrong with a take, the crew can read what it is.
func TestSheetsOfEveryFaultyPlan(t *testing.T) {
	for _, e := range compile.Catalog() {
		for _, text := range []string{e.Bad, e.Good} {
			r, err := compile.Text(context.Background(), "plan.take", text, compile.Options{Workers: 1})
			require.NoError(t, err)
			if r.Stopped || r.Sight == nil { // a text that does not read, or a take too long to look at
				continue
			}
			b, err := Breakdown(context.Background(), r)
			require.NoError(t, err, e.Code)
			for _, s := range b.Sheets {
				for _, tab := range s.Tables {
					for _, row := range tab.Rows {
						require.Len(t, row.Cells, len(tab.Columns), "%s: %s/%s", e.Code, s.Department, tab.Key)
						for _, c := range row.Cells {
							assert.NotRegexp(t, `NaN|Inf|%!|<nil>|^-0( |$)`, c.Text, "%s: %s/%s", e.Code, s.Department, tab.Key)
						}
					}
				}
			}
			assert.NotEmpty(t, b.HTML())
			_, err = b.JSON()
			require.NoError(t, err, e.Code)
		}
	}
}

func TestACancelledBreakdownSaysSo(t *testing.T) {
	r, _ := planOf(t, plans[1])
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Breakdown(ctx, r)
	assert.ErrorIs(t, err, context.Canceled)
}

func BenchmarkBreakdown(b *testing.B) {
	r, _ := planOf(b, "../../examples/last-collection.take")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Breakdown(context.Background(), r); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFiles(b *testing.B) {
	_, book := planOf(b, "../../examples/last-collection.take")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := book.Files(); err != nil {
			b.Fatal(err)
		}
	}
}

func FuzzSheets(f *testing.F) {
	text, err := os.ReadFile(plans[1])
	require.NoError(f, err)
	f.Add(string(text))
	for _, e := range compile.Catalog() {
		f.Add(e.Bad)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 2000 {
			t.Skip("long texts only take long")
		}
		moved := check.Moved
		r, err := compile.Text(context.Background(), "fuzz.take", text, compile.Options{UpTo: &moved})
		if err != nil || r.Stopped || r.Tracks == nil || r.Tracks.Frames > 500 {
			return // long takes only take long
		}
		for _, k := range r.Pickups {
			if k.Tracks == nil || k.Tracks.Frames > 500 {
				return
			}
		}
		r, err = compile.Text(context.Background(), "fuzz.take", text, compile.Options{Workers: 1})
		if err != nil || r.Stopped || r.Sight == nil {
			return
		}
		b, err := Breakdown(context.Background(), r)
		if err != nil {
			return // a pickup that was not worked out
		}
		b.HTML()
		if _, err := b.JSON(); err != nil {
			t.Fatal(err)
		}
	})
}
