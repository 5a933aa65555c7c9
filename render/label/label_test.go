package label

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/render/fonts"
	"longhand/render/scene"
)

var page = scene.BoxAt(0, 0, 200, 150)

func word(id string, at scene.Point) Request {
	w, h := Size(fonts.Regular, 8, id)
	return Request{ID: id, At: at, Radius: 1, W: w, H: h}
}

func TestAloneItStandsOnThePreferredSide(t *testing.T) {
	for _, c := range []struct {
		side   Side
		dx, dy float64
	}{{UpperRight, 1, -1}, {UpperLeft, -1, -1}, {LowerLeft, -1, 1}, {LowerRight, 1, 1}, {Right, 1, 0}, {Above, 0, -1}, {Left, -1, 0}, {Below, 0, 1}} {
		r := word("Mara", scene.Pt(100, 75))
		r.Sides = []Side{c.side}
		got, unplaced := Arrange(Field{Within: page}, []Request{r})
		require.Empty(t, unplaced)
		p := got[0]
		assert.Nil(t, p.Leader)
		sign := func(v float64) float64 {
			if math.Abs(v) < 0.01 {
				return 0
			}
			return math.Copysign(1, v)
		}
		assert.Equal(t, c.dx, sign(p.Center.X-100), "side %d", c.side)
		assert.Equal(t, c.dy, sign(p.Center.Y-75), "side %d", c.side)
		assert.InDelta(t, 1+gap, quadDistance(scene.Pt(100, 75), p.Quad[:]), 0.05, "side %d", c.side)
	}
}

func TestPushedAwayItHasALeader(t *testing.T) {
	near := scene.BoxAt(85, 60, 30, 30)
	r := word("Mara", scene.Pt(100, 75))
	f := Field{Within: page, Obstacles: []Obstacle{{Box: &near}}}
	got, unplaced := Arrange(f, []Request{r})
	require.Empty(t, unplaced)
	p := got[0]
	require.Len(t, p.Leader, 2)
	assert.InDelta(t, 1, p.Leader[0].Dist(scene.Pt(100, 75)), 1e-9, "from the mark's edge")
	assert.InDelta(t, 0, quadDistance(p.Leader[1], p.Quad[:]), 1e-6, "to the label")
	assert.False(t, near.Overlaps(boundsOf(p.Quad[:])))
	r.Tight = true
	_, unplaced = Arrange(f, []Request{r})
	assert.Equal(t, []string{"Mara"}, unplaced)
}

func TestTurnsAndOtherPoints(t *testing.T) {
	// A corridor 5 mm wide and 40 long takes the word only upright along it.
	left, right := scene.BoxAt(80, 0, 17, 150), scene.BoxAt(102, 0, 17, 150)
	f := Field{Within: page, Obstacles: []Obstacle{{Box: &left}, {Box: &right}}}
	r := word("Mara Lind", scene.Pt(99.5, 75))
	r.Tight, r.Radius = true, 0.2
	_, unplaced := Arrange(f, []Request{r})
	assert.NotEmpty(t, unplaced)
	r.Turns = []float64{0, 90}
	got, unplaced := Arrange(f, []Request{r})
	require.Empty(t, unplaced)
	assert.Equal(t, 90.0, got[0].Turn)
	r.Turns, r.Also = nil, []scene.Point{{X: 150, Y: 75}}
	got, unplaced = Arrange(f, []Request{r})
	require.Empty(t, unplaced)
	assert.Equal(t, scene.Pt(150, 75), got[0].At)
}

func TestTheMoreImportantStays(t *testing.T) {
	// Room for one: the pocket holds a single word.
	wall := []Obstacle{}
	for _, b := range []scene.Box{scene.BoxAt(0, 0, 200, 70), scene.BoxAt(0, 75, 200, 75), scene.BoxAt(0, 70, 90, 5), scene.BoxAt(106, 70, 94, 5)} {
		wall = append(wall, Obstacle{Box: &b})
	}
	a, b := word("Mara", scene.Pt(91.5, 72.5)), word("Jonas", scene.Pt(91.5, 72.5))
	a.Radius, b.Radius, b.Priority = 0.1, 0.1, 5
	_, unplaced := Arrange(Field{Within: page, Obstacles: wall}, []Request{a, b})
	assert.Equal(t, []string{"Mara"}, unplaced)
}

