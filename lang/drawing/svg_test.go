package drawing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

func read(t *testing.T, name, text string, scale int) *Drawing {
	t.Helper()
	d, err := Read(name, text, scale)
	require.NoError(t, err)
	return d
}

func shape(t *testing.T, d *Drawing, name string) Shape {
	t.Helper()
	for _, s := range d.Shapes {
		if s.Name == name {
			return s
		}
	}
	require.Failf(t, "missing", "no shape %s in %v", name, d.Shapes)
	return Shape{}
}

func near(t *testing.T, want, got []geom.Vec) {
	t.Helper()
	require.Len(t, got, len(want))
	for i := range want {
		assert.InDelta(t, want[i].X, got[i].X, 1e-9, "point %d of %v", i, got)
		assert.InDelta(t, want[i].Y, got[i].Y, 1e-9, "point %d of %v", i, got)
	}
}

// An A4 sheet on its side in millimetres, 1:50: a paper millimetre is 50 mm of
// floor, and the paper's lower left corner is the origin.
const hall = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:d="urn:x" width="297mm" height="210mm" viewBox="0 0 594 420">
 <defs><rect id="chair" width="20" height="20"/></defs>
 <g d:label="wall street 3m" transform="translate(10,20)">
  <polyline id="polyline17" points="0,0 200,0 200,100"/>
 </g>
 <g id="wall">
  <line id="racks" x1="40" y1="400" x2="400" y2="400"/>
  <line id="line4" x1="0" y1="0" x2="40" y2="0"/>
  <line id="line5" x1="80" y1="40" x2="40" y2="0"/>
  <rect id="flat" x="100" y="100" width="80" height="2"/>
  <rect id="office" x="300" y="100" width="80" height="60"/>
 </g>
 <g id="block_x0020_0.9m"><g><rect d:label="Bench 1" x="100" y="200" width="40" height="20"/></g>
  <use href="#chair" x="300" y="200"/><path d="M 0 0 L 10 0"/></g>
 <g id="pillars"><circle cx="60" cy="220" r="8"/><circle id="iron" cx="100" cy="220" r="8"/></g>
 <g id="platform-stage-0.2m-0.6m"><path d="m 200,300 h 40 v 40 h -40 z"/></g>
 <g id="furniture"><rect width="4" height="4"/><rect width="4" height="4"/></g>
 <g id="walls off" display="none"><line x2="10"/></g>
 <text>hello</text>
