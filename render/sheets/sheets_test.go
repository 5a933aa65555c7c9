package sheets

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"html"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/safety"
)

// every plan that the tests look at as a whole.
var plans = []string{"testdata/hatch.take", "testdata/stage.take", "../../examples/last-collection.take"}

func TestEveryLineOfThePlanIsOnSomeSheet(t *testing.T) {
	for _, name := range plans {
		r, b := planOf(t, name)
		on := map[*plan.Action][]string{}
		for _, s := range b.Sheets {
			for _, tab := range s.Tables {
				for _, row := range tab.Rows {
					if row.Action != nil {
						on[row.Action] = append(on[row.Action], string(s.Department)+"/"+tab.Key)
					}
				}
			}
		}
		all := append([]*plan.Action(nil), r.Plan.Actions...)
		for _, p := range r.Plan.Pickups {
			all = append(all, p.Actions...)
		}
		require.NotEmpty(t, all)
		for _, a := range all {
			assert.NotEmpty(t, on[a], "%s: %s is on no sheet", name, a.Span.Text())
		}
	}
}

// A department's own lines are on its own sheet, not only on the running order.
func TestLinesReachTheirDepartment(t *testing.T) {
	home := func(a *plan.Action) Department {
		switch a.Deed.(type) {
		case *plan.Cue:
			return Electric
		case *plan.Say:
			return Sound
		case *plan.Operate:
			return Art
		case *plan.Cut:
			return Script
		case *plan.Handoff:
			return Grip
		}
		switch a.Subject.(type) {
		case *plan.Camera:
			return Camera
		case *plan.Vehicle:
			return Vehicles
		case *plan.Person:
			return Movement
		}
		return Ads
	}
	for _, name := range plans {
		r, b := planOf(t, name)
		for _, a := range r.Plan.Actions {
			s, ok := b.For(home(a))
			require.True(t, ok)
			found := false
			for _, tab := range s.Tables {
				for _, row := range tab.Rows {
					found = found || row.Action == a
				}
			}
			assert.True(t, found, "%s: %s is not on the sheet of %s", name, a.Span.Text(), s.Title)
		}
	}
}

func TestTablesAreWhole(t *testing.T) {
	for _, name := range plans {
		_, b := planOf(t, name)
		require.Len(t, b.Sheets, 10)
		for i, d := range Departments() {
			s := b.Sheets[i]
			assert.Equal(t, d, s.Department)
			keys := map[string]bool{}
			for _, tab := range s.Tables {
				where := name + ": " + string(d) + "/" + tab.Key
				assert.False(t, keys[tab.Key], "%s is there twice", where)
				keys[tab.Key] = true
				assert.NotEmpty(t, tab.Title, where)
				if len(tab.Rows) == 0 {
					assert.Regexp(t, `^\p{L}.*\.$`, tab.Empty, "%s says nothing where it is empty", where)
				}
				columns := map[string]bool{}
				for _, c := range tab.Columns {
					assert.False(t, columns[c.Key], "%s has %s twice", where, c.Key)
					columns[c.Key] = true
					assert.NotEmpty(t, c.About, "%s: %s", where, c.Key)
					assert.Regexp(t, `^[a-z][a-z0-9_]*$`, c.Key, where)
				}
				for _, row := range tab.Rows {
					require.Len(t, row.Cells, len(tab.Columns), where)
				}
			}
		}
	}
}

// What can hurt someone is said on the sheet that asks for it, and each caution
// defers to the people in charge.
func TestCautions(t *testing.T) {
	_, b := planOf(t, "../../examples/last-collection.take")
	for d, topic := range map[Department]safety.Topic{
		Electric: safety.Electricity, Vehicles: safety.Vehicles, Grip: safety.Cranes, Movement: safety.Height, Camera: safety.Worn, Art: safety.Holes, Ads: safety.Daylight,
	} {
		s, _ := b.For(d)
		assert.Contains(t, s.Cautions, topic.Caution(), d)
	}
	page := string(b.HTML())
	for _, s := range b.Sheets {
		for _, c := range s.Cautions {
			assert.True(t, strings.HasSuffix(c, safety.Defer), c)
			assert.Contains(t, page, html.EscapeString(sentence(c)))
		}
	}
	assert.Equal(t, len(b.Sheets), strings.Count(page, html.EscapeString(safety.General)))
}

