package drawing

import (
	"fmt"
	"math"
	"strconv"

	"longhand/lang/geom"
)

// stretch is one line of a path, its curves cut into short straight pieces.
type stretch struct {
	points []geom.Vec
	closed bool
}

// parsePath reads path data (SVG 1.1, section 8.3). With a mistake in it, it
// gives what stands before, as the standard asks, and an error; size is how many
// millimetres of floor a user unit is.
func parsePath(d string, size float64) ([]stretch, error) {
	p := &pather{text: d, size: size}
	err := p.run()
	p.end(false)
	return p.out, err
}

type pather struct {
	text string
	pos  int
	size float64
	out  []stretch

	now       []geom.Vec
	at, start geom.Vec
	handle    geom.Vec // the last curve's, for those that go on smoothly
	last      byte
}

// pathArgs is how many numbers each command takes.
var pathArgs = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7, 'Z': 0}

func (p *pather) run() error {
	cmd := byte(0)
	for p.blanks(); p.pos < len(p.text); p.blanks() {
		c := p.text[p.pos]
		if _, ok := pathArgs[c&^0x20]; ok && (c|0x20) >= 'a' && (c|0x20) <= 'z' {
			cmd = c
			p.pos++
		} else if cmd == 0 || cmd&^0x20 == 'Z' {
			return fmt.Errorf("its data has %q where a command should be", string(c))
		}
		if p.last == 0 && cmd&^0x20 != 'M' {
			return fmt.Errorf("its data doesn't begin with M")
		}
		v := make([]float64, pathArgs[cmd&^0x20])
		for i := range v {
			var ok bool
			if v[i], ok = p.number(cmd&^0x20 == 'A' && (i == 3 || i == 4)); !ok {
				return fmt.Errorf("its data has too few numbers after %c", cmd)
			}
		}
		p.do(cmd&^0x20, cmd >= 'a', v)
		switch cmd { // more numbers after a move are lines
		case 'M':
			cmd = 'L'
		case 'm':
			cmd = 'l'
		}
	}
	return nil
}

func (p *pather) blanks() {
	for p.pos < len(p.text) {
		switch p.text[p.pos] {
		case ' ', '\t', '\n', '\r', '\f', ',':
			p.pos++
		default:
			return
		}
	}
}

func (p *pather) number(flag bool) (float64, bool) {
	p.blanks()
	if flag { // flags may stand without blanks: a1 1 0 01 2 3
		if p.pos < len(p.text) && (p.text[p.pos] == '0' || p.text[p.pos] == '1') {
			p.pos++
			return float64(p.text[p.pos-1] - '0'), true
		}
		return 0, false
	}
	end := min(len(p.text), p.pos+64)
	at := number1.FindStringIndex(p.text[p.pos:end])
	if at == nil || at[0] != 0 {
		return 0, false
	}
	v, err := strconv.ParseFloat(p.text[p.pos:p.pos+at[1]], 64)
	p.pos += at[1]
	return v, err == nil
}

func (p *pather) do(cmd byte, relative bool, v []float64) {
	from := geom.Vec{}
	if relative {
		from = p.at
	}
	point := func(i int) geom.Vec { return geom.Vec{X: v[i], Y: v[i+1]}.Add(from) }
	smooth := func(after string) geom.Vec {
		for i := range after {
			if p.last == after[i] {
				return p.at.Mul(2).Sub(p.handle)
			}
		}
		return p.at
	}
	switch cmd {
	case 'M':
		p.end(false)
		p.at = point(0)
		p.start, p.now = p.at, []geom.Vec{p.at}
	case 'Z':
		p.end(true)
		p.at, p.now = p.start, []geom.Vec{p.start}
	case 'L':
		p.line(point(0))
	case 'H':
		p.line(geom.Vec{X: v[0] + from.X, Y: p.at.Y})
	case 'V':
		p.line(geom.Vec{X: p.at.X, Y: v[0] + from.Y})
	case 'C':
		p.cubic(point(0), point(2), point(4))
	case 'S':
		p.cubic(smooth("CS"), point(0), point(2))
	case 'Q':
		p.quadratic(point(0), point(2))
	case 'T':
		p.quadratic(smooth("QT"), point(0))
	case 'A':
		p.arc(v[0], v[1], v[2], v[3] != 0, v[4] != 0, point(5))
	}
	p.last = cmd
}

