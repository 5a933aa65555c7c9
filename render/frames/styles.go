package frames

import "longhand/render/scene"

// Styles are the classes of a frame: heavier the more an eye should go to it.
func Styles() scene.Styles {
	line := func(class string, p scene.Paint, width float64, dash ...float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: p, Width: width, Dash: dash, Cap: scene.RoundCap, Join: scene.RoundJoin}}
	}
	return scene.Styles{
		{Class: "frame-picture"}, {Class: "frame-body"}, {Class: "frame-labels"}, {Class: "frame-set"},
		{Class: "frame-paper", Style: scene.Style{Fill: scene.White}},
		line("frame-line", scene.Black, 0.5),
		line("frame-thirds", scene.Grey(0.55), 0.13, 0.4, 1.2),
		line("frame-edge", scene.Grey(0.2), 0.18),
		line("frame-floor", scene.Grey(0.1), 0.25),
		line("frame-horizon", scene.Grey(0.35), 0.18, 3, 1.2),
		line("frame-glass", scene.Grey(0.45), 0.13),
		line("frame-mirror", scene.Grey(0.3), 0.18, 1.4, 0.5, 0.3, 0.5),
		line("frame-glow", scene.Grey(0.3), 0.25, 0.3, 0.7),
		line("frame-performer", scene.Black, 0.45),
		line("frame-performer-far", scene.Black, 0.3),
		line("frame-crew", scene.Black, 0.3),
		line("frame-crew-far", scene.Black, 0.18),
		line("frame-detail-far", scene.Black, 0.13),
		line("frame-machine", scene.Black, 0.3),
		line("frame-detail", scene.Black, 0.22),
		line("frame-hair", scene.Black, 0.3),
		line("frame-found", scene.Black, 0.5, 1.6, 0.8),
		line("frame-leader", scene.Grey(0.25), 0.13),
		{Class: "frame-caption", Style: scene.Style{Fill: scene.Black}},
		{Class: "frame-quiet", Style: scene.Style{Fill: scene.Grey(0.3)}},
		line("frame-rule", scene.Black, 0.25),
		line("frame-border", scene.Black, 0.5),
	}
}