func TestSmallestPlans(t *testing.T) {
	for name, text := range map[string]string{
		"a title":      "take \"Nothing\"\n",
		"a set":        "take \"Walls\"\nset \"Room\"\n  wall a (0, 0) (4, 0) high 3 m\n",
		"no camera":    "take \"Walk\"\nset \"Room\"\n  mark M1 (0, 0)\n  mark M2 (3, 0)\npeople\n  performer mo\nbeat \"On\"\n  mo walks from M1 to M2\n",
		"no people":    "take \"Cam\"\nset \"Room\"\n  mark M1 (0, 0)\nkit\n  camera A sensor 24 mm x 14 mm\n  lens w35 35 mm\n  rig legs sticks\nbeat \"On\" for 4 s\n  legs stands at M1\n  A on legs\n  A takes w35\n",
		"clock window": "take \"Hours\"\n  roll in 19:40 to 20:25\n",
		"polar night":  "take \"North\"\n  place 78.2 N 15.6 E\n  date 2026-12-20 zone +01:00\n  roll in civil-dusk\n",
		"a supply":     "take \"Power\"\nset \"Room\"\n  supply mains 230 V 16 A\n",
	} {
		t.Run(name, func(t *testing.T) {
			_, b := breakdown(t, "small.take", text)
			files, err := b.Files()
			require.NoError(t, err)
			for _, f := range files {
				assert.NotEmpty(t, f.Data, f.Name)
				if !strings.HasSuffix(f.Name, ".xlsx") {
					assert.NotRegexp(t, `NaN|[+-]Inf|%!|<nil>|-0(\.0)? `, string(f.Data), f.Name)
				}
			}
		})
	}
}

func TestNothingOfABrokenPlan(t *testing.T) {
	r, err := compile.Text(context.Background(), "broken.take", "take \"X\"\nbeat \"B\"\n  mina walks to M1\n", compile.Options{})
	require.NoError(t, err)
	_, err = Breakdown(context.Background(), r)
	assert.EqualError(t, err, "the plan has mistakes in its text, so there is nothing to make sheets of")
}

func TestSameBytesTwice(t *testing.T) {
	for _, name := range plans[:2] {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		_, b := breakdown(t, "plan.take", string(text))
		_, c := breakdown(t, "plan.take", string(text))
		first, err := b.Files()
		require.NoError(t, err)
		second, err := c.Files()
		require.NoError(t, err)
		require.Equal(t, len(first), len(second))
		for i := range first {
			assert.Equal(t, first[i].Name, second[i].Name)
			assert.True(t, bytes.Equal(first[i].Data, second[i].Data), "%s: %s differs", name, first[i].Name)
		}
	}
}

func TestCSVReadsBack(t *testing.T) {
	for _, name := range plans {
		_, b := planOf(t, name)
		for _, s := range b.Sheets {
			for _, tab := range s.Tables {
				data, err := tab.CSV()
				require.NoError(t, err)
				recs, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
				require.NoError(t, err)
				require.Len(t, recs, len(tab.Rows)+1)
				for i, row := range tab.Rows {
					for k, c := range row.Cells {
						got := recs[i+1][k]
						if tab.Columns[k].Unit == "" || c.Value == nil {
							assert.Equal(t, c.Text, got)
							continue
						}
						v, err := strconv.ParseFloat(got, 64)
						assert.NoError(t, err)
						assert.Equal(t, *c.Value, v)
					}
				}
			}
		}
	}
}

func TestJSONReadsBack(t *testing.T) {
	_, b := planOf(t, plans[0])
	data, err := b.JSON()
	require.NoError(t, err)
	var doc struct {
		Schema int
		Sheets []struct {
			Department string
			Tables     []struct {
				Key     string
				Columns []struct{ Key, Unit string }
				Rows    []map[string]any
			}
		}
	}
	require.NoError(t, json.Unmarshal(data, &doc))
	assert.Equal(t, 1, doc.Schema)
	require.Len(t, doc.Sheets, len(b.Sheets))
	for i, s := range doc.Sheets {
		for k, tab := range s.Tables {
			want := b.Sheets[i].Tables[k]
			require.Len(t, tab.Rows, len(want.Rows))
			for n, row := range tab.Rows {
				for c, column := range tab.Columns {
					v, ok := row[column.Key]
					require.True(t, ok, "%s/%s has no %s", s.Department, tab.Key, column.Key)
					if want.Rows[n].Cells[c].Value != nil && column.Unit != "" {
						assert.Equal(t, *want.Rows[n].Cells[c].Value, v)
					}
				}
			}
		}
	}
}

