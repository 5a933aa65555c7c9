package sheets

import (
	"fmt"
	"strings"

	"longhand/lang/departments"
)

// File is a file of a breakdown; its name has forward slashes.
type File struct {
	Name string
	Data []byte
}

// The forms in which sheets are written.
const (
	HTML     = "html"
	Markdown = "md"
	CSV      = "csv"
	JSON     = "json"
	Workbook = "xlsx"
)

// Forms lists them.
func Forms() []string { return []string{HTML, Markdown, CSV, JSON, Workbook} }

// Files writes the book in the forms asked for; none asked for is all of them:
//
//	sheets.html               all departments on one page
//	sheets.json               all departments, schema 1
//	sheets.xlsx               a tab a department
//	camera.html, camera.md    a department's sheet
//	csv/camera-focus.csv      a table
//	csv/columns.csv           what the columns of all tables say
//
// Those of a rehearsal are rehearsal.html, rehearsal.md, rehearsal.json,
// rehearsal.xlsx, csv/rehearsal-cues.csv and its like, and
// csv/rehearsal-columns.csv, so that they can lie in the same folder.
func (b *Book) Files(forms ...string) ([]File, error) {
	if len(forms) == 0 {
		forms = Forms()
	}
	var out []File
	for _, form := range forms {
		files, err := b.form(form)
		if err != nil {
			return nil, err
		}
		out = append(out, files...)
	}
	return out, nil
}

func (b *Book) form(form string) ([]File, error) {
	var out []File
	switch form {
	case HTML:
		if len(b.Sheets) > 1 {
			out = append(out, File{"sheets.html", b.HTML()})
		}
		for i := range b.Sheets {
			one := b.only(i)
			out = append(out, File{string(b.Sheets[i].Department) + ".html", one.HTML()})
		}
	case Markdown:
		for i := range b.Sheets {
			out = append(out, File{string(b.Sheets[i].Department) + ".md", b.Markdown(&b.Sheets[i])})
		}
	case CSV:
		columns, err := b.ColumnsCSV()
		if err != nil {
			return nil, err
		}
		out = append(out, File{"csv/" + b.named("columns", b.name+"-columns") + ".csv", columns})
		for _, s := range b.Sheets {
			for i := range s.Tables {
				data, err := s.Tables[i].CSV()
				if err != nil {
					return nil, err
				}
				out = append(out, File{"csv/" + string(s.Department) + "-" + s.Tables[i].Key + ".csv", data})
			}
		}
	case JSON:
		data, err := b.JSON()
		return []File{{b.named("sheets", b.name) + ".json", data}}, err
	case Workbook:
		data, err := b.Workbook()
		return []File{{b.named("sheets", b.name) + ".xlsx", data}}, err
	default:
		return nil, fmt.Errorf("sheets come as %s, not %q", strings.Join(Forms(), ", "), form)
	}
	return out, nil
}

// named is a file's name in a breakdown, or in a book of another name.
func (b *Book) named(breakdown, other string) string {
	if b.name == "" {
		return breakdown
	}
	return other
}

// Only is the book with one department's sheet.
func (b *Book) Only(d departments.Name) *Book {
	for i := range b.Sheets {
		if b.Sheets[i].Department == d {
			return b.only(i)
		}
	}
	c := *b
	c.Sheets = nil
	return &c
}

func (b *Book) only(i int) *Book {
	c := *b
	c.Sheets = b.Sheets[i : i+1]
	return &c
}
