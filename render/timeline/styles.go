package timeline

import "longhand/render/scene"

func styles() scene.Styles {
	line := func(class string, p scene.Paint, width float64, dash ...float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: p, Width: width, Dash: dash, Cap: scene.Butt}}
	}
	fill := func(class string, p scene.Paint) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Fill: p}}
	}
	both := func(class string, stroke, inside scene.Paint, width float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: stroke, Fill: inside, Width: width}}
	}
	return scene.Styles{
		{Class: "lane"}, {Class: "ruler"}, {Class: "head"},
		fill("text", scene.Black), fill("quiet", scene.Grey(0.3)), fill("on-dark", scene.White),
		fill("band", scene.Grey(0.95)), fill("page", scene.White),
		line("lane-rule", scene.Grey(0.4), 0.18), line("lane-heavy", scene.Black, 0.4), line("border", scene.Black, 0.5),
		line("second", scene.Grey(0.3), 0.13), line("five", scene.Black, 0.25), line("ten", scene.Black, 0.35),
		line("beat-line", scene.Grey(0.45), 0.2, 1.6, 0.9),
		fill("bar-move", scene.Black),
		both("bar-say", scene.Black, scene.White, 0.25),
		fill("bar-do", scene.Grey(0.5)),
		line("bar-hold", scene.Black, 0.2),
		line("bar-edge", scene.Black, 0.35),
		fill("bar-roll", scene.Black),
		both("bar-see", scene.Black, scene.Grey(0.85), 0.18),
		both("bar-frame", scene.Black, scene.Grey(0.6), 0.18),
		both("bar-spoil", scene.Black, scene.White, 0.35),
		both("bar-hand", scene.Black, scene.White, 0.35), line("bar-cross", scene.Black, 0.25),
		both("bar-beat", scene.Black, scene.White, 0.35),
		fill("bar-error", scene.Black), both("bar-warning", scene.Black, scene.Grey(0.6), 0.18), both("bar-note", scene.Black, scene.White, 0.18),
		line("slack", scene.Grey(0.2), 0.2, 0.4, 0.5),
		fill("level", scene.Grey(0.8)), line("level-line", scene.Black, 0.35), line("level-grid", scene.Grey(0.6), 0.13, 0.4, 0.8),
	}
}
