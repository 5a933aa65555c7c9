package drawing

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"longhand/lang/geom"
)

// A DXF text is pairs of lines: a group code and its value. (Group codes,
// entities and $INSUNITS as in the format's published reference, R12 to 2018.)
type pair struct {
	code  int
	value string
}

// entity is one with its pairs; a polyline has its vertices.
type entity struct {
	kind     string
	pairs    []pair
	vertices []*entity
}

// insUnits has millimetres for the values of $INSUNITS.
var insUnits = map[int]float64{
	1: 25.4, 2: 304.8, 3: 1609344, 4: 1, 5: 10, 6: 1000, 7: 1e6, 8: 25.4e-6, 9: 25.4e-3,
	10: 914.4, 11: 1e-7, 12: 1e-6, 13: 1e-3, 14: 100, 15: 1e4, 16: 1e5,
}

// readDXF reads LINE, LWPOLYLINE, POLYLINE, CIRCLE, ARC, ELLIPSE, SOLID and the
// INSERTs of blocks of these.
func readDXF(text string, scale float64) (*sheet, error) {
	pairs, err := dxfPairs(text)
	if err != nil {
		return nil, err
	}
	d := &dxf{blocks: map[string]*dxfBlock{}, off: map[string]bool{}, unit: 1, scale: scale}
	d.sheet.unitless = true
	list := d.sections(pairs)
	if !d.any {
		return nil, fmt.Errorf("it has no ENTITIES")
	}
	d.place(list, matrix{d.unit, 0, 0, d.unit, 0, 0}, "", 0)
	if d.items > mostItems {
		return nil, fmt.Errorf("it holds more than %d shapes", mostItems)
	}
	return &d.sheet, nil
}

type dxf struct {
	sheet  sheet
	unit   float64 // millimetres
	scale  float64
	blocks map[string]*dxfBlock // by name in capitals, which make no difference
	off    map[string]bool      // layers that are off or frozen, too
	items  int
	any    bool // there is a section of entities
}

type dxfBlock struct {
	base geom.Vec
	list []*entity
}

func dxfPairs(text string) ([]pair, error) {
	if strings.ContainsRune(text, 0) {
		return nil, fmt.Errorf("it is a binary file; save it as an ASCII DXF")
	}
	lines := strings.Split(strings.TrimPrefix(text, "\ufeff"), "\n")
	var out []pair
	for i := 0; i+1 < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil {
			return nil, fmt.Errorf("line %d is %q, and a group code belongs there", i+1, clip(strings.TrimSpace(lines[i])))
		}
		value := strings.TrimRight(lines[i+1], "\r")
		out = append(out, pair{code, strings.TrimSpace(value)})
		if code == 0 && strings.TrimSpace(value) == "EOF" {
			return out, nil
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("it is empty")
	}
	return nil, fmt.Errorf("it breaks off: there is no EOF at its end")
}

func clip(s string) string {
	if r := []rune(s); len(r) > 20 {
		return string(r[:20]) + "..."
	}
	return s
}

// sections reads the header, the layers and the blocks, and gives the entities.
func (d *dxf) sections(pairs []pair) []*entity {
	var list []*entity
	section := ""
	for i := 0; i < len(pairs); {
		p := pairs[i]
		switch {
		case p.code == 0 && p.value == "SECTION":
			section = ""
			if i+1 < len(pairs) && pairs[i+1].code == 2 {
				section = pairs[i+1].value
			}
			d.any = d.any || section == "ENTITIES"
			i += 2
			continue
		case p.code == 0 && p.value == "ENDSEC":
			section = ""
		}
		switch section {
		case "HEADER":
			if p.code == 9 && p.value == "$INSUNITS" && i+1 < len(pairs) {
				if n, err := strconv.Atoi(pairs[i+1].value); err == nil && insUnits[n] > 0 {
					d.unit, d.sheet.unitless = insUnits[n], false
				}
			}
		case "TABLES":
			if p.code == 0 && p.value == "LAYER" {
				e, next := oneEntity(pairs, i)
				if e.number(62, 7) < 0 || int(e.number(70, 0))&1 != 0 {
					d.off[strings.ToUpper(e.text(2))] = true
				}
				i = next
				continue
			}
		case "BLOCKS":
			if p.code == 0 && p.value == "BLOCK" {
				e, next := oneEntity(pairs, i)
				var inner []*entity
				inner, i = entities(pairs, next, "ENDBLK")
				d.blocks[strings.ToUpper(e.text(2))] = &dxfBlock{e.point(10), inner}
				continue
			}
		case "ENTITIES":
			var more []*entity
			more, i = entities(pairs, i, "ENDSEC")
			list = append(list, more...)
			section = ""
			continue
		}
		i++
	}
	return list
}

func oneEntity(pairs []pair, i int) (*entity, int) {
	e := &entity{kind: pairs[i].value}
	for i++; i < len(pairs) && pairs[i].code != 0; i++ {
		e.pairs = append(e.pairs, pairs[i])
	}
	return e, i
}

// entities reads them up to the one that ends them.
func entities(pairs []pair, i int, end string) ([]*entity, int) {
	var out []*entity
	var poly *entity
	for i < len(pairs) {
		if pairs[i].code != 0 {
			i++
			continue
		}
		switch pairs[i].value {
		case end, "ENDSEC", "EOF":
			return out, i + 1
		}
		e, next := oneEntity(pairs, i)
		i = next
		switch {
		case e.kind == "VERTEX" && poly != nil:
			poly.vertices = append(poly.vertices, e)
		case e.kind == "SEQEND":
			poly = nil
		default:
			poly = nil
			if e.kind == "POLYLINE" {
				poly = e
			}
			out = append(out, e)
		}
	}
	return out, i
}

func (e *entity) text(code int) string {
	for _, p := range e.pairs {
		if p.code == code {
			return p.value
		}
	}
	return ""
}

func (e *entity) number(code int, otherwise float64) float64 {
	for _, p := range e.pairs {
		if p.code == code {
			if v, err := strconv.ParseFloat(p.value, 64); err == nil {
				return v
			}
			return math.NaN()
		}
	}
	return otherwise
}

func (e *entity) point(code int) geom.Vec {
	return geom.Vec{X: e.number(code, 0), Y: e.number(code+10, 0)}
}
