package drawing

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"longhand/lang/geom"
)

// pixel is a CSS pixel in millimetres: 96 to the inch (W3C, CSS Values and Units
// 3, section 6.2).
const pixel = 25.4 / 96

// perUnit has millimetres for the absolute units of CSS, same source.
var perUnit = map[string]float64{
	"": pixel, "px": pixel, "mm": 1, "cm": 10, "in": 25.4, "pt": 25.4 / 72, "pc": 25.4 / 6, "q": 0.25,
}

// readSVG reads SVG 1.1: rect, circle, ellipse, line, polyline, polygon, path,
// use and groups, with their transforms. The lower left corner of the sheet is
// the origin; without a viewBox or a height, SVG's own upper left corner is.
func readSVG(text string, scale float64) (*sheet, error) {
	root, err := parseXML(text)
	if err != nil {
		return nil, err
	}
	if root.name != "svg" {
		return nil, fmt.Errorf("it begins with <%s>, not with <svg>", root.name)
	}
	s := &svg{ids: map[string]*node{}, open: map[*node]bool{}, scale: scale}
	s.collect(root)
	to, guessed, err := paper(root)
	if err != nil {
		return nil, err
	}
	s.sheet.unitless = guessed
	if s.width, s.height = root.length("width"), root.length("height"); root.attr["viewBox"] != "" {
		box := numbers(root.attr["viewBox"])
		s.width, s.height = box[2], box[3]
	}
	for _, k := range root.kids {
		s.walk(k, to, nil, 0)
	}
	if s.items > mostItems {
		return nil, fmt.Errorf("it holds more than %d shapes", mostItems)
	}
	if s.bad != nil {
		return nil, s.bad
	}
	return &s.sheet, nil
}

// mostItems bounds what `use` can make of a small file.
const mostItems = 200000

type svg struct {
	sheet sheet
	ids   map[string]*node
	items int
	bad   error
	open  map[*node]bool // what `use` is drawing just now
	scale float64

	width, height float64 // of the whole drawing, in user units; 0 where it doesn't say
}

func (s *svg) collect(n *node) {
	if id := n.attr["id"]; id != "" && s.ids[id] == nil {
		s.ids[id] = n
	}
	for _, k := range n.kids {
		s.collect(k)
	}
}

// paper takes user units to millimetres on the sheet, y up. A viewBox without a
// physical size is taken to be in millimetres, which is a guess.
func paper(root *node) (to matrix, guessed bool, err error) {
	width, wok := absolute(root.attr["width"])
	height, hok := absolute(root.attr["height"])
	box := numbers(root.attr["viewBox"])
	if root.attr["viewBox"] == "" {
		if !hok {
			height = 0
		}
		return matrix{pixel, 0, 0, -pixel, 0, height}, false, nil
	}
	if len(box) != 4 || !(box[2] > 0) || !(box[3] > 0) {
		return matrix{}, false, fmt.Errorf("its viewBox is %q; it takes four numbers: left, top, width and height", root.attr["viewBox"])
	}
	k := 1.0
	switch guessed = !wok && !hok; {
	case wok && hok:
		k = min(width/box[2], height/box[3])
	case wok:
		k = width / box[2]
	case hok:
		k = height / box[3]
	}
	if !(k > 0) || math.IsInf(k, 0) {
		return matrix{}, false, errors.New("its width or height is no length above 0")
	}
	return matrix{k, 0, 0, -k, -box[0] * k, (box[1] + box[3]) * k}, guessed, nil
}

// absolute is a length in millimetres; false for one that depends on a window.
func absolute(text string) (float64, bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	i := strings.LastIndexAny(text, "0123456789.") + 1
	k, ok := perUnit[strings.TrimSpace(text[i:])]
	v, err := strconv.ParseFloat(text[:i], 64)
	return v * k, ok && err == nil
}

// length is an attribute in user units; percentages and what cannot be read are 0.
func (n *node) length(name string) float64 {
	v, ok := absolute(n.attr[name])
	if !ok {
		return 0
	}
	return v / pixel
}

// walk reads an element and what is in it.
func (s *svg) walk(n *node, to matrix, layers []string, deep int) {
	if s.bad != nil || s.items > mostItems || deep > deepest || hidden(n) {
		return
	}
	if t := n.attr["transform"]; t != "" {
		m, ok := parseTransform(t)
		if !ok {
			s.bad = fmt.Errorf("a transform cannot be read: %q", t)
			return
		}
		to = to.after(m)
	}
	switch n.name {
	case "g", "a", "svg", "switch":
		layers = append(layers[:len(layers):len(layers)], groupName(n))
		if n.name == "svg" {
			to = to.after(matrix{1, 0, 0, 1, n.length("x"), n.length("y")}).after(s.view(n, n))
		}
		for _, k := range n.kids {
			s.walk(k, to, layers, deep+1)
		}
	case "use":
		s.use(n, to, layers, deep)
	case "rect", "circle", "ellipse", "line", "polyline", "polygon", "path":
		s.items++
		s.shape(n, to, layers)
	case "image", "foreignObject":
		s.sheet.odd = leave(s.sheet.odd, "a picture", "only lines and outlines are read")
	}
}

