// Package sample is a sheet that uses everything a scene can hold, for the tests
// of the writers: each must show the same picture of it.
package sample

import (
	"longhand/lang/geom"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// Styles are the sample's rules.
func Styles() scene.Styles {
	return scene.Styles{
		{Class: "frame", Style: scene.Style{Stroke: scene.Black, Width: 0.5}},
		{Class: "wall", Style: scene.Style{Stroke: scene.Black, Fill: scene.Grey(0.75), Width: 0.6, Join: scene.Miter}},
		{Class: "path", Style: scene.Style{Stroke: scene.Black, Width: 0.35, Dash: []float64{2, 1}, Cap: scene.Butt}},
		{Class: "thin", Style: scene.Style{Stroke: scene.Black, Width: 0.18}},
		{Class: "tint", Style: scene.Style{Fill: scene.RGB(40, 90, 160), Opacity: 0.4}},
		{Class: "dim", Style: scene.Style{Opacity: 0.35}},
		{Class: "solid", Style: scene.Style{Fill: scene.Black}},
		{Class: "blue", Style: scene.Style{Fill: scene.RGB(0, 0, 160), Stroke: scene.RGB(255, 0, 0)}},
		{Class: "red", Style: scene.Style{Stroke: scene.RGB(170, 0, 0), Width: 1, Cap: scene.RoundCap, Join: scene.RoundJoin}},
	}
}

// View is the sample's scale: one metre is 20 mm, the plan's origin at 30, 150.
func View() scene.View {
	return scene.View{Scale: 50, Paper: scene.Pt(30, 150)}
}

// Sheet is a mail-sorting hall on A4 with a walk around a table, and beside it
// one of each shape, text and clip.
func Sheet() *scene.Sheet {
	s := &scene.Sheet{
		Width: scene.A4.Width, Height: scene.A4.Height,
		Title: "Last Collection: beat 3 <the table> & after", Desc: `What "every" writer must show`,
		Styles: Styles(),
	}
	s.Add(&scene.Rect{Class: "frame", Box: s.Box().Grow(-10)})
	s.Add(hall(), shapes(), words(), clipped())
	return s
}

func hall() *scene.Group {
	v := View()
	g := &scene.Group{ID: "set", Title: "the sorting hall", Desc: "walls and a table"}
	wall := scene.NewPath("wall")
	wall.Ring(v.Points([]geom.Vec{{X: 0, Y: 0}, {X: 7, Y: 0}, {X: 7, Y: 5}, {X: 0, Y: 5}})...)
	wall.Ring(v.Points([]geom.Vec{{X: 0.2, Y: 0.2}, {X: 6.8, Y: 0.2}, {X: 6.8, Y: 4.8}, {X: 0.2, Y: 4.8}})...)
	table := v.Points([]geom.Vec{{X: 2, Y: 2}, {X: 4, Y: 2}, {X: 4, Y: 3}, {X: 2, Y: 3}})
	g.Add(wall)
	g.Add(scene.Hatch("thin", [][]scene.Point{table}, scene.Pattern{Angle: 45, Spacing: 2}),
		&scene.Polygon{Class: "frame", Points: table})
	walk := scene.NewPath("path").MoveTo(v.Point(geom.Vec{X: 1, Y: 1})).
		CurveTo(v.Point(geom.Vec{X: 6, Y: 0.5}), v.Point(geom.Vec{X: 7, Y: 3}), v.Point(geom.Vec{X: 5, Y: 4}))
	end := v.Point(geom.Vec{X: 5, Y: 4})
	g.Add(&scene.Group{ID: scene.ID("path", "Mara Lind"), Class: "", Title: "path of Mara Lind", Items: []scene.Item{
		walk, scene.ArrowHead("solid", end, 150, 3, 2),
		&scene.Text{At: end.Polar(4, 90), Text: "Mara Lind 0:12", Size: 8, Anchor: scene.Middle, Halo: 0.4},
	}})
	// The scale bar: a metre from x = 30.
	g.Add(&scene.Group{ID: "scale", Title: "scale bar", Items: []scene.Item{
		&scene.Rect{Class: "solid", Box: scene.BoxAt(30, 160, v.Length(1), 2)},
		&scene.Rect{Class: "thin", Box: scene.BoxAt(30+v.Length(1), 160, v.Length(1), 2)},
		&scene.Text{At: scene.Pt(30, 166), Text: "1:50", Size: 7},
	}})
	return g
}

func shapes() *scene.Group {
	g := &scene.Group{ID: "shapes", Title: "one of each shape"}
	g.Add(&scene.Circle{Class: "frame", Center: scene.Pt(40, 190), Radius: 12},
		&scene.Circle{Class: "tint", Center: scene.Pt(46, 190), Radius: 12},
		&scene.Rect{Class: "wall", Box: scene.BoxAt(65, 180, 25, 18), Corner: 4},
		&scene.Polyline{Class: "red", Points: []scene.Point{{X: 95, Y: 198}, {X: 105, Y: 180}, {X: 115, Y: 198}}},
		scene.NewPath("wall").MoveTo(scene.Pt(130, 195)).Arc(scene.Pt(130, 195), 14, 20, 70).Close(),
		scene.NewPath("path").Arc(scene.Pt(165, 190), 10, 45, 270),
		scene.OpenHead("thin", scene.Pt(165, 190).Polar(10, 315), 45, 3, 2.5),
		scene.Hatch("thin", [][]scene.Point{
			scene.BoxAt(175, 178, 20, 20).Corners(), scene.BoxAt(180, 183, 10, 10).Corners(),
		}, scene.Pattern{Angle: 30, Spacing: 1.5, Cross: true}),
	)
	return g
}

func words() *scene.Group {
	g := &scene.Group{ID: "words", Title: "text in every face and direction"}
	at := scene.Pt(60, 225)
	for i, turn := range []float64{0, 45, 90, 180, 270} {
		p := at.Add(scene.Pt(float64(i)*30, 0))
		g.Add(&scene.Circle{Class: "thin", Center: p, Radius: 0.8},
			&scene.Text{At: p, Text: "Rig Ångström ½", Size: 9, Turn: turn, Face: fonts.Face(i % 3)})
	}
	for i, a := range []scene.Anchor{scene.Start, scene.Middle, scene.End} {
		g.Add(&scene.Text{Class: "blue", At: scene.Pt(100, 238+5*float64(i)), Text: `Ω "5 > 3" & <b> Жук`, Size: 10, Anchor: a, Face: fonts.Bold})
	}
	g.Add(&scene.Group{Class: "red dim", Items: []scene.Item{
		&scene.Text{At: scene.Pt(150, 240), Text: "dimmed", Size: 14},
		scene.Line("", scene.Pt(150, 243), scene.Pt(180, 243)),
		&scene.Group{Class: "dim", Items: []scene.Item{scene.Line("", scene.Pt(150, 247), scene.Pt(180, 247))}},
	}})
	return g
}

func clipped() *scene.Group {
	star := scene.Pt(45, 265)
	var ring []scene.Point
	for i := range 10 {
		r := 14.0
		if i%2 == 1 {
			r = 6
		}
		ring = append(ring, star.Polar(r, float64(i)*36))
	}
	g := &scene.Group{ID: "clip", Title: "a clip in a clip", Clip: [][]scene.Point{ring}}
	inner := &scene.Group{Clip: [][]scene.Point{scene.BoxAt(35, 250, 30, 18).Corners()}}
	inner.Add(&scene.Rect{Class: "tint", Box: scene.BoxAt(20, 240, 60, 50)},
		&scene.Text{At: star, Text: "clipped text", Size: 12, Anchor: scene.Middle})
	for i := range 20 {
		inner.Add(scene.Line("thin", scene.Pt(20+3*float64(i), 245), scene.Pt(20+3*float64(i), 285)))
	}
	g.Add(inner, &scene.Circle{Class: "frame", Center: star, Radius: 10})
	return g
}
