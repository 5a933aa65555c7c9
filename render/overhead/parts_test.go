package overhead

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/scene"
)

// The lines round a set of cells hold exactly those cells.
func TestOutlinesHoldTheirCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		columns, rows := rapid.IntRange(1, 9).Draw(t, "columns"), rapid.IntRange(1, 9).Draw(t, "rows")
		cells := rapid.SliceOfN(rapid.Bool(), columns*rows, columns*rows).Draw(t, "cells")
		var edges []geom.Polygon
		area := 0.0
		for _, r := range outlines(columns, rows, func(c, r int) bool { return cells[r*columns+c] }) {
			p := make(geom.Polygon, len(r))
			for i, c := range r {
				p[i] = geom.Vec{X: float64(c[0]), Y: float64(c[1])}
			}
			edges = append(edges, p)
			area += p.SignedArea()
		}
		want := 0
		for i, in := range cells {
			wind := 0
			for _, p := range edges {
				wind += p.Winding(geom.Vec{X: float64(i%columns) + 0.5, Y: float64(i/columns) + 0.5})
			}
			if in {
				want++
				assert.Equal(t, 1, wind)
			} else {
				assert.Equal(t, 0, wind)
			}
		}
		assert.InDelta(t, float64(want), area, 1e-9)
	})
}

func TestClippedStaysInside(t *testing.T) {
	box := scene.BoxAt(0, 0, 10, 8)
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 8).Draw(t, "corners")
		var ring []scene.Point
		for range n {
			ring = append(ring, scene.Pt(rapid.Float64Range(-20, 30).Draw(t, "x"), rapid.Float64Range(-20, 30).Draw(t, "y")))
		}
		for _, p := range clipped(ring, box) {
			assert.True(t, inside(p, box.Grow(1e-9)), "%v", p)
		}
	})
	assert.Equal(t, scene.BoxAt(0, 0, 5, 5).Corners(), clipped(scene.BoxAt(0, 0, 5, 5).Corners(), box), "what is inside stays as it is")
	assert.Empty(t, clipped(scene.BoxAt(20, 20, 5, 5).Corners(), box))
}

// A lens that spans a right angle, its half 45°, sees ten metres of a wall five
// metres off: 2·atan(36/2·18) = 90° (the angle of view of a rectilinear lens).
func TestViewIsTheAngleOfView(t *testing.T) {
	r := fromText(t, `take "View"
set "room"
  wall far (5, -8) (5, 8) high 3 m thick 0.1 m
  block low (2, -1) (3, -1) (3, 1) (2, 1) high 1 m
kit
  camera A sensor 36 mm x 24 mm
  lens w18 18 mm
  rig legs sticks
people
  performer ann
beat "looks"
  legs stands at (0, 0)
  ann stands at (4, 0)
  A on legs up 1.5 m
  A takes w18
  A sees ann
`)
	m := from(r)
	d := &drawing{material: m, box: scene.BoxAt(0, 0, 400, 400), view: scene.View{Scale: 50, Paper: scene.Pt(200, 200)}}
	ring, ok := d.viewAt(m.tracks.Cameras[0], 0)
	require.True(t, ok)
	low, high, far := math.Inf(1), math.Inf(-1), 0.0
	for _, p := range ring {
		q := d.view.Floor(p)
		far = math.Max(far, q.X)
		if q.X > 4.9 {
			low, high = math.Min(low, q.Y), math.Max(high, q.Y)
		}
	}
	// The wall's near face is half its thickness nearer.
	assert.InDelta(t, 4.95, far, 1e-6, "the view ends at the wall and not at the block lower than the lens")
	assert.InDelta(t, -4.95, low, 1e-6)
	assert.InDelta(t, 4.95, high, 1e-6)
}

// At a steady metre a second, seconds are a metre apart: 20 mm at 1:50.
func TestTicksAreSeconds(t *testing.T) {
	r := fromText(t, "take \"t\"\npeople\n  performer ann\nbeat \"b\"\n  ann walks from (0, 0) to (7, 0) straight at 1 m/s\n")
	s := Beat(r, r.Plan.Beats[0], Options{Scale: 50})[0]
	var xs []float64
	var visit func([]scene.Item)
	visit = func(items []scene.Item) {
		for _, it := range items {
			switch v := it.(type) {
			case *scene.Group:
				visit(v.Items)
			case *scene.Polyline:
				if strings.HasPrefix(v.Class, "tick") {
					xs = append(xs, (v.Points[0].X+v.Points[1].X)/2)
					assert.InDelta(t, v.Points[0].X, v.Points[1].X, 1e-6, "ticks cross the path at a right angle")
				}
			}
		}
	}
	visit(s.Items)
	require.GreaterOrEqual(t, len(xs), 6)
	for i := 3; i < len(xs)-1; i++ { // past the first steps, before the last
		assert.InDelta(t, 20, xs[i]-xs[i-1], 0.01)
	}
}

