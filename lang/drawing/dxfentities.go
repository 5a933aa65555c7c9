package drawing

import (
	"math"
	"strconv"
	"strings"

	"longhand/lang/geom"
)

// place puts entities on the sheet. What lies on layer 0 of a block is on the
// layer the block is put on.
func (d *dxf) place(list []*entity, to matrix, within string, deep int) {
	for _, e := range list {
		if d.items > mostItems {
			return
		}
		layer := e.text(8)
		if d.off[strings.ToUpper(layer)] || e.number(67, 0) == 1 || e.number(60, 0) == 1 { // hidden, or on a sheet of paper
			continue
		}
		if within != "" && (layer == "0" || layer == "") {
			layer = within
		}
		d.items++
		if e.number(230, 1) < 0 && e.kind != "LINE" && e.kind != "ELLIPSE" { // drawn seen from below
			d.entity(e, to.after(matrix{-1, 0, 0, 1, 0, 0}), layer, deep)
			continue
		}
		d.entity(e, to, layer, deep)
	}
}

func (d *dxf) entity(e *entity, to matrix, layer string, deep int) {
	it := item{layers: []string{layer}}
	switch e.kind {
	case "LINE":
		it.points = []geom.Vec{e.point(10), e.point(11)}
	case "LWPOLYLINE":
		it.closed = int(e.number(70, 0))&1 != 0
		it.points = bulged(e.corners(), it.closed, to.size()*d.scale)
	case "POLYLINE":
		flags := int(e.number(70, 0))
		if flags&(16|64) != 0 {
			d.odd("a mesh", layer)
			return
		}
		it.closed = flags&1 != 0
		it.points = bulged(e.corners(), it.closed, to.size()*d.scale)
	case "SOLID", "TRACE": // the third and fourth corner are crossed over
		it.points, it.closed = []geom.Vec{e.point(10), e.point(11), e.point(13), e.point(12)}, true
		if e.text(13) == "" {
			it.points = it.points[:2]
			it.points = append(it.points, e.point(12))
		}
	case "CIRCLE":
		r := e.number(40, 0)
		if k, even := to.even(); even {
			it.points, it.radius = []geom.Vec{e.point(10)}, r*k
		} else {
			it.points, it.closed = circle(e.point(10), r), true
		}
	case "ARC":
		from := e.number(50, 0) * math.Pi / 180
		it.points = arcPoints(e.point(10), e.number(40, 0), from, onwards(from, e.number(51, 360)*math.Pi/180), to.size()*d.scale)
	case "ELLIPSE":
		it.points, it.closed = e.ellipse(to.size() * d.scale)
	case "INSERT":
		d.insert(e, to, layer, deep)
		return
	case "TEXT", "MTEXT", "ATTDEF", "ATTRIB", "DIMENSION", "POINT", "VIEWPORT", "LEADER", "MULTILEADER":
		return // says something, is nothing
	default:
		if _, ok := layerOf(layer); ok {
			d.odd("the "+clip(e.kind), layer)
			return
		}
		return
	}
	it.points = to.all(it.points)
	for _, p := range it.points {
		if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) || math.IsNaN(it.radius) {
			d.sheet.odd = leave(d.sheet.odd, "a "+e.kind, "its numbers are none")
			return
		}
	}
	d.sheet.items = append(d.sheet.items, it)
}

func (d *dxf) odd(what, layer string) {
	d.sheet.odd = leave(d.sheet.odd, what+" on "+layerText(layer), "only lines, polylines, arcs, circles, ellipses and solids are read")
}

// corner is a point of a polyline and how the way on from it is bent: the tangent
// of a quarter of the arc's angle, counter-clockwise.
type corner struct {
	geom.Vec
	bulge float64
}

func (e *entity) corners() []corner {
	var out []corner
	if e.kind == "POLYLINE" {
		for _, v := range e.vertices {
			if int(v.number(70, 0))&16 == 0 { // not a spline's frame
				out = append(out, corner{v.point(10), v.number(42, 0)})
			}
		}
		return out
	}
	for _, p := range e.pairs {
		v, err := strconv.ParseFloat(p.value, 64)
		if err != nil {
			v = math.NaN()
		}
		switch last := len(out) - 1; {
		case p.code == 10:
			out = append(out, corner{Vec: geom.Vec{X: v}})
		case p.code == 20 && last >= 0:
			out[last].Y = v
		case p.code == 42 && last >= 0:
			out[last].bulge = v
		}
	}
	return out
}