func TestWorkbookOpens(t *testing.T) {
	_, b := planOf(t, plans[0])
	data, err := b.Workbook()
	require.NoError(t, err)
	f, err := excelize.OpenReader(bytes.NewReader(data))
	require.NoError(t, err)
	defer f.Close()
	var want []string
	for _, s := range b.Sheets {
		want = append(want, s.Title)
	}
	assert.Equal(t, want, f.GetSheetList())
	for _, tab := range f.GetSheetList() {
		rows, err := f.GetRows(tab)
		require.NoError(t, err)
		for i, r := range rows {
			for k := range r {
				at, err := excelize.CoordinatesToCellName(k+1, i+1)
				require.NoError(t, err)
				formula, err := f.GetCellFormula(tab, at)
				require.NoError(t, err)
				assert.Empty(t, formula, "%s %s", tab, at)
			}
		}
	}
	assert.True(t, bytes.Contains(dump(t, data), []byte("=the dolly stands in the dark")), "a text that begins like a formula is not there as it is")
}

// The page is well formed, with every text escaped: void elements apart, each tag
// is closed in its turn.
func TestHTMLIsWellFormed(t *testing.T) {
	_, b := planOf(t, plans[0])
	page := string(b.HTML())
	assert.Contains(t, page, "&lt;you&gt; &amp; me both.")
	assert.NotContains(t, page, "<you>")
	assert.NotContains(t, page, "<script")
	assert.NotRegexp(t, `(src|href)="[^#]`, page, "the page needs something else")
	var open []string
	tags := regexp.MustCompile(`<(/?)([a-z][a-z0-9]*)((?:\s[^<>]*?)?)(/?)>|<[^!]`)
	body := page[strings.Index(page, "</style>"):]
	for _, m := range tags.FindAllStringSubmatch(strings.TrimPrefix(body, "</style>"), -1) {
		require.NotEmpty(t, m[2], "a bare < in %q", m[0])
		switch {
		case m[4] == "/" || m[2] == "meta":
		case m[1] == "":
			open = append(open, m[2])
		case m[2] == "head" || m[2] == "html": // opened before the style
		default:
			require.NotEmpty(t, open)
			require.Equal(t, open[len(open)-1], m[2])
			open = open[:len(open)-1]
		}
	}
	assert.Empty(t, open)
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		assert.False(t, ids[m[1]], "id %s twice", m[1])
		ids[m[1]] = true
	}
	for _, m := range regexp.MustCompile(`href="#([^"]*)"`).FindAllStringSubmatch(page, -1) {
		assert.True(t, ids[m[1]], "no %s to go to", m[1])
	}
}

func TestFilesAndDepartments(t *testing.T) {
	_, b := planOf(t, plans[1])
	files, err := b.Only(Grip).Files(HTML, Markdown)
	require.NoError(t, err)
	require.Len(t, files, 2)
	assert.Equal(t, "grip.html", files[0].Name)
	assert.Equal(t, "grip.md", files[1].Name)
	_, err = b.Files("doc")
	assert.EqualError(t, err, `sheets come as html, md, csv, json, xlsx, not "doc"`)
	for word, want := range map[string]Department{"grip": Grip, "Assistant directors": Ads, "effects": Effects, " VFX ": Effects, "script": Script} {
		d, err := ParseDepartment(word)
		assert.NoError(t, err)
		assert.Equal(t, want, d)
	}
	_, err = ParseDepartment("catering")
	assert.ErrorContains(t, err, `there is no department "catering"`)
}

// A typing slip can put a mark in the next country; its sheets still come.
func TestAMarkFarAway(t *testing.T) {
	_, b := breakdown(t, "far.take", "take \"Far\"\nset \"Hall\"\n  wall w (0, 0) (4, 0) high 3 m\n  mark M1 (2, 2)\n  mark M2 (9000, 2)\nkit\n  camera A sensor 24 mm x 14 mm\n  lens w35 35 mm\n  rig legs sticks\nbeat \"On\" for 1 s\n  legs stands at M1\n  A on legs\n  A takes w35\n")
	s, _ := b.For(Grip)
	tab, ok := s.Table("unseen")
	require.True(t, ok)
	assert.NotEmpty(t, tab.Rows)
}
