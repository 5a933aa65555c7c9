package drawing

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"longhand/lang/geom"
)

// matrix is SVG's: x' = ax + cy + e, y' = bx + dy + f.
type matrix [6]float64

func (m matrix) point(p geom.Vec) geom.Vec {
	return geom.Vec{X: m[0]*p.X + m[2]*p.Y + m[4], Y: m[1]*p.X + m[3]*p.Y + m[5]}
}

func (m matrix) all(points []geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(points))
	for i, p := range points {
		out[i] = m.point(p)
	}
	return out
}

// after is m with n done first.
func (m matrix) after(n matrix) matrix {
	return matrix{
		m[0]*n[0] + m[2]*n[1], m[1]*n[0] + m[3]*n[1],
		m[0]*n[2] + m[2]*n[3], m[1]*n[2] + m[3]*n[3],
		m[0]*n[4] + m[2]*n[5] + m[4], m[1]*n[4] + m[3]*n[5] + m[5],
	}
}

// size is how much longer the matrix makes lengths, on the whole.
func (m matrix) size() float64 { return math.Sqrt(math.Abs(m[0]*m[3] - m[1]*m[2])) }

// even reports whether circles stay circles, and by how much they grow.
func (m matrix) even() (float64, bool) {
	x, y := math.Hypot(m[0], m[1]), math.Hypot(m[2], m[3])
	return x, math.Abs(x-y) <= 1e-6*x && math.Abs(m[0]*m[2]+m[1]*m[3]) <= 1e-6*x*x
}

var number1 = regexp.MustCompile(`[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?`)

// numbers are those of a list, between blanks and commas.
func numbers(text string) []float64 {
	var out []float64
	for _, t := range number1.FindAllString(text, -1) {
		v, err := strconv.ParseFloat(t, 64)
		if err != nil {
			break
		}
		out = append(out, v)
	}
	return out
}

var oneTransform = regexp.MustCompile(`([a-zA-Z]+)\s*\(([^()]*)\)[\s,]*`)

// parseTransform reads a list of transforms (SVG 1.1, section 7.6).
func parseTransform(text string) (matrix, bool) {
	m := matrix{1, 0, 0, 1, 0, 0}
	rest := strings.TrimSpace(text)
	for rest != "" {
		at := oneTransform.FindStringSubmatchIndex(rest)
		if at == nil || at[0] != 0 {
			return m, false
		}
		t, ok := transform(rest[at[2]:at[3]], numbers(rest[at[4]:at[5]]))
		if !ok {
			return m, false
		}
		m, rest = m.after(t), rest[at[1]:]
	}
	return m, true
}

func transform(word string, v []float64) (matrix, bool) {
	n := len(v)
	arg := func(i int, otherwise float64) float64 {
		if i < n {
			return v[i]
		}
		return otherwise
	}
	switch {
	case word == "matrix" && n == 6:
		return matrix{v[0], v[1], v[2], v[3], v[4], v[5]}, true
	case word == "translate" && (n == 1 || n == 2):
		return matrix{1, 0, 0, 1, v[0], arg(1, 0)}, true
	case word == "scale" && (n == 1 || n == 2):
		return matrix{v[0], 0, 0, arg(1, v[0]), 0, 0}, true
	case word == "rotate" && (n == 1 || n == 3):
		sin, cos := math.Sincos(v[0] * math.Pi / 180)
		x, y := arg(1, 0), arg(2, 0)
		return matrix{1, 0, 0, 1, x, y}.after(matrix{cos, sin, -sin, cos, 0, 0}).after(matrix{1, 0, 0, 1, -x, -y}), true
	case word == "skewX" && n == 1:
		return matrix{1, 0, math.Tan(v[0] * math.Pi / 180), 1, 0, 0}, true
	case word == "skewY" && n == 1:
		return matrix{1, math.Tan(v[0] * math.Pi / 180), 0, 1, 0, 0}, true
	}
	return matrix{}, false
}
