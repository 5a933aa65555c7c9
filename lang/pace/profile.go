package pace

import (
	"math"
	"sort"

	"longhand/lang/units"
)

// Profile is a length as a function of time: stretches of steady acceleration,
// one after the other. It begins at time 0 and length 0, and is never changed
// once made.
type Profile struct {
	parts  []part
	length units.Metres
	time   units.Seconds
	exit   units.MetresPerSecond
}

// part is one stretch: from time t, length s and speed v, with acceleration a.
type part struct{ t, s, v, a, dt float64 }

func (p *part) at(dt float64) float64    { return p.s + dt*(p.v+dt*p.a/2) }
func (p *part) speed(dt float64) float64 { return max(0, p.v+dt*p.a) }

// builder strings parts together.
type builder struct {
	parts []part
	t, s  float64
}

// run adds a stretch of length ds from speed v0 to v1, at steady acceleration.
func (b *builder) run(ds, v0, v1 float64) {
	if !(ds > 0) || !(v0+v1 > 0) {
		return
	}
	dt := 2 * ds / (v0 + v1)
	if n := len(b.parts); n > 0 && v0 == v1 && b.parts[n-1].a == 0 && b.parts[n-1].v == v0 {
		b.parts[n-1].dt += dt // the cruise goes on
		b.t += dt
		b.s += ds
		return
	}
	b.parts = append(b.parts, part{b.t, b.s, v0, (v1 - v0) / dt, dt})
	b.t += dt
	b.s += ds
}

func (b *builder) profile(length, exit float64) *Profile {
	return &Profile{
		parts: b.parts, length: units.Metres(length),
		time: units.Seconds(b.t), exit: units.MetresPerSecond(exit),
	}
}

// Length is the length of the move.
func (p *Profile) Length() units.Metres { return p.length }

// Duration is how long the move takes.
func (p *Profile) Duration() units.Seconds { return p.time }

func (p *Profile) part(t units.Seconds) (*part, float64) {
	low, high := 0, len(p.parts)
	for low+1 < high {
		if half := (low + high) / 2; p.parts[half].t > float64(t) {
			high = half
		} else {
			low = half
		}
	}
	return &p.parts[low], float64(t) - p.parts[low].t
}

// At is the length behind at a time: 0 up to the start, the whole length from
// the end on, exactly. It never falls as time goes on.
func (p *Profile) At(t units.Seconds) units.Metres {
	switch {
	case t >= p.time:
		return p.length
	case !(t > 0):
		return 0
	}
	part, _ := p.part(t)
	return p.in(part, t)
}

// in is the length behind at a time in one of its parts.
func (p *Profile) in(part *part, t units.Seconds) units.Metres {
	end := part.s + (part.v+part.dt*part.a/2)*part.dt
	return units.Metres(max(part.s, min(part.at(float64(t)-part.t), min(end, float64(p.length)))))
}

// Cursor finds lengths of a profile at times in order, each from where the last
// was found. Its zero value with a profile stands at the beginning.
type Cursor struct {
	Profile *Profile
	part    int
}

// At is the profile's; times may not go back.
func (c *Cursor) At(t units.Seconds) units.Metres {
	p := c.Profile
	switch {
	case t >= p.time:
		return p.length
	case !(t > 0):
		return 0
	}
	for c.part+1 < len(p.parts) && p.parts[c.part+1].t <= float64(t) {
		c.part++
	}
	return p.in(&p.parts[c.part], t)
}

// Speed at a time: the entry speed before the start, the exit speed past the
// end.
func (p *Profile) Speed(t units.Seconds) units.MetresPerSecond {
	switch {
	case len(p.parts) == 0 || t >= p.time:
		return p.exit
	case !(t > 0):
		return units.MetresPerSecond(p.parts[0].v)
	}
	part, dt := p.part(t)
	return units.MetresPerSecond(part.speed(dt))
}

// Accel at a time; where it jumps, that of what comes next. It is 0 before the
// start and from the end on.
func (p *Profile) Accel(t units.Seconds) units.MetresPerSecond2 {
	if len(p.parts) == 0 || !(t >= 0) || t >= p.time {
		return 0
	}
	part, _ := p.part(t)
	return units.MetresPerSecond2(part.a)
}

// Peak is the greatest speed of the move.
func (p *Profile) Peak() units.MetresPerSecond {
	peak := float64(p.exit)
	for i := range p.parts {
		peak = max(peak, max(p.parts[i].v, p.parts[i].speed(p.parts[i].dt)))
	}
	return units.MetresPerSecond(peak)
}

// PeakAt is when the greatest speed is first reached.
func (p *Profile) PeakAt() units.Seconds {
	peak := float64(p.Peak()) * (1 - 1e-9) // of speeds alike but for rounding the first
	for i := range p.parts {
		part := &p.parts[i]
		switch {
		case part.v >= peak:
			return units.Seconds(part.t)
		case part.speed(part.dt) >= peak:
			return units.Seconds(part.t + part.dt)
		}
	}
	return p.time
}

// Strain is the greatest acceleration, up or down, of the move.
func (p *Profile) Strain() units.MetresPerSecond2 {
	most := 0.0
	for i := range p.parts {
		most = max(most, math.Abs(p.parts[i].a))
	}
	return units.MetresPerSecond2(most)
}

// TimeAt is when a length is first reached: 0 at or before the start, Duration
// at or past the end.
func (p *Profile) TimeAt(s units.Metres) units.Seconds {
	switch {
	case s >= p.length:
		return p.time
	case !(s > 0):
		return 0
	}
	i := sort.Search(len(p.parts)-1, func(i int) bool { return p.parts[i+1].s > float64(s) })
	part := &p.parts[i]
	ds := float64(s) - part.s
	// s = v t + a t²/2, as 2s / (v + √(v² + 2as)): no cancellation, a may be 0.
	root := math.Sqrt(max(0, part.v*part.v+2*part.a*ds))
	dt := 0.0 // so short a way from rest that its square root underflows
	if part.v+root > 0 {
		dt = min(part.dt, 2*ds/(part.v+root))
	}
	return units.Seconds(part.t + dt)
}
