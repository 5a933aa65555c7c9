package scene_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/lang/geom"
	"longhand/render/fonts"
	"longhand/render/scene"
	"longhand/render/scene/sample"
)

func TestRoundNeverMinusZero(t *testing.T) {
	for v, want := range map[float64]string{-0.0004: "0", 0: "0", 1.0005: "1.001", -2.5: "-2.5", 1e-12: "0", 1234.5678: "1234.568"} {
		assert.Equal(t, want, scene.Number(v))
	}
	assert.Equal(t, "0", scene.Number(math.Copysign(0, -1)))
	assert.Equal(t, "0", scene.Number(math.NaN()))
}

func TestSampleHasNoProblems(t *testing.T) {
	assert.Empty(t, sample.Sheet().Check())
}

func TestCheckFinds(t *testing.T) {
	s := &scene.Sheet{Width: 50, Height: 50, Styles: scene.Styles{{Class: "a b"}}}
	s.Add(
		&scene.Group{ID: "g", Title: "one", Items: []scene.Item{
			&scene.Text{At: scene.Pt(5, 5), Text: "tiny", Size: 6},
			&scene.Text{At: scene.Pt(45, 20), Text: "too long for it", Size: 8},
			&scene.Text{At: scene.Pt(5, 30), Text: "漢", Size: 8},
		}},
		&scene.Group{ID: "g", Title: "two"}, &scene.Group{ID: "h"},
		&scene.Circle{Class: "lost", Center: scene.Pt(math.NaN(), 1), Radius: 1},
	)
	var got []string
	for _, p := range s.Check() {
		got = append(got, p.String())
	}
	assert.Equal(t, []string{
		`class name "a b" is not letters, digits, - and _`,
		`the sheet has no title`,
		`g: text "tiny" is 6 pt, below 7 pt`,
		`g: text "too long for it" runs off the sheet: 45,17.333 to 61.541,20.595 mm`,
		`g: text "漢" has characters the regular face lacks: 漢`,
		`g: the id is used twice`,
		`h: the group has an id but no title to read aloud`,
		`class "lost" has no rule`,
		`a shape of class "lost" has a coordinate that is no number`,
	}, got)
}

func TestID(t *testing.T) {
	assert.Equal(t, "path-mara-lind", scene.ID("path", "Mara Lind"))
	assert.Equal(t, "n3-b", scene.ID("3 (b)"))
	assert.Equal(t, "жук-1", scene.ID(`"Жук" / 1`))
	assert.Equal(t, "x", scene.ID("", "--"))
}

// CSS 2.1, 6.4.1: of rules equally specific the later wins; a property that no
// rule of the element sets comes from the parent. Opacity is not inherited but
// applies to the group as a whole, which is the same as multiplying.
func TestStylesCascade(t *testing.T) {
	s := scene.Styles{
		{Class: "thick", Style: scene.Style{Width: 2, Opacity: 0.5}},
		{Class: "red", Style: scene.Style{Stroke: scene.RGB(255, 0, 0), Width: 1}},
		{Class: "plain", Style: scene.Style{Stroke: scene.None, Dash: scene.Solid}},
		{Class: "dash", Style: scene.Style{Dash: []float64{1, 2}}},
	}
	group := s.On(scene.Root(), "red thick dash")
	assert.Equal(t, 1.0, group.Width)
	assert.Equal(t, 0.5, group.Opacity)
	in := s.On(group, "thick")
	assert.Equal(t, 2.0, in.Width)
	assert.Equal(t, 0.25, in.Opacity)
	assert.Equal(t, "#ff0000", in.Stroke.String())
	assert.Equal(t, []float64{1, 2}, in.Dash)
	plain := s.On(in, "plain")
	assert.False(t, plain.Stroke.Visible())
	assert.Empty(t, plain.Dash)
	text := s.OnText(group, "red")
	assert.Equal(t, scene.Black, text.Fill)
	assert.False(t, text.Stroke.Visible())
}

func TestViewIsToScale(t *testing.T) {
	v := scene.View{Scale: 50, Plan: geom.Vec{X: 1, Y: 2}, Paper: scene.Pt(100, 100), Turn: 90}
	assert.Equal(t, 20.0, v.Length(1))
	p := v.Point(geom.Vec{X: 2, Y: 2}) // a metre to the right on the plan is up on paper
	assert.InDelta(t, 100, p.X, 1e-9)
	assert.InDelta(t, 80, p.Y, 1e-9)
	assert.InDelta(t, 90, v.Degrees(0), 1e-9)
	rapid.Check(t, func(t *rapid.T) {
		q := geom.Vec{X: rapid.Float64Range(-50, 50).Draw(t, "x"), Y: rapid.Float64Range(-50, 50).Draw(t, "y")}
		r := v.Floor(v.Point(q))
		if q.Dist(r) > 1e-9 {
			t.Fatalf("%v came back as %v", q, r)
		}
	})
}

func TestTextBox(t *testing.T) {
	w := fonts.Regular.Width(10, "label")
	up, down := fonts.Regular.Ascent(10), fonts.Regular.Descent(10)
	text := scene.Text{At: scene.Pt(50, 50), Text: "label", Size: 10, Anchor: scene.Middle}
	b := text.Box()
	assert.InDelta(t, 50-w/2, b.Min.X, 1e-9)
	assert.InDelta(t, 50+w/2, b.Max.X, 1e-9)
	assert.InDelta(t, 50-up, b.Min.Y, 1e-9)
	assert.InDelta(t, 50+down, b.Max.Y, 1e-9)
	text.Turn, text.Anchor = 90, scene.Start // reads upwards
	b = text.Box()
	assert.InDelta(t, 50-w, b.Min.Y, 1e-9)
	assert.InDelta(t, 50-up, b.Min.X, 1e-9)
	text.Turn, text.Level = 0, scene.Center
	assert.InDelta(t, 50+fonts.Regular.CapHeight(10)/2, text.Origin().Y, 1e-9)
}

