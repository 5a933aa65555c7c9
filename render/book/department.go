package book

import (
	"longhand/lang/safety"
	"longhand/render/flow"
	"longhand/render/fonts"
	"longhand/render/sheets"
)

// department is a section on paper that lies on its side: its tables are wide.
func (m *maker) department(s *sheets.Sheet) func(page int) []leaf {
	return func(int) []leaf { return texts(s.Title, "department "+string(s.Department), m.tables(s)) }
}

func (m *maker) tables(s *sheets.Sheet) []flow.Page {
	f := flow.New(m.options(true))
	f.Heading(0, s.Title)
	for i := range s.Tables {
		t := &s.Tables[i]
		if len(t.Rows) == 0 {
			continue // told together below
		}
		f.Heading(1, t.Title)
		m.print(f, t, string(s.Department)+" "+t.Key, true)
		if t.Chart != nil {
			chart(f, t.Chart)
		}
		f.Space(3)
	}
	var none []string
	for i := range s.Tables {
		if t := &s.Tables[i]; len(t.Rows) == 0 && t.Empty != "" {
			none = append(none, t.Empty)
		}
	}
	if len(none) > 0 {
		f.Heading(1, emptyHeading)
		for _, text := range none {
			f.Paragraph(fonts.Regular, text)
		}
		f.Space(3)
	}
	if len(s.Cautions) > 0 {
		f.Heading(1, cautionsIn)
		for _, c := range s.Cautions {
			f.Paragraph(fonts.Regular, sentence(c))
			f.Space(1)
		}
	}
	return f.Pages(nil)
}

// cautions are those of all departments, once each, at the end of the book.
func (m *maker) cautions(int) []leaf {
	f := flow.New(m.options(false))
	f.Heading(0, "Cautions")
	f.Paragraph(fonts.Bold, safety.General)
	seen := map[string]bool{}
	for i := range m.sheets.Sheets {
		s := &m.sheets.Sheets[i]
		if m.o.For != "" && s.Department != m.o.For {
			continue
		}
		for _, c := range s.Cautions {
			if !seen[c] {
				seen[c] = true
				f.Space(1.5)
				f.Paragraph(fonts.Regular, sentence(c))
			}
		}
	}
	return texts("Cautions", "cautions", f.Pages(nil))
}
