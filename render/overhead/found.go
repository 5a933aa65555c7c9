package overhead

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/label"
	"longhand/render/scene"
)

// found is a finding of this stretch, with a letter. What one camera finds out
// about one thing again and again is one.
type found struct {
	letter string
	diag.Diagnostic
	at   units.Seconds // its worst moment in the stretch
	runs []span        // when it lasts
	spot geom.Vec
	has  bool // a place on the floor
}

// found lists the errors and warnings of the stretch.
func (d *drawing) found() []found {
	var out []found
	type same struct {
		code            diag.Code
		subject, camera string
	}
	index := map[same]int{}
	rate := d.tracks.Rate
	for _, f := range d.findings {
		if f.Severity < diag.Warning {
			continue
		}
		g := found{Diagnostic: f, at: d.span.from}
		for _, r := range f.Frames {
			from, to := rate.Time(r.From), rate.Time(r.To)
			if from > d.lastOf(d.span) || to < d.span.from {
				continue
			}
			a, b := max(from, d.span.from), min(to, d.lastOf(d.span))
			t := rate.Time(f.Worst)
			if t >= a && t <= b {
				g.at = t
			} else if len(g.runs) == 0 {
				g.at = a
			}
			g.runs = append(g.runs, span{a, b})
		}
		ofBeat := d.beat == nil || f.Beat != "" && f.Beat == d.beat.Title
		if len(g.runs) == 0 && (len(f.Frames) > 0 || !ofBeat) {
			continue
		}
		key := same{f.Code, f.Subject, f.Camera}
		if i, ok := index[key]; ok && f.Subject != "" && len(g.runs) > 0 {
			o := &out[i]
			runs := append(o.runs, g.runs...)
			sort.SliceStable(runs, func(a, b int) bool { return runs[a].from < runs[b].from })
			if f.Share > o.Share {
				letter := o.letter
				*o = g
				o.letter = letter
				d.locate(o)
			}
			o.runs = runs
			continue
		}
		d.locate(&g)
		g.letter = alphabet(len(out))
		index[key] = len(out)
		out = append(out, g)
	}
	return out
}

// locate finds where on the floor a finding happens: at the thing found out, else
// at the camera.
func (d *drawing) locate(f *found) {
	if d.scene != nil && f.Subject != "" {
		if i, ok := d.scene.Body(f.Subject); ok {
			p := d.scene.Bodies[i].At(min(d.tracks.Rate.At(f.at), units.Frame(d.scene.Frames-1)))
			f.spot, f.has = vec(p.X, p.Y), true
			return
		}
	}
	for _, name := range []string{f.Subject, f.Camera} {
		if f.has || name == "" {
			continue
		}
		f.spot, f.has = d.position(d.named(name), f.at)
	}
}

// alphabet is the n-th letter, then aa, ab and so on.
func alphabet(n int) string {
	s := string(rune('a' + n%26))
	if n >= 26 {
		return alphabet(n/26-1) + s
	}
	return s
}

// named is a thing of the plan by its name; nil for none.
func (m *material) named(name string) plan.Thing {
	for _, t := range m.plan.Things() {
		if t.ID().Name == name {
			return t
		}
	}
	return nil
}

// triangle is the sign of a finding, with its letter.
func triangle(text string, at scene.Point) []scene.Item {
	low := at.Add(scene.Pt(0, 0.6))
	return []scene.Item{triangleShape(at, 3)[0],
		&scene.Text{Class: "ink", At: low.Add(scene.Pt(0, -0.05)), Text: text, Size: scene.Smallest, Face: fonts.Bold, Anchor: scene.Middle, Level: scene.Center}}
}

func triangleShape(at scene.Point, r float64) []scene.Item {
	return []scene.Item{scene.RegularPolygon("finding", at.Add(scene.Pt(0, r/5)), r, 3, 90)}
}

// diamond is the sign of a paint-out.
func diamond(text string, at scene.Point) []scene.Item {
	return []scene.Item{scene.RegularPolygon("paint-badge", at, 2.9, 4, 90),
		&scene.Text{Class: "ink", At: at, Text: text, Size: scene.Smallest, Face: fonts.Bold, Anchor: scene.Middle, Level: scene.Center}}
}

