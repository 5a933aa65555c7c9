package flow

import (
	"math"

	"longhand/render/fonts"
	"longhand/render/scene"
)

// Column is a column of a table.
type Column struct {
	Head  string
	Width float64 // mm; 0 for as much as its text needs
	Face  fonts.Face
	Right bool // numbers stand to the right
}

// Row is a row. A row with a Group spans the table, in bold, and stays with the
// row after it.
type Row struct {
	Group   string
	Cells   []string // a line break in a cell is kept
	Strong  bool     // in bold
	Changed bool     // has a bar in the margin
	// Draw makes what is drawn into a cell besides its text; nil for nothing. The
	// box is the whole cell.
	Draw func(column int, cell scene.Box) []scene.Item
}

func (r Row) face(c Column) fonts.Face {
	if r.Strong {
		return fonts.Bold
	}
	return c.Face
}

// Table is rows under columns. Its head is repeated on every page, and the group
// that goes on there; a row is broken only where it is higher than a page, and the
// last one never starts a page alone.
type Table struct {
	ID      string // of its group on each page
	Title   string // read aloud
	Columns []Column
	Rows    []Row
	Size    float64 // points; 0 for one less than plain text, at least the smallest
	// Notes are said below the table, on the page of its last row.
	Notes []string
	// DrawHead is Row.Draw for the head.
	DrawHead func(column int, cell scene.Box) []scene.Item
}

// padding is the room left and right of a cell's text, leading that above and
// below, in millimetres.
const (
	padding = 1.2
	leading = 0.7
)

// Table prints a table.
func (f *Flow) Table(t Table) {
	size := t.Size
	if size <= 0 {
		size = math.Max(scene.Smallest, f.o.size()-1)
	}
	if len(t.Columns) == 0 {
		return
	}
	p := &tablePrinter{f: f, t: &t, size: size, step: fonts.LineHeight(size), widths: t.columnWidths(f.Width(), size)}
	p.head = p.wrap(Row{Strong: true, Cells: heads(t.Columns), Draw: t.DrawHead})
	for i, r := range t.Rows {
		p.row(i, p.wrap(r))
	}
	if len(t.Rows) == 0 {
		f.need(p.head.height)
		p.begin()
	}
	p.end()
	f.Space(p.step)
	for _, n := range t.Notes {
		f.Block(fonts.Regular, size, 0, n)
	}
}

func heads(columns []Column) []string {
	out := make([]string, len(columns))
	for i, c := range columns {
		out[i] = c.Head
	}
	return out
}

type tablePrinter struct {
	f      *Flow
	t      *Table
	size   float64
	step   float64
	widths []float64
	head   wrapped
	group  *scene.Group // on the page being filled
	under  string       // the group of the row before
}

// wrapped is a row cut into lines.
type wrapped struct {
	Row
	lines  [][]string // of each cell
	height float64
}

func (p *tablePrinter) wrap(r Row) wrapped {
	w := wrapped{Row: r}
	n := 1
	if r.Group != "" {
		w.lines = [][]string{fonts.Bold.Wrap(p.size, p.total()-2*padding, r.Group)}
		n = len(w.lines[0])
	} else {
		for i, c := range p.t.Columns {
			cell := ""
			if i < len(r.Cells) {
				cell = r.Cells[i]
			}
			lines := r.face(c).Wrap(p.size, p.widths[i]-2*padding, cell)
			w.lines = append(w.lines, lines)
			n = max(n, len(lines))
		}
	}
	w.height = p.heightOf(n)
	return w
}

func (p *tablePrinter) heightOf(lines int) float64 { return float64(lines)*p.step + 2*leading }

func (p *tablePrinter) total() float64 {
	sum := 0.0
	for _, w := range p.widths {
		sum += w
	}
	return sum
}

// row prints the i-th row, on the next page if it does not fit here.
func (p *tablePrinter) row(i int, r wrapped) {
	room := p.f.height() - p.head.height
	if r.Group != "" {
		p.under = ""
	} else if p.under != "" {
		room -= p.goesOn().height
	}
	p.reserve(min(p.kept(i, r, room), room))
	for r.height > p.f.Left()+1e-6 && p.f.Left() >= p.heightOf(1) {
		n := int((p.f.Left() - 2*leading + 1e-6) / p.step)
		var part wrapped
		part, r = p.cut(r, n)
		p.draw(part)
		p.reserve(math.Min(r.height, room))
	}
	p.draw(r)
	if r.Group != "" {
		p.under = r.Group
	}
}

