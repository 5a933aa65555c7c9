package floor

import (
	"fmt"
	"strings"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Layers of the drawing, with their colours by the format's index.
var layers = []struct {
	name   string
	colour int
}{
	{"WALL", 7}, {"DOORS", 8}, {"BLOCK", 8}, {"PILLAR", 8}, {"PLATFORM", 9}, {"STAIRS", 9},
	{"MARKS", 1}, {"MARK_NAMES", 1},
}

// Sizes on the floor, millimetres.
const (
	arm     = 150 // of a mark's cross
	letters = 120 // high
)

// DXF is the marks over the outlines of the set, in millimetres at full size, as
// an ASCII DXF of release 12. Walls are drawn along their middle.
func DXF(p *plan.Plan) ([]byte, error) {
	marks := Marks(p)
	if len(marks) == 0 {
		return nil, errNoMarks
	}
	d := &dxf{}
	d.outlines(&p.Set)
	for _, m := range marks {
		x, y, z := 1000*m.At.X, 1000*m.At.Y, 1000*m.Z
		d.line("MARKS", x-arm, y, x+arm, y, z)
		d.line("MARKS", x, y-arm, x, y+arm, z)
		text := m.Name
		if len(m.Who) > 0 {
			text += "  " + joined(m.Who)
		}
		d.entity("TEXT", "MARK_NAMES")
		d.point(10, x+arm, y+arm/2, z)
		d.put(40, num(letters))
		d.put(1, plainText(text))
	}
	return []byte(d.file()), nil
}

type dxf struct {
	b         strings.Builder
	low, high geom.Vec
	any       bool
}

func (d *dxf) put(code int, value string) { fmt.Fprintf(&d.b, "%3d\r\n%s\r\n", code, value) }

func (d *dxf) entity(kind, layer string) {
	d.put(0, kind)
	d.put(8, layer)
}

func (d *dxf) point(code int, x, y, z float64) {
	d.put(code, num(x))
	d.put(code+10, num(y))
	d.put(code+20, num(z))
	at := geom.Vec{X: x, Y: y}
	if !d.any {
		d.low, d.high, d.any = at, at, true
	}
	d.low = geom.Vec{X: min(d.low.X, x), Y: min(d.low.Y, y)}
	d.high = geom.Vec{X: max(d.high.X, x), Y: max(d.high.Y, y)}
}

func (d *dxf) line(layer string, x0, y0, x1, y1, z float64) {
	d.entity("LINE", layer)
	d.point(10, x0, y0, z)
	d.point(11, x1, y1, z)
}

func (d *dxf) polyline(layer string, points []geom.Vec, closed bool, z float64) {
	if len(points) < 2 {
		return
	}
	d.entity("POLYLINE", layer)
	d.put(66, "1")
	flag := "0"
	if closed {
		flag = "1"
	}
	d.put(70, flag)
	d.put(10, "0.0")
	d.put(20, "0.0")
	d.put(30, num(1000*z))
	for _, p := range points {
		d.entity("VERTEX", layer)
		d.point(10, 1000*p.X, 1000*p.Y, 1000*z)
	}
	d.entity("SEQEND", layer)
}

func (d *dxf) outlines(set *plan.Set) {
	for _, w := range set.Walls {
		if !w.Bad {
			d.polyline("WALL", w.Line, false, float64(w.High.Low))
		}
	}
	for _, o := range set.Doors {
		if !o.Bad && o.Wall != nil {
			a, b := o.Ends()
			d.polyline("DOORS", []geom.Vec{a, b}, false, float64(o.High.Low))
		}
	}
	for _, b := range set.Blocks {
		if !b.Bad {
			d.polyline("BLOCK", b.Polygon, true, float64(b.High.Low))
		}
	}
	for _, p := range set.Pillars {
		if !p.Bad {
			d.entity("CIRCLE", "PILLAR")
			d.point(10, 1000*p.Centre.X, 1000*p.Centre.Y, 1000*float64(p.High.Low))
			d.put(40, num(500*float64(p.Round)))
		}
	}
	for _, p := range set.Platforms {
		if !p.Bad {
			d.polyline("PLATFORM", p.Polygon, true, float64(p.High.High))
		}
	}
	for _, s := range set.Stairs {
		if !s.Bad {
			side := s.Head.Sub(s.Foot).Unit().Left().Mul(float64(s.Width) / 2)
			d.polyline("STAIRS", []geom.Vec{s.Foot.Sub(side), s.Head.Sub(side), s.Head.Add(side), s.Foot.Add(side)}, true, float64(s.FootZ))
		}
	}
}

// file puts the head of a drawing before what was drawn.
func (d *dxf) file() string {
	drawn := d.b.String()
	d.b.Reset()
	low, high := d.low, d.high
	d.put(0, "SECTION")
	d.put(2, "HEADER")
	d.put(9, "$ACADVER")
	d.put(1, "AC1009")
	d.put(9, "$INSUNITS")
	d.put(70, "4") // millimetres
	d.put(9, "$EXTMIN")
	d.point(10, low.X, low.Y, 0)
	d.put(9, "$EXTMAX")
	d.point(10, high.X, high.Y, 0)
	d.put(0, "ENDSEC")
	d.put(0, "SECTION")
	d.put(2, "TABLES")
	d.put(0, "TABLE")
	d.put(2, "LTYPE")
	d.put(70, "1")
	d.put(0, "LTYPE")
	d.put(2, "CONTINUOUS")
	d.put(70, "0")
	d.put(3, "Solid line")
	d.put(72, "65")
	d.put(73, "0")
	d.put(40, "0.0")
	d.put(0, "ENDTAB")
	d.put(0, "TABLE")
	d.put(2, "LAYER")
	d.put(70, number(len(layers)))
	for _, l := range layers {
		d.put(0, "LAYER")
		d.put(2, l.name)
		d.put(70, "0")
		d.put(62, number(l.colour))
		d.put(6, "CONTINUOUS")
	}
	d.put(0, "ENDTAB")
	d.put(0, "ENDSEC")
	d.put(0, "SECTION")
	d.put(2, "ENTITIES")
	d.b.WriteString(drawn)
	d.put(0, "ENDSEC")
	d.put(0, "EOF")
	return d.b.String()
}

// num prints to a hundredth of a millimetre; the format wants a point in every
// real number.
func num(v float64) string {
	s := units.Number(v, 2)
	if !strings.Contains(s, ".") {
		s += ".0"
	}
	return s
}

// plainText writes what is not ASCII as its number, as the format does.
func plainText(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r < 32:
			b.WriteByte(' ')
		case r > 126:
			fmt.Fprintf(&b, `\U+%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
