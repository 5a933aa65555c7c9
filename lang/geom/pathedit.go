package geom

import (
	"math"
	"slices"
)

// Append is this path followed by others. Where one begins elsewhere than the
// one before it ends, a straight line joins them.
func (p *Path) Append(others ...*Path) *Path {
	pieces := append([]piece(nil), p.pieces...)
	stops := p.Stops()
	length, end := p.length, p.End()
	for _, q := range others {
		if start := q.Start(); start.Dist(end) > joinSlop {
			join := newLine(end, start)
			pieces = append(pieces, join)
			length += join.length
		} else if len(stops) > 0 && len(q.stops) > 0 && q.stops[0] == 0 {
			stops = stops[:len(stops)-1] // the joint is one point, not two
		}
		for _, s := range q.stops {
			stops = append(stops, length+s)
		}
		pieces = append(pieces, q.pieces...)
		length += q.length
		end = q.End()
	}
	return newPath(dropEmpty(pieces), stops)
}

// dropEmpty leaves out pieces of no length, but for one where all are.
func dropEmpty(pieces []piece) []piece {
	kept := pieces[:0:0]
	for _, piece := range pieces {
		if piece.length > 0 {
			kept = append(kept, piece)
		}
	}
	if len(kept) == 0 {
		return pieces[:1]
	}
	return kept
}

// Sub is the part from s0 to s1, both clamped to the path; backwards where s1 <
// s0. Its stops are its ends and the stops between them.
func (p *Path) Sub(s0, s1 float64) *Path {
	s0, s1 = p.clamp(s0), p.clamp(s1)
	from, to := min(s0, s1), max(s0, s1)
	var pieces []piece
	for i := range p.pieces {
		piece := &p.pieces[i]
		a, b := max(from-p.starts[i], 0), min(to-p.starts[i], piece.length)
		if a >= b {
			continue
		}
		switch {
		case s1 < s0:
			pieces = append(pieces, piece.sub(b, a))
		case a == 0 && b == piece.length:
			pieces = append(pieces, *piece)
		default:
			pieces = append(pieces, piece.sub(a, b))
		}
	}
	if len(pieces) == 0 {
		here := p.At(s0)
		pieces = append(pieces, newLine(here, here))
	}
	stops := []float64{0}
	for _, s := range p.stops {
		if s > from && s < to {
			stops = append(stops, math.Abs(s-s0))
		}
	}
	if s1 < s0 {
		slices.Reverse(pieces)
		slices.Reverse(stops[1:])
	}
	part := newPath(pieces, nil)
	part.stops = append(stops, part.length)
	return part
}

// Reverse is the same way walked from its end to its start.
func (p *Path) Reverse() *Path {
	r := p.Sub(p.length, 0)
	r.stops = r.stops[:0]
	for i := len(p.stops) - 1; i >= 0; i-- {
		r.stops = append(r.stops, p.length-p.stops[i])
	}
	return r
}

func (p *Path) clamp(s float64) float64 { return max(0, min(s, p.length)) }

// maxPoints bounds the points of one piece, whatever the step.
const maxPoints = 1 << 14

// Points is a polyline for drawing: every joint, and on bends points at most
// step metres apart along the path and at most 15 degrees of an arc apart.
func (p *Path) Points(step float64) []Vec {
	points := []Vec{p.Start()}
	for i := range p.pieces {
		piece := &p.pieces[i]
		n := 1.0
		switch piece.kind {
		case cubicPiece:
			n = max(4, math.Ceil(piece.length/step))
		case arcPiece:
			n = max(1, math.Ceil(piece.length/step), math.Ceil(math.Abs(piece.arc)/(math.Pi/12)))
		}
		if !(n < maxPoints) {
			n = maxPoints
		}
		for k := 1.0; k <= n; k++ {
			points = append(points, piece.at(piece.length*(k/n)))
		}
	}
	return points
}
