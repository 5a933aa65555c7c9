package drawing

import (
	"fmt"
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Lengths in metres, at full size.
const (
	same     = 0.002 // points nearer than this are one: below what a tape shows
	snap     = 0.01  // an outline whose ends are this near is meant to be closed
	farthest = 10000 // from the origin, as in a plan's text
	// solidWall is the mean width up to which an outline in a wall layer is the
	// wall's own footprint; a wider one is a room, with the wall all round it
	// (common practice, no source: studio walls and masonry are below it).
	solidWall = 0.4
)

// sort makes parts of the set of what lies on a sheet; metres is how many one of
// its millimetres stands for.
func (s *sheet) sort(metres float64) (*Drawing, error) {
	d := &Drawing{LeftOut: s.odd, Unitless: s.unitless}
	var todo []sorted
	for _, it := range s.items {
		l, name, ok := it.layer()
		if !ok {
			d.LeftOut = leave(d.LeftOut, layerText(name), "nothing in its name says wall, block, platform or pillar")
			continue
		}
		for i := range it.points {
			it.points[i] = it.points[i].Mul(metres)
		}
		it.radius *= metres
		todo = append(todo, sorted{item: it, layer: l, text: name})
	}
	todo = chain(todo)
	if len(todo) > MaxShapes {
		return nil, fmt.Errorf("it has %d shapes, and %d are the most that are read", len(todo), MaxShapes)
	}
	var taken []sorted
	for _, t := range todo {
		for _, p := range t.points {
			if !(math.Abs(p.X)+t.radius <= farthest && math.Abs(p.Y)+t.radius <= farthest) {
				return nil, fmt.Errorf("at this scale %s reaches %.0f m from the origin; the farthest is %d m", t.described(), math.Max(math.Abs(p.X), math.Abs(p.Y))+t.radius, farthest)
			}
		}
		shape, why := t.shape()
		if why != "" {
			d.LeftOut = leave(d.LeftOut, t.described(), why)
			continue
		}
		d.Shapes = append(d.Shapes, shape)
		taken = append(taken, t)
	}
	number(d.Shapes, taken)
	return d, nil
}

// sorted is an item with what its layer says.
type sorted struct {
	item
	layer layer
	text  string // the layer's name as drawn
}

// layer finds the innermost group that says what its shapes are; the name is
// that group's, or the innermost's where none does.
func (it *item) layer() (layer, string, bool) {
	for i := len(it.layers) - 1; i >= 0; i-- {
		if l, ok := layerOf(it.layers[i]); ok {
			return l, it.layers[i], true
		}
	}
	for i := len(it.layers) - 1; i >= 0; i-- {
		if it.layers[i] != "" {
			return layer{}, it.layers[i], false
		}
	}
	return layer{}, "", false
}

func layerText(name string) string {
	if name == "" {
		return "what lies on no layer"
	}
	return "layer `" + name + "`"
}

func (t *sorted) described() string {
	if t.name != "" {
		return "`" + t.name + "` on " + layerText(t.text)
	}
	return "a shape on " + layerText(t.text)
}

// shape is the part of the set an item stands for, or why there is none.
func (t *sorted) shape() (Shape, string) {
	out := Shape{Kind: t.layer.kind, Layer: t.text, High: t.layer.high, Thick: t.layer.thick}
	if t.radius > 0 {
		if 2*t.radius < same {
			return out, "it is no wider than 2 mm"
		}
		if out.Kind != plan.KindPlatform {
			out.Kind, out.Points, out.Round = plan.KindPillar, t.points, units.Metres(2*t.radius)
			return out, ""
		}
		t.points, t.closed = circle(t.points[0], t.radius), true
	}
	points := clean(t.points)
	if n := len(points); n > 2 && points[0].Dist(points[n-1]) < snap {
		points, t.closed = points[:n-1], true
	}
	if len(points) < 2 {
		return out, "it has no length"
	}
	if out.Kind == plan.KindWall && (!t.closed || len(points) < 3) {
		out.Points = points
		return out, ""
	}
	if !t.closed {
		return out, "it is open, and only walls are lines"
	}
	poly := geom.Polygon(points)
	if len(points) < 3 || poly.Area() < same*same {
		return out, "it has no area"
	}
	if out.Kind == plan.KindWall && 2*poly.Area()/around(points) > solidWall {
		out.Points = append(points, points[0])
		return out, ""
	}
	if !poly.IsSimple() {
		return out, "its sides cross"
	}
	if out.Kind != plan.KindPlatform {
		out.Kind, out.Thick = plan.KindBlock, 0
	}
	out.Points = points
	return out, ""
}

// clean leaves out points that lie on the one before.
func clean(points []geom.Vec) []geom.Vec {
	var out []geom.Vec
	for _, p := range points {
		if n := len(out); n == 0 || out[n-1].Dist(p) >= same {
			out = append(out, p)
		}
	}
	return out
}

func around(points []geom.Vec) float64 {
	sum := 0.0
	for i, p := range points {
		sum += p.Dist(points[(i+1)%len(points)])
	}
	return sum
}

// number gives every shape its name: its own, or its layer's, with a number
// where more than one would have it. A layer without a name has that of its kind,
// always with a number. A name the drawing itself gives twice stays twice, for
// whoever declares names to say so.
func number(shapes []Shape, from []sorted) {
	used := map[string]bool{}
	many := map[string]int{}
	base := make([]string, len(shapes))
	for i := range shapes {
		if name := nameOf(from[i].name); name != "" {
			shapes[i].Name = name
			used[name] = true
			continue
		}
		base[i] = from[i].layer.name
		if base[i] != "" {
			many[base[i]]++
		}
	}
	next := map[string]int{}
	for i := range shapes {
		if shapes[i].Name != "" {
			continue
		}
		b := base[i]
		if b != "" && many[b] == 1 && !used[b] {
			shapes[i].Name = b
			used[b] = true
			continue
		}
		if b == "" {
			b = string(from[i].layer.kind)
		}
		for {
			next[b]++
			if name := fmt.Sprintf("%s-%d", b, next[b]); !used[name] {
				shapes[i].Name = name
				used[name] = true
				break
			}
		}
	}
}

// chain joins lines without names that meet end to end, two and no more at a
// point, into one, so that the corners of a wall drawn line by line are closed.
// A joined line stands where the first of its lines stood.
func chain(list []sorted) []sorted {
	type end struct{ line, which int }
	meet := map[string][]end{}
	key := func(t *sorted, p geom.Vec) string {
		return fmt.Sprintf("%s|%.0f|%.0f", t.text, p.X/same, p.Y/same)
	}
	loose := func(t *sorted) bool {
		return t.layer.kind == plan.KindWall && t.name == "" && !t.closed && t.radius == 0 && len(t.points) == 2
	}
	for i := range list {
		if t := &list[i]; loose(t) {
			meet[key(t, t.points[0])] = append(meet[key(t, t.points[0])], end{i, 0})
			meet[key(t, t.points[1])] = append(meet[key(t, t.points[1])], end{i, 1})
		}
	}
	gone := make([]bool, len(list))
	var out []sorted
	for i := range list {
		t := list[i]
		if gone[i] {
			continue
		}
		if loose(&t) {
			gone[i] = true
			points := t.points
			for range 2 { // on from its last point, then back from its first
				for {
					tail := points[len(points)-1]
					ends := meet[key(&t, tail)]
					if len(ends) != 2 {
						break
					}
					e := ends[0]
					if gone[e.line] {
						e = ends[1]
					}
					if gone[e.line] {
						break
					}
					gone[e.line] = true
					points = append(points, list[e.line].points[1-e.which])
				}
				reverse(points)
			}
			t.points = points
		}
		out = append(out, t)
	}
	return out
}

func reverse(p []geom.Vec) {
	for i, j := 0, len(p)-1; i < j; i, j = i+1, j-1 {
		p[i], p[j] = p[j], p[i]
	}
}

// circleSides keeps a circle within 1 % of its radius.
const circleSides = 24

func circle(c geom.Vec, r float64) []geom.Vec {
	out := make([]geom.Vec, circleSides)
	for i := range out {
		out[i] = c.Add(geom.Polar(r, 2*math.Pi*float64(i)/circleSides))
	}
	return out
}