func TestArcsAreCircles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := scene.Pt(rapid.Float64Range(-100, 100).Draw(t, "x"), rapid.Float64Range(-100, 100).Draw(t, "y"))
		r := rapid.Float64Range(0.1, 200).Draw(t, "radius")
		from := rapid.Float64Range(-360, 360).Draw(t, "from")
		sweep := rapid.Float64Range(-360, 360).Draw(t, "sweep")
		p := scene.NewPath("").Arc(c, r, from, sweep)
		if end := c.Polar(r, from+sweep); p.Cmds[len(p.Cmds)-1].At.Dist(end) > 1e-9 {
			t.Fatal("ends elsewhere")
		}
		lines, _ := p.Flat(0.01)
		for _, l := range lines {
			for i, q := range l {
				if d := math.Abs(q.Dist(c) - r); d > 0.0003*r {
					t.Fatalf("a point is %v off", d)
				}
				if i > 0 { // and so is each chord's middle, within the tolerance
					mid := l[i-1].Add(q).Mul(0.5)
					if d := math.Abs(mid.Dist(c) - r); d > 0.01+0.0003*r {
						t.Fatalf("a chord is %v off", d)
					}
				}
			}
		}
	})
}

func TestAlong(t *testing.T) {
	line := []scene.Point{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}}
	at, dir := scene.Along(line, 15)
	assert.Equal(t, scene.Pt(10, 5), at)
	assert.Equal(t, -90.0, dir, "down the sheet")
	at, _ = scene.Along(line, 99)
	assert.Equal(t, scene.Pt(10, 10), at)
	assert.Equal(t, 20.0, scene.LengthOf(line))
}

func TestPlacedKeepsTheDrawing(t *testing.T) {
	s := sample.Sheet()
	half := *s
	half.Items = scene.Placed(s.Items, scene.Pt(10, 20), 0.5)
	a, b := s.Texts(), half.Texts()
	for i := range a {
		p, q := a[i].Box(), b[i].Box()
		assert.InDelta(t, 10+p.Min.X/2, q.Min.X, 1e-9)
		assert.InDelta(t, 20+p.Max.Y/2, q.Max.Y, 1e-9)
	}
	assert.Equal(t, s.Items, scene.Placed(s.Items, scene.Pt(0, 0), 1))
}

func TestDump(t *testing.T) {
	s := &scene.Sheet{Width: 100, Height: 50, Title: "card"}
	g := &scene.Group{ID: "set", Class: "a b", Title: "the set", Desc: "walls", Clip: [][]scene.Point{scene.BoxAt(0, 0, 5, 5).Corners()}}
	g.Add(scene.Line("wall", scene.Pt(0, -0.0001), scene.Pt(1.23456, 2)), &scene.Circle{Center: scene.Pt(3, 4), Radius: 5},
		&scene.Rect{Class: "r", Box: scene.BoxAt(1, 2, 3, 4), Corner: 0.5}, scene.RegularPolygon("p", scene.Pt(10, 10), 2, 4, 90),
		scene.NewPath("w").MoveTo(scene.Pt(1, 1)).CurveTo(scene.Pt(1, 2), scene.Pt(2, 3), scene.Pt(3, 3)).Arc(scene.Pt(3, 2), 1, 270, 90).LineTo(scene.Pt(0, 0)).Close(),
		&scene.Text{At: scene.Pt(1, 1), Text: "Mara \"1\"", Size: 8, Face: fonts.Bold, Anchor: scene.End, Level: scene.Top, Turn: 30, Halo: 0.3})
	s.Add(g)
	assert.Equal(t, `sheet 100 x 50 "card"
group #set .a .b "the set"
  desc "walls"
  clip 0,0 5,0 5,5 0,5
  polyline .wall 0,0 1.235,2
  circle 3,4 r 5
  rect .r 1,2 to 4,6 corner 0.5
  polygon .p 10,8 8,10 10,12 12,10
  path .w move 1,1 curve 1,2 2,3 3,3 arc about 3,2 r 1 from 270 by 90 line 0,0 close
  text 1,1 8 pt bold end top turn 30 halo 0.3 "Mara \"1\""
`, s.Dump())
}

func TestSignsStayInTheirCircle(t *testing.T) {
	at := scene.Pt(20, 30)
	for _, it := range []scene.Item{scene.Cross("", at, 2), scene.RegularPolygon("", at, 2, 5, 90)} {
		for _, c := range scene.Outline(it).Cmds {
			assert.LessOrEqual(t, c.At.Dist(at), 2+1e-9)
		}
	}
	for _, label := range []string{"1", "23", "456"} {
		items, r := scene.Badge("ring", "", at, label, 8, fonts.Bold)
		q := items[1].(*scene.Text)
		w, h := q.Width(), fonts.Bold.CapHeight(8)
		assert.Less(t, math.Hypot(w, h)/2, r)
		assert.InDelta(t, at.Y+h/2, q.Origin().Y, 1e-9)
	}
}

func TestWithoutColour(t *testing.T) {
	s := scene.Styles{{Class: "a", Style: scene.Style{Stroke: scene.RGB(255, 0, 0), Fill: scene.None}}}.WithoutColour()
	assert.Equal(t, "#4c4c4c", s[0].Stroke.String())
	assert.Equal(t, scene.None, s[0].Fill)
}
