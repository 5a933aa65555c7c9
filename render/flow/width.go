package flow

import (
	"math"
	"strings"

	"longhand/render/fonts"
)

// columnWidths shares the room out: first what a column asks for, then to the
// others at least their longest word, and the rest so that short columns have
// what they need for one line and the long ones as much as each other.
func (t *Table) columnWidths(room, size float64) []float64 {
	n := len(t.Columns)
	least, most := make([]float64, n), make([]float64, n)
	for i, c := range t.Columns {
		least[i], most[i] = measure(fonts.Bold, size, c.Head)
	}
	for _, r := range t.Rows {
		for i := range min(n, len(r.Cells)) {
			face := r.face(t.Columns[i])
			l, m := measure(face, size, r.Cells[i])
			least[i], most[i] = math.Max(least[i], l), math.Max(most[i], m)
		}
	}
	out := make([]float64, n)
	sumLeast, sumMost := 0.0, 0.0
	for i, c := range t.Columns {
		if c.Width > 0 {
			out[i] = c.Width
			room -= c.Width
			continue
		}
		least[i] += 2 * padding
		most[i] += 2 * padding
		sumLeast += least[i]
		sumMost += most[i]
	}
	level := fill(t.Columns, least, most, room)
	for i, c := range t.Columns {
		if c.Width > 0 {
			continue
		}
		switch {
		case sumMost <= room: // all on one line, what is left goes to the wide ones
			out[i] = most[i] * room / sumMost
		case sumLeast <= room:
			out[i] = math.Max(least[i], math.Min(most[i], level))
		default: // words will be broken
			out[i] = least[i] * room / sumLeast
		}
		out[i] = math.Max(out[i], 2*padding+1)
	}
	return out
}

// fill is the width that, given to every free column but never less or more than
// it needs, uses up the room.
func fill(columns []Column, least, most []float64, room float64) float64 {
	low, high := 0.0, math.Max(0, room)
	for range 50 {
		level, sum := (low+high)/2, 0.0
		for i, c := range columns {
			if c.Width <= 0 {
				sum += math.Max(least[i], math.Min(most[i], level))
			}
		}
		if sum > room {
			high = level
		} else {
			low = level
		}
	}
	return low
}

// measure is the width of the longest word and of the longest line.
func measure(face fonts.Face, size float64, text string) (word, line float64) {
	for l := range strings.SplitSeq(text, "\n") {
		line = math.Max(line, face.Width(size, fonts.Clean(l)))
		for _, w := range strings.Fields(l) {
			word = math.Max(word, face.Width(size, w))
		}
	}
	return word + 1e-6, line + 1e-6 // so that it fits its own width
}