// use draws an element defined elsewhere.
func (s *svg) use(n *node, to matrix, layers []string, deep int) {
	target := s.ids[strings.TrimPrefix(n.attr["href"], "#")]
	if target == nil {
		s.sheet.odd = leave(s.sheet.odd, "a copy of `"+n.attr["href"]+"`", "it is not in this file")
		return
	}
	if s.open[target] {
		s.sheet.odd = leave(s.sheet.odd, "a copy of `"+n.attr["href"]+"`", "it lies in itself")
		return
	}
	s.open[target] = true
	defer delete(s.open, target)
	s.items++
	to = to.after(matrix{1, 0, 0, 1, n.length("x"), n.length("y")})
	if target.name == "symbol" {
		to = to.after(s.view(target, n))
		layers = append(layers[:len(layers):len(layers)], groupName(target))
		for _, k := range target.kids {
			s.walk(k, to, layers, deep+1)
		}
		return
	}
	copied := *target
	copied.attr = map[string]string{}
	for k, v := range target.attr {
		copied.attr[k] = v
	}
	delete(copied.attr, "id") // a copy has its own name, or none
	delete(copied.attr, "label")
	for _, k := range []string{"id", "label"} {
		if v := n.attr[k]; v != "" && copied.name != "g" {
			copied.attr[k] = v
		}
	}
	if copied.name == "g" {
		copied.attr["id"] = groupName(target)
	}
	s.walk(&copied, to, layers, deep+1)
}

// view takes what a viewBox shows into the width and height that another element
// gives it, or into the whole drawing where it gives none (SVG 1.1, section 7.8).
func (s *svg) view(n, sized *node) matrix {
	box := numbers(n.attr["viewBox"])
	if len(box) != 4 || !(box[2] > 0) || !(box[3] > 0) {
		return matrix{1, 0, 0, 1, 0, 0}
	}
	size := func(name string, whole, own float64) float64 {
		if v := sized.length(name); v > 0 {
			return v
		}
		if v := n.length(name); v > 0 {
			return v
		}
		if whole > 0 {
			return whole
		}
		return own
	}
	width, height := size("width", s.width, box[2]), size("height", s.height, box[3])
	kx, ky := width/box[2], height/box[3]
	fit := n.attr["preserveAspectRatio"]
	if !strings.HasPrefix(fit, "none") {
		k := min(kx, ky)
		if strings.HasSuffix(fit, "slice") {
			k = max(kx, ky)
		}
		kx, ky = k, k
	}
	at := func(axis string) float64 {
		switch {
		case strings.Contains(fit, axis+"Min"):
			return 0
		case strings.Contains(fit, axis+"Max"):
			return 1
		}
		return 0.5
	}
	return matrix{kx, 0, 0, ky, -box[0]*kx + at("x")*(width-box[2]*kx), -box[1]*ky + at("Y")*(height-box[3]*ky)}
}

// groupName is what a group is called: its label where it has one.
func groupName(n *node) string {
	if v := strings.TrimSpace(n.attr["label"]); v != "" {
		return v
	}
	return strings.TrimSpace(strings.ReplaceAll(n.attr["id"], "_x0020_", " "))
}

func hidden(n *node) bool {
	style := strings.ReplaceAll(n.attr["style"], " ", "")
	return n.attr["display"] == "none" || strings.Contains(style, "display:none") ||
		n.attr["visibility"] == "hidden" || strings.Contains(style, "visibility:hidden")
}

// shape makes an item of a drawn element.
func (s *svg) shape(n *node, to matrix, layers []string) {
	it := item{layers: layers, name: ownName(n)}
	x, y := n.length("x"), n.length("y")
	switch n.name {
	case "rect":
		w, h := n.length("width"), n.length("height")
		it.points = []geom.Vec{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
		it.closed = true
	case "circle", "ellipse":
		s.round(it, n, to)
		return
	case "line":
		it.points = []geom.Vec{{X: n.length("x1"), Y: n.length("y1")}, {X: n.length("x2"), Y: n.length("y2")}}
	case "polyline", "polygon":
		v := numbers(n.attr["points"])
		for i := 0; i+1 < len(v); i += 2 {
			it.points = append(it.points, geom.Vec{X: v[i], Y: v[i+1]})
		}
		it.closed = n.name == "polygon"
	case "path":
		parts, err := parsePath(n.attr["d"], to.size()*s.scale)
		if err != nil {
			s.sheet.odd = leave(s.sheet.odd, "a path", err.Error())
		}
		for i, p := range parts {
			one := it
			if i > 0 {
				one.name = "" // one name, one shape
			}
			one.points, one.closed = to.all(p.points), p.closed
			s.add(one)
		}
		return
	}
	it.points = to.all(it.points)
	s.add(it)
}

// round keeps a circle one where it is still one on the sheet.
func (s *svg) round(it item, n *node, to matrix) {
	c := geom.Vec{X: n.length("cx"), Y: n.length("cy")}
	rx, ry := n.length("rx"), n.length("ry")
	if n.name == "circle" {
		rx = n.length("r")
		ry = rx
	}
	if k, even := to.even(); even && math.Abs(rx-ry) <= 1e-6*rx {
		it.points, it.radius = to.all([]geom.Vec{c}), rx*k
		s.add(it)
		return
	}
	for _, p := range circle(geom.Vec{}, 1) {
		it.points = append(it.points, to.point(geom.Vec{X: c.X + rx*p.X, Y: c.Y + ry*p.Y}))
	}
	it.closed = true
	s.add(it)
}

func (s *svg) add(it item) {
	for _, p := range it.points {
		if math.IsNaN(p.X+p.Y) || math.IsInf(p.X, 0) || math.IsInf(p.Y, 0) {
			s.sheet.odd = leave(s.sheet.odd, "a shape", "its numbers are none")
			return
		}
	}
	s.sheet.items = append(s.sheet.items, it)
}

// ownName is what a shape is called by whoever drew it.
func ownName(n *node) string {
	if v := strings.TrimSpace(n.attr["label"]); v != "" && given(v) {
		return v
	}
	if v := n.attr["id"]; v != "" && given(v) {
		return v
	}
	return ""
}
