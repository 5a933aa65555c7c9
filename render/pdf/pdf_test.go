package pdf

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/render/scene"
	"longhand/render/scene/sample"
)

func document() *Document {
	small := &scene.Sheet{Width: scene.A6.Width, Height: scene.A6.Height, Title: "card", Styles: sample.Styles()}
	small.Add(&scene.Text{At: scene.Pt(10, 20), Text: "card of Mara 😀", Size: 9})
	return &Document{
		Title: "Last Collection ½ (draft)", Subject: "the book", Author: "Жук", Created: time.Date(1931, 3, 4, 5, 6, 7, 0, time.UTC),
		Pages: []Page{
			{Sheet: sample.Sheet(), Label: "i", Bookmarks: []Bookmark{{0, "The hall ½ (old)", 100}, {2, "Table", 150}},
				Links: []Link{{Box: scene.BoxAt(10, 10, 50, 10), Page: 2, Y: 40}, {Box: scene.BoxAt(10, 30, 50, 10), Page: 1}}},
			{Sheet: small, Label: "card 1", Bookmarks: []Bookmark{{0, "Card", 20}}},
			{Sheet: sample.Sheet()},
		},
		Files: []File{{"plan.take", "the plan itself", []byte("take\n\x00 bytes")}},
		Layer: func(g *scene.Group) string { return g.ID },
	}
}

func write(t *testing.T, d *Document) string {
	t.Helper()
	out, err := Write(d)
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "out.pdf")
	require.NoError(t, os.WriteFile(file, out, 0o600))
	return file
}

// run runs a program of poppler, and wants no complaint from it.
func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	tool, err := exec.LookPath(name)
	if err != nil {
		t.Skip(name + " is not installed")
	}
	var errs bytes.Buffer
	cmd := exec.Command(tool, args...)
	cmd.Stderr = &errs
	out, err := cmd.Output()
	require.NoError(t, err, errs.String())
	assert.Empty(t, errs.String())
	return string(out)
}

func TestSameBytes(t *testing.T) {
	a, err := Write(document())
	require.NoError(t, err)
	for range 3 {
		b, err := Write(document())
		require.NoError(t, err)
		require.True(t, bytes.Equal(a, b))
	}
}

func TestEveryTextIsFound(t *testing.T) {
	file := write(t, document())
	got := run(t, "pdftotext", "-raw", "-f", "1", "-l", "1", file, "-")
	flat := func(s string) string { return strings.Join(strings.Fields(s), "") }
	text := flat(got)
	for _, want := range sample.Sheet().Texts() {
		if want.Turn == 45 || want.Text == "clipped text" { // read letter by letter, and cut
			continue
		}
		assert.Contains(t, text, flat(want.Text))
	}
	assert.Equal(t, 1, strings.Count(text, "MaraLind0:12"), "a halo is not a second text")
}

func TestFontsAreEmbedded(t *testing.T) {
	out := run(t, "pdffonts", write(t, document()))
	lines := strings.Split(strings.TrimSpace(out), "\n")[2:]
	require.Len(t, lines, 3)
	for _, l := range lines {
		f := strings.Fields(l)
		assert.Equal(t, "yes", f[len(f)-5], "emb: "+l)
		assert.Equal(t, "yes", f[len(f)-3], "uni: "+l)
	}
}

func TestInformation(t *testing.T) {
	out := run(t, "pdfinfo", "-f", "1", "-l", "3", write(t, document()))
	for _, want := range []string{"Last Collection ½ (draft)", "the book", "Жук", "Wed Mar  4 05:06:07 1931", "Pages:           3",
		"595.28 x 841.89 pts (A4)", "Page    2 size:  297.64 x 419.53 pts"} {
		assert.Contains(t, out, want)
	}
}

func TestOutlineLeadsToTheRightHeights(t *testing.T) {
	out := run(t, "pdftohtml", "-xml", "-stdout", "-i", write(t, document()))
	i := strings.Index(out, "<outline>")
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, `<outline> <item page="1">The hall ½ (old)</item> <outline> <item page="1">Table</item> </outline> <item page="2">Card</item> </outline> </pdf2xml>`,
		strings.Join(strings.Fields(out[i:]), " "))
	doc, err := Write(document())
	require.NoError(t, err)
	var heights []float64
	for _, m := range regexp.MustCompile(`/Dest \[\d+ 0 R /XYZ 0 ([\d.]+) null\]\n/Count`).FindAllSubmatch(doc, -1) {
		y, _ := strconv.ParseFloat(string(m[1]), 64)
		heights = append(heights, y)
	}
	require.Len(t, heights, 3)
	for i, want := range []float64{297 - 100, 297 - 150, 148 - 20} { // mm from the page's bottom
		assert.InDelta(t, want, heights[i]*25.4/72, 0.01)
	}
}

func TestAttachmentComesOut(t *testing.T) {
	file := write(t, document())
	to := filepath.Join(t.TempDir(), "got")
	run(t, "pdfdetach", "-save", "1", "-o", to, file)
	got, err := os.ReadFile(to)
	require.NoError(t, err)
	assert.Equal(t, "take\n\x00 bytes", string(got))
}