// The first label takes the only place the second can have; moving the first
// makes room for both.
func TestRoomIsMade(t *testing.T) {
	a, b := word("Mara", scene.Pt(50, 50)), word("Mara", scene.Pt(60, 50))
	a.Tight, b.Tight = true, true
	right, below := scene.BoxAt(58.8, 0, 60, 150), scene.BoxAt(40, 52.2, 30, 40)
	above := scene.BoxAt(56, 0, 6, 47.8)
	s := newSearch(Field{Within: page, Obstacles: []Obstacle{{Box: &right}, {Box: &below}, {Box: &above}}}, []Request{a, b})
	require.Len(t, s.options[1], 1, "to the left of its point")
	s.requests[0].Sides = []Side{Right}
	s.options[0] = nil
	s.take(0, s.beside(&s.requests[0]))
	s.placed[0] = s.best(0)
	require.Greater(t, s.placed[0].center.X, 50.0)
	require.Nil(t, s.best(1))
	assert.True(t, s.makeRoom(1))
	assert.Less(t, s.placed[0].center.X, 50.0)
	assert.NotNil(t, s.placed[1])
	s.requests[0].Priority = 1
	s.placed[0], s.placed[1] = nil, nil
	s.placed[0] = s.best(0)
	assert.False(t, s.makeRoom(1), "not at the cost of one more important")
}

func TestALabelKeepsOffAnotherMark(t *testing.T) {
	r := word("Mara", scene.Pt(100, 75))
	f := Field{Within: page, Obstacles: []Obstacle{{Circle: &Circle{scene.Pt(100, 75), 1}}, {Circle: &Circle{scene.Pt(109, 70), 1}}}}
	got, unplaced := Arrange(f, []Request{r})
	require.Empty(t, unplaced)
	assert.Less(t, got[0].Center.X, 100.0, "to the right it would seem to name the other")
}

func TestSoftObstaclesAreAvoidedOrPaid(t *testing.T) {
	area := scene.BoxAt(100, 0, 100, 150).Corners()
	r := word("Mara", scene.Pt(100, 75))
	got, _ := Arrange(Field{Within: page, Obstacles: []Obstacle{{Area: area, Cost: 3}}}, []Request{r})
	assert.Less(t, got[0].Center.X, 100.0, "off the area, though it would rather stand right")
	all := page.Corners()
	got, unplaced := Arrange(Field{Within: page, Obstacles: []Obstacle{{Area: all, Cost: 3}}}, []Request{r})
	assert.Empty(t, unplaced)
	assert.Nil(t, got[0].Leader)
	assert.InDelta(t, 3, got[0].Cost, 1e-9)
}

func TestNothingSensible(t *testing.T) {
	places, unplaced := Arrange(Field{}, []Request{word("a", scene.Pt(1, 1)), {ID: "b", At: scene.Pt(1, 1)}, {ID: "c", W: math.NaN(), H: 1}, {ID: "d", W: 3, H: 3, At: scene.Pt(math.NaN(), math.Inf(1)), Reach: math.Inf(1)}})
	assert.Len(t, places, 4)
	assert.Equal(t, []string{"a", "b", "c", "d"}, unplaced)
	places, unplaced = Arrange(Field{Within: page}, nil)
	assert.Empty(t, places)
	assert.Empty(t, unplaced)
}

// On any input: labels lie on the page, off each other, off whatever forbids
// itself, and leaders go through no label and no circle but their own.
func TestPlacedLabelsAreClear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := rapid.Custom(func(t *rapid.T) scene.Point {
			return scene.Pt(rapid.Float64Range(0, 200).Draw(t, "x"), rapid.Float64Range(0, 150).Draw(t, "y"))
		})
		f := Field{Within: page}
		for range rapid.IntRange(0, 6).Draw(t, "lines") {
			f.Obstacles = append(f.Obstacles, Obstacle{Line: rapid.SliceOfN(point, 2, 6).Draw(t, "line"), Width: rapid.Float64Range(0, 2).Draw(t, "width")})
		}
		for range rapid.IntRange(0, 4).Draw(t, "areas") {
			f.Obstacles = append(f.Obstacles, Obstacle{Area: rapid.SliceOfN(point, 3, 5).Draw(t, "area"), Cost: rapid.SampledFrom([]float64{0, 2}).Draw(t, "cost")})
		}
		var requests []Request
		for i := range rapid.IntRange(1, 18).Draw(t, "labels") {
			r := word(fmt.Sprintf("Person %d", i), point.Draw(t, "at"))
			r.Radius = rapid.Float64Range(0, 3).Draw(t, "radius")
			r.Priority = rapid.IntRange(0, 3).Draw(t, "priority")
			r.Turns = rapid.SampledFrom([][]float64{nil, {0, 90}, {30, 0}}).Draw(t, "turns")
			requests = append(requests, r)
			f.Obstacles = append(f.Obstacles, Obstacle{Circle: &Circle{r.At, r.Radius}})
		}
		places, unplaced := Arrange(f, requests)
		again, _ := Arrange(f, requests)
		for i := range places {
			if fmt.Sprint(places[i]) != fmt.Sprint(again[i]) {
				t.Fatal("the same input gave another place")
			}
		}
		checkClear(t, f, requests, places, len(unplaced))
	})
}

