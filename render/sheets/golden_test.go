package sheets

import (
	"bytes"
	"context"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/aymanbagabas/go-udiff"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"longhand/lang/compile"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// breakdown compiles a text and breaks it down.
func breakdown(t testing.TB, name, text string) (*compile.Result, *Book) {
	t.Helper()
	r, err := compile.Text(context.Background(), name, text, compile.Options{Workers: 1})
	require.NoError(t, err)
	for _, d := range r.Findings {
		require.False(t, r.Stopped, "%s", d.Message)
	}
	b, err := Breakdown(context.Background(), r)
	require.NoError(t, err)
	return r, b
}

// made keeps what the tests look at more than once.
var made = struct {
	sync.Mutex
	results map[string]*compile.Result
	books   map[string]*Book
}{results: map[string]*compile.Result{}, books: map[string]*Book{}}

// planOf is a plan in a file and its breakdown, which no test may change.
func planOf(t testing.TB, name string) (*compile.Result, *Book) {
	t.Helper()
	made.Lock()
	defer made.Unlock()
	if made.books[name] == nil {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		made.results[name], made.books[name] = breakdown(t, filepath.Base(name), string(text))
	}
	return made.results[name], made.books[name]
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", "golden", filepath.FromSlash(name))
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, got, 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run the test with -update to make it")
	if !bytes.Equal(want, got) {
		assert.Fail(t, name+" differs", "%s", udiff.Unified("golden", "made", string(want), string(got)))
	}
}

func TestHatchInAllForms(t *testing.T) {
	_, b := planOf(t, "testdata/hatch.take")
	var md, csv bytes.Buffer
	for _, s := range b.Sheets {
		md.Write(b.Markdown(&s))
		md.WriteString("\n")
	}
	golden(t, "hatch.md", md.Bytes())
	files, err := b.Files(CSV)
	require.NoError(t, err)
	for _, f := range files {
		if f.Name != "csv/columns.csv" {
			csv.WriteString("-- " + f.Name + " --\n")
			csv.WriteString(strings.ReplaceAll(string(f.Data), "\r\n", "\n"))
		}
	}
	golden(t, "hatch-csv.txt", csv.Bytes())
	columns, err := b.ColumnsCSV()
	require.NoError(t, err)
	golden(t, "hatch-columns.txt", []byte(strings.ReplaceAll(string(columns), "\r\n", "\n")))
	js, err := b.JSON()
	require.NoError(t, err)
	golden(t, "hatch.json", js)
	golden(t, "hatch.html", b.HTML())
	book, err := b.Workbook()
	require.NoError(t, err)
	golden(t, "hatch-workbook.txt", dump(t, book))
}

func TestFeetAndCounts(t *testing.T) {
	_, b := planOf(t, "testdata/stage.take")
	var md bytes.Buffer
	for _, s := range b.Sheets {
		md.Write(b.Markdown(&s))
		md.WriteString("\n")
	}
	golden(t, "stage.md", md.Bytes())
}

// dump prints a workbook's cells, a line a row, for reading.
func dump(t *testing.T, data []byte) []byte {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(data))
	require.NoError(t, err)
	defer f.Close()
	var out bytes.Buffer
	for _, tab := range f.GetSheetList() {
		out.WriteString("-- " + tab + " --\n")
		rows, err := f.GetRows(tab)
		require.NoError(t, err)
		for _, r := range rows {
			out.WriteString(strings.Join(r, " | ") + "\n")
		}
	}
	return out.Bytes()
}
