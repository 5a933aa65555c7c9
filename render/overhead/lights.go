package overhead

import (
	"strconv"
	"strings"

	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/render/fonts"
	"longhand/render/label"
	"longhand/render/scene"
)

// lampSigns numbers the kinds of lamp, L1, L2 and so on, or after another letter
// where the plan itself has such a name.
func (m *material) lampSigns() map[*plan.Lamp]string {
	taken := map[string]bool{}
	for _, k := range m.plan.Set.Marks {
		taken[k.Name] = true
	}
	for _, sign := range m.marks {
		taken[sign] = true
	}
	for _, letter := range []string{"L", "W", "Z", "Y", "X", "V"} {
		out, free := map[*plan.Lamp]string{}, true
		for i, l := range m.plan.Kit.Lamps {
			out[l] = letter + strconv.Itoa(i+1)
			free = free && !taken[out[l]]
		}
		if free || letter == "V" {
			return out
		}
	}
	return nil
}

// lampShape is a round lamp.
func lampShape(at scene.Point) []scene.Item {
	g := []scene.Item{&scene.Circle{Class: "lamp", Center: at, Radius: 2.4}}
	for _, a := range []float64{45, 135, 225, 315} {
		g = append(g, scene.Line("sun", at.Polar(2.4, a), at.Polar(3.2, a)))
	}
	return g
}

func lampText(text string, at scene.Point) *scene.Text {
	return &scene.Text{Class: "ink", At: at, Text: text, Size: scene.Smallest, Anchor: scene.Middle, Level: scene.Center, Face: fonts.Bold}
}

// lampSign is a round lamp with its letter.
func lampSign(text string, at scene.Point) []scene.Item {
	return append(lampShape(at), lampText(text, at))
}

// drawLamps draws the lamps that stand in the set, with the way they aim, and the
// letters of the washes on their grids; it gives the entries for the list.
func (d *drawing) drawLamps(g *scene.Group) []note {
	names := d.lampSigns()
	shown := map[*plan.Lamp]bool{}
	for i, p := range d.plan.Set.Placed {
		if p.Lamp == nil || !d.shows(p.At.Point, 1) {
			continue
		}
		shown[p.Lamp] = true
		at := d.pt(p.At.Point)
		one := &scene.Group{ID: d.id("lamp", p.Lamp.Name, strconv.Itoa(i+1)), Title: "lamp " + p.Lamp.Name, Desc: d.length(p.Up) + " up"}
		if p.Aims != nil {
			deg := at.Towards(d.pt(p.Aims.Point))
			l := min(14, at.Dist(d.pt(p.Aims.Point)))
			one.Add(scene.Line("beam", at.Polar(2.2, deg+12), at.Polar(l, deg+12)), scene.Line("beam", at.Polar(2.2, deg-12), at.Polar(l, deg-12)),
				scene.OpenHead("sun", at.Polar(l, deg), deg, 2, 1.6))
		}
		one.Add(lampShape(at)...)
		d.initials = append(d.initials, initial{one, lampText(names[p.Lamp], at), 2.4})
		g.Add(one)
		d.avoid(0, 0, &scene.Circle{Center: at, Radius: 3})
		a := ask{into: one, lines: []string{p.Lamp.Name + " " + d.length(p.Up) + " up"}, model: scene.Text{Class: "quiet", Size: scene.Smallest, Halo: 0.4}}
		a.ID, a.At, a.Radius, a.Priority, a.Reach = one.ID, at, 2.8, 5, 20
		d.say(a)
	}
	for _, w := range d.plan.Kit.Washes {
		if w.Lamp == nil || w.Grid == nil || len(w.Grid.Polygon) < 3 {
			continue
		}
		ring := d.view.Points(w.Grid.Polygon)
		if !d.touches(ring) || d.o.Department != departments.Electric && !(d.o.Department == "" && d.cued(w)) {
			continue
		}
		shown[w.Lamp] = true
		if d.bare { // the grid's label names it
			continue
		}
		at := ring[0]
		for _, p := range ring {
			if inside(p, d.box.Grow(-4)) {
				at = p
			}
		}
		one := &scene.Group{ID: d.id("wash", w.Name), Title: "wash " + w.Name, Desc: strconv.Itoa(w.Count) + " x " + w.Lamp.Name}
		g.Add(one)
		a := ask{into: one, draw: func(p label.Place) []scene.Item { return lampSign(names[w.Lamp], p.Center) }}
		a.ID, a.At, a.W, a.H, a.Priority, a.Reach = one.ID, at, 5.4, 5.4, 6, 30
		d.say(a)
	}
	var notes []note
	for _, l := range d.plan.Kit.Lamps {
		if !shown[l] {
			continue
		}
		text := []string{l.Name}
		if l.Power > 0 {
			text = append(text, l.Power.String())
		}
		switch {
		case l.Changes:
			text = append(text, "any colour")
		case l.Colour != "":
			text = append(text, l.Colour)
		case l.Kelvin > 0:
			text = append(text, l.Kelvin.String())
		}
		if l.Modern {
			text = append(text, "modern: never in frame")
		}
		if l.Seen {
			text = append(text, "may be in frame")
		}
		notes = append(notes, note{texts: []string{strings.Join(text, ", ")}, id: d.id("key", "lamp", l.Name), title: "lamp " + l.Name,
			sign: func(at scene.Point) []scene.Item { return lampSign(names[l], at.Add(scene.Pt(0, 0.4))) }, tall: true})
	}
	if len(notes) > 0 {
		notes = append([]note{{head: "Lamps"}}, notes...)
	}
	return notes
}

// cued is whether a cue of the stretch moves a wash.
func (d *drawing) cued(w *plan.Wash) bool {
	for _, a := range d.plan.Actions {
		cue, ok := a.Deed.(*plan.Cue)
		if !ok || !d.mine(a) {
			continue
		}
		for _, l := range cue.Levels {
			if l.Wash == w {
				return true
			}
		}
	}
	return false
}
