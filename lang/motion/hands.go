package motion

import (
	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// handoffs records a camera's changes of hands.
func (b *builder) handoffs(c *CameraTrack) {
	for i := 1; i < len(c.mounts); i++ {
		was, now := &c.mounts[i-1], &c.mounts[i]
		if was.base == nil || now.base == nil {
			continue
		}
		h, old := now.h, was.h
		f := Handoff{
			Camera: c.Camera, Action: h.action, Written: h.handoff != nil,
			From: old.rig, To: h.rig, Giver: old.operator, Taker: h.operator,
			Start: units.Seconds(h.start), End: units.Seconds(h.taken),
			Way: body.HandoffBetween(old.class.Class, h.class.Class),
			At:  was.pupil(h.start), Onto: now.pupil(h.start),
		}
		if f.Window = b.windowBetween(f.At, f.Onto); f.Window != nil {
			f.Way = f.Way.Through()
		}
		f.GapStart = units.Metres(was.pupil(h.start).Dist(now.pupil(h.start)))
		f.GapEnd = units.Metres(was.pupil(h.taken).Dist(now.pupil(h.taken)))
		same := old.operator != nil && old.operator == h.operator
		const points = 24
		for k := range points + 1 {
			t := h.start + (h.taken-h.start)*float64(k)/points
			va, vb := was.base.velocity(t), now.base.velocity(t)
			a, z := va.Len(), vb.Len()
			relative := va.Sub(vb).Len()
			if same { // the operator steps over: only what is stepped on or off counts
				if old.worn() {
					a = 0
				}
				if h.worn() {
					z = 0
				}
				relative = max(a, z)
			}
			f.Relative = max(f.Relative, units.MetresPerSecond(relative))
			f.Moving = max(f.Moving, units.MetresPerSecond(max(a, z)))
		}
		if h.handoff != nil {
			f.Weight = h.handoff.Weight
			if f.Place = h.handoff.At; f.Place != nil {
				f.Off = units.Metres(f.At.Floor().Dist(f.Place.Point))
			}
		}
		f.StepsOff = old.ridden() && same && !h.ridden()
		if !old.worn() || old.operator == nil || same {
			f.Left = old.rig
		}
		b.facts.Handoffs = append(b.facts.Handoffs, f)
	}
}

// windowBetween is the window that the straight way from one place to another goes
// through; nil for none.
func (b *builder) windowBetween(from, to geom.Vec3) *plan.Pane {
	way := geom.Segment{A: from.Floor(), B: to.Floor()}
	for _, w := range b.p.Set.Windows {
		if w.Bad || w.Wall == nil {
			continue
		}
		a, z := w.Ends()
		k, _, ok := way.Intersect(geom.Segment{A: a, B: z})
		if high := from.Z + (to.Z-from.Z)*k; ok && high >= float64(w.High.Low) && high <= float64(w.High.High) {
			return w
		}
	}
	return nil
}

// loads records what each rig carries, and who carries a worn one, split where
// the lens changes.
func (b *builder) loads(c *CameraTrack) {
	for i := range c.mounts {
		h := c.mounts[i].h
		if h.rig == nil {
			continue
		}
		from, to := h.start, min(h.end, b.end)
		if i+1 < len(c.mounts) { // both hold it until it is taken
			to = min(c.mounts[i+1].h.taken, b.end)
		}
		heaviest := units.Kilograms(0)
		for _, span := range c.fitted(from, to) {
			l := Load{
				Camera: c.Camera, Rig: h.rig, Operator: h.operator, Action: h.action,
				Start: units.Seconds(span.from), End: units.Seconds(span.to), Weight: c.Camera.Weight,
			}
			if span.fit != nil {
				l.Lens = span.fit.Lens
				l.Weight += span.fit.Lens.Weight
				if float64(span.fit.At) > from {
					l.Action = span.fit.Action
				}
			}
			heaviest = max(heaviest, l.Weight)
			b.facts.Loads = append(b.facts.Loads, l)
		}
		if h.worn() {
			b.facts.Carries = append(b.facts.Carries, Carry{
				Who: h.operator, Rig: h.rig, Camera: c.Camera,
				From: units.Seconds(from), To: units.Seconds(to), Load: heaviest,
			})
		}
	}
}

type fitted struct {
	from, to float64
	fit      *Fit
}

// fitted splits a time where another lens is fitted.
func (c *CameraTrack) fitted(from, to float64) []fitted {
	out := []fitted{{from, to, c.Fit(units.Seconds(from))}}
	for i := range c.Fits {
		f := &c.Fits[i]
		at := float64(f.At)
		last := &out[len(out)-1]
		if at > from && at < to && (last.fit == nil || last.fit.Lens != f.Lens) {
			last.to = at
			out = append(out, fitted{at, to, f})
		}
	}
	return out
}
