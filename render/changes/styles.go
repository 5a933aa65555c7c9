package changes

import "longhand/render/scene"

// styles are the classes of this drawing. What was is grey and dashed, so that it
// is told from what is without colour too.
func styles() scene.Styles {
	line := func(class string, p scene.Paint, width float64, dash ...float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: p, Width: width, Dash: dash, Join: scene.RoundJoin}}
	}
	fill := func(class string, p scene.Paint) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Fill: p}}
	}
	both := func(class string, stroke, inside scene.Paint, width float64, dash ...float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: stroke, Fill: inside, Width: width, Dash: dash}}
	}
	before := scene.Grey(0.42)
	performer, crew := scene.RGB(16, 60, 140), scene.RGB(20, 100, 50)
	machine, lens := scene.RGB(120, 70, 10), scene.RGB(160, 20, 30)
	return scene.Styles{
		both("new-piece", scene.Black, scene.Grey(0.85), 0.5),
		both("old-piece", before, scene.None, 0.35, 1.4, 1),
		line("old-mark", before, 0.3, 0.8, 0.6), line("new-mark", scene.Black, 0.5), line("moved", scene.Black, 0.25), fill("moved-head", scene.Black),
		line("old-way", before, 0.45, 1.6, 1.1), fill("old-head", before),
		line("performer", performer, 0.6), fill("performer-head", performer), fill("performer-name", performer),
		line("crew", crew, 0.4), fill("crew-head", crew), fill("crew-name", crew),
		line("machine", machine, 0.6), fill("machine-head", machine), fill("machine-name", machine),
		{Class: "lens", Style: scene.Style{Stroke: lens, Width: 0.6, Dash: []float64{0.01, 1.1}, Cap: scene.RoundCap}}, fill("lens-head", lens), fill("lens-name", lens),
		{Class: "before"}, {Class: "after"},
	}
}
