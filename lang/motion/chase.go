package motion

import (
	"math"

	"longhand/lang/geom"
)

// chase is how something gets to where a relation wants it, which may move
// meanwhile: it makes for that place at its pace, gathers and loses speed as it
// can, and from the moment it is there stays there exactly. It is worked out once
// at even times and goes straight between them.
type chase struct {
	start, done float64 // done is when it is there; until then points say where it is
	step        float64
	points      []geom.Vec
	there       bool // done in the time there was
}

const (
	chaseStep = 1.0 / 24
	// chaseEasy is the part of the braking that a chase counts on.
	chaseEasy = 0.7
	// chaseOver is how much faster than the target a chase goes at least, of
	// the usual pace, as far as the limit allows.
	chaseOver = 0.35
)

// chasing is what limits a chase, m/s and m/s².
type chasing struct{ usual, most, accel float64 }

// newChase starts at p with velocity v.
func newChase(want func(t float64) geom.Vec, p, v geom.Vec, c chasing, start, until float64) chase {
	ch := chase{start: start, done: start}
	n, step := looks(until-start, chaseStep)
	ch.step = step
	ch.points = append(ch.points, p)
	was := want(start)
	for i := 1; i <= n; i++ {
		at := start + step*float64(i)
		now := want(at)
		target := now.Sub(was).Mul(1 / step) // the wanted place's own velocity
		pace := clamp(target.Len()+chaseOver*c.usual, c.usual, max(c.usual, c.most))
		change := c.accel * step
		need := now.Sub(p).Mul(1 / step) // what would be there in this step
		if need.Len() <= max(pace, target.Len()+change) && need.Sub(v).Len() <= change && need.Sub(target).Len() <= change {
			ch.points = append(ch.points, now)
			ch.done, ch.there = at, true
			return ch
		}
		off := was.Sub(p)
		wish := target.Add(off.Unit().Mul(math.Sqrt(2 * chaseEasy * c.accel * off.Len())))
		if l := wish.Len(); l > pace {
			wish = wish.Mul(pace / l)
		}
		turn := wish.Sub(v)
		if l := turn.Len(); l > change {
			turn = turn.Mul(change / l)
		}
		v = v.Add(turn)
		p = p.Add(v.Mul(step))
		ch.points = append(ch.points, p)
		was = now
	}
	ch.done = until
	return ch
}

// at is where it is while it hasn't arrived; false from then on.
func (c *chase) at(t float64) (geom.Vec, bool) {
	last := len(c.points) - 1
	if t >= c.done && c.there {
		return c.points[last], false
	}
	if last == 0 || c.step == 0 {
		return c.points[last], true
	}
	x := clamp((t-c.start)/c.step, 0, float64(last))
	k := min(int(x), last-1)
	return c.points[k].Lerp(c.points[k+1], x-float64(k)), true
}
