package timeline

import (
	"fmt"
	"math"
	"strings"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// Options is how a timeline is laid out; the zero value is A3 on its side, over as
// many pages as the take asks for.
type Options struct {
	Paper scene.Paper // zero for A3; it is laid on its side
	// Strip puts the whole take on one long sheet, as high as it has to be.
	Strip bool
	// Bare leaves out the title and the legend, for a strip inside of a text.
	Bare bool
	// Scale is millimetres a second; 0 for what fills the pages.
	Scale float64
	// Page is the number of the first sheet and Pages how many there are in all;
	// 0 counts the timeline's own sheets only.
	Page, Pages int
}

// The page, in millimetres.
const (
	margin = 10.0
	names  = 27.0 // what the names of lanes take up
	kinds  = 15.0 // what the names of groups take up
	titled = 13.0 // title
	foot   = 9.0
	ruler  = 7.5
	edge   = 2.0 // of a strip without title

	// least and most are how many millimetres a second may take when it is chosen:
	// below the one, texts crowd; above the other, a take of a second or two is all
	// bars. Each second has its number where there is room for that.
	least = 3.2
	most  = 48.0
	roomy = 14.0
)

// Sheets draws a take's timeline; nil where the plan was not worked out.
func Sheets(r *compile.Result, o Options) []*scene.Sheet { return sheets(r, nil, o) }

// Pickup draws the timeline of a pickup, on its own clock; its findings have the
// numbers they have among all.
func Pickup(r *compile.Result, shot *compile.Shot, o Options) []*scene.Sheet {
	if r == nil || shot == nil {
		return nil
	}
	return sheets(&compile.Result{Plan: shot.Plan, Played: shot.Played, Findings: r.Findings}, shot.Pickup, o)
}

func sheets(r *compile.Result, pickup *plan.Pickup, o Options) []*scene.Sheet {
	if r == nil || r.Plan == nil || r.Tracks == nil || r.Tracks.Length() <= 0 {
		return nil
	}
	t := &taker{r: r, p: r.Plan, pickup: pickup, clock: r.Tracks.Clock, length: r.Tracks.Length()}
	paper := o.Paper
	if paper.Width <= 0 || paper.Height <= 0 {
		paper = scene.A3
	}
	paper = paper.Landscape()
	d := &drawing{taker: t, lanes: t.lanes(), width: paper.Width, height: paper.Height, bare: o.Bare, margin: margin, top: titled, foot: foot}
	if o.Bare {
		d.margin, d.top, d.foot = edge, 0, 0
	}
	for _, w := range d.windows(o) {
		d.page(w, o.Strip)
	}
	first := max(1, o.Page)
	pages := max(o.Pages, first+len(d.sheets)-1)
	if o.Bare {
		return d.sheets
	}
	for i, s := range d.sheets {
		s.Add(&scene.Text{Class: "quiet", At: scene.Pt(s.Width-margin, s.Height-margin), Text: fmt.Sprintf("page %d of %d", first+i, pages), Size: textSize, Anchor: scene.End})
	}
	return d.sheets
}

type drawing struct {
	*taker
	lanes         []lane
	width, height float64
	bare          bool
	// margin, top and foot are what the sheet's edge, the title and the legend take.
	margin, top, foot float64
	sheets            []*scene.Sheet
}

// windows are the stretches of time, one a page, all of one scale.
func (d *drawing) windows(o Options) []window {
	left := d.margin + names + kinds
	room := d.width - d.margin - left
	length := float64(d.length)
	scale := o.Scale
	if o.Strip {
		if scale <= 0 {
			scale = 6
		}
		d.width = max(d.width, left+length*scale+d.margin+1)
		return []window{{0, d.length, left, scale}}
	}
	if scale <= 0 {
		n := math.Max(1, math.Ceil(length*least/room))
		scale = math.Min(most, n*room/length)
	}
	var out []window
	step := units.Seconds(room / scale)
	for from := units.Seconds(0); from < d.length-1e-6 && len(out) < 500; from += step {
		out = append(out, window{from, min(d.length, from+step), left, scale})
	}
	return out
}

// laid is a lane with its items in rows.
type laid struct {
	lane   *lane
	groups [][]placed
	rows   []int
	high   float64
}

// page draws a stretch of time, on further sheets where its lanes are too many.
func (d *drawing) page(w window, strip bool) {
	var all []laid
	for i := range d.lanes {
		l := laid{lane: &d.lanes[i]}
		for k := range l.lane.groups {
			g := &l.lane.groups[k]
			ps, rows := w.pack(g)
			l.groups, l.rows = append(l.groups, ps), append(l.rows, rows)
			l.high += d.groupHigh(g, rows)
		}
		if l.high > 0 { // whoever does nothing on this page has no lane on it
			all = append(all, l)
		}
	}
	beats := &group{}
	for i, s := range d.clock.Spans() {
		if s.Beat == nil || s.To <= s.From {
			continue
		}
		text := fmt.Sprintf("%d %s  %s  frame %d", i+1, s.Beat.Title, s.From.Clock(), d.r.Tracks.Rate.From(s.From))
		beats.items = append(beats.items, item{from: s.From, to: s.To, text: text, bar: "bar-beat", face: fonts.Bold})
	}
	packed, beatRows := w.pack(beats)
	head := d.margin + d.top + ruler + float64(beatRows)*rowHigh() + 1
	end := d.height - d.margin - d.foot
	if strip {
		sum := head
		for _, l := range all {
			sum += l.high + laneGap
		}
		d.height = max(d.height, sum+d.foot+d.margin+0.01)
		end = d.height - d.margin - d.foot
	}
	end = balanced(all, head, end, func(l laid) float64 { return l.high + laneGap })
	for i := 0; i < len(all) || i == 0; {
		s := d.sheet(w, len(d.sheets))
		d.sheets = append(d.sheets, s)
		d.ruler(s, w)
		d.rows(s, w, d.margin+d.top+ruler, packed)
		y := head
		start := y
		var bands []scene.Item
		var marks []*scene.Group
		for n := 0; i < len(all) && (n == 0 || y+all[i].high+laneGap <= end); n++ {
			l := all[i]
			g := d.lane(s, w, l.lane, y, l.groups, l.rows)
			marks = append(marks, g)
			bands = append(bands, d.rule(w, y, l.lane.heavy))
			y += l.high + laneGap
			i++
		}
		bands = append(bands, d.rule(w, y, true))
		s.Add(d.beatLines(w, start, y))
		s.Add(bands...)
		for _, g := range marks {
			s.Add(g)
		}
		if len(all) == 0 {
			break
		}
	}
}

const laneGap = 1.2

// balanced is where a page ends so that its lanes, if they need several pages, fill
// these about evenly.
func balanced[T any](all []T, head, end float64, high func(T) float64) float64 {
	room := end - head
	pages := func(room float64) int {
		n, y := 1, 0.0
		for i, l := range all {
			if i > 0 && y > 0 && y+high(l) > room {
				n, y = n+1, 0
			}
			y += high(l)
		}
		return n
	}
	n := pages(room)
	if n == 1 {
		return end
	}
	low, top := 0.0, room // the least room that takes no more pages
	for range 30 {
		if mid := (low + top) / 2; pages(mid) <= n {
			top = mid
		} else {
			low = mid
		}
	}
	return head + top + 1e-6
}

func (d *drawing) groupHigh(g *group, rows int) float64 {
	if g.curve != nil {
		return curveH
	}
	return float64(max(rows, 0)) * rowHigh()
}

func (d *drawing) rule(w window, y float64, heavy bool) scene.Item {
	class := "lane-rule"
	if heavy {
		class = "lane-heavy"
	}
	return scene.Line(class, scene.Pt(d.margin, y-laneGap/2), scene.Pt(d.width-d.margin, y-laneGap/2))
}

// sheet is an empty page with its title.
func (d *drawing) sheet(w window, n int) *scene.Sheet {
	t := d.p.Take
	s := &scene.Sheet{
		Width: d.width, Height: d.height, Styles: styles(),
		Title: fmt.Sprintf("%s: timeline, %s to %s", t.Title, w.from.Clock(), w.to.Clock()),
		Desc:  "who does what when, a lane for each",
	}
	s.Add(&scene.Rect{Class: "page", Box: s.Box()})
	if d.bare {
		return s
	}
	title := t.Title
	if t.Scene != "" {
		title = "scene " + t.Scene + "  " + title
	}
	if d.pickup != nil {
		title = "pickup " + d.pickup.Title + "   " + title
	}
	right := fmt.Sprintf("length %s, %d frames at %s fps", d.length.Clock(), d.r.Tracks.Frames, d.r.Tracks.Rate)
	if rev := strings.TrimSpace(t.Revision + "  " + t.RevisionDate); rev != "" {
		right += "   revision " + rev
	}
	room := d.width - 2*d.margin
	wide := fonts.Regular.Width(8, right)
	g := &scene.Group{Class: "head", Title: "title"}
	g.Add(
		&scene.Text{Class: "text", At: scene.Pt(d.margin, d.margin+4), Text: fonts.Bold.Fit(12, room-wide-6, fmt.Sprintf("Timeline  %s to %s   %s", w.from.Clock(), w.to.Clock(), title)), Size: 12, Face: fonts.Bold},
		&scene.Text{Class: "text", At: scene.Pt(d.width-d.margin, d.margin+4), Text: right, Size: 8, Anchor: scene.End},
		&scene.Text{Class: "quiet", At: scene.Pt(d.margin, d.height-d.margin), Text: fonts.Regular.Fit(textSize, room-45, legend), Size: textSize},
	)
	s.Add(g)
	return s
}

const legend = "black bar: moves; grey: does; white: says; thin line: holds until told otherwise; dotted: how much later it could be before anything else is; crossed: changes hands; in frame, white: not a performer"

// ruler is the clock across the page.
func (d *drawing) ruler(s *scene.Sheet, w window) {
	g := &scene.Group{Class: "ruler", Title: "seconds"}
	base := d.margin + d.top + ruler - 1
	g.Add(scene.Line("lane-heavy", scene.Pt(w.left, base), scene.Pt(w.right(), base)))
	for n := int(math.Ceil(float64(w.from) - 1e-9)); float64(n) <= float64(w.to)+1e-9; n++ {
		x := w.x(units.Seconds(n))
		class, high := "second", 1.2
		switch {
		case n%10 == 0:
			class, high = "ten", 3
		case n%5 == 0:
			class, high = "five", 2
		}
		g.Add(scene.Line(class, scene.Pt(x, base), scene.Pt(x, base-high)))
		if n%5 == 0 || w.scale >= roomy {
			text := fmt.Sprintf("%d:%02d", n/60, n%60)
			half := fonts.Regular.Width(7, text) / 2
			at := max(w.left, min(x-half, w.right()-2*half))
			if n%10 != 0 && (5*w.scale < 2*half+3 || x+half > w.right()) {
				continue
			}
			g.Add(&scene.Text{Class: "text", At: scene.Pt(at, base-3.6), Text: text, Size: 7})
		}
	}
	s.Add(g)
}

func (d *drawing) beatLines(w window, y0, y1 float64) scene.Item {
	g := &scene.Group{Title: "where beats begin"}
	for _, s := range d.clock.Spans() {
		if s.From > w.from && s.From < w.to && s.To > s.From {
			g.Add(scene.Line("beat-line", scene.Pt(w.x(s.From), y0), scene.Pt(w.x(s.From), y1)))
		}
	}
	return g
}
