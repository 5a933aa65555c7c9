package drawing

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/plan"
)

// dxfText writes pairs one a line: "0 LINE".
func dxfText(lines string) string {
	var out []string
	for _, l := range strings.Split(strings.TrimSpace(lines), "\n") {
		code, value, _ := strings.Cut(strings.TrimSpace(l), " ")
		out = append(out, code, value)
	}
	return strings.Join(out, "\r\n") + "\r\n"
}

func drawn(header, entities string) string {
	return dxfText("0 SECTION\n2 HEADER\n" + header + "\n0 ENDSEC\n0 SECTION\n2 ENTITIES\n" + strings.TrimSpace(entities) + "\n0 ENDSEC\n0 EOF")
}

const metres = "9 $INSUNITS\n70 6"

var r12 = drawn(metres, `
0 LINE
8 WALL_STREET
10 0
20 0
11 10
21 0
0 LINE
8 WALL_STREET
10 10
20 5
11 10
21 0
0 POLYLINE
8 BLOCK
66 1
70 1
0 VERTEX
8 BLOCK
10 0
20 0
0 VERTEX
8 BLOCK
10 2
20 0
42 1
0 VERTEX
8 BLOCK
10 2
20 2
0 VERTEX
8 BLOCK
10 0
20 2
0 SEQEND
8 BLOCK
0 CIRCLE
8 PILLARS
10 3
20 4
40 0.25
0 TEXT
8 WALL
10 1
20 1
1 Street
0 CIRCLE
8 LAMPS
10 0
20 0
40 1`)

func TestDXF(t *testing.T) {
	d := read(t, "a.dxf", r12, 1)
	require.Len(t, d.Shapes, 3)
	w := shape(t, d, "STREET")
	near(t, []geom.Vec{{}, {X: 10}, {X: 10, Y: 5}}, w.Points)
	b := shape(t, d, "block-1")
	assert.Equal(t, plan.KindBlock, b.Kind)
	// A 2 m square and a half disc of 1 m radius on its right: a bulge of 1 is a
	// half circle, to the right of the way, which goes up.
	assert.InDelta(t, 4+math.Pi/2, geom.Polygon(b.Points).Area(), 0.03)
	_, high := geom.Bounds(b.Points)
	assert.InDelta(t, 3, high.X, 0.01)
	p := shape(t, d, "pillar-1")
	assert.InDelta(t, 0.5, float64(p.Round), 1e-9)
	assert.Equal(t, []LeftOut{{"layer `LAMPS`", 1, "nothing in its name says wall, block, platform or pillar"}}, d.LeftOut)
	assert.False(t, d.Unitless)
}

func TestDXFUnits(t *testing.T) {
	line := "0 LINE\n8 WALL\n10 0\n20 0\n11 1000\n21 0"
	for header, want := range map[string]float64{
		"9 $INSUNITS\n70 4": 1, "9 $INSUNITS\n70 1": 25.4, "9 $INSUNITS\n70 5": 10,
		"9 $INSUNITS\n70 2": 304.8, "9 $INSUNITS\n70 6": 1000, "9 $INSUNITS\n70 0": 1, "9 $ACADVER\n1 X": 1,
	} {
		d := read(t, "a.dxf", drawn(header, line), 1)
		assert.InDelta(t, want, d.Shapes[0].Points[1].X, 1e-9, header)
		assert.Equal(t, want == 1 && header != "9 $INSUNITS\n70 4", d.Unitless, header)
	}
	d := read(t, "a.dxf", drawn("9 $INSUNITS\n70 4", line), 50)
	assert.InDelta(t, 50, d.Shapes[0].Points[1].X, 1e-9, "drawn to scale")
}

func TestDXFBlocksAndCurves(t *testing.T) {
	text := dxfText(`0 SECTION
2 HEADER
9 $INSUNITS
70 6
0 ENDSEC
0 SECTION
2 TABLES
0 TABLE
2 LAYER
0 LAYER
2 wall off
70 0
62 -7
0 ENDTAB
0 ENDSEC
0 SECTION
2 BLOCKS
0 BLOCK
2 TABLE
10 1
20 0
0 LWPOLYLINE
8 0
90 4
70 1
10 1
20 0
10 2
20 0
10 2
20 1
10 1
20 1
0 ENDBLK
0 ENDSEC
0 SECTION
2 ENTITIES
0 INSERT
8 block
2 TABLE
10 5
20 5
41 2
50 90
70 2
44 3
0 LINE
8 wall off
10 0
20 0
11 1
21 0
0 ARC
8 wall curve
10 0
20 0
40 2
50 270
51 90
0 ELLIPSE
8 platform
10 0
20 0
11 2
21 0
40 0.5
41 0
42 6.283185307179586
0 SOLID
8 block
10 0
20 0
11 1
21 0
12 0
22 1
13 1
23 1
0 HATCH
8 block
0 ENDSEC
0 EOF`)
	d := read(t, "a.dxf", text, 1)
	// The block is a unit square at (1, 0), which is its base point; twice as
	// long, turned a quarter to the left, at (5, 5) and 3 further along its x.
	near(t, []geom.Vec{{X: 5, Y: 5}, {X: 5, Y: 7}, {X: 4, Y: 7}, {X: 4, Y: 5}}, shape(t, d, "block-1").Points)
	near(t, []geom.Vec{{X: 5, Y: 8}, {X: 5, Y: 10}, {X: 4, Y: 10}, {X: 4, Y: 8}}, shape(t, d, "block-2").Points)
	arc := shape(t, d, "curve").Points
	assert.InDelta(t, -2, arc[0].Y, 1e-9)
	assert.InDelta(t, 2, arc[len(arc)-1].Y, 1e-9)
	assert.Positive(t, arc[len(arc)/2].X)
	assert.InDelta(t, math.Pi*2*1, geom.Polygon(shape(t, d, "platform-1").Points).Area(), 0.03)
	assert.InDelta(t, 1, geom.Polygon(shape(t, d, "block-3").Points).Area(), 1e-9)
	assert.Equal(t, []LeftOut{{"the HATCH on layer `block`", 1, "only lines, polylines, arcs, circles, ellipses and solids are read"}}, d.LeftOut)
}