func bulged(list []corner, closed bool, size float64) []geom.Vec {
	var out []geom.Vec
	for i, c := range list {
		out = append(out, c.Vec)
		if c.bulge == 0 || math.IsNaN(c.bulge) || i+1 == len(list) && !closed {
			continue
		}
		to := list[(i+1)%len(list)].Vec
		chord := to.Sub(c.Vec)
		if chord.Len() == 0 {
			continue
		}
		angle := 4 * math.Atan(c.bulge)
		// The centre lies to the chord's left by (1 - b^2)/(4b) of its length.
		centre := c.Lerp(to, 0.5).Add(chord.Left().Mul((1 - c.bulge*c.bulge) / (4 * c.bulge)))
		arc := arcPoints(centre, centre.Dist(c.Vec), c.Sub(centre).Angle(), angle, size)
		out = append(out, arc[1:len(arc)-1]...)
	}
	return out
}

func arcPoints(centre geom.Vec, r, from, sweep, size float64) []geom.Vec {
	n := arcPieces(r*size, sweep)
	out := make([]geom.Vec, n+1)
	for i := range out {
		out[i] = centre.Add(geom.Polar(r, from+sweep*float64(i)/float64(n)))
	}
	return out
}

func (e *entity) ellipse(size float64) (points []geom.Vec, closed bool) {
	c, major, ratio := e.point(10), e.point(11), e.number(40, 1)
	from := e.number(41, 0)
	sweep := onwards(from, e.number(42, 2*math.Pi))
	n := arcPieces(major.Len()*size, sweep)
	for i := range n + 1 {
		sin, cos := math.Sincos(from + sweep*float64(i)/float64(n))
		points = append(points, c.Add(major.Mul(cos)).Add(major.Left().Mul(ratio*sin)))
	}
	if sweep >= 2*math.Pi-1e-6 {
		return points[:n], true
	}
	return points, false
}

// onwards is how far it is from one angle counter-clockwise to another, more than
// none and at most once round; NaN where one of them is no number.
func onwards(from, to float64) float64 {
	const rounded = 1e-3 // what programs that write few digits make of once round
	sweep := to - from
	if sweep > 0 && sweep < 2*math.Pi+rounded {
		return min(sweep, 2*math.Pi)
	}
	if sweep = math.Mod(sweep, 2*math.Pi); sweep <= 0 {
		sweep += 2 * math.Pi
	}
	return sweep
}

// insert puts a block on the sheet, once for each row and column.
func (d *dxf) insert(e *entity, to matrix, layer string, deep int) {
	b := d.blocks[strings.ToUpper(e.text(2))]
	if b == nil {
		if _, ok := layerOf(layer); ok {
			d.sheet.odd = leave(d.sheet.odd, "the block `"+clip(e.text(2))+"` on "+layerText(layer), "it is not in this file")
		}
		return
	}
	if deep > 16 {
		return
	}
	sin, cos := math.Sincos(e.number(50, 0) * math.Pi / 180)
	kx, ky := e.number(41, 1), e.number(42, 1)
	at := e.point(10)
	columns, rows := grid(e.number(70, 1)), grid(e.number(71, 1))
	for r := range rows {
		for c := range columns {
			if d.items > mostItems {
				return
			}
			d.items++
			dx, dy := float64(c)*e.number(44, 0), float64(r)*e.number(45, 0)
			m := to.after(matrix{1, 0, 0, 1, at.X, at.Y}).
				after(matrix{cos, sin, -sin, cos, 0, 0}).
				after(matrix{1, 0, 0, 1, dx, dy}).
				after(matrix{kx, 0, 0, ky, -kx * b.base.X, -ky * b.base.Y})
			d.place(b.list, m, layer, deep+1)
		}
	}
}

func grid(v float64) int {
	if !(v >= 1) {
		return 1
	}
	return int(min(v, 10000))
}
