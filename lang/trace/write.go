package trace

import (
	"bufio"
	"encoding/json"
	"io"
	"math"
	"strconv"

	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// Write prints a scene and what was seen in it. The same scene gives the same
// bytes. Numbers have five decimals: a hundredth of a millimetre, a hundred
// thousandth of a degree or of a body; what shows at all never prints as 0. It
// fails only where w does.
func Write(w io.Writer, s *sight.Scene, r *sight.Report) error {
	p := &printer{w: bufio.NewWriterSize(w, 1<<16)}
	p.text(`{"rate": `)
	p.number(s.Rate.PerSecond())
	p.text(`, "frames": `)
	p.whole(s.Frames)
	p.text(`, "aspect": `)
	p.number(s.Aspect)
	p.list("solids", len(s.Solids), func(i int) { p.solid(&s.Solids[i]) })
	p.list("bodies", len(s.Bodies), func(i int) { p.body(s, &s.Bodies[i]) })
	p.list("cameras", len(s.Cameras), func(i int) { p.camera(s, &s.Cameras[i]) })
	pairs := byBody(r.Sight)
	p.list("sight", len(pairs), func(i int) { p.seen(s, pairs[i]) })
	p.text("}\n")
	if p.err != nil {
		return p.err
	}
	return p.w.Flush()
}

// byBody groups runs, which are in that order, by camera and body.
func byBody(runs []sight.Run) [][]sight.Run {
	var out [][]sight.Run
	for i := 0; i < len(runs); {
		j := i + 1
		for j < len(runs) && runs[j].Camera == runs[i].Camera && runs[j].Body == runs[i].Body {
			j++
		}
		out = append(out, runs[i:j])
		i = j
	}
	return out
}

// printer writes JSON piece by piece and keeps the first error.
type printer struct {
	w   *bufio.Writer
	buf []byte
	err error
}

func (p *printer) bytes(b []byte) {
	if p.err == nil {
		_, p.err = p.w.Write(b)
	}
}

func (p *printer) text(s string) { p.bytes(append(p.buf[:0], s...)) }

func (p *printer) quoted(s string) {
	b, err := json.Marshal(s)
	if err != nil && p.err == nil {
		p.err = err
	}
	p.bytes(b)
}

func (p *printer) whole(n int) { p.bytes(strconv.AppendInt(p.buf[:0], int64(n), 10)) }

func (p *printer) number(v float64) {
	p.buf = appendNumber(p.buf[:0], v)
	p.bytes(p.buf)
}

const decimals = 1e5

// appendNumber prints a number rounded to five decimals, without trailing zeros
// and never as -0; what is infinite as null, for JSON has no word for it.
func appendNumber(b []byte, v float64) []byte {
	if math.IsInf(v, 0) {
		return append(b, "null"...)
	}
	scaled := math.Round(v * decimals)
	if math.Abs(scaled) >= 1<<53 { // too large to have decimals
		return strconv.AppendFloat(b, v, 'f', -1, 64)
	}
	n := int64(scaled)
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/decimals, 10)
	rest := n % decimals
	if rest == 0 {
		return b
	}
	b = append(b, '.')
	for unit := int64(decimals / 10); rest > 0; unit /= 10 {
		b = append(b, byte('0'+rest/unit))
		rest %= unit
	}
	return b
}

// list prints a member that is a list, each item on a line of its own.
func (p *printer) list(name string, n int, item func(int)) {
	p.text(",\n\"" + name + "\": [")
	for i := range n {
		if i > 0 {
			p.text(",")
		}
		p.text("\n  ")
		item(i)
	}
	p.text("]")
}

func (p *printer) numbers(vs ...float64) {
	b := append(p.buf[:0], '[')
	for i, v := range vs {
		if i > 0 {
			b = append(b, ',')
		}
		b = appendNumber(b, v)
	}
	p.buf = append(b, ']')
	p.bytes(p.buf)
}

func (p *printer) points(poly []geom.Vec) {
	p.text("[")
	for i, v := range poly {
		if i > 0 {
			p.text(",")
		}
		p.numbers(v.X, v.Y)
	}
	p.text("]")
}

