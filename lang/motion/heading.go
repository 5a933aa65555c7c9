package motion

import (
	"math"

	"longhand/lang/geom"
)

// head is a stretch of facing one thing: it begins at a time and lasts until
// the next one. dir is where it wants to face; from its start the difference to
// where the subject faced before is eased away.
type head struct {
	from float64
	dir  func(t float64) float64
	off  float64 // at the start, radians; what is still to be turned, negated
	time float64 // to turn it
	turn bool    // a line's own turn, which a rest after it doesn't undo
}

// spin is a turn about oneself that comes on top of the heading.
type spin struct {
	start, end float64
	angle      float64 // left positive
}

func fixed(a float64) func(float64) float64 { return func(float64) float64 { return a } }

// spun is how far all spins have turned at a time.
func (t *Track) spun(at float64) float64 {
	sum := 0.0
	for _, s := range t.spins {
		sum += s.angle * eased(at, s.start, s.end)
	}
	return sum
}

// heading in radians, not brought into one turn.
func (t *Track) heading(at float64) float64 {
	at = clamp(at, float64(t.Segments[0].Start), t.end())
	return t.headed(at, len(t.heads))
}

// headed is the heading by the first n stretches.
func (t *Track) headed(at float64, n int) float64 {
	i := n - 1
	if t.tangled {
		for i > 0 && t.heads[i].from > at {
			i--
		}
	} else if i > 0 && t.heads[i].from > at {
		low := 0 // by halves: the last that has begun, or the first
		for low+1 < i {
			if half := (low + i) / 2; t.heads[half].from > at {
				i = half
			} else {
				low = half
			}
		}
		i = low
	}
	if i < 0 {
		return 0
	}
	h := &t.heads[i]
	a := h.dir(at)
	if h.off != 0 {
		a += h.off * (1 - eased(at, h.from, h.from+h.time))
	}
	if len(t.spins) > 0 {
		a += t.spun(at) - t.spun(h.from)
	}
	return a
}

// look adds a stretch.
func (t *Track) look(h head) {
	t.tangled = t.tangled || len(t.heads) > 0 && t.heads[len(t.heads)-1].from > h.from
	t.heads = append(t.heads, h)
}

// face begins to face a direction at a time, turning to it as quickly as the
// limits have it; time fixes how long the turn takes where it isn't negative.
func (t *Track) face(from float64, dir func(float64) float64, l Limits, time float64, turn bool) float64 {
	off := 0.0
	if len(t.heads) > 0 {
		off = geom.AngleDiff(dir(from), t.headed(from, len(t.heads)))
	}
	if math.Abs(off) < 1e-9 {
		off = 0
	}
	if time < 0 {
		time = l.turnTime(off)
	}
	t.look(head{from, dir, off, time, turn})
	return off
}
