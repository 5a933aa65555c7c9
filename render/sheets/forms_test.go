package sheets

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"longhand/lang/departments"
)

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
	files, err := b.Only(departments.Grip).Files(HTML, Markdown)
	require.NoError(t, err)
	require.Len(t, files, 2)
	assert.Equal(t, "grip.html", files[0].Name)
	assert.Equal(t, "grip.md", files[1].Name)
	_, err = b.Files("doc")
	assert.EqualError(t, err, `sheets come as html, md, csv, json, xlsx, not "doc"`)
	for word, want := range map[string]departments.Name{"grip": departments.Grip, "Assistant directors": departments.Ads, "effects": departments.Effects, " VFX ": departments.Effects, "script": departments.Script} {
		d, err := departments.Parse(word)
		assert.NoError(t, err)
		assert.Equal(t, want, d)
	}
	_, err = departments.Parse("catering")
	assert.ErrorContains(t, err, `there is no department "catering"`)
}
