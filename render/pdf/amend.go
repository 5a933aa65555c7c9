package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf16"
)

// amend adds to the document what the library has no call for, or gets wrong:
// page labels, the language, that a window shows the title and not the file's
// name, and attached files (the library puts those before the pages, and then
// every link leads to a wrong one). It does so by an incremental update (ISO
// 32000-1, 7.5.6): the files and the catalog are written at the end, with a
// cross-reference section that points back to the first one.
func amend(file []byte, d *Document) ([]byte, error) {
	old, err := readEnd(file)
	if err != nil {
		return nil, err
	}
	u := &update{next: old.size}
	u.buf.Write(file)
	if !bytes.HasSuffix(file, []byte("\n")) {
		u.buf.WriteByte('\n')
	}
	names := u.files(d.Files)

	language := d.Language
	if language == "" {
		language = "en"
	}
	var c strings.Builder
	c.WriteString("<<" + old.catalog)
	c.WriteString("/Lang " + textString(language) + "\n/ViewerPreferences <</DisplayDocTitle true>>\n")
	if nums := pageLabels(d.Pages); nums != "" {
		c.WriteString("/PageLabels <</Nums [" + nums + "]>>\n")
	}
	if names != "" {
		c.WriteString("/Names <</EmbeddedFiles <</Names [" + names + "]>>>>\n")
	}
	c.WriteString(">>\n")
	u.object(old.root, c.String())
	return u.finish(old), nil
}

// end is what the end of the library's file says.
type end struct {
	xref, size, root, info int
	catalog                string // what the catalog holds, without its names
}

func readEnd(file []byte) (e end, err error) {
	at := bytes.LastIndex(file, []byte("\ntrailer"))
	if at < 0 {
		return e, fmt.Errorf("writing the pdf: it has no trailer")
	}
	trailer := file[at:]
	for _, n := range []struct {
		pattern *regexp.Regexp
		to      *int
	}{{startXref, &e.xref}, {rootRef, &e.root}, {infoRef, &e.info}, {sizeOf, &e.size}} {
		m := n.pattern.FindSubmatch(trailer)
		if m == nil {
			return e, fmt.Errorf("writing the pdf: its trailer has no %s", n.pattern)
		}
		if *n.to, err = strconv.Atoi(string(m[1])); err != nil {
			return e, fmt.Errorf("writing the pdf: %w", err)
		}
	}
	head := fmt.Appendf(nil, "\n%d 0 obj\n<<", e.root)
	from := bytes.LastIndex(file[:e.xref], head)
	if from < 0 {
		return e, fmt.Errorf("writing the pdf: its catalog was not found")
	}
	body := file[from+len(head) : e.xref]
	names := bytes.Index(body, []byte("/Names <<\n/EmbeddedFiles"))
	if names < 0 {
		return e, fmt.Errorf("writing the pdf: its catalog has no names")
	}
	e.catalog = string(body[:names])
	return e, nil
}

var (
	startXref = regexp.MustCompile(`startxref\s+(\d+)\s+%%EOF\s*$`)
	rootRef   = regexp.MustCompile(`/Root (\d+) 0 R`)
	infoRef   = regexp.MustCompile(`/Info (\d+) 0 R`)
	sizeOf    = regexp.MustCompile(`/Size (\d+)`)
)

// update collects the objects that are added.
type update struct {
	buf     bytes.Buffer
	next    int // the number of the next new object
	entries strings.Builder
}

func (u *update) object(number int, body string) {
	fmt.Fprintf(&u.entries, "%d 1\n%010d 00000 n \n", number, u.buf.Len())
	fmt.Fprintf(&u.buf, "%d 0 obj\n%sendobj\n", number, body)
}

func (u *update) add(body string) int {
	number := u.next
	u.next++
	u.object(number, body)
	return number
}

func (u *update) finish(old end) []byte {
	xref := u.buf.Len()
	fmt.Fprintf(&u.buf, "xref\n%strailer\n<</Size %d /Root %d 0 R /Info %d 0 R /Prev %d>>\nstartxref\n%d\n%%%%EOF\n",
		u.entries.String(), u.next, old.root, old.info, old.xref, xref)
	return u.buf.Bytes()
}

// files adds each file and its description (ISO 32000-1, 7.11.4) and gives the
// entries of the name tree, which has to be in order.
func (u *update) files(files []File) string {
	var names []string
	for i, f := range files {
		var packed bytes.Buffer
		z := zlib.NewWriter(&packed)
		_, _ = z.Write(f.Content) // a buffer takes everything
		_ = z.Close()
		stream := u.add(fmt.Sprintf("<</Type /EmbeddedFile /Filter /FlateDecode /Length %d /Params <</Size %d>>>>\nstream\n%s\nendstream\n",
			packed.Len(), len(f.Content), packed.Bytes()))
		spec := u.add(fmt.Sprintf("<</Type /Filespec /F %[1]s /UF %[1]s /EF <</F %[2]d 0 R>> /Desc %[3]s>>\n",
			textString(f.Name), stream, textString(f.Desc)))
		names = append(names, fmt.Sprintf("(%06d) %d 0 R", i, spec))
	}
	return strings.Join(names, " ")
}

// pageLabels is the number tree of labels (ISO 32000-1, 12.4.2): each page that
// names a label has it as it is; a page that names none counts on by itself.
func pageLabels(pages []Page) string {
	var labels []string
	named := false
	for i, p := range pages {
		if p.Label != "" {
			named = true
			labels = append(labels, fmt.Sprintf("%d <</P %s>>", i, textString(p.Label)))
		} else {
			labels = append(labels, fmt.Sprintf("%d <</S /D /St %d>>", i, i+1))
		}
	}
	if !named {
		return ""
	}
	return strings.Join(labels, " ")
}

// textString is a PDF text string: UTF-16 with its mark, in hexadecimal.
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	b.WriteByte('>')
	return b.String()
}
