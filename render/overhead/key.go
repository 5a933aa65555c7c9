package overhead

import (
	"fmt"
	"slices"
	"strconv"

	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// note is an entry of the list at the side: a sign, what it stands for, and a
// quieter line below.
type note struct {
	head  string // a heading of its own; the rest is then empty
	sign  func(at scene.Point) []scene.Item
	texts []string
	under string
	bold  bool
	dim   bool
	id    string
	title string
	tall  bool // its sign is higher than a line
	wide  bool // it has no sign, nor room for one
}

const (
	keyText = 7.5 // points
	keyGap  = 0.9 // mm between entries
	signCol = 6.2 // mm for the sign
)

// high is how much room a note takes in a column, in millimetres.
func (n note) high(width float64) float64 {
	if n.head != "" {
		return fonts.LineHeight(8) + 1.4
	}
	h := float64(len(n.lines(width)))*fonts.LineHeight(keyText) + float64(len(n.unders(width)))*fonts.LineHeight(scene.Smallest)
	switch {
	case n.tall:
		h = max(h, 5.6)
	case n.sign != nil:
		h = max(h, 4.2)
	}
	return h + keyGap
}

// sided is the room left of an entry for its sign.
func (n note) sided() float64 {
	if n.wide {
		return 0
	}
	return signCol
}

func (n note) face() fonts.Face {
	if n.bold {
		return fonts.Bold
	}
	return fonts.Regular
}

func (n note) lines(width float64) []string {
	var out []string
	for _, t := range n.texts {
		out = append(out, n.face().Wrap(keyText, width-n.sided(), t)...)
	}
	return out
}

func (n note) unders(width float64) []string {
	if n.under == "" {
		return nil
	}
	return fonts.Regular.Wrap(scene.Smallest, width-n.sided(), n.under)
}

// draw sets a note with its top left corner at a point.
func (n note) draw(at scene.Point, width float64) scene.Item {
	if n.head != "" {
		g := &scene.Group{}
		y := at.Y + fonts.Bold.Ascent(8)
		g.Add(&scene.Text{Class: "ink", At: scene.Pt(at.X, y), Text: fonts.Bold.Fit(8, width, n.head), Size: 8, Face: fonts.Bold},
			scene.Line("rule", scene.Pt(at.X, y+1), scene.Pt(at.X+width, y+1)))
		return g
	}
	g := &scene.Group{ID: n.id, Title: n.title}
	if n.dim {
		g.Class = "dim"
	}
	y := at.Y
	if n.sign != nil {
		g.Add(n.sign(scene.Pt(at.X+signCol/2-0.5, y+fonts.LineHeight(keyText)/2+0.35))...)
		y += 0.2
	}
	for _, l := range n.lines(width) {
		g.Add(&scene.Text{Class: "ink", At: scene.Pt(at.X+n.sided(), y+fonts.Regular.Ascent(keyText)), Text: l, Size: keyText, Face: n.face()})
		y += fonts.LineHeight(keyText)
	}
	for _, l := range n.unders(width) {
		g.Add(&scene.Text{Class: "quiet", At: scene.Pt(at.X+n.sided(), y+fonts.Regular.Ascent(scene.Smallest)), Text: l, Size: scene.Smallest})
		y += fonts.LineHeight(scene.Smallest)
	}
	return g
}

// moment is a time for lists: the take's clock and the frame.
func (m *material) moment(t units.Seconds) string {
	return t.Clock() + "  f " + strconv.Itoa(int(min(m.tracks.Rate.From(t), units.Frame(max(0, m.tracks.Frames-1)))))
}

// notes are the list of a beat: what happens in order of time.
func (d *drawing) notes(events []*event) []note {
	var out []note
	var last units.Seconds = -1
	for _, e := range events {
		n := note{
			texts: e.what, bold: d.o.Department != "" && e.fore, dim: d.o.Department != "" && !e.fore,
			id: d.id("key", strconv.Itoa(e.number)), title: fmt.Sprintf("%d, %s", e.number, e.at.Clock()),
			sign: func(at scene.Point) []scene.Item {
				return e.badge("badge", "ink", at)
			},
		}
		if abs(float64(e.at-last)) > 1e-6 {
			out = append(out, note{head: d.moment(e.at)})
			last = e.at
		}
		n.tall = e.handoff() || e.light()
		if !plainCue(e.cue) {
			n.under = e.cue
		}
		out = append(out, n)
	}
	return out
}

// plainCue is whether a cue goes without saying in a list in order of time.
func plainCue(s string) bool { return s == "" || s == "as the beat begins" }

// fullKey fills the columns and says on which page the list goes on, where it does.
func fullKey(columns []scene.Box, notes []note, next int) (*scene.Group, []note) {
	g := &scene.Group{ID: "key", Title: "what happens, in order of time"}
	if len(keyOf(&scene.Group{}, columns, notes)) > 0 && len(columns) > 0 {
		columns = slices.Clone(columns)
		last := &columns[len(columns)-1]
		g.Add(&scene.Text{Class: "quiet", At: scene.Pt(last.Max.X-padding, last.Max.Y-padding), Text: fmt.Sprintf("continued on page %d", next), Size: scene.Smallest, Anchor: scene.End})
		last.Max.Y -= fonts.LineHeight(scene.Smallest) + 1
	}
	return g, keyOf(g, columns, notes)
}

// keyOf fills the columns with notes and gives back what they have no room for.
func keyOf(g *scene.Group, columns []scene.Box, notes []note) (rest []note) {
	i := 0
	for _, c := range columns {
		in := c.Grow(-padding)
		y := in.Min.Y
		for i < len(notes) {
			n := notes[i]
			h := n.high(in.Width())
			need := h
			if n.head != "" && i+1 < len(notes) { // no heading alone at the foot of a column
				need += notes[i+1].high(in.Width())
			}
			if y+need > in.Max.Y {
				break
			}
			g.Add(n.draw(scene.Pt(in.Min.X, y), in.Width()))
			y += h
			i++
		}
	}
	return notes[i:]
}
