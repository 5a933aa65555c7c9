package backdrop

import (
	"strconv"

	"longhand/render/fonts"
	"longhand/render/label"
	"longhand/render/scene"
)

// Names collects names and finds places for them off each other and off what is
// drawn.
type Names struct {
	Box   scene.Box
	asks  []label.Request
	texts []scene.Text
	drawn []label.Obstacle
}

// On says whether a point is on the drawing.
func (n *Names) On(p scene.Point) bool {
	return p.X >= n.Box.Min.X && p.X <= n.Box.Max.X && p.Y >= n.Box.Min.Y && p.Y <= n.Box.Max.Y
}

// Add asks for a name at the first of some points that is on the drawing, or at
// one of the others. One of priority 0 is small, and left out where there is no
// room right there.
func (n *Names) Add(class, text string, priority int, at ...scene.Point) {
	var on []scene.Point
	for _, p := range at {
		if n.On(p) {
			on = append(on, p)
		}
	}
	if len(on) == 0 {
		return
	}
	size, face := 7.0, fonts.Regular
	if priority > 0 {
		size, face = 8, fonts.Bold
	}
	w, h := label.Size(face, size, text)
	n.asks = append(n.asks, label.Request{ID: strconv.Itoa(len(n.asks)), At: on[0], Also: on[1:], Radius: 1.5, W: w, H: h,
		Priority: priority, Tight: priority == 0, Reach: 40})
	n.texts = append(n.texts, scene.Text{Class: class, Text: text, Size: size, Face: face, Halo: 0.5, Anchor: scene.Middle})
}

// Avoid notes a line that names had better not cover.
func (n *Names) Avoid(line []scene.Point) {
	n.drawn = append(n.drawn, label.Obstacle{Line: line, Width: 0.8, Cost: 12})
}

// Layer is all names in their places.
func (n *Names) Layer() *scene.Group {
	g := &scene.Group{ID: "names", Class: "names", Title: "names"}
	places, _ := label.Arrange(label.Field{Within: n.Box.Grow(-1), Obstacles: n.drawn}, n.asks)
	for i, p := range places {
		if !p.OK {
			continue
		}
		if p.Leader != nil {
			g.Add(scene.Line("leader", p.Leader[0], p.Leader[1]))
		}
		g.Add(p.Lines(n.texts[i], n.texts[i].Text)...)
	}
	return g
}
