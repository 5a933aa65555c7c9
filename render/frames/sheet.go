package frames

import (
	"fmt"
	"strings"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// Options is how sheets of frames are laid out; the zero value is A4 on its side.
type Options struct {
	Paper scene.Paper // zero for A4; it is laid on its side
	// Page is the number of the first sheet and Pages how many there are in all;
	// 0 counts these sheets only.
	Page, Pages int
}

// Moment is a frame of a camera that a sheet shows.
type Moment struct {
	Frame units.Frame
	Name  string // start, middle, end
}

// Row is a camera with its moments in a beat.
type Row struct {
	Camera  *plan.Camera
	Moments []Moment
}

// Sheet draws what each camera that rolls in a beat sees at its start, middle and
// end, a camera a row; nil where none does.
func Sheet(r *compile.Result, beat *plan.Beat, o Options) []*scene.Sheet {
	return New(r).Sheet(beat, o)
}

// Rows are the frames a beat's sheet shows: of each camera, what it rolls of the
// beat at its start, middle and end.
func (d *Drawer) Rows(beat *plan.Beat) []Row {
	if d == nil || beat == nil {
		return nil
	}
	from, to, ok := d.frames(beat)
	if !ok {
		return nil
	}
	return d.rows(from, to)
}

// rows are the cameras that roll from one frame to another.
func (d *Drawer) rows(from, to units.Frame) []Row {
	var rows []Row
	for i := range d.scene.Cameras {
		c := &d.scene.Cameras[i]
		for _, roll := range c.Rolls {
			a, b := max(roll.From, from), min(roll.To, to)
			if a > b {
				continue
			}
			row := Row{Camera: d.r.Stage.Cameras[i]}
			for k, f := range [3]units.Frame{a, (a + b) / 2, b} {
				if n := len(row.Moments); n > 0 && row.Moments[n-1].Frame == f {
					continue
				}
				row.Moments = append(row.Moments, Moment{f, [3]string{"start", "middle", "end"}[k]})
			}
			rows = append(rows, row)
		}
	}
	return rows
}

// frames are the first and last frame that a beat occupies.
func (d *Drawer) frames(beat *plan.Beat) (from, to units.Frame, ok bool) {
	for _, s := range d.r.Tracks.Clock.Spans() {
		if s.Beat == beat && s.To > s.From {
			from = d.r.Tracks.Rate.From(s.From)
			to = min(d.r.Tracks.Rate.From(s.To)-1, units.Frame(d.r.Tracks.Frames-1))
			return from, to, from <= to
		}
	}
	return 0, 0, false
}

// The page, in millimetres.
const (
	margin   = 10.0
	topHigh  = 14.0
	footHigh = 5.0
	gutter   = 5.0
	capSize  = 7.5
)

// spot is where a moment is drawn: on which sheet, with the picture's corner and
// size.
type spot struct {
	row    *Row
	moment Moment
	sheet  int
	at     scene.Point
	w, h   float64
	wide   float64 // room for the caption
}

// layout places a beat's frames: a camera a row, or, where there is one camera, as
// large as two rows of two allow.
func (d *Drawer) layout(rows []Row, o Options) (spots []spot, paper scene.Paper, sheets int) {
	paper = o.Paper
	if paper.Width <= 0 || paper.Height <= 0 {
		paper = scene.A4
	}
	paper = paper.Landscape()
	across, down := 3, 1
	if len(rows) == 1 && len(rows[0].Moments) > 1 {
		across, down = 2, 2
	}
	wide := (paper.Width - 2*margin - float64(across-1)*gutter) / float64(across)
	room := paper.Height - 2*margin - topHigh - footHigh
	below := 4*fonts.LineHeight(capSize) + gutter
	y, end := 0.0, paper.Height-margin-footHigh
	for i := range rows {
		row := &rows[i]
		c := d.scene.Cameras[d.camera(row.Camera)]
		w, h := wide, wide*c.Height/c.Width
		if most := room/float64(down) - below; h > most {
			w, h = most*c.Width/c.Height, most
		}
		step := wide
		if down > 1 {
			step = w
		}
		for k, m := range row.Moments {
			if k%across == 0 {
				if sheets == 0 || y+h+below > end+1e-6 {
					sheets++
					y = margin + topHigh
				}
				y += h + below
			}
			at := scene.Pt(margin+float64(k%across)*(step+gutter), y-h-below)
			spots = append(spots, spot{row, m, sheets - 1, at, w, h, step})
		}
	}
	return spots, paper, sheets
}

// Count is how many sheets a beat's frames take.
func (d *Drawer) Count(beat *plan.Beat, o Options) int {
	_, _, n := d.layout(d.Rows(beat), o)
	return n
}

// Sheet draws a beat's frames.
func (d *Drawer) Sheet(beat *plan.Beat, o Options) []*scene.Sheet {
	rows := d.Rows(beat)
	if len(rows) == 0 {
		return nil
	}
	return d.sheets(rows, fmt.Sprintf("Beat %d  %s", d.number(beat), beat.Title), o)
}

// Whole draws what each camera sees over the whole of what the drawer was made
// for, such as a pickup, under a heading.
func (d *Drawer) Whole(heading string, o Options) []*scene.Sheet {
	if d == nil {
		return nil
	}
	return d.sheets(d.rows(0, units.Frame(d.scene.Frames-1)), heading, o)
}

func (d *Drawer) sheets(rows []Row, heading string, o Options) []*scene.Sheet {
	spots, paper, n := d.layout(rows, o)
	if n == 0 {
		return nil
	}
	sheets := make([]*scene.Sheet, n)
	for i := range sheets {
		sheets[i] = d.page(heading, paper)
	}
	for _, s := range spots {
		sheet := sheets[s.sheet]
		if g := d.Draw(s.row.Camera, s.moment.Frame, scene.BoxAt(s.at.X, s.at.Y, s.w, s.h)); g != nil {
			sheet.Add(g)
		}
		sheet.Add(d.CaptionItems(s.row.Camera, s.moment, scene.Pt(s.at.X, s.at.Y+s.h+1.4), s.wide)...)
	}
	first := max(1, o.Page)
	pages := max(o.Pages, first+n-1)
	for i, sheet := range sheets {
		sheet.Add(&scene.Text{Class: "frame-quiet", At: scene.Pt(paper.Width-margin, paper.Height-margin), Text: fmt.Sprintf("page %d of %d", first+i, pages), Size: capSize, Anchor: scene.End})
	}
	return sheets
}

// CaptionItems sets the caption of a moment below a point, no wider than given.
func (d *Drawer) CaptionItems(camera *plan.Camera, m Moment, at scene.Point, width float64) []scene.Item {
	var out []scene.Item
	step := fonts.LineHeight(capSize)
	for i, text := range d.Caption(camera, m.Frame, m.Name) {
		if text == "" {
			continue
		}
		face := fonts.Regular
		if i == 0 {
			face = fonts.Bold
		}
		out = append(out, &scene.Text{Class: "frame-caption", At: scene.Pt(at.X, at.Y+face.Ascent(capSize)+float64(i)*step), Text: shortened(face, width, text), Size: capSize, Face: face})
	}
	return out
}

// shortened is a line of a caption without the parts at its end that there is no
// room for: half a distance is worse than none.
func shortened(face fonts.Face, width float64, text string) string {
	for short := text; ; {
		if face.Width(capSize, short) <= width {
			return short
		}
		cut := max(strings.LastIndex(short, ", "), strings.LastIndex(short, "; "), strings.LastIndex(short, " ("))
		if cut <= 0 {
			return face.Fit(capSize, width, text)
		}
		short = short[:cut]
	}
}

// page is an empty sheet with its head and foot.
func (d *Drawer) page(heading string, paper scene.Paper) *scene.Sheet {
	t := d.r.Plan.Take
	s := &scene.Sheet{
		Width: paper.Width, Height: paper.Height, Styles: Styles(),
		Title: fmt.Sprintf("%s, %s: frames", t.Title, heading),
		Desc:  "what each camera's lens sees at the start, in the middle and at the end",
	}
	scn := t.Title
	if t.Scene != "" {
		scn = "scene " + t.Scene + "  " + scn
	}
	right := strings.TrimSpace(t.Revision + "  " + t.RevisionDate)
	if right != "" {
		right = "revision " + right
	}
	room := paper.Width - 2*margin
	rightWide := fonts.Regular.Width(8, right)
	s.Add(
		&scene.Rect{Class: "frame-paper", Box: s.Box()},
		&scene.Text{Class: "frame-caption", At: scene.Pt(margin, margin+4), Text: fonts.Bold.Fit(12, room, fonts.Clean(heading)), Size: 12, Face: fonts.Bold},
		&scene.Text{Class: "frame-caption", At: scene.Pt(margin, margin+8.6), Text: fonts.Regular.Fit(8, room-rightWide-5, scn+"  what the lens sees at the start, in the middle and at the end"), Size: 8},
		&scene.Text{Class: "frame-caption", At: scene.Pt(paper.Width-margin, margin+8.6), Text: right, Size: 8, Anchor: scene.End},
		scene.Line("frame-rule", scene.Pt(margin, margin+10.6), scene.Pt(paper.Width-margin, margin+10.6)),
		&scene.Text{Class: "frame-quiet", At: scene.Pt(margin, paper.Height-margin), Text: fonts.Regular.Fit(capSize, room-40, "planned, not measured: figures are stand-ins of the right height and place; check the lens on the floor"), Size: capSize},
	)
	return s
}

// number is a beat's place in order of time, from 1.
func (d *Drawer) number(beat *plan.Beat) int {
	for i, s := range d.r.Tracks.Clock.Spans() {
		if s.Beat == beat {
			return i + 1
		}
	}
	return beat.Index + 1
}