func (p *pather) line(to geom.Vec) {
	p.now = append(p.now, to)
	p.at = to
}

func (p *pather) end(closed bool) {
	if len(p.now) > 1 {
		p.out = append(p.out, stretch{p.now, closed})
	}
	p.now = nil
}

// flat is how far a straight piece may be off its curve, in millimetres of floor.
const flat = 5

func (p *pather) cubic(a, b, to geom.Vec) {
	// The pieces of a cubic of which no second difference is above d are off by
	// d*3/4/n^2 at most (Wang 1984).
	d := math.Max(p.at.Sub(a.Mul(2)).Add(b).Len(), a.Sub(b.Mul(2)).Add(to).Len()) * p.size
	n := pieces(math.Sqrt(0.75 * d / flat))
	from := p.at
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		p.line(from.Mul(u * u * u).Add(a.Mul(3 * u * u * t)).Add(b.Mul(3 * u * t * t)).Add(to.Mul(t * t * t)))
	}
	p.line(to)
	p.handle = b
}

func (p *pather) quadratic(a, to geom.Vec) {
	from := p.at
	p.cubic(from.Lerp(a, 2.0/3), to.Lerp(a, 2.0/3), to)
	p.handle = a
}

func pieces(n float64) int {
	if !(n < 200) {
		return 200
	}
	return max(1, int(math.Ceil(n)))
}

// arc follows SVG 1.1, appendix F.6.
func (p *pather) arc(rx, ry, turn float64, large, sweep bool, to geom.Vec) {
	from := p.at
	rx, ry = math.Abs(rx), math.Abs(ry)
	if rx == 0 || ry == 0 || from == to {
		p.line(to)
		return
	}
	sin, cos := math.Sincos(turn * math.Pi / 180)
	half := from.Sub(to).Mul(0.5)
	x, y := cos*half.X+sin*half.Y, -sin*half.X+cos*half.Y
	if l := x*x/(rx*rx) + y*y/(ry*ry); l > 1 { // too small to reach
		rx, ry = rx*math.Sqrt(l), ry*math.Sqrt(l)
	}
	q := (rx*rx*ry*ry - rx*rx*y*y - ry*ry*x*x) / (rx*rx*y*y + ry*ry*x*x)
	k := math.Sqrt(math.Max(0, q))
	if large == sweep {
		k = -k
	}
	cx, cy := k*rx*y/ry, -k*ry*x/rx
	mid := from.Lerp(to, 0.5)
	centre := geom.Vec{X: cos*cx - sin*cy + mid.X, Y: sin*cx + cos*cy + mid.Y}
	a0 := math.Atan2((y-cy)/ry, (x-cx)/rx)
	a1 := math.Atan2((-y-cy)/ry, (-x-cx)/rx)
	d := a1 - a0
	if sweep && d < 0 {
		d += 2 * math.Pi
	} else if !sweep && d > 0 {
		d -= 2 * math.Pi
	}
	n := arcPieces(math.Max(rx, ry)*p.size, d)
	for i := 1; i < n; i++ {
		s, c := math.Sincos(a0 + d*float64(i)/float64(n))
		p.line(geom.Vec{X: centre.X + cos*rx*c - sin*ry*s, Y: centre.Y + sin*rx*c + cos*ry*s})
	}
	p.line(to)
}

// arcPieces is how many chords keep within flat of an arc: its sagitta is
// r(1 - cos(angle/2)).
func arcPieces(r, angle float64) int {
	if r <= flat {
		return pieces(math.Abs(angle) / (math.Pi / 4))
	}
	return pieces(math.Abs(angle) / (2 * math.Acos(1-flat/r)))
}