func (p *printer) frames(list []sight.Frames) {
	p.text("[")
	for i, r := range list {
		if i > 0 {
			p.text(",")
		}
		p.numbers(float64(r.From), float64(r.To))
	}
	p.text("]")
}

func (p *printer) named(name, kind string) {
	p.text(`{"name": `)
	p.quoted(name)
	p.text(`, "kind": `)
	p.quoted(kind)
}

func (p *printer) solid(s *sight.Solid) {
	p.named(s.Name, s.Kind)
	p.text(`, "polygon": `)
	p.points(s.Polygon)
	p.text(`, "z": `)
	p.numbers(min(s.Z[0], s.Z[1]), max(s.Z[0], s.Z[1]))
	if s.Shut != nil {
		p.text(`, "shut": `)
		p.frames(s.Shut)
	}
	p.text("}")
}

func degrees(radians float64) float64 { return float64(units.FromRadians(radians)) }

// track prints a row for each frame, also of what never moves.
func (p *printer) track(frames int, row func(f units.Frame)) {
	p.text(`, "track": [`)
	for f := range frames {
		if f > 0 {
			p.text(",")
		}
		row(units.Frame(f))
	}
	p.text("]")
}

func (p *printer) body(s *sight.Scene, b *sight.Body) {
	p.named(b.Name, b.Kind)
	if b.Radius > 0 {
		p.text(`, "radius": `)
		p.number(b.Radius)
	} else {
		p.text(`, "polygon": `)
		p.points(b.Polygon)
	}
	p.track(s.Frames, func(f units.Frame) {
		at := b.At(f)
		p.numbers(at.X, at.Y, at.Z, degrees(at.Heading), max(0, at.Height))
	})
	p.text("}")
}

func (p *printer) camera(s *sight.Scene, c *sight.Camera) {
	p.text(`{"name": `)
	p.quoted(c.Name)
	p.text(`, "sensor": `)
	p.numbers(c.Width, c.Height)
	p.text(`, "rolls": `)
	p.frames(c.Rolls)
	p.text(`, "own": [`)
	for i, o := range c.Own {
		if i > 0 {
			p.text(",")
		}
		p.text("[")
		p.quoted(o.Body)
		p.text(",")
		p.whole(int(o.From))
		p.text(",")
		p.whole(int(o.To))
		p.text("]")
	}
	p.text("]")
	leans := false
	p.track(s.Frames, func(f units.Frame) {
		v := c.At(f)
		leans = leans || v.Roll != 0
		p.numbers(v.X, v.Y, v.Z, degrees(v.Pan), degrees(v.Tilt), v.Focal, v.Focus)
	})
	if leans {
		p.text(`, "roll": [`)
		for f := range s.Frames {
			if f > 0 {
				p.text(",")
			}
			p.number(degrees(c.At(units.Frame(f)).Roll))
		}
		p.text("]")
	}
	p.text("}")
}

func (p *printer) seen(s *sight.Scene, runs []sight.Run) {
	p.text(`{"camera": `)
	p.quoted(s.Cameras[runs[0].Camera].Name)
	p.text(`, "body": `)
	p.quoted(s.Bodies[runs[0].Body].Name)
	p.text(`, "runs": [`)
	for i := range runs {
		r := &runs[i]
		if i > 0 {
			p.text(",")
		}
		p.text(`{"from": `)
		p.whole(int(r.From))
		p.text(`, "to": `)
		p.whole(int(r.To))
		p.text(`, "visible": `)
		p.parts(r.Visible)
		p.text(`, "share": `)
		p.parts(r.Share)
		p.text("}")
	}
	p.text("]}")
}

// parts prints numbers of which any above 0 stays above 0.
func (p *printer) parts(vs []float32) {
	b := append(p.buf[:0], '[')
	for i, v := range vs {
		if i > 0 {
			b = append(b, ',')
		}
		w := float64(v)
		if w > 0 {
			w = max(w, 1/float64(decimals))
		}
		b = appendNumber(b, w)
	}
	p.buf = append(b, ']')
	p.bytes(p.buf)
}
