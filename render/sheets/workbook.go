package sheets

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Workbook writes the book as a workbook (ECMA-376) with a tab a department,
// tables one below the other. Numbers are numbers, in the unit their column's
// head gives.
func (b *Book) Workbook() ([]byte, error) {
	f := excelize.NewFile()
	defer f.Close()
	w := &workbook{file: f}
	if err := w.styles(); err != nil {
		return nil, err
	}
	for i := range b.Sheets {
		s := &b.Sheets[i]
		tab := s.Title
		if i == 0 {
			if err := f.SetSheetName("Sheet1", tab); err != nil {
				return nil, err
			}
		} else if _, err := f.NewSheet(tab); err != nil {
			return nil, err
		}
		if err := w.sheet(b, s, tab); err != nil {
			return nil, fmt.Errorf("%s: %w", tab, err)
		}
	}
	// The file's own dates would make every run another file.
	props := &excelize.DocProperties{Title: b.Title, Creator: "longhand", Created: "2000-01-01T00:00:00Z", Modified: "2000-01-01T00:00:00Z"}
	if err := f.SetDocProps(props); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

type workbook struct {
	file              *excelize.File
	title, head, cell int
	group             int
}

func (w *workbook) styles() (err error) {
	style := func(s *excelize.Style) (id int) {
		if err == nil {
			id, err = w.file.NewStyle(s)
		}
		return id
	}
	w.title = style(&excelize.Style{Font: &excelize.Font{Bold: true, Size: 13}})
	w.group = style(&excelize.Style{Font: &excelize.Font{Bold: true}})
	w.head = style(&excelize.Style{Font: &excelize.Font{Bold: true}, Border: []excelize.Border{{Type: "bottom", Color: "000000", Style: 1}}, Alignment: &excelize.Alignment{WrapText: true, Vertical: "bottom"}})
	w.cell = style(&excelize.Style{Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}})
	return err
}

// Widths of columns in characters.
const (
	narrowColumn = 9
	widestColumn = 44
)

func (w *workbook) sheet(b *Book, s *Sheet, tab string) error {
	row := 1
	widths := map[int]int{}
	line := func(style int, values ...any) error {
		for i, v := range values {
			at, err := excelize.CoordinatesToCellName(i+1, row)
			if err != nil {
				return err
			}
			if err := w.put(tab, at, v); err != nil {
				return err
			}
			if err := w.file.SetCellStyle(tab, at, at, style); err != nil {
				return err
			}
		}
		row++
		return nil
	}
	if err := line(w.title, b.heading(s)); err != nil {
		return err
	}
	if err := line(0, b.line()); err != nil {
		return err
	}
	for _, l := range s.Says {
		if err := line(w.group, sentence(l)); err != nil {
			return err
		}
	}
	for i := range s.Tables {
		if err := w.table(&s.Tables[i], line, &row, widths); err != nil {
			return err
		}
	}
	row++
	for _, c := range append(append([]string(nil), s.Cautions...), strings.TrimSuffix(b.Safety, ".")) {
		if err := line(0, sentence(c)); err != nil {
			return err
		}
	}
	for i := 0; i < len(widths); i++ {
		name, err := excelize.ColumnNumberToName(i + 1)
		if err != nil {
			return err
		}
		if err := w.file.SetColWidth(tab, name, name, float64(min(max(widths[i]+2, narrowColumn), widestColumn))); err != nil {
			return err
		}
	}
	landscape, paper, fit, tall := "landscape", 9, 1, 0
	if err := w.file.SetPageLayout(tab, &excelize.PageLayoutOptions{Orientation: &landscape, Size: &paper, FitToWidth: &fit, FitToHeight: &tall}); err != nil {
		return err
	}
	on := true
	return w.file.SetSheetProps(tab, &excelize.SheetPropsOptions{FitToPage: &on})
}

func (w *workbook) table(t *Table, line func(int, ...any) error, row *int, widths map[int]int) error {
	*row++
	if err := line(w.title, t.Title); err != nil {
		return err
	}
	if len(t.Rows) == 0 {
		return line(0, t.Empty)
	}
	head := make([]any, len(t.Columns))
	for i, c := range t.Columns {
		h := c.Title
		if c.Unit != "" {
			h += " [" + c.Unit + "]"
		}
		head[i] = h
		widths[i] = max(widths[i], min(len([]rune(h)), 12))
	}
	if err := line(w.head, head...); err != nil {
		return err
	}
	for _, r := range t.Rows {
		values := make([]any, len(r.Cells))
		for i, c := range r.Cells {
			values[i] = c.Text
			if t.Columns[i].Unit != "" && c.Value != nil {
				values[i] = *c.Value
			}
			widths[i] = max(widths[i], len([]rune(fmt.Sprint(values[i]))))
		}
		if err := line(w.cell, values...); err != nil {
			return err
		}
	}
	for _, n := range t.Notes {
		if err := line(0, sentence(n)); err != nil {
			return err
		}
	}
	return nil
}

// put writes words as words, so that a line that begins with "=" stays one.
func (w *workbook) put(tab, at string, v any) error {
	if s, ok := v.(string); ok {
		return w.file.SetCellStr(tab, at, s)
	}
	return w.file.SetCellValue(tab, at, v)
}
