package overhead

import (
	"math"
	"strings"

	"longhand/lang/daylight"
	"longhand/lang/sky"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// scaleBar draws a bar of whole metres, or feet, its first one divided.
func (d *drawing) scaleBar(at scene.Point) (*scene.Group, float64) {
	unit, name, parts := 1.0, "m", 2
	if d.plan.Take.Units == units.Feet {
		unit, name, parts = float64(units.Foot), "ft", 2
	}
	// As many whole units as make four to seven centimetres, in steps of 1, 2, 5.
	count := 1.0
	for _, c := range []float64{1, 2, 3, 4, 5, 10, 20, 30, 50, 100, 200, 500, 1000} {
		if count = c; d.view.Length(c*unit) >= 38 {
			break
		}
	}
	steps := 4
	switch {
	case count <= 5:
		steps = int(count)
	case math.Mod(count, 5) == 0:
		steps = 5
	}
	g := &scene.Group{ID: d.id("scale-bar"), Title: "scale bar", Desc: units.Number(count, 0) + " " + name}
	one := d.view.Length(count * unit / float64(steps))
	const h = 1.6
	bar := func(x, w float64, dark bool) {
		class := "scale-line"
		if dark {
			class = "scale-fill scale-line"
		}
		g.Add(&scene.Rect{Class: class, Box: scene.BoxAt(x, at.Y, w, h)})
	}
	for i := range steps {
		x := at.X + one*float64(i)
		if i == 0 {
			for k := range parts {
				bar(x+one*float64(k)/float64(parts), one/float64(parts), k%2 == 0)
			}
			continue
		}
		bar(x, one, i%2 == 0)
	}
	text := func(x float64, s string) {
		g.Add(&scene.Text{Class: "ink", At: scene.Pt(x, at.Y+h+0.8+fonts.Regular.CapHeight(7)), Text: s, Size: 7, Anchor: scene.Middle})
	}
	lastEnd := math.Inf(-1)
	for i := range steps + 1 {
		s := units.Number(count*float64(i)/float64(steps), 1)
		if i == steps {
			s += " " + name
		}
		x := at.X + one*float64(i)
		w := fonts.Regular.Width(7, s)
		if x-w/2 < lastEnd+0.8 && i < steps {
			continue
		}
		if i == steps-1 && one < 9 && steps > 1 { // the last one is longer
			continue
		}
		text(x, s)
		lastEnd = x + w/2
	}
	w := one * float64(steps)
	g.Add(&scene.Text{Class: "ink", At: scene.Pt(at.X, at.Y-1.2), Text: scaleText(d.view.Scale, d.plan.Take.Units), Size: 8, Face: fonts.Bold})
	return g, w + 8
}

// bearings draws which way is up: north where the take has a place, with the sun
// at the window, else +y of the plan.
func (d *drawing) bearings(centre scene.Point, r float64) (*scene.Group, float64) {
	g := &scene.Group{ID: d.id("bearings"), Title: "which way is up"}
	up := "+y"
	t := d.plan.Take
	if t.Place != nil && t.Date != nil {
		up = "N"
		g.Desc = "north is up, as +y of the plan"
	}
	tip := centre.Add(scene.Pt(0, -r))
	g.Add(scene.Line("scale-line", centre.Add(scene.Pt(0, r)), tip), scene.ArrowHead("ink", tip, 90, 3.2, 2.4),
		&scene.Text{Class: "ink", At: tip.Add(scene.Pt(0, -0.7)), Text: up, Size: 7.5, Face: fonts.Bold, Anchor: scene.Middle})
	if up != "N" {
		return g, 8
	}
	place, day, _ := daylight.WhereAndWhen(&t)
	roll := t.Roll
	if d.pickup != nil && d.pickup.Roll != nil { // rolled in light of its own
		roll = d.pickup.Roll
	}
	window, _, ok := daylight.Window(&t, roll)
	if !ok || window.State == sky.Never || sky.Check(place, day) != nil {
		return g, 8
	}
	at := window.Start
	sun := sky.At(place, at)
	bearing := float64(sun.Bearing())
	// The arrow comes from where the sun stands.
	from := centre.Polar(r+1.2, bearing)
	g.Add(&scene.Circle{Class: "scale-line", Center: centre, Radius: r}, &scene.Circle{Class: "badge", Center: from, Radius: 1.3})
	for i := range 8 {
		a := float64(i) * 45
		g.Add(scene.Line("sun", from.Polar(1.7, a), from.Polar(2.4, a)))
	}
	g.Add(scene.Line("sun", from.Polar(1.3, bearing+180), centre.Polar(0.6, bearing+180)), scene.OpenHead("sun", centre.Polar(0.6, bearing+180), bearing+180, 2, 1.8))
	state := units.Number(float64(sun.Elevation), 0) + "° up"
	if sun.Elevation < 0 {
		state = units.Number(-float64(sun.Elevation), 0) + "° below the horizon"
	}
	name := strings.ReplaceAll(roll.Name, "-", " ")
	lines := []string{strings.TrimSpace(name + " " + window.Text(day)), "sun at " + units.Number(float64(sun.Azimuth), 0) + "°, " + state}
	x := centre.X + r + 5
	for i, l := range lines {
		g.Add(&scene.Text{Class: "quiet", At: scene.Pt(x, centre.Y+float64(i)*fonts.LineHeight(7)), Text: l, Size: 7})
	}
	return g, 2*r + 8 + math.Max(fonts.Regular.Width(7, lines[0]), fonts.Regular.Width(7, lines[1]))
}
