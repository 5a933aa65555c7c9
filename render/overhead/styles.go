package overhead

import "longhand/render/scene"

// styles are the classes of a drawing. Line weights follow technical drawing: a
// heavy line is twice a thin one (ISO 128-2's steps 0.18, 0.25, 0.35, 0.5, 0.7).
func styles(colour bool) scene.Styles {
	ink := func(r, g, b uint8) scene.Paint {
		if colour {
			return scene.RGB(r, g, b)
		}
		return scene.Black
	}
	performer, crew := ink(16, 60, 140), ink(20, 100, 50)
	machine, lens := ink(120, 70, 10), ink(160, 20, 30)
	line := func(class string, p scene.Paint, width float64, dash ...float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: p, Width: width, Dash: dash}}
	}
	fill := func(class string, p scene.Paint) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Fill: p}}
	}
	both := func(class string, stroke, inside scene.Paint, width float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: stroke, Fill: inside, Width: width, Join: scene.RoundJoin}}
	}
	s := scene.Styles{
		// The sheet.
		both("paper", scene.None, scene.White, 0.1),
		line("border", scene.Black, 0.5), line("rule", scene.Black, 0.18),
		fill("caption", scene.Grey(0.3)), fill("quiet", scene.Grey(0.25)), fill("ink", scene.Black),
		fill("reversed", scene.White),
		// Layers; a class for a reader to restyle.
		{Class: "never-seen"}, {Class: "views"}, {Class: "floor"}, {Class: "set"}, {Class: "marks"}, {Class: "paths"}, {Class: "machines"},
		{Class: "bodies"}, {Class: "cameras"}, {Class: "lamps"}, {Class: "cues"}, {Class: "findings"}, {Class: "detail"}, {Class: "labels"}, {Class: "overhead-grid"}, {Class: "paint-outs"},
		{Class: "performer"}, {Class: "crew"}, {Class: "vehicle"}, {Class: "rig"}, {Class: "camera"},
		// The set.
		both("poche", scene.Black, scene.Black, 0.25),
		both("wild", scene.Black, scene.White, 0.35), line("wild-hatch", scene.Black, 0.18),
		both("low", scene.Black, scene.White, 0.25),
		line("overhead", scene.Grey(0.25), 0.25, 1.6, 1),
		both("glass", scene.Black, scene.White, 0.18),
		line("leaf", scene.Black, 0.5), line("swing", scene.Black, 0.18), line("swing-shut", scene.Black, 0.18, 0.8, 0.8),
		both("opening", scene.None, scene.White, 0.1),
		line("sill", scene.Black, 0.18),
		both("solid-thing", scene.Black, scene.White, 0.35), line("block-hatch", scene.Grey(0.4), 0.13),
		both("platform", scene.Black, scene.None, 0.25), line("platform-edge", scene.Grey(0.4), 0.13),
		both("stairs", scene.Black, scene.White, 0.25), line("tread", scene.Black, 0.18),
		fill("hole", scene.White), line("hole-line", scene.Black, 0.35),
		line("mirror", scene.Black, 0.35), line("mirror-hatch", scene.Black, 0.18),
		line("glow", scene.Black, 0.25),
		line("grid", scene.Grey(0.3), 0.25, 3, 0.8, 0.3, 0.8),
		line("mark", scene.Black, 0.35), line("mark-idle", scene.Grey(0.45), 0.25),
		// Paths, a style for each kind of mover.
		{Class: "path-performer", Style: scene.Style{Stroke: performer, Width: 0.6, Join: scene.RoundJoin}},
		{Class: "path-crew", Style: scene.Style{Stroke: crew, Width: 0.3, Dash: []float64{1.5, 0.8}}},
		{Class: "path-rig", Style: scene.Style{Stroke: machine, Width: 0.35, Dash: []float64{5, 1, 1, 1}}},
		{Class: "path-vehicle", Style: scene.Style{Stroke: machine, Width: 1.3}},
		{Class: "path-vehicle-core", Style: scene.Style{Stroke: scene.White, Width: 0.8}},
		{Class: "path-camera", Style: scene.Style{Stroke: lens, Width: 0.45, Dash: []float64{0.01, 1}, Cap: scene.RoundCap}},
		line("tick", scene.Black, 0.18), line("tick-long", scene.Black, 0.35),
		fill("head", scene.Black), line("head-open", scene.Black, 0.3), fill("pause", scene.Black),
		// Signs of bodies: open where they start, filled where they end, grey where they stay.
		both("performer-start", performer, scene.White, 0.45), both("performer-end", performer, performer, 0.45),
		both("performer-stay", performer, scene.Grey(0.8), 0.45),
		both("crew-start", crew, scene.White, 0.3), both("crew-end", crew, crew, 0.3), both("crew-stay", crew, scene.Grey(0.8), 0.3),
		both("machine-start", machine, scene.White, 0.35), both("machine-end", machine, scene.Grey(0.72), 0.6),
		both("machine-stay", machine, scene.Grey(0.9), 0.35),
		line("machine-line", machine, 0.2), fill("machine-front", machine),
		both("camera-start", lens, scene.White, 0.45), both("camera-end", lens, lens, 0.45), both("camera-stay", lens, scene.Grey(0.8), 0.45),
		line("arm", lens, 0.35),
		// Views.
		fill("view-shade", scene.Grey(0.93)),
		line("view-start", scene.Grey(0.1), 0.35, 0.3, 0.9), line("view-end", scene.Grey(0.1), 0.3, 2.6, 1.2),
		line("view-hatch", scene.Grey(0.45), 0.1),
		line("never", scene.Grey(0.45), 0.1),
		// Lamps, sun.
		both("lamp", scene.Black, scene.White, 0.3), line("beam", scene.Black, 0.2, 0.8, 0.5), line("sun", scene.Black, 0.3),
		fill("sun-disc", scene.Black),
		// Numbers and findings.
		both("badge", scene.Black, scene.White, 0.3), both("badge-fore", scene.Black, scene.Black, 0.3),
		both("finding", scene.Black, scene.White, 0.5),
		line("paint-out", scene.Black, 0.4, 1, 0.6), both("paint-badge", scene.Black, scene.White, 0.4),
		line("leader", scene.Grey(0.25), 0.13), fill("leader-dot", scene.Black),
		line("scale-line", scene.Black, 0.25), fill("scale-fill", scene.Black),
		{Class: "detail-frame"}, line("frame", scene.Black, 0.35, 4, 1.2, 0.5, 1.2),
		// Last, so that it wins.
		{Class: "dim", Style: scene.Style{Opacity: 0.5}},
	}
	return s
}
