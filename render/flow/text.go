package flow

import (
	"longhand/render/fonts"
	"longhand/render/scene"
)

// headSpace is the room above a heading, in millimetres.
const headSpace = 4.0

// headSize is the size of a heading of a level in points.
func (o Options) headSize(level int) float64 {
	return o.size() * [...]float64{1.9, 1.45, 1.15}[max(0, min(level, 2))]
}

// Heading prints a heading, which stays on one page with what follows it, and
// notes where it stands.
func (f *Flow) Heading(level int, text string) {
	size := f.o.headSize(level)
	lines := fonts.Bold.Wrap(size, f.Width(), text)
	step := fonts.LineHeight(size)
	f.held = append(f.held, held{
		height: headSpace + step*float64(len(lines)) + 1,
		draw: func(y float64) {
			y += headSpace
			p := f.page()
			p.Entries = append(p.Entries, Entry{Level: level, Text: text, Page: len(f.pages) - 1, Y: y})
			for i, l := range lines {
				f.text(f.o.Margins.Left, y+step*float64(i), fonts.Bold, size, scene.Start, l)
			}
		},
	})
}

// Paragraph prints running text. It is broken across pages so that neither part
// is a single line.
func (f *Flow) Paragraph(face fonts.Face, text string) {
	f.Block(face, f.o.size(), 0, text)
}

// Block is a paragraph of another size, and indented.
func (f *Flow) Block(face fonts.Face, size, indent float64, text string) {
	lines := face.Wrap(size, f.Width()-indent, text)
	step := fonts.LineHeight(size)
	for len(lines) > 0 {
		n := f.fit(len(lines), step)
		f.need(step * float64(n))
		for i, l := range lines[:n] {
			f.text(f.o.Margins.Left+indent, f.y+step*float64(i), face, size, scene.Start, l)
		}
		f.advance(step * float64(n))
		lines = lines[n:]
	}
	f.Space(step / 3)
}

// fit is how many of so many lines go onto this page, at least one; where a part
// would be a single line, fewer, or those that start the next page.
func (f *Flow) fit(lines int, step float64) int {
	n := int((f.Left() + 1e-6) / step)
	if n >= lines {
		return lines
	}
	if n == lines-1 {
		n--
	}
	if n < 2 { // then need starts a page
		n = min(lines, int(f.height()/step))
		if n == lines-1 && n > 2 {
			n--
		}
	}
	return max(1, n)
}