func TestWordsAreTheLineWithoutItsCue(t *testing.T) {
	r := fromText(t, `take "t"
set "s"
  mark M1 (3, 0)
people
  performer ann
  performer bo
beat "b"
  ann walks from (0, 0) via (1, 0),
    (2, 0) to M1 at 1 m/s   # slowly
  bo stands at (1, 1)
  bo says "Number # one." when ann reaches M1 plus 1 s
  bo turns to ann with
  ann says "Yes." starting +9 s in 2 s
`)
	var got []string
	for _, a := range r.Plan.Actions {
		got = append(got, words(a))
	}
	assert.Equal(t, []string{
		"ann walks from (0, 0) via (1, 0), (2, 0) to M1 at 1 m/s", "bo stands at (1, 1)", `bo says "Number # one."`, "bo turns to ann", `ann says "Yes." in 2 s`,
	}, got)
}

func TestSignsDiffer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &plan.Plan{}
		for _, n := range rapid.SliceOfDistinct(rapid.StringMatching(`[a-cA-C][a-c]{0,3}`), rapid.ID[string]).Draw(t, "names") {
			if rapid.Bool().Draw(t, "camera") {
				p.Kit.Cameras = append(p.Kit.Cameras, &plan.Camera{Ident: plan.Ident{Name: n}})
			} else {
				p.People = append(p.People, &plan.Person{Ident: plan.Ident{Name: n}})
			}
		}
		seen := map[string]bool{}
		for _, s := range signs(p) {
			assert.False(t, seen[s], s)
			seen[s] = true
		}
	})
}

// What is found out in the beat stands on the floor and in the list; what is
// found out elsewhere does not, nor what is only a note.
func TestFindingsAreMarked(t *testing.T) {
	r := compiled(t, "signs")
	r.Findings = []diag.Diagnostic{
		{Code: "gear-in-shot", Severity: diag.Error, Subject: "barrow", Camera: "A", Message: "barrow shows", Frames: []diag.Frames{{From: 10, To: 20}}, Worst: 12, Share: 1},
		{Code: "gear-in-shot", Severity: diag.Error, Subject: "barrow", Camera: "A", Message: "barrow shows most", Frames: []diag.Frames{{From: 40, To: 60}}, Worst: 48, Share: 3},
		{Code: "late", Severity: diag.Warning, Message: "late by 1 s", Beat: "Every sign"},
		{Code: "late", Severity: diag.Warning, Message: "elsewhere", Beat: "Another"},
		{Code: "flare", Severity: diag.Note, Message: "a note", Frames: []diag.Frames{{From: 0, To: 5}}},
		{Code: "gear-in-shot", Severity: diag.Error, Message: "after the end", Frames: []diag.Frames{{From: 9000, To: 9001}}},
	}
	d := &drawing{material: from(r), beat: r.Plan.Beats[0]}
	d.span = d.spanOf(d.beat)
	all := d.found()
	require.Len(t, all, 2)
	assert.Equal(t, "barrow shows most", all[0].Message, "of many times, the worst")
	assert.Len(t, all[0].runs, 2)
	at := d.tracks.Body(d.named("barrow")).At(d.tracks.Rate.Time(48))
	assert.InDelta(t, float64(at.X), all[0].spot.X, 1e-9)
	assert.False(t, all[1].has)
	text := ""
	for _, s := range Beat(r, d.beat, Options{}) {
		for _, w := range s.Texts() {
			text += w.Text + "\n"
		}
	}
	assert.Contains(t, text, "barrow shows most")
	assert.Contains(t, text, "late by 1 s")
	assert.NotContains(t, text, "elsewhere")
	assert.NotContains(t, text, "a note")
	assert.NotContains(t, text, "after the end")
}

func TestScaleText(t *testing.T) {
	assert.Equal(t, "1:50", scaleText(50, units.Metric))
	assert.Equal(t, `1/4" = 1'-0" (1:48)`, scaleText(48, units.Feet))
	assert.Equal(t, "1:37", scaleText(37, units.Feet))
}
