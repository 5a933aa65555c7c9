package format

import (
	"bytes"
	"slices"
	"strings"
	"unicode/utf8"

	"longhand/lang/source"
	"longhand/lang/syntax"
)

// How a plan is laid out.
const (
	indent       = "  "     // of the lines of a section
	continuation = "      " // of a statement that goes on on the next line
	commentGap   = 2        // blanks before a comment after a statement
	longLine     = 72       // characters; longer lines do not push the comments of their neighbours away
)

// Text formats a plan.
func Text(text string) string {
	file, _ := syntax.Parse(source.NewFile("", text))
	return string(File(file))
}

// File formats a parsed plan; one in an encoding that can't be read stays as it is.
func File(file *syntax.File) []byte {
	if file.Wide() {
		return []byte(file.Source.Text)
	}
	rows := layOut(file)
	alignComments(rows)
	var out bytes.Buffer
	for _, r := range rows {
		out.WriteString(r.text)
		if r.comment != "" {
			out.WriteString(strings.Repeat(" ", r.gap))
			out.WriteString(r.comment)
		}
		out.WriteByte('\n')
	}
	return out.Bytes()
}

// row is a line of the result. A comment after a statement stands apart until
// it is known how far its neighbours reach.
type row struct {
	text    string
	comment string
	gap     int
}

// layOut makes the rows, with one blank row before each section and none more
// than one anywhere.
func layOut(file *syntax.File) []row {
	var rows []row
	blank := false
	outer := outerComments(file.Lines)
	for i, line := range file.Lines {
		if isBlank(line) {
			blank = len(rows) > 0
			continue
		}
		if blank || len(rows) > 0 && startsBlock(file.Lines, outer, i) {
			rows = append(rows, row{})
		}
		blank = false
		rows = append(rows, lineRows(line, outer[i])...)
	}
	return rows
}

func isBlank(line *syntax.Line) bool {
	for _, t := range line.Tokens {
		if t.Type != syntax.TokSpace && t.Type != syntax.TokEOL {
			return false
		}
	}
	return true
}

func isComment(line *syntax.Line) bool { return !isBlank(line) && len(line.Words()) == 0 }

func isHeader(line *syntax.Line) bool { return line.Section != nil && line.Section.Head == line }

// outerComments finds the comment lines that belong to the section below them:
// those right above its header, and those that a blank line parts from the
// statement above.
func outerComments(lines []*syntax.Line) map[int]bool {
	outer := map[int]bool{}
	for i, line := range lines {
		if !isHeader(line) {
			continue
		}
		first := i
		for first > 0 && len(lines[first-1].Words()) == 0 {
			first--
		}
		parted := first == 0 || !anyBlank(lines[first:i])
		for k := first; k < i; k++ {
			parted = parted || isBlank(lines[k])
			outer[k] = parted && isComment(lines[k])
		}
	}
	return outer
}

func anyBlank(lines []*syntax.Line) bool { return slices.ContainsFunc(lines, isBlank) }

// startsBlock reports whether a blank row must stand above a line: it is a
// header, or the first of the comments above one.
func startsBlock(lines []*syntax.Line, outer map[int]bool, i int) bool {
	above := i > 0 && outer[i-1]
	return (isHeader(lines[i]) || outer[i]) && !above
}

// alignComments puts the comments after neighbouring statements under each
// other.
func alignComments(rows []row) {
	for i := 0; i < len(rows); {
		n, widest := 0, 0
		for i+n < len(rows) && rows[i+n].comment != "" {
			if w := utf8.RuneCountInString(rows[i+n].text); w <= longLine {
				widest = max(widest, w)
			}
			n++
		}
		for k := i; k < i+n; k++ {
			rows[k].gap = commentGap + max(0, widest-utf8.RuneCountInString(rows[k].text))
		}
		i += max(1, n)
	}
}