</svg>`

func TestSVG(t *testing.T) {
	d := read(t, "hall.svg", hall, 50)
	// 594 user units across 297 mm: half a millimetre each, 25 mm of floor.
	w := shape(t, d, "street")
	assert.Equal(t, plan.KindWall, w.Kind)
	assert.Equal(t, &plan.Range{High: 3}, w.High)
	near(t, []geom.Vec{{X: 0.25, Y: 10}, {X: 5.25, Y: 10}, {X: 5.25, Y: 7.5}}, w.Points)
	near(t, []geom.Vec{{X: 1, Y: 0.5}, {X: 10, Y: 0.5}}, shape(t, d, "racks").Points)
	near(t, []geom.Vec{{X: 0, Y: 10.5}, {X: 1, Y: 10.5}, {X: 2, Y: 9.5}}, shape(t, d, "wall-1").Points) // two lines joined
	assert.Equal(t, plan.KindBlock, shape(t, d, "flat").Kind, "a wall's own outline")
	office := shape(t, d, "office")
	assert.Equal(t, plan.KindWall, office.Kind, "a room's outline")
	assert.Len(t, office.Points, 5)
	bench := shape(t, d, "Bench-1")
	assert.Equal(t, plan.KindBlock, bench.Kind)
	assert.Equal(t, units.Metres(0.9), bench.High.High)
	assert.InDelta(t, 0.5, geom.Polygon(bench.Points).Area(), 1e-9) // 1 m by 0.5 m
	near(t, []geom.Vec{{X: 7.5, Y: 5.5}}, shape(t, d, "block-1").Points[:1])
	iron := shape(t, d, "iron")
	assert.Equal(t, plan.KindPillar, iron.Kind)
	assert.InDelta(t, 0.4, float64(iron.Round), 1e-9)
	near(t, []geom.Vec{{X: 2.5, Y: 5}}, iron.Points)
	assert.Equal(t, plan.KindPillar, shape(t, d, "pillar-1").Kind)
	stage := shape(t, d, "stage")
	assert.Equal(t, &plan.Range{Low: 0.2, High: 0.6}, stage.High)
	assert.InDelta(t, 1, geom.Polygon(stage.Points).Area(), 1e-9)
	assert.Equal(t, []LeftOut{
		{"layer `furniture`", 2, "nothing in its name says wall, block, platform or pillar"},
		{"a shape on layer `block 0.9m`", 1, "it is open, and only walls are lines"},
	}, d.LeftOut)
	assert.Len(t, d.Shapes, 10)
}

func TestSVGUnits(t *testing.T) {
	const line = `<g id="wall"><path d="M0 0H96"/></g></svg>`
	for head, want := range map[string]float64{
		`<svg>`:                                  0.0254,  // 96 CSS pixels are an inch
		`<svg width="96" viewBox="0 0 96 96">`:   0.0254,  //
		`<svg width="1in" viewBox="0 0 96 96">`:  0.0254,  //
		`<svg viewBox="0 0 96 96">`:              0.096,   // no size: millimetres
		`<svg width="100%" viewBox="0 0 96 96">`: 0.096,   //
		`<svg width="4.8cm" viewBox="0 0 96 9">`: 0.048,   //
		`<svg height="72pt" viewBox="0 0 96 9">`: 0.27093, // 25.4 mm for 9 units, 96 of them
	} {
		d := read(t, "a.svg", head+line, 1)
		assert.InDelta(t, want, d.Shapes[0].Points[1].X-d.Shapes[0].Points[0].X, 1e-5, head)
		assert.Equal(t, want == 0.096, d.Unitless, "a guess is said to be one: %s", head)
	}
}

// The worked example of arcs in SVG 1.1, section 8.3.8, and known areas.
func TestSVGCurves(t *testing.T) {
	area := func(d string) float64 {
		got := read(t, "a.svg", `<svg viewBox="0 0 1000 1000"><g id="block"><path d="`+d+`"/></g></svg>`, 1000)
		require.Len(t, got.Shapes, 1, d)
		return geom.Polygon(got.Shapes[0].Points).Area()
	}
	pie := math.Pi * 150 * 150
	assert.InDelta(t, pie*3/4, area("M300,200 h-150 a150,150 0 1,0 150,-150 z"), pie*0.002)
	assert.InDelta(t, pie/4, area("M275,175 v-150 a150,150 0 0,0 -150,150 z"), pie*0.002)
	assert.InDelta(t, pie/4, area("M275,175v-150a150,150 0 00-150 150z"), pie*0.002, "flags without blanks")
	// A parabola's segment: two thirds of its base and height.
	assert.InDelta(t, 100*50*2/3.0, area("M0 100 Q50 0 100 100 Z"), 10)
	assert.InDelta(t, 100*50*2/3.0, area("M0,100 C33.3333,33.3333 66.6667,33.3333 100,100z"), 10)
	// T goes on smoothly: the same again, on the other side, and the two cancel.
	assert.InDelta(t, 2*100*50*2/3.0, area("M0 100 Q50 0 100 100 L100 200 M0 100 Q50 0 100 100 T200 100 V300 H0z")-200*200+100*50*2/3.0*2, 20000)
}

func TestTransforms(t *testing.T) {
	for text, want := range map[string]geom.Vec{
		"translate(5)":                           {X: 15},
		"translate(5, -1)":                       {X: 15, Y: -1},
		"rotate(90)":                             {Y: 10},
		"rotate(90 10 10)":                       {X: 20, Y: 10},
		"scale(2,3)":                             {X: 20},
		"matrix(0 1 -1 0 3 4)":                   {X: 3, Y: 14},
		"translate(1,2) scale(2), rotate(90)":    {X: 1, Y: 22},
		"skewY(45)":                              {X: 10, Y: 10},
		"  translate( 1 2 )\n translate(1e0,2.)": {X: 12, Y: 4},
	} {
		m, ok := parseTransform(text)
		require.True(t, ok, text)
		near(t, []geom.Vec{want}, []geom.Vec{m.point(geom.Vec{X: 10})})
	}
	for _, bad := range []string{"turn(3)", "rotate(1,2)", "rotate(1", "matrix(1 2 3)"} {
		_, ok := parseTransform(bad)
		assert.False(t, ok, bad)
	}
}

func TestSVGMistakes(t *testing.T) {
	for text, want := range map[string]string{
		"":                                     "no elements",
		"<html/>":                              "<html>",
		"<svg><g>":                             "line 1 is no XML",
		`<svg viewBox="0 0 0 10"/>`:            "viewBox",
		`<svg viewBox="0 0 9 9" width="0mm"/>`: "no length above 0",
		`<svg><g transform="spin(3)"/></svg>`:  "spin(3)",
		`<svg viewBox="0 0 9 9"><g id="wall"><line x2="1e9"/></g></svg>`:                                          "the farthest is 10000 m",
		`<svg><g id="a"><use href="#a"/><use href="#a"/><path id="wall" d="M0 0H1"/></g></svg>`:                   "",
		`<?xml version="1.0" encoding="utf-16"?><svg/>`:                                                           "utf-16",
		`<svg><g id="wall"><path d="M0 0 X"/><path d="L1 1"/><path d="M0 0 L1"/><path d="M1e999 0H9"/></g></svg>`: "",
	} {
		_, err := Read("a.svg", text, 50)
		if want == "" {
			assert.NoError(t, err, text)
			continue
		}
		assert.ErrorContains(t, err, want, text)
	}
	_, err := Read("a.pdf", "", 50)
	assert.ErrorContains(t, err, ".svg or .dxf")
}

func TestLayers(t *testing.T) {
	for text, want := range map[string]layer{
		"wall":                          {kind: plan.KindWall},
		"Walls 3 m":                     {kind: plan.KindWall, high: &plan.Range{High: 3}},
		"wall 3m":                       {kind: plan.KindWall, high: &plan.Range{High: 3}},
		"WALL_3M":                       {kind: plan.KindWall, high: &plan.Range{High: 3}},
		"wall_300cm":                    {kind: plan.KindWall, high: &plan.Range{High: 3}},
		"A-WALL-FULL":                   {kind: plan.KindWall, name: "FULL"},
		"wall street 2,4 m thick 24mm":  {kind: plan.KindWall, name: "street", high: &plan.Range{High: 2.4}, thick: 0.024},
		"platform gallery 3.2m to 3.4m": {kind: plan.KindPlatform, name: "gallery", high: &plan.Range{Low: 3.2, High: 3.4}},
		"block bench high 1.1 m":        {kind: plan.KindBlock, name: "bench", high: &plan.Range{High: 1.1}},
		"block 8'6\"":                   {kind: plan.KindBlock, high: &plan.Range{High: units.Metres(8.5 * 0.3048)}},
		"platform 3mm-x":                {kind: plan.KindPlatform, name: "x", high: &plan.Range{High: 0.003}},
		"pillar to":                     {kind: plan.KindPillar},
	} {
		got, ok := layerOf(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, got, text)
	}
	for _, text := range []string{"", "wallpaper", "furniture", "Ebene 1", "blockade"} {
		_, ok := layerOf(text)
		assert.False(t, ok, text)
	}
}

func FuzzRead(f *testing.F) {
	f.Add(true, hall)
	f.Add(false, r12)
	f.Fuzz(func(t *testing.T, svg bool, text string) {
		name := "a.dxf"
		if svg {
			name = "a.svg"
		}
		d, err := Read(name, text, 50)
		if err != nil {
			return
		}
		for _, s := range d.Shapes {
			require.NotEmpty(t, s.Name)
			require.NotEmpty(t, s.Points)
			for _, p := range s.Points {
				require.False(t, math.IsNaN(p.X+p.Y))
			}
		}
	})
}

func TestSVGLeavesOutWhatIsHidden(t *testing.T) {
	for _, how := range []string{`display="none"`, `style="display: none"`, `visibility="hidden"`, `style="fill:none; visibility: hidden"`} {
		d := read(t, "a.svg", `<svg width="96mm" viewBox="0 0 96 96"><g id="wall"><path d="M0 0H9"/><path d="M0 9H9" `+how+`/></g></svg>`, 1)
		assert.Len(t, d.Shapes, 1, how)
	}
}

// Drawings in the drawing are fitted into what they are given: the unit square of a
// symbol, and of an svg, as SVG 1.1, section 7.8 has it.
func TestSVGInnerViews(t *testing.T) {
	const head = `<svg width="200mm" height="100mm" viewBox="0 0 200 100"><symbol id="s" viewBox="10 10 4 2"><rect x="10" y="10" width="4" height="2"/></symbol><g id="block">`
	for inner, want := range map[string][4]float64{ // left, bottom, right and top in mm
		`<use href="#s" x="20" y="20" width="40" height="20"/>`: {20, 60, 60, 80},
		`<use href="#s" x="20" y="20" width="40" height="40"/>`: {20, 50, 60, 70},
		`<use href="#s"/>`: {0, 0, 200, 100},
		`<svg x="5" y="5" width="20" height="20" viewBox="0 0 2 1"><rect width="2" height="1"/></svg>`:                                {5, 80, 25, 90},
		`<svg x="5" y="5" width="20" height="20" viewBox="0 0 2 1" preserveAspectRatio="xMidYMin"><rect width="2" height="1"/></svg>`: {5, 85, 25, 95},
		`<svg x="5" y="5" width="20" height="20" viewBox="0 0 2 1" preserveAspectRatio="none"><rect width="2" height="1"/></svg>`:     {5, 75, 25, 95},
		`<svg width="20" height="20" viewBox="0 0 2 1" preserveAspectRatio="xMaxYMid slice"><rect width="2" height="1"/></svg>`:       {-20, 80, 20, 100},
		`<svg x="5" y="5"><rect width="2" height="1"/></svg>`:                                                                         {5, 94, 7, 95},
	} {
		d := read(t, "a.svg", head+inner+`</g></svg>`, 1000)
		require.Len(t, d.Shapes, 1, inner)
		low, high := geom.Bounds(d.Shapes[0].Points)
		for i, v := range []float64{low.X, low.Y, high.X, high.Y} {
			assert.InDelta(t, want[i], v, 1e-9, "%s: %v", inner, d.Shapes[0].Points)
		}
	}
}
