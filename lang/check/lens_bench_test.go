package check_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/diag"
)

// lensRules are the rules of lens, light and day.
var lensRules = []diag.Code{
	"too-tight", "size-off", "uneven-pair", "soft", "background-soft", "strobe-pan", "close-focus", "no-zoom", "only-lens",
	"modern-in-shot", "grid-in-shot", "bad-cut", "head-cut", "cue-overlap", "grid-full", "over-current", "exposure-swing",
	"light-window", "pickup-light", "sun-flare",
}

// BenchmarkLensRules runs the rules of lens, light and day on three minutes of two
// cameras and twenty lamps, from what the other stages have worked out.
func BenchmarkLensRules(b *testing.B) {
	var text strings.Builder
	text.WriteString(`take "Three minutes"
  rate 24 fps
  place 56.05 N 12.69 E
  date 2026-08-20 zone +02:00
  roll in 16:00 to 19:00
set "Hall"
  wall north (-10, 12) (30, 12) high 5 m
  wall south (-10, -12) (30, -12) high 5 m
  grid flies (0, 0) (20, 0) (20, 10) (0, 10) high 5 m points 40
  supply mains 230 V 16 A x 8
`)
	for i := range 12 {
		fmt.Fprintf(&text, "  pillar p%d (%d, 8) round 0.4 m high 4 m\n", i, 2*i)
	}
	text.WriteString(`kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22 close 0.4 m
  lens w28 28 mm stops T2 to T22 close 0.4 m
  rig stabilised gimbal
  rig legs sticks
  lamp globe 500 W 4000 cd seen
  wash hall globe x 20 on flies
people
  performer mina
  performer otto
  crew ida
  crew jon
look
  never tighter than chest
  never zoom
  never modern in frame
  exposure within 3 stops
beat "Walk"
  cue up-full hall 80 % over 0 s
  cue half hall 40 % over 20 s starting +60 s
  A on stabilised with ida
  A takes w35 T4
  A follows mina by 2.5 m
  A sees mina waist
  legs stands at (10, -6)
  B on legs with jon
  B takes w28 T4
  B sees otto, mina
  B rolls
  otto stands at (10, 2) in 3:00
`)
	for i := range 6 {
		from, to := 0, 18
		if i%2 == 1 {
			from, to = to, from
		}
		fmt.Fprintf(&text, "  mina walks from (%d, 4) to (%d, 4) at 0.6 m/s\n", from, to)
	}
	r, err := compile.Text(context.Background(), "bench.take", text.String(), compile.Options{})
	if err != nil || r.Stopped {
		b.Fatal(err, worse(r.Findings))
	}
	all := check.Rules
	defer func() { check.Rules = all }()
	check.Rules = nil
	for _, code := range lensRules {
		for _, rule := range all {
			if rule.Code == code {
				check.Rules = append(check.Rules, rule)
			}
		}
	}
	if len(check.Rules) != len(lensRules) {
		b.Fatal("rules are missing")
	}
	for b.Loop() {
		p := &check.Pass{Ctx: context.Background(), Plan: r.Plan, Clock: r.Tracks.Clock, Tracks: r.Tracks, Stage: r.Stage, Sight: r.Sight}
		if _, err := check.Run(context.Background(), p, check.Seen); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(r.Tracks.Frames), "frames")
}
