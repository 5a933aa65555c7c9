package motion

import (
	"math"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// backing finds who walks backwards, when and how far: in relations, and on
// moves told to go backwards or to face something.
func (b *builder) backing(t *Tracks) {
	for _, tr := range t.Bodies {
		if rig, ok := tr.Thing.(*plan.Rig); ok && b.wearer(rig, 0) != nil {
			continue // its wearer does
		}
		for i := range tr.Segments {
			s := &tr.Segments[i]
			if spots(s.Action) {
				continue // faces the way the one who is spotted goes
			}
			if s.Kind == Relating || s.Kind == Moving && (s.Backwards || facesElsewhere(s.Action)) {
				b.backingOf(t, tr, s)
			}
		}
	}
}

func spots(a *plan.Action) bool {
	if a == nil {
		return false
	}
	_, ok := a.Deed.(*plan.Spot)
	return ok
}

func facesElsewhere(a *plan.Action) bool {
	d, ok := a.Deed.(*plan.Move)
	return ok && d.Path.Facing != nil
}

// backSlow is the speed below which nobody is said to walk backwards, m/s.
const backSlow = 0.1

func (b *builder) backingOf(t *Tracks, tr *Track, s *Segment) {
	from, to := s.span()
	n, step := looks(to-from, relationStep)
	var cur *Backing
	p := s.way.at(from).Floor()
	flush := func() {
		if cur != nil && cur.Length > 0.05 {
			if cur.Spotter = b.spotter(tr.Thing, float64(cur.From), float64(cur.To)); cur.Spotter != nil {
				cur.Away = farthest(t.Body(cur.Spotter), tr, float64(cur.From), float64(cur.To))
			}
			b.facts.Backing = append(b.facts.Backing, *cur)
		}
		cur = nil
	}
	for i := range n {
		at := from + step*float64(i+1)
		q := s.way.at(at).Floor()
		v := q.Sub(p).Mul(1 / step)
		moved := q.Dist(p)
		p = q
		if v.Len() < backSlow || !goesBack(v, tr.heading(at-step/2)) {
			flush()
			continue
		}
		if cur == nil {
			cur = &Backing{Who: tr.Thing, Camera: b.holding(tr.Thing, at-step), Action: s.Action, From: units.Seconds(at - step)}
		}
		cur.To = units.Seconds(at)
		cur.Length += units.Metres(moved)
		cur.Peak = max(cur.Peak, units.MetresPerSecond(v.Len()))
	}
	flush()
}

// holding is the camera that a person or a rig carries at a time.
func (b *builder) holding(t plan.Thing, at float64) *plan.Camera {
	for _, camera := range b.p.Kit.Cameras {
		if h := holdAt(b.holds[camera], at); h != nil && h.start <= at+1e-9 && h.base() == t {
			return camera
		}
	}
	return nil
}

// spotter is who spots somebody all through a time.
func (b *builder) spotter(who plan.Thing, from, to float64) *plan.Person {
	for _, a := range b.r.actions {
		d, ok := a.Deed.(*plan.Spot)
		if !ok || d.Whom == nil || plan.Thing(d.Whom) != who {
			continue
		}
		iv := b.c.Of(a)
		if spotter, ok := a.Subject.(*plan.Person); ok && float64(iv.Start) <= from+0.5 && float64(iv.End) >= to-0.5 {
			return spotter
		}
	}
	return nil
}

// farthest is the most that two bodies are from each other over a time.
func farthest(one, other *Track, from, to float64) units.Metres {
	if one == nil {
		return units.Metres(math.Inf(1))
	}
	n, step := looks(to-from, relationStep)
	far := 0.0
	for i := range n + 1 {
		at := from + step*float64(i)
		far = math.Max(far, one.point(at).Floor().Dist(other.point(at).Floor()))
	}
	return units.Metres(far)
}
