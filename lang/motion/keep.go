package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
)

// keeping is on the target's own trail, so far ahead of it or behind it along
// the way it goes, and straight on past the trail's ends.
type keeping struct {
	trail *trail
	by    float64 // ahead positive
	back  bool    // what carries the camera faces against its way: a wearer who leads
	turn  sway    // the way it faces, no faster than it turns
}

func (k keeping) want(t float64) geom.Vec {
	p, _ := k.trail.at(k.trail.gone(t) + k.by)
	return p
}

func (k keeping) face(t float64) float64 { return k.turn.at(t) }

// along is the direction of the way, or against it.
func (k keeping) along(t float64) float64 {
	_, d := k.trail.at(k.trail.gone(t) + k.by)
	if k.back {
		d = d.Mul(-1)
	}
	return d.Angle()
}

// apart keeps a distance from what stands still.
type apart struct{ p, from geom.Vec }

func (a apart) want(float64) geom.Vec { return a.p }
func (a apart) face(float64) float64  { return a.from.Sub(a.p).Angle() }

// keep leads or follows.
func (b *builder) keep(d *plan.Keep, wears bool, from *geom.Vec, lim Limits, start, until float64) relation {
	g, ok := b.target(d.Target)
	if !ok {
		return nil
	}
	if g.track == nil {
		p := g.point(start)
		away := geom.Vec{X: -1}
		if from != nil && from.Dist(p) > 1e-6 {
			away = from.Sub(p).Unit()
		}
		return apart{p.Add(away.Mul(float64(d.By))), p}
	}
	by := float64(d.By)
	if !d.Lead {
		by = -by
	}
	k := keeping{trail: g.track.path(), by: by, back: d.Lead && wears}
	rate := lim.turnRate()
	k.turn = newSway(k.along, rate, 2*rate, start, until)
	return k
}

// path is the trail, made when first asked for.
func (t *Track) path() *trail {
	t.once.Do(func() { t.trail = newTrail(t) })
	return t.trail
}

func besideAngle(s plan.Side) float64 {
	if s == plan.Right {
		return -math.Pi / 2
	}
	return math.Pi / 2
}
