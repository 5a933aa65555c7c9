package timeline

import (
	"sort"

	"longhand/lang/light"
	"longhand/lang/units"
	"longhand/render/fonts"
)

// item is something with a beginning and an end, and a text.
type item struct {
	from, to units.Seconds
	text     string
	bar      string        // class of its bar
	hold     units.Seconds // until when what it sets up lasts; 0 for no longer
	slack    units.Seconds // how much later it could happen; 0 for no whisker
	face     fonts.Face
}

// lane is a band across the page: what one subject does, in a few groups.
type lane struct {
	name   string // in the margin
	under  string // beneath it, smaller
	groups []group
	heavy  bool // a heavier rule above
}

// group is the items of one kind in a lane, or a curve.
type group struct {
	name  string // in the margin, beside its rows: "sees"
	items []item
	curve *light.Curve
	keyed bool // items of one text share a row, and the text is told where there is room
}

// Sizes, in millimetres and points.
const (
	textSize = 7.5
	barHigh  = 1.1
	rowPad   = 0.55
	curveH   = 7.0
	textMost = 74.0 // a text is shortened to this
	textGap  = 1.4  // between two texts of a row
)

func textHigh() float64 { return fonts.Regular.Ascent(textSize) + fonts.Regular.Descent(textSize) }

func rowHigh() float64 { return textHigh() + barHigh + rowPad }

// placed is an item in its row on a page.
type placed struct {
	*item
	row    int
	x0, x1 float64 // of the bar
	tx     float64 // where the text starts
	text   string
	from   bool // it begins on this page
	past   bool // it goes on after this page
}

// window is the stretch of time on a page.
type window struct {
	from, to units.Seconds
	left     float64 // mm, of from
	scale    float64 // mm a second
}

func (w window) x(t units.Seconds) float64 { return w.left + float64(t-w.from)*w.scale }

func (w window) right() float64 { return w.x(w.to) }

// pack puts the items of a group into as few rows as keep them apart, in order of
// time: an item takes the first row where both its bar and its text have room.
func (w window) pack(g *group) (out []placed, rows int) {
	order := make([]*item, 0, len(g.items))
	for i := range g.items {
		it := &g.items[i]
		end := max(it.to, it.hold)
		if it.from >= w.to && !(it.from == w.to && it.from == it.to) || end < w.from || end == w.from && it.from < w.from {
			continue
		}
		order = append(order, it)
	}
	sort.SliceStable(order, func(i, j int) bool { return order[i].from < order[j].from })
	var free []float64 // by row, from where on it is free
	row := map[string]int{}
	for _, it := range order {
		p := placed{item: it, from: it.from >= w.from, past: it.to > w.to}
		p.x0, p.x1 = w.x(max(it.from, w.from)), w.x(min(it.to, w.to))
		text := it.text
		if !p.from && text != "" {
			text = "… " + text
		}
		room := w.right() - w.left
		p.text = it.face.Fit(textSize, min(textMost, room), fonts.Clean(text))
		wide := it.face.Width(textSize, p.text)
		p.tx = max(w.left, min(p.x0, w.right()-wide))
		end := max(p.x1, p.tx+wide)
		if it.slack > 0 {
			end = max(end, w.x(min(it.to+it.slack, w.to)))
		}
		start := min(p.x0, p.tx)
		if known, ok := row[it.text]; g.keyed && ok {
			p.row = known
			if free[p.row] > start+1e-9 {
				p.text, end = "", p.x1
			}
			free[p.row] = max(free[p.row], end+textGap)
			out = append(out, p)
			continue
		}
		for p.row < len(free) && (g.keyed || free[p.row] > start+1e-9) {
			p.row++
		}
		row[it.text] = p.row
		if p.row == len(free) {
			free = append(free, 0)
		}
		free[p.row] = end + textGap
		out = append(out, p)
	}
	return out, len(free)
}