// kept is the height of the i-th row and of what must not be parted from it: of a
// group's name the row below it, of the last row but one the last, of that the
// notes.
func (p *tablePrinter) kept(i int, r wrapped, room float64) float64 {
	need := r.height
	if need > room { // no page has it whole
		need = p.heightOf(2)
	}
	last := len(p.t.Rows) - 1
	var more float64
	switch {
	case i < last && (r.Group != "" || i == last-1):
		more = p.kept(i+1, p.wrap(p.t.Rows[i+1]), room)
	case i == last:
		more = p.notesHeight()
	}
	if need+more > room {
		more = min(more, p.heightOf(2))
	}
	return need + more
}

// notesHeight is what the notes take below the table.
func (p *tablePrinter) notesHeight() float64 {
	sum := 0.0
	for _, n := range p.t.Notes {
		sum += fonts.LineHeight(p.size) * (float64(len(fonts.Regular.Wrap(p.size, p.f.Width(), n))) + 1.0/3)
	}
	if sum > 0 {
		sum += p.step
	}
	return sum
}

// goesOn is the row that names the group again on the next page.
func (p *tablePrinter) goesOn() wrapped { return p.wrap(Row{Group: p.under + ", continued"}) }

// reserve makes room for a height under a head.
func (p *tablePrinter) reserve(height float64) {
	if p.group == nil {
		p.f.need(p.head.height + height)
		p.begin()
		return
	}
	if height > p.f.Left()+1e-6 {
		p.end()
		p.f.newPage()
		p.begin()
		if p.under != "" {
			p.draw(p.goesOn())
		}
	}
}

// cut takes the first lines of each cell off a row.
func (p *tablePrinter) cut(r wrapped, n int) (first, rest wrapped) {
	first, rest = r, r
	first.lines, rest.lines, rest.Draw = nil, nil, nil // drawn once
	longest := 1
	for _, l := range r.lines {
		k := min(n, len(l))
		first.lines, rest.lines = append(first.lines, l[:k]), append(rest.lines, l[k:])
		longest = max(longest, len(l)-k)
	}
	first.height, rest.height = p.heightOf(n), p.heightOf(longest)
	return first, rest
}

// begin prints the head.
func (p *tablePrinter) begin() {
	p.group = &scene.Group{ID: p.t.ID, Title: p.t.Title}
	if p.group.ID != "" && p.group.Title == "" {
		p.group.Title = p.t.ID
	}
	p.f.sheet().Add(p.group)
	p.draw(p.head)
	p.group.Add(scene.Line("flow-heavy", scene.Pt(p.f.o.Margins.Left, p.f.y), scene.Pt(p.f.o.Margins.Left+p.total(), p.f.y)))
}

// end draws the line under the last row of a page.
func (p *tablePrinter) end() {
	if p.group != nil {
		p.group.Add(scene.Line("flow-heavy", scene.Pt(p.f.o.Margins.Left, p.f.y), scene.Pt(p.f.o.Margins.Left+p.total(), p.f.y)))
	}
}

func (p *tablePrinter) draw(r wrapped) {
	left, y := p.f.o.Margins.Left, p.f.y
	if r.Group != "" {
		p.group.Add(&scene.Rect{Class: "flow-shade", Box: scene.BoxAt(left, y, p.total(), r.height)})
		p.lines(left+padding, y, fonts.Bold, scene.Start, r.lines[0])
	} else {
		x := left
		for i, c := range p.t.Columns {
			if c.Right {
				p.lines(x+p.widths[i]-padding, y, r.face(c), scene.End, r.lines[i])
			} else {
				p.lines(x+padding, y, r.face(c), scene.Start, r.lines[i])
			}
			if r.Draw != nil {
				p.group.Add(r.Draw(i, scene.BoxAt(x, y, p.widths[i], r.height))...)
			}
			x += p.widths[i]
		}
	}
	if r.Changed {
		p.group.Add(scene.Line("flow-bar", scene.Pt(left-2, y), scene.Pt(left-2, y+r.height)))
	}
	p.f.advance(r.height)
	p.group.Add(scene.Line("flow-rule", scene.Pt(left, p.f.y), scene.Pt(left+p.total(), p.f.y)))
}

func (p *tablePrinter) lines(x, y float64, face fonts.Face, anchor scene.Anchor, lines []string) {
	for i, l := range lines {
		if l != "" {
			at := scene.Pt(x, y+leading+float64(i)*p.step+face.Ascent(p.size))
			p.group.Add(&scene.Text{At: at, Text: l, Size: p.size, Face: face, Anchor: anchor})
		}
	}
}
