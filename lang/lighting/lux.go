package lighting

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/light"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Lux is the light that the lamps give at a place at a time, each on a surface
// turned to it (the inverse square law, I/d²). Lamps whose intensity the plan
// doesn't give are left out; so are shadows, walls and the daylight.
func (l *Lighting) Lux(point geom.Vec3, t units.Seconds) units.Lux {
	sum := units.Lux(0)
	for i := range l.Units {
		sum += l.Units[i].Lux(point, t)
	}
	return sum
}

// Reaching is Lux of those lamps alone for whose place reaches says so.
func (l *Lighting) Reaching(point geom.Vec3, t units.Seconds, reaches func(lamp geom.Vec3) bool) units.Lux {
	sum := units.Lux(0)
	for i := range l.Units {
		u := &l.Units[i]
		level := light.Linear.Light(u.Curve.At(t))
		if u.Lamp.Candela <= 0 || level <= 0 {
			continue
		}
		for _, at := range u.At {
			if reaches(at) {
				sum += light.Throw(at, u.Lamp.Candela*units.Candela(level), point, geom.Vec3{})
			}
		}
	}
	return sum
}

// Lux is the light that one unit gives at a place at a time.
func (u *Unit) Lux(point geom.Vec3, t units.Seconds) units.Lux {
	if u.Lamp.Candela <= 0 {
		return 0
	}
	level := light.Linear.Light(u.Curve.At(t))
	if level <= 0 {
		return 0
	}
	sum := units.Lux(0)
	for _, at := range u.At {
		sum += light.Throw(at, u.Lamp.Candela*units.Candela(level), point, geom.Vec3{})
	}
	return sum
}

// Measured is whether the plan gives the intensity of any lamp.
func (l *Lighting) Measured() bool {
	for i := range l.Units {
		if l.Units[i].Lamp.Candela > 0 {
			return true
		}
	}
	return false
}

// Blind are the units that burn at some time and whose intensity the plan
// doesn't give, so that Lux knows nothing of them.
func (l *Lighting) Blind() []*Unit {
	var out []*Unit
	for i := range l.Units {
		u := &l.Units[i]
		if u.Lamp.Candela > 0 {
			continue
		}
		for _, t := range l.Moves() {
			if u.Curve.At(t) > 0 {
				out = append(out, u)
				break
			}
		}
	}
	return out
}

// standing is where a placed lamp's light comes from.
func standing(p *plan.Plan, at *plan.PlacedLamp) geom.Vec3 {
	z := 0.0
	if at.At.Z != nil {
		z = float64(*at.At.Z)
	}
	return at.At.Point.At(z + float64(at.Up))
}

// Height is how high lamps hang on a grid: at its low side, or at the one height
// that the text gives ("high 5 m").
func Height(g *plan.Grid) units.Metres {
	if g.High.Low > 0 {
		return g.High.Low
	}
	return g.High.High
}

// hung are the places of a wash's lamps: evenly spread over the grid in rows.
func hung(w *plan.Wash) []geom.Vec3 {
	if w.Grid == nil || len(w.Grid.Polygon) < 3 {
		return nil
	}
	poly := geom.Polygon(w.Grid.Polygon)
	low, high := poly[0], poly[0]
	for _, v := range poly {
		low.X, low.Y = math.Min(low.X, v.X), math.Min(low.Y, v.Y)
		high.X, high.Y = math.Max(high.X, v.X), math.Max(high.Y, v.Y)
	}
	z := float64(Height(w.Grid))
	size := high.Sub(low)
	if !(size.X > 0) || !(size.Y > 0) {
		return nil
	}
	// Finer rows until enough of their places lie over the grid's own shape; of
	// too many, every so-many-eth.
	var places []geom.Vec3
	for n := w.Count; ; n += max(1, n/4) {
		places = rows(poly, low, size, z, n)
		if len(places) >= w.Count || n > 64*w.Count+64 {
			break
		}
	}
	if len(places) <= w.Count {
		return places
	}
	out := make([]geom.Vec3, w.Count)
	for i := range out {
		out[i] = places[(2*i+1)*len(places)/(2*w.Count)]
	}
	return out
}

// rows are about n places spread evenly over a rectangle, as far as they lie in a
// polygon.
func rows(poly geom.Polygon, low, size geom.Vec, z float64, n int) []geom.Vec3 {
	across := max(1, int(math.Round(math.Sqrt(float64(n)*size.X/size.Y))))
	up := (n + across - 1) / across
	var out []geom.Vec3
	for j := range up {
		for i := range across {
			p := geom.Vec{X: low.X + size.X*(float64(i)+0.5)/float64(across), Y: low.Y + size.Y*(float64(j)+0.5)/float64(up)}
			if poly.Contains(p) {
				out = append(out, p.At(z))
			}
		}
	}
	return out
}