func TestLabelsLayersAndLinks(t *testing.T) {
	doc, err := Write(document())
	require.NoError(t, err)
	s := string(doc)
	last := s[strings.LastIndex(s, " 0 obj"):]
	assert.Contains(t, last, "/PageLabels <</Nums [0 <</P <FEFF0069>>> 1 <</P <FEFF006300610072006400200031>>> 2 <</S /D /St 3>>]>>")
	assert.Equal(t, 4, strings.Count(s, "/Type /OCG "), "a layer for each id: set, shapes, words, clip; the walk and the scale bar lie in the set's")
	assert.Equal(t, 2, strings.Count(s, "/Subtype /Link"))
}

// content gives the page contents as text.
func content(t *testing.T, doc []byte) string {
	var out strings.Builder
	for _, m := range regexp.MustCompile(`(?s)<</Filter /FlateDecode /Length (\d+)>>\nstream\n`).FindAllSubmatchIndex(doc, -1) {
		n, _ := strconv.Atoi(string(doc[m[2]:m[3]]))
		r, err := zlib.NewReader(bytes.NewReader(doc[m[1] : m[1]+n]))
		require.NoError(t, err)
		data, err := io.ReadAll(r)
		require.NoError(t, err)
		out.Write(data)
	}
	return out.String()
}

// A metre at 1:50 is 20 mm; a PDF's unit is a point, 72 to the inch of 25.4 mm.
func TestScaleIsTrue(t *testing.T) {
	s := &scene.Sheet{Width: 210, Height: 297, Title: "bar", Styles: sample.Styles()}
	s.Add(&scene.Rect{Class: "solid", Box: scene.BoxAt(30, 160, sample.View().Length(1), 2)})
	doc, err := Write(&Document{Pages: []Page{{Sheet: s}}})
	require.NoError(t, err)
	left, right := math.Inf(1), math.Inf(-1)
	for _, m := range regexp.MustCompile(`([\d.]+) [\d.]+ [ml]\n`).FindAllStringSubmatch(content(t, doc), -1) {
		x, _ := strconv.ParseFloat(m[1], 64)
		left, right = math.Min(left, x), math.Max(right, x)
	}
	assert.InDelta(t, 20, (right-left)*25.4/72, 0.005)
	assert.InDelta(t, 30, left*25.4/72, 0.005)
}

func TestWhatCannotBeWritten(t *testing.T) {
	_, err := Write(&Document{})
	assert.EqualError(t, err, "a document needs at least one page")
	_, err = Write(&Document{Pages: []Page{{Sheet: &scene.Sheet{Width: 0, Height: 10}}}})
	assert.EqualError(t, err, "page 1 has no sheet with a width and a height")
	d := document()
	d.Pages[0].Links[0].Page = 7
	_, err = Write(d)
	assert.ErrorContains(t, err, "a link on page 1 leads to page 8 of 3")
}

func TestEmptySheetAndOddText(t *testing.T) {
	s := &scene.Sheet{Width: 50, Height: 50, Title: "\x00\r(\\)\xff"}
	s.Add(&scene.Text{At: scene.Pt(5, 20), Text: "()\\ \r\n\x00\xff 漢 😀 ", Size: 8}, scene.NewPath(""), &scene.Polygon{})
	run(t, "pdftoppm", "-r", "20", write(t, &Document{Title: s.Title, Pages: []Page{{Sheet: s}, {Sheet: &scene.Sheet{Width: 1, Height: 1}, Bookmarks: []Bookmark{{3, "x😀", 0}}}}}), filepath.Join(t.TempDir(), "x"))
}

func BenchmarkWrite(b *testing.B) {
	for _, n := range []int{1, 30} {
		d := &Document{Title: "book"}
		for range n {
			d.Pages = append(d.Pages, Page{Sheet: sample.Sheet()})
		}
		b.Run(strconv.Itoa(n)+" pages", func(b *testing.B) {
			for b.Loop() {
				if _, err := Write(d); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// An independent reader of the file's structure finds nothing to complain of,
// and the labels and bookmarks that were meant.
func TestStructure(t *testing.T) {
	file := write(t, document())
	assert.Contains(t, run(t, "qpdf", "--check", file), "No syntax or stream encoding errors found")
	out := run(t, "qpdf", "--json", file)
	assert.Contains(t, out, `"/P": "u:card 1"`)
	assert.Contains(t, out, `"title": "The hall ½ (old)"`)
	assert.Contains(t, out, `"preferredname": "plan.take"`)
}

// Booklets are written side by side.
func TestSideBySide(t *testing.T) {
	want, err := Write(document())
	require.NoError(t, err)
	results := make(chan []byte)
	for range 4 {
		go func() {
			got, _ := Write(document())
			results <- got
		}()
	}
	for range 4 {
		assert.True(t, bytes.Equal(want, <-results))
	}
}