func TestDXFMistakes(t *testing.T) {
	for text, want := range map[string]string{
		"": "empty", "\n\n": "line 1",
		"0\nSECTION\n": "no EOF",
		"x\ny\n":       "a group code belongs there",
		"0\nEOF\n":     "no ENTITIES",
		"AutoCAD\x00":  "binary",
		drawn("9 $A\n1 1", "0 LINE\n8 wall\n10 x\n20 0\n11 1\n21 1"): "",
	} {
		d, err := Read("a.dxf", text, 1)
		if want == "" {
			require.NoError(t, err)
			assert.Equal(t, "its numbers are none", d.LeftOut[0].Why)
			continue
		}
		assert.ErrorContains(t, err, want, text)
	}
}

// Angles are numbers like others: none of them may keep the reader, and a little
// more than once round is once round.
func TestDXFAngles(t *testing.T) {
	header := "9 $INSUNITS\n70 6"
	for _, a := range []struct {
		from, to string
		length   float64
	}{
		{"350", "80", math.Pi / 2}, {"0", "360", 2 * math.Pi}, {"0", "360.001", 2 * math.Pi}, {"90", "90", 2 * math.Pi},
		{"-90", "0", math.Pi / 2}, {"0", "-270", math.Pi / 2}, {"720", "90", math.Pi / 2}, {"0", "450", math.Pi / 2},
		{"0", "-1e300", -1}, {"1e300", "0", -1}, {"0", "-inf", -1}, {"inf", "0", -1}, {"nan", "0", -1},
	} {
		d := read(t, "a.dxf", drawn(header, "0 ARC\n8 wall\n10 0\n20 0\n40 1\n50 "+a.from+"\n51 "+a.to), 1)
		if a.length < 0 {
			assert.Equal(t, 1, len(d.Shapes)+len(d.LeftOut), "%s to %s is taken or told", a.from, a.to)
			continue
		}
		require.Len(t, d.Shapes, 1, "%s to %s", a.from, a.to)
		sum := 0.0
		for i, p := range d.Shapes[0].Points[1:] {
			sum += p.Dist(d.Shapes[0].Points[i])
		}
		assert.InDelta(t, a.length, sum, 0.01*a.length, "%s to %s", a.from, a.to)
	}
	for to, closed := range map[string]bool{"6.28319": true, "6.283185307179586": true, "3": false} {
		d := read(t, "a.dxf", drawn(header, "0 ELLIPSE\n8 platform\n10 0\n20 0\n11 2\n21 0\n40 0.5\n41 0\n42 "+to), 1)
		assert.Len(t, d.Shapes, map[bool]int{true: 1, false: 0}[closed], to)
	}
	read(t, "a.dxf", drawn(header, "0 ELLIPSE\n8 wall\n10 0\n20 0\n11 2\n21 0\n40 0.5\n41 0\n42 -1e300"), 1)
}

// Capitals make no difference in a DXF, and a block that the file does not hold is
// told.
func TestDXFNamesInAnyCase(t *testing.T) {
	text := dxfText(`0 SECTION
2 TABLES
0 TABLE
2 LAYER
0 LAYER
2 Walls Off
70 0
62 -7
0 ENDTAB
0 ENDSEC
0 SECTION
2 BLOCKS
0 BLOCK
2 Bench
10 0
20 0
0 SOLID
8 0
10 0
20 0
11 2
21 0
12 0
22 1
13 2
23 1
0 ENDBLK
0 ENDSEC
0 SECTION
2 ENTITIES
0 LINE
8 WALLS OFF
10 0
20 0
11 9
21 9
0 INSERT
8 BLOCK
2 BENCH
10 5
20 5
0 INSERT
8 BLOCK
2 LORRY
10 9
20 9
0 INSERT
8 CHAIRS
2 STOOL
10 9
20 9`)
	d := read(t, "a.dxf", text+"0\nENDSEC\n0\nEOF\n", 1000)
	require.Len(t, d.Shapes, 1)
	assert.Equal(t, plan.KindBlock, d.Shapes[0].Kind)
	assert.Equal(t, []LeftOut{{"the block `LORRY` on layer `BLOCK`", 1, "it is not in this file"}}, d.LeftOut)
}