func checkClear(t *rapid.T, f Field, requests []Request, places []Place, unplaced int) {
	var quads [][4]scene.Point
	var leaders [][]scene.Point
	for i, p := range places {
		if !p.OK {
			unplaced--
			continue
		}
		if !page.Contains(boundsOf(p.Quad[:])) {
			t.Fatalf("%s is off the page", p.ID)
		}
		if w, h := p.Quad[0].Dist(p.Quad[1]), p.Quad[1].Dist(p.Quad[2]); math.Abs(w-requests[i].W) > 1e-9 || math.Abs(h-requests[i].H) > 1e-9 {
			t.Fatalf("%s has another size", p.ID)
		}
		quads, leaders = append(quads, p.Quad), append(leaders, p.Leader)
		// Points all over the label, each against each obstacle: no code shared
		// with the search.
		for u := 0.0; u <= 1; u += 0.1 {
			for v := 0.0; v <= 1; v += 0.25 {
				q := p.Quad[0].Add(p.Quad[1].Sub(p.Quad[0]).Mul(u)).Add(p.Quad[3].Sub(p.Quad[0]).Mul(v))
				for _, o := range f.Obstacles {
					if o.Cost > 0 {
						continue
					}
					if o.Circle != nil && q.Dist(o.Circle.Center) < o.Circle.Radius-1e-9 {
						t.Fatalf("%s covers a circle", p.ID)
					}
					for k := 1; k < len(o.Line); k++ {
						if segmentDistance(q, o.Line[k-1], o.Line[k]) < o.Width/2-1e-9 {
							t.Fatalf("%s covers a line", p.ID)
						}
					}
					if o.Area != nil && inRing(q, o.Area) {
						t.Fatalf("%s covers an area", p.ID)
					}
				}
			}
		}
		for k, o := range f.Obstacles {
			if c := o.Circle; p.Leader != nil && c != nil && c.Center != p.At && p.At.Dist(c.Center) > c.Radius && segmentDistance(c.Center, p.Leader[0], p.Leader[1]) < c.Radius-1e-9 {
				t.Fatalf("the leader of %s goes through circle %d", p.ID, k)
			}
		}
	}
	if unplaced != 0 {
		t.Fatal("the report of unplaced labels is wrong")
	}
	if pairs := Overlaps(quads); len(pairs) > 0 {
		t.Fatalf("labels overlap: %v", pairs)
	}
	for i, l := range leaders {
		for j, q := range quads {
			if l == nil || i == j {
				continue
			}
			for u := 0.0; u <= 1; u += 0.02 {
				if inRing(l[0].Add(l[1].Sub(l[0]).Mul(u)), q[:]) {
					t.Fatalf("leader %d goes through label %d", i, j)
				}
			}
		}
	}
}

// Overlap is checked against sampling: a point inside both is an overlap, and
// quads that overlap by more than the sampling's step share a sample.
func TestOverlapAgainstSampling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one := func(name string) quad {
			return makeQuad(scene.Pt(rapid.Float64Range(0, 20).Draw(t, name+"x"), rapid.Float64Range(0, 20).Draw(t, name+"y")),
				rapid.Float64Range(0.5, 12).Draw(t, name+"w"), rapid.Float64Range(0.5, 5).Draw(t, name+"h"), rapid.Float64Range(-180, 180).Draw(t, name+"turn"))
		}
		a, b := one("a"), one("b")
		shared := false
		for u := 0.0; u <= 1; u += 0.02 {
			for v := 0.0; v <= 1; v += 0.02 {
				if inRing(a[0].Add(a[1].Sub(a[0]).Mul(u)).Add(a[3].Sub(a[0]).Mul(v)), b[:]) {
					shared = true
				}
			}
		}
		got := overlap(a[:], b[:])
		if shared && !got {
			t.Fatal("an overlap was missed")
		}
		if got != overlap(b[:], a[:]) {
			t.Fatal("the order matters")
		}
		if got && !shared { // then it must be a sliver between the samples
			small := makeQuad(a[0].Add(a[2]).Mul(0.5), a[0].Dist(a[1])-0.6, a[1].Dist(a[2])-0.3, a[0].Towards(a[1]))
			if a[0].Dist(a[1]) > 0.7 && a[1].Dist(a[2]) > 0.4 && overlap(small[:], b[:]) {
				t.Fatal("an overlap that is none")
			}
		}
	})
}

func TestLinesFillTheirPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := rapid.SliceOfN(rapid.StringMatching(`[A-Za-z0-9 ]{1,20}`), 1, 4).Draw(t, "lines")
		anchor := rapid.SampledFrom([]scene.Anchor{scene.Start, scene.Middle, scene.End}).Draw(t, "anchor")
		turn := rapid.SampledFrom([]float64{0, 90, 30}).Draw(t, "turn")
		w, h := Size(fonts.Bold, 9, lines...)
		p := Place{Center: scene.Pt(50, 50), Turn: turn}
		kept := makeQuad(p.Center, w+1e-6, h+1e-6, turn)
		top, bottom := math.Inf(1), math.Inf(1)
		for _, it := range p.Lines(scene.Text{Size: 9, Face: fonts.Bold, Anchor: anchor}, lines...) {
			for _, c := range it.(*scene.Text).Quad() {
				if !inRing(c, kept[:]) {
					t.Fatalf("%q sticks out at %v of %v", lines, c, kept)
				}
				top = math.Min(top, segmentDistance(c, kept[2], kept[3]))
				bottom = math.Min(bottom, segmentDistance(c, kept[0], kept[1]))
			}
		}
		if top > 1e-5 || bottom > 1e-5 {
			t.Fatalf("%q leaves %v above and %v below", lines, top, bottom)
		}
	})
}

// crowd is a busy beat: people on winding paths, each with a label, marks and
// cue numbers.
func crowd(people int) (Field, []Request) {
	rnd := rand.New(rand.NewSource(7))
	f := Field{Within: scene.BoxAt(10, 10, 277, 190)}
	var requests []Request
	for i := range people {
		at := scene.Pt(30+rnd.Float64()*237, 30+rnd.Float64()*150)
		line := []scene.Point{at}
		dir := rnd.Float64() * 360
		for range 40 {
			dir += rnd.Float64()*60 - 30
			at = at.Polar(2, dir)
			at = scene.Pt(math.Max(20, math.Min(277, at.X)), math.Max(20, math.Min(190, at.Y)))
			line = append(line, at)
		}
		f.Obstacles = append(f.Obstacles, Obstacle{Line: line, Width: 0.5}, Obstacle{Circle: &Circle{line[0], 2}}, Obstacle{Circle: &Circle{at, 2}})
		name := word(fmt.Sprintf("Performer %d", i), line[0])
		name.Radius, name.Priority = 2, 2
		stop := word(fmt.Sprintf("%d:%02d", i/60, i%60), at)
		stop.Radius = 2
		requests = append(requests, name, stop)
	}
	return f, requests
}

func TestABusyBeatIsPlacedWhole(t *testing.T) {
	f, requests := crowd(25)
	places, unplaced := Arrange(f, requests)
	assert.Empty(t, unplaced)
	leaders := 0
	for _, p := range places {
		if p.Leader != nil {
			leaders++
		}
	}
	assert.Less(t, leaders, len(places)/4)
}

func BenchmarkArrange(b *testing.B) {
	for _, n := range []int{10, 40, 80} {
		f, requests := crowd(n)
		b.Run(fmt.Sprintf("%d labels", 2*n), func(b *testing.B) {
			for b.Loop() {
				Arrange(f, requests)
			}
		})
	}
}

func TestDrawnThingsAreAvoided(t *testing.T) {
	g := &scene.Group{Items: []scene.Item{
		&scene.Circle{Center: scene.Pt(103, 75), Radius: 2},
		&scene.Rect{Box: scene.BoxAt(85, 60, 12, 12)},
		scene.NewPath("").Arc(scene.Pt(100, 75), 12, 0, 180).Close(),
		&scene.Polygon{Points: []scene.Point{{X: 80, Y: 80}, {X: 95, Y: 80}, {X: 88, Y: 100}}},
		&scene.Text{At: scene.Pt(98, 83), Text: "already here", Size: 8},
	}}
	obstacles := Drawn([]scene.Item{g}, 0.5, 0)
	require.Len(t, obstacles, 5)
	places, unplaced := Arrange(Field{Within: page, Obstacles: obstacles}, []Request{word("Mara", scene.Pt(100, 75)), word("Jonas", scene.Pt(100, 77))})
	require.Empty(t, unplaced)
	s := scene.Sheet{Width: 200, Height: 150, Items: g.Items}
	for i, p := range places {
		s.Add(p.Lines(scene.Text{Size: 8}, []string{"Mara", "Jonas"}[i])...)
		for _, o := range pieces(obstacles) {
			assert.False(t, o.covers(p.Quad[:]))
		}
	}
	assert.Empty(t, Overlaps(Quads(s.Texts())))
}
