package motion

import (
	"math"

	"longhand/lang/pace"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// mover is who goes on a route, and how.
type mover struct {
	limits Limits
	back   bool                   // backwards
	stated *units.MetresPerSecond // the pace the text gives
}

func moverFor(l Limits, p *plan.Path, t plan.Timing) mover {
	return mover{limits: l, back: p.Backwards, stated: t.At}
}

// move is the route at a strength: 0 as usual, 1 the pace of the limit, 2 also
// its acceleration.
func (m mover) move(r route, strength int) pace.Move {
	v := m.limits.pace(m.back)
	speed, accel, lateral := v.Typical, m.limits.Accel.Typical, m.limits.Lateral.Typical
	if strength > 0 {
		speed = v.Hard
	}
	if strength > 1 {
		accel, lateral = m.limits.Accel.Hard, m.limits.Lateral.Hard
	}
	if m.stated != nil && *m.stated > 0 {
		speed = *m.stated
	}
	if speed <= 0 {
		speed = crawl
	}
	if accel <= 0 {
		accel = 0.5
	}
	return pace.Move{
		Length: units.Metres(r.path.Length()),
		Pace:   pace.Pace{Speed: speed, Accel: accel},
		Cap:    r.bends.cap(lateral),
	}
}

// crawl is the pace of what is told to move and can't, m/s: slow enough for
// anyone to see that something is wrong.
const crawl units.MetresPerSecond = 0.1

// natural is the move at its usual, or its stated, pace.
func (m mover) natural(r route) *pace.Profile {
	if p := r.memo.natural(m); p != nil {
		return p
	}
	p, _ := m.move(r, 0).Natural()
	r.memo.keepNatural(m, p)
	return p
}

// in is the move in a given time. On a straight way it is as gentle as that can
// be: at the usual acceleration if the pace up to the limit will do, else
// harder, else whatever it takes. Where the way bends it is the usual way of
// going, all of it faster or slower.
func (m mover) in(r route, took units.Seconds) *pace.Profile {
	natural := m.natural(r)
	if math.Abs(float64(natural.Duration()-took)) < 1e-9 {
		return natural
	}
	if !(took > 0) {
		return natural
	}
	if p := r.memo.in(m, took); p != nil {
		return p
	}
	var p *pace.Profile
	if len(r.bends.kappa) > 0 {
		p = natural.Lasting(took)
		r.memo.keepIn(m, p)
		return p
	}
	var err error
	for strength := range 3 {
		if p, err = m.move(r, strength).In(took); err == nil {
			break
		}
	}
	r.memo.keepIn(m, p)
	return p
}
