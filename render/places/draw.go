package places

import (
	"strconv"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/scout"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/render/backdrop"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// spot is a place with its number.
type spot struct {
	at    geom.Vec
	title string
	looks bool // a lens looks from it to who is seen
}

// Cameras draws where a camera could be. Beat is what the frames are called.
func Cameras(r *scout.Report, beat string) *scene.Sheet {
	var list []spot
	for i := range r.Places {
		p := &r.Places[i]
		list = append(list, spot{p.At, p.In(r.Ask.Plan.Take.Units), true})
	}
	return draw(r.Ask.Take, r.Ask.Sees, r.Ask.Except, r.Ask.Frames, list, r.Ask.Plan.Take.Title+": places for a camera", beat,
		"the dashed line goes from a place to the middle of the ways of who is to be seen")
}

// Stands draws where something could stand unseen.
func Stands(r *scout.StandReport, beat string) *scene.Sheet {
	var list []spot
	for _, p := range r.Places {
		list = append(list, spot{p.At, p.In(r.Ask.Plan.Take.Units), false})
	}
	return draw(r.Ask.Take, []plan.Thing{r.Ask.Near}, nil, r.Ask.Frames, list, r.Ask.Plan.Take.Title+": unseen places for a "+string(r.Ask.For), beat,
		"no rolling camera sees the numbered places in this beat")
}

func draw(t scout.Take, sees []plan.Thing, except *plan.Camera, frames sight.Frames, list []spot, title, beat, remark string) *scene.Sheet {
	s, box := backdrop.Sheet(styles(), title, beat, "A map of the floor with the places numbered as they are listed.")
	var e backdrop.Extent
	ways, others := map[int][]geom.Vec{}, map[int][]geom.Vec{}
	for i, x := range sees {
		ways[i] = way(t, x, frames)
		e.Add(ways[i]...)
	}
	for i, c := range t.Stage.Cameras {
		if c != except {
			others[i] = lens(t, i, frames)
			e.Add(others[i]...)
		}
	}
	for _, p := range list {
		e.Add(p.at)
	}
	v := e.View(box, 2)
	n := &backdrop.Names{Box: box}
	floor := backdrop.Floor(box, "the floor", backdrop.Set(solid.Of(&t.Plan.Set), v), backdrop.Marks(&t.Plan.Set, v, n, nil))
	moving := &scene.Group{ID: "ways", Class: "ways", Title: "who is to be seen, and the other cameras"}
	line := func(points []geom.Vec, class, name string) {
		if len(points) == 0 {
			return
		}
		pts := v.Points(points)
		g := &scene.Group{Title: name}
		end, dir := scene.Along(pts, scene.LengthOf(pts))
		if scene.LengthOf(pts) > 0.5 {
			g.Add(&scene.Polyline{Class: class, Points: pts}, scene.ArrowHead(class+"-head", end, dir, 2.4, 1.7))
			n.Avoid(pts)
		} else {
			g.Add(&scene.Circle{Class: class, Center: end, Radius: 1.2})
		}
		moving.Add(g)
		half, _ := scene.Along(pts, scene.LengthOf(pts)/2)
		n.Add(class+"-name", name, 3, half, end, pts[0])
	}
	for i, c := range t.Stage.Cameras {
		line(others[i], "camera", c.Name)
	}
	for i, x := range sees {
		line(ways[i], "way", x.ID().Name)
	}
	numbers := &scene.Group{ID: "places", Class: "places", Title: "places"}
	for i, p := range list {
		at := v.Point(p.at)
		g := &scene.Group{Title: strconv.Itoa(i+1) + ": " + p.title}
		if p.looks {
			for k := range sees {
				if w := ways[k]; len(w) > 0 {
					g.Add(scene.Line("look", at, v.Point(w[len(w)/2])))
				}
			}
		}
		numbers.Add(g)
	}
	// The badges lie over the lines of all of them.
	for i := len(list) - 1; i >= 0; i-- {
		items, _ := scene.Badge("badge", "badge-text", v.Point(list[i].at), strconv.Itoa(i+1), 8, fonts.Bold)
		numbers.Items[i].(*scene.Group).Add(items...)
	}
	floor.Add(moving, numbers)
	entries := []backdrop.Entry{backdrop.Stroke("way", "who is to be seen"), backdrop.Stroke("camera", "other cameras"), {Text: "a place, best first", Draw: func(x, y float64) []scene.Item {
		items, _ := scene.Badge("badge", "badge-text", scene.Pt(x+5, y), "1", 8, fonts.Bold)
		return items
	}}}
	s.Add(floor, n.Layer(), backdrop.Key(box, v, t.Plan.Take.Units, remark, entries...))
	return s
}

// step is how many frames apart ways are drawn from.
const step = 4

// way is where a thing goes over frames, without its stops.
func way(t scout.Take, x plan.Thing, frames sight.Frames) []geom.Vec {
	b := t.Tracks.Body(x)
	if b == nil {
		return nil
	}
	var out []geom.Vec
	for f := frames.From; f <= frames.To; f += step {
		out = on(out, b.At(t.Tracks.Rate.Time(f)).Point())
	}
	return out
}

// lens is where a camera is while it rolls.
func lens(t scout.Take, camera int, frames sight.Frames) []geom.Vec {
	c := &t.Stage.Scene.Cameras[camera]
	var out []geom.Vec
	for _, r := range c.Rolls {
		for f := max(r.From, frames.From); f <= min(r.To, frames.To); f += step {
			v := c.At(f)
			out = on(out, geom.Vec{X: v.X, Y: v.Y})
		}
	}
	return out
}

// on adds a place that is off the last one.
func on(line []geom.Vec, p geom.Vec) []geom.Vec {
	if n := len(line); n > 0 && line[n-1].Dist(p) < 0.05 {
		return line
	}
	return append(line, p)
}

func styles() scene.Styles {
	line := func(class string, p scene.Paint, width float64, dash ...float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: p, Width: width, Dash: dash, Join: scene.RoundJoin}}
	}
	fill := func(class string, p scene.Paint) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Fill: p}}
	}
	who, cam := scene.RGB(16, 60, 140), scene.RGB(160, 20, 30)
	return scene.Styles{
		line("way", who, 0.6), fill("way-head", who), fill("way-name", who),
		{Class: "camera", Style: scene.Style{Stroke: cam, Width: 0.6, Dash: []float64{0.01, 1.1}, Cap: scene.RoundCap}}, fill("camera-head", cam), fill("camera-name", cam),
		line("look", scene.Grey(0.45), 0.18, 2, 1.2),
		{Class: "badge", Style: scene.Style{Stroke: scene.Black, Fill: scene.White, Width: 0.4}}, fill("badge-text", scene.Black),
		{Class: "ways"}, {Class: "places"},
	}
}
