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
	dir  direction
	off  float64 // at the start, radians; what is still to be turned, negated
	time float64 // to turn it
	turn bool    // a line's own turn, which a rest after it doesn't undo
}

// spin is a turn about oneself that comes on top of the heading.
type spin struct {
	start, end float64
	angle      float64 // left positive
}

// direction is where to face at a time: always the same way, unless a function
// says.
type direction struct {
	fixed float64
	by    func(t float64) float64
}

func fixed(a float64) direction                    { return direction{fixed: a} }
func turning(by func(t float64) float64) direction { return direction{by: by} }

func (d direction) at(t float64) float64 {
	if d.by == nil {
		return d.fixed
	}
	return d.by(t)
}

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
	if n == 0 {
		return 0
	}
	h := &t.heads[t.headAt(at, n)]
	a := h.at(at)
	if len(t.spins) > 0 {
		a += t.spun(at) - t.spun(h.from)
	}
	return a
}

// headAt is the last of the first n stretches that has begun, or the first.
func (t *Track) headAt(at float64, n int) int {
	i := n - 1
	if t.tangled {
		for i > 0 && t.heads[i].from > at {
			i--
		}
	} else if i > 0 && t.heads[i].from > at {
		low := 0 // by halves
		for low+1 < i {
			if half := (low + i) / 2; t.heads[half].from > at {
				i = half
			} else {
				low = half
			}
		}
		i = low
	}
	return i
}

// at is the way it faces in its stretch, but for spins.
func (h *head) at(t float64) float64 {
	a := h.dir.at(t)
	if h.off != 0 {
		a += h.off * (1 - eased(t, h.from, h.from+h.time))
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
func (t *Track) face(from float64, dir direction, l Limits, time float64, turn bool) float64 {
	off := 0.0
	if len(t.heads) > 0 {
		off = geom.AngleDiff(dir.at(from), t.headed(from, len(t.heads)))
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
