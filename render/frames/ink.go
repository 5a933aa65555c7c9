package frames

import (
	"strings"

	"longhand/render/label"
	"longhand/render/scene"
)

// shortest is the shortest line that is drawn, in millimetres: what is left
// between two things that touch is shorter.
const shortest = 0.12

// draw cuts every line to what shows and puts it on paper.
func (p *picture) draw() []scene.Item {
	var out []scene.Item
	for _, l := range p.layers {
		g := &scene.Group{Class: l.class, Title: l.title}
		for _, ln := range l.lines {
			for _, run := range p.runs(ln) {
				g.Add(&scene.Polyline{Class: ln.class, Points: run})
			}
		}
		if len(g.Items) == 0 {
			continue
		}
		if l.class == "frame-body" {
			for _, it := range g.Items { // outlines alone: what is within them is near them
				if s, ok := it.(*scene.Polyline); ok && !strings.HasPrefix(s.Class, "frame-detail") && s.Class != "frame-hair" {
					p.drawn = append(p.drawn, s)
				}
			}
		}
		out = append(out, g)
	}
	return out
}

// runs are the parts of a line that show, each in one stroke.
func (p *picture) runs(ln line) [][]scene.Point {
	var out [][]scene.Point
	var run []scene.Point
	planes := append(p.lens.frame(), p.window...)
	end := func() {
		if len(run) > 1 && scene.LengthOf(run) >= shortest {
			out = append(out, run)
		}
		run = nil
	}
	for i := 0; i+1 < len(ln.points); i++ {
		a, b, ok := clipped(ln.points[i], ln.points[i+1], planes)
		if !ok {
			end()
			continue
		}
		for _, piece := range shown(a, b, p.hiders) {
			from, to := p.lens.paper(piece[0]), p.lens.paper(piece[1])
			if len(run) > 0 && run[len(run)-1].Dist(from) > 1e-4 {
				end()
			}
			if len(run) == 0 {
				run = append(run, from)
			}
			run = append(run, to)
		}
	}
	end()
	if n := len(out); n > 1 && out[0][0].Dist(out[n-1][len(out[n-1])-1]) < 1e-4 { // a ring that shows on both sides of its start
		out[0] = append(out[n-1], out[0][1:]...)
		out = out[:n-1]
	}
	return out
}

// nameSize is the size of names in a frame, in points.
const nameSize = scene.Smallest

// labels name who and what shows, so far as there is room.
func (p *picture) labels() *scene.Group {
	g := &scene.Group{Class: "frame-labels", Title: "names"}
	box := p.lens.box
	type subject struct {
		name  string
		b     scene.Box
		share float64
	}
	var subjects []subject
	at := map[string]int{}
	for _, s := range p.d.r.Sight.At(p.camera, p.f) {
		body := &p.d.scene.Bodies[s.Body]
		if s.Visible < 0.02 || body.Kind == "hole" {
			continue
		}
		name := body.Of
		if s.Mirror >= 0 {
			name += " in " + p.d.scene.Mirrors[s.Mirror].Name
		}
		b := scene.Box{
			Min: scene.Pt(box.Min.X+s.Box.Left*box.Width(), box.Max.Y-s.Box.Top*box.Height()),
			Max: scene.Pt(box.Min.X+s.Box.Right*box.Width(), box.Max.Y-s.Box.Bottom*box.Height()),
		}
		if i, ok := at[name]; ok {
			subjects[i].b, subjects[i].share = subjects[i].b.Union(b), subjects[i].share+s.Share
			continue
		}
		at[name] = len(subjects)
		subjects = append(subjects, subject{name, b, s.Share})
	}
	var requests []label.Request
	var names []string
	for i, s := range subjects {
		if s.share < 0.02 {
			continue
		}
		w, h := label.Size(labelFace, nameSize, s.name)
		top := scene.Pt(s.b.Center().X, s.b.Min.Y)
		c := s.b.Center()
		requests = append(requests, label.Request{
			ID: s.name, At: top, Radius: 0.4, W: w, H: h, Priority: len(subjects) - i, Reach: 25,
			Also:  []scene.Point{c, scene.Pt(s.b.Min.X, c.Y), scene.Pt(s.b.Max.X, c.Y), scene.Pt(c.X, s.b.Max.Y)},
			Sides: []label.Side{label.Above, label.UpperRight, label.UpperLeft, label.Right, label.Left},
		})
		names = append(names, s.name)
	}
	if len(requests) == 0 {
		return g
	}
	field := label.Field{Within: box.Grow(-0.6), Obstacles: label.Drawn(p.drawn, 0.4, 6), Clear: 0.5}
	places, _ := label.Arrange(field, requests)
	for i, pl := range places {
		if !pl.OK {
			continue
		}
		if len(pl.Leader) > 1 {
			g.Add(&scene.Polyline{Class: "frame-leader", Points: pl.Leader})
		}
		g.Add(pl.Lines(scene.Text{Class: "frame-caption", Size: nameSize, Face: labelFace, Halo: 0.5}, names[i])...)
	}
	return g
}
