package overhead

import (
	"strconv"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/label"
	"longhand/render/scene"
)

// beats numbers the beats of the take where each begins: at the camera that rolls
// then, or else at whoever moves. It gives the entries for the list.
func (d *drawing) beats(g *scene.Group) []note {
	var notes []note
	for i, s := range d.tracks.Clock.Spans() {
		if s.Beat == nil {
			continue
		}
		text := strconv.Itoa(i + 1)
		under := d.moment(s.From) + ", " + (s.To - s.From).String()
		if cue := d.tracks.Clock.BeatWords(s.Beat); cue != "" && i > 0 {
			under += ", " + cue
		}
		notes = append(notes, note{
			sign:  func(at scene.Point) []scene.Item { return square(text, at) },
			texts: []string{s.Beat.Title}, under: under, bold: true, tall: true,
			id: d.id("key", "beat", text), title: "beat " + text,
		})
		at, ok := d.beginning(s.Beat, s.From)
		if !ok || !d.shows(at, 1) {
			continue
		}
		one := &scene.Group{ID: d.id("beat", text), Title: "beat " + text + ", " + s.Beat.Title, Desc: s.From.Clock() + " to " + s.To.Clock()}
		dot := &scene.Circle{Class: "pause", Center: d.pt(at), Radius: 0.8}
		one.Add(dot)
		g.Add(one)
		a := ask{into: one, must: true, draw: func(p label.Place) []scene.Item { return square(text, p.Center) }}
		a.ID, a.At, a.Radius, a.W, a.H, a.Priority, a.Reach = one.ID, d.pt(at), 1, 4.4, 4.4, 60, 50
		d.say(a)
	}
	if len(notes) > 0 {
		notes = append([]note{{head: "Beats, where each begins"}}, notes...)
	}
	return notes
}

// square is the sign of a beat.
func square(text string, at scene.Point) []scene.Item {
	w := max(4, fonts.Bold.Width(scene.Smallest, text)+1.2)
	return []scene.Item{&scene.Rect{Class: "badge", Box: scene.BoxAt(at.X-w/2, at.Y-2, w, 4)},
		&scene.Text{Class: "ink", At: at, Text: text, Size: scene.Smallest, Face: fonts.Bold, Anchor: scene.Middle, Level: scene.Center}}
}

// beginning is where a beat begins: at the first camera that rolls, or the first
// performer.
func (d *drawing) beginning(b *plan.Beat, at units.Seconds) (geom.Vec, bool) {
	for _, c := range d.tracks.Cameras {
		if c.Rolling(at) {
			return d.position(c.Camera, at)
		}
	}
	for _, p := range d.plan.People {
		if pos, ok := d.position(p, at); ok && !p.Crew {
			return pos, true
		}
	}
	return geom.Vec{}, false
}
