package page

import (
	"encoding/json"
	"math"
	"strings"
)

// channels collects the numbers that change over a take, each quantity once.
//
// A quantity is a value a frame. It is rounded to whole steps and sent as its
// first value and the second differences of the rest: nothing for what stands
// still, and noughts for what goes on as it was. Differences are written in the
// base 64 variable-length form that source maps have made common (the lowest bit
// is the sign, the sixth bit of a digit says that another follows); "." and such
// a number stand for that many noughts.
type channels struct {
	list  []channel
	index map[string]int
}

type channel struct {
	step  float64
	first int64
	rest  string // "" for what never changes
}

// MarshalJSON writes [step, first value in steps, differences].
func (c channel) MarshalJSON() ([]byte, error) {
	if c.rest == "" {
		return json.Marshal([]any{c.step, c.first})
	}
	return json.Marshal([]any{c.step, c.first, c.rest})
}

// The steps to which values are rounded: small enough that nothing on screen is
// off by as much as a dot, the nearest face before the longest lens included.
const (
	lengthStep = 0.0005 // m
	angleStep  = 0.0001 // rad
	focalStep  = 0.01   // mm
	focusStep  = 0.005  // m
	farthest   = 10000  // m: focus beyond it, and at infinity, is put here
)

// add takes a quantity, a value a frame, and returns its index.
func (c *channels) add(step float64, values []float64) int {
	whole := make([]int64, len(values))
	moves := false
	for i, v := range values {
		whole[i] = int64(math.Round(v / step))
		moves = moves || whole[i] != whole[0]
	}
	ch := channel{step: step}
	if len(whole) > 0 {
		ch.first = whole[0]
	}
	if moves {
		ch.rest = encode(whole)
	}
	key, _ := json.Marshal(ch)
	if i, ok := c.index[string(key)]; ok {
		return i
	}
	if c.index == nil {
		c.index = map[string]int{}
	}
	c.index[string(key)] = len(c.list)
	c.list = append(c.list, ch)
	return len(c.list) - 1
}

// angles is add for directions in radians, which turn on past half a turn
// instead of jumping back.
func (c *channels) angles(values []float64) int {
	turned := make([]float64, len(values))
	for i, v := range values {
		if i > 0 {
			before := turned[i-1]
			v = before + math.Remainder(v-before, 2*math.Pi)
		}
		turned[i] = v
	}
	return c.add(angleStep, turned)
}

const digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/"

// encode writes the second differences of all values but the first; before it,
// nothing had changed.
func encode(values []int64) string {
	var b strings.Builder
	zeros := 0
	flush := func() {
		if zeros < 4 {
			b.WriteString(strings.Repeat("A", zeros))
		} else {
			b.WriteByte('.')
			number(&b, uint64(zeros))
		}
		zeros = 0
	}
	last, pace := values[0], int64(0)
	for _, v := range values[1:] {
		d := v - last - pace
		last, pace = v, v-last
		if d == 0 {
			zeros++
			continue
		}
		flush()
		signed := uint64(d) << 1
		if d < 0 {
			signed = uint64(-d)<<1 | 1
		}
		number(&b, signed)
	}
	flush()
	return b.String()
}

func number(b *strings.Builder, n uint64) {
	for {
		digit := n & 31
		n >>= 5
		if n > 0 {
			digit |= 32
		}
		b.WriteByte(digits[digit])
		if n == 0 {
			return
		}
	}
}