// drawFound marks findings where they happen, and gives their entries for the list.
func (d *drawing) drawFound(g *scene.Group, all []found) []note {
	var notes []note
	for _, f := range all {
		under := string(f.Code)
		if n := len(f.runs); n > 1 {
			under += fmt.Sprintf(", %d times", n)
		}
		for i, r := range f.runs {
			under += []string{", ", "; "}[min(i, 1)] + stretch(r.from, r.to)
		}
		notes = append(notes, note{
			sign:  func(at scene.Point) []scene.Item { return triangle(f.letter, at.Add(scene.Pt(0, 0.4))) },
			texts: []string{d.says(f.Message)}, under: f.Severity.String() + ": " + under,
			id: d.id("key", "finding", f.letter), title: "finding " + f.letter, tall: true,
		})
		if !f.has || !d.shows(f.spot, 1) {
			continue
		}
		one := &scene.Group{ID: d.id("finding", f.letter), Title: "finding " + f.letter + ": " + string(f.Code), Desc: d.says(f.Message)}
		g.Add(one)
		a := ask{into: one, must: true, draw: func(p label.Place) []scene.Item { return triangle(f.letter, p.Center) }}
		a.ID, a.At, a.Radius, a.W, a.H, a.Priority, a.Reach = one.ID, d.pt(f.spot), 2.6, 5.4, 5.4, 48, 50
		d.say(a)
	}
	if len(notes) > 0 {
		notes = append([]note{{head: fmt.Sprintf("Findings (%d)", len(notes))}}, notes...)
	}
	return notes
}

// stretch is from when to when, or when where both are of the same tenth.
func stretch(from, to units.Seconds) string {
	a, b := from.Clock(), to.Clock()
	if a == b {
		return a
	}
	return a + " to " + b
}

// says is a finding's message; that it is of the pickup drawn goes without saying.
func (d *drawing) says(message string) string {
	if d.pickup != nil {
		return strings.TrimPrefix(message, fmt.Sprintf("in pickup %q, ", d.pickup.Title))
	}
	return message
}

// drawPaintOuts marks what is accepted in frame and painted out later.
func (d *drawing) drawPaintOuts(g *scene.Group) []note {
	var notes []note
	for _, p := range d.plan.PaintOuts {
		if p.Thing == nil || p.Camera == nil || !d.during(p.During) {
			continue
		}
		at, when, seen := d.inFrame(p.Thing, p.Camera)
		if !seen && (p.During == nil || d.report != nil) {
			continue
		}
		letter := "p" + strconv.Itoa(len(notes)+1)
		text := "paint out " + p.Thing.ID().Name + " from " + p.Camera.Name
		notes = append(notes, note{
			sign:  func(at scene.Point) []scene.Item { return diamond(letter, at.Add(scene.Pt(0, 0.3))) },
			texts: []string{text}, under: strings.TrimPrefix(when+", "+p.Because, ", "),
			id: d.id("key", letter), title: text, tall: true,
		})
		spot, ok := d.position(p.Thing, at)
		if !ok || !d.shows(spot, 1) {
			continue
		}
		one := &scene.Group{ID: d.id("paint-out", letter), Title: text, Desc: p.Because}
		one.Add(&scene.Circle{Class: "paint-out", Center: d.pt(spot), Radius: 4})
		g.Add(one)
		a := ask{into: one, must: true, draw: func(p label.Place) []scene.Item { return diamond(letter, p.Center) }}
		a.ID, a.At, a.Radius, a.W, a.H, a.Priority, a.Reach = one.ID, d.pt(spot), 4.1, 5.8, 5.8, 47, 50
		d.say(a)
	}
	if len(notes) > 0 {
		notes = append([]note{{head: "Paint out"}}, notes...)
	}
	return notes
}

func (d *drawing) during(beats []*plan.Beat) bool {
	if beats == nil || d.beat == nil {
		return true
	}
	for _, b := range beats {
		if b == d.beat {
			return true
		}
	}
	return false
}

// inFrame is when a camera shows a thing in this stretch: the moment at which it
// is largest, and the stretch in words.
func (d *drawing) inFrame(t plan.Thing, c *plan.Camera) (at units.Seconds, when string, seen bool) {
	at = d.span.from
	if d.report == nil {
		return at, "", false
	}
	best := 0.0
	var from, to units.Frame
	rate := d.tracks.Rate
	for i := range d.report.Sight {
		r := &d.report.Sight[i]
		if d.cameras[r.Camera] != c || d.things[r.Body] != t {
			continue
		}
		for f := max(r.From, rate.From(d.span.from)); f <= min(r.To, rate.At(d.lastOf(d.span))); f++ {
			m := r.At(f)
			if m.Visible <= 0 {
				continue
			}
			if !seen || f < from {
				from = f
			}
			if !seen || f > to {
				to = f
			}
			seen = true
			if m.Share > best {
				best, at = m.Share, rate.Time(f)
			}
		}
	}
	if seen {
		when = stretch(rate.Time(from), rate.Time(to))
	}
	return at, when, seen
}
