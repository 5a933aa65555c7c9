package sight

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// offLimit is how far off the frame's edge a glow is still looked for; beyond
// it the lens's own hood deals with it.
const offLimit = math.Pi / 2

// newGlares makes an empty entry for each stretch of rolling and each glow.
func (st *stage) newGlares() []Glare {
	var out []Glare
	if len(st.scene.Glows) == 0 || st.unlit {
		return nil
	}
	for c := range st.scene.Cameras {
		rolls := st.rolls(c)
		for g := range st.scene.Glows {
			for _, r := range rolls {
				n := int(r.To-r.From) + 1
				out = append(out, Glare{Camera: c, Glow: g, Frames: r,
					Share: make([]float32, n), Off: make([]float32, n), Facing: make([]float32, n), Open: make([]float32, n)})
			}
		}
	}
	return out
}

// glows fills in every glow at a frame, which the looker has turned to.
func (w *tileWorker) glows(camera int, f units.Frame) {
	for i := range w.glares {
		g := &w.glares[i]
		if g.Camera != camera || f < g.From || f > g.To {
			continue
		}
		k := f - g.From
		share, off, facing, open := w.glow(camera, g.Glow, f)
		g.Share[k], g.Off[k], g.Facing[k], g.Open[k] = float32(share), float32(off), float32(facing), float32(open)
	}
}

// glow measures one glow: see Glare.
func (l *looker) glow(camera, glow int, f units.Frame) (share, off, facing, open float64) {
	e := &l.eye
	g := &l.st.flats[len(l.st.scene.Mirrors)+glow]
	middle := g.a.Lerp(g.b, 0.5)
	toLens := geom.Vec3{X: e.x - middle.X, Y: e.y - middle.Y, Z: e.z - (g.z0+g.z1)/2}
	n := g.b.Sub(g.a).Unit().Left()
	if d := toLens.Len(); d > 0 {
		facing = (n.X*toLens.X + n.Y*toLens.Y) / d
	}
	t := &l.shown
	if l.flatItem(t, g) && e.meets(t) {
		if s := l.measure(t); s.whole > 0 {
			return 100 * s.open / e.area, 0, facing, min(1, s.open/s.whole)
		}
	}
	off = e.offFrame(g)
	if off < offLimit {
		open = l.openAside(camera, g, f)
	}
	return 0, off * 180 / math.Pi, facing, open
}

// flatItem sees an upright rectangle from either side.
func (l *looker) flatItem(t *item, g *upflat) bool {
	e := &l.eye
	aq, al := e.place(g.a.X, g.a.Y)
	bq, bl := e.place(g.b.X, g.b.Y)
	l.pts = append(l.pts[:0], [2]float64{aq, al}, [2]float64{bq, bl})
	return e.prismItem(t, l.pts, g.z0-e.z, g.z1-e.z)
}

// openAside is the part of a rectangle, seen from the lens but out of its frame,
// that nothing covers: the lens is turned to it to find out.
func (l *looker) openAside(camera int, g *upflat, f units.Frame) float64 {
	if l.aside == nil {
		l.aside = newLooker(l.st)
	}
	a := l.aside
	middle := g.a.Lerp(g.b, 0.5)
	e := &l.eye
	dx, dy, dz := middle.X-e.x, middle.Y-e.y, (g.z0+g.z1)/2-e.z
	v := View{X: e.x, Y: e.y, Z: e.z, Pan: math.Atan2(dy, dx), Tilt: math.Atan2(dz, math.Hypot(dx, dy)), Focal: 1}
	const wide = 8 // tangent of half the angle of view: 83 degrees
	if !a.turn(&Camera{Width: 2 * wide, Height: 2 * wide}, v, camera, f) {
		return 0
	}
	t := &a.shown
	if !a.flatItem(t, g) {
		return 0
	}
	s := a.measure(t)
	if s.whole <= 0 {
		return 0
	}
	return min(1, s.open/s.whole)
}

// offFrame is the least angle, in radians, between the frame and a rectangle out
// of it.
func (e *eye) offFrame(g *upflat) float64 {
	aq, al := e.place(g.a.X, g.a.Y)
	bq, bl := e.place(g.b.X, g.b.Y)
	corner := [4][3]float64{{aq, al, g.z0 - e.z}, {bq, bl, g.z0 - e.z}, {bq, bl, g.z1 - e.z}, {aq, al, g.z1 - e.z}}
	best := math.Pi
	for i := range corner {
		a, b := corner[i], corner[(i+1)%4]
		at := func(k float64) float64 {
			return e.offDirection([3]float64{a[0] + (b[0]-a[0])*k, a[1] + (b[1]-a[1])*k, a[2] + (b[2]-a[2])*k})
		}
		const steps = 8
		k0, least := 0.0, math.Inf(1)
		for j := range steps + 1 {
			if v := at(float64(j) / steps); v < least {
				k0, least = float64(j)/steps, v
			}
		}
		lo, hi := max(0, k0-1.0/steps), min(1, k0+1.0/steps)
		for range 12 { // thirds, down to a thousandth of the side
			m0, m1 := lo+(hi-lo)/3, hi-(hi-lo)/3
			if at(m0) < at(m1) {
				hi = m1
			} else {
				lo = m0
			}
		}
		best = min(best, min(least, at((lo+hi)/2)))
	}
	return best
}

// offDirection is the least angle between a direction and the frame's.
func (e *eye) offDirection(d [3]float64) float64 {
	dot := func(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
	n := math.Sqrt(dot(d, d))
	if n == 0 {
		return 0
	}
	// In the camera's axes: ahead, to the left, up.
	z, x, y := dot(d, e.fwd)/n, math.Abs(dot(d, e.left)/n), math.Abs(dot(d, e.up)/n)
	if z > 0 && x <= e.tx*z && y <= e.ty*z {
		return 0
	}
	// The frame is the same on both sides: against the corner's two edges, the
	// right one (x = tx z) and the upper one (y = ty z), each an arc from the
	// corner to its mirror image.
	best := angleTo(z, x, y, 1, e.tx, e.ty)
	if a, ok := angleToEdge(z, x, y, e.tx, e.ty); ok {
		best = min(best, a)
	}
	if a, ok := angleToEdge(z, y, x, e.ty, e.tx); ok {
		best = min(best, a)
	}
	return best
}

func angleTo(z, x, y, z1, x1, y1 float64) float64 {
	n := math.Sqrt(z1*z1 + x1*x1 + y1*y1)
	return math.Acos(max(-1, min(1, (z*z1+x*x1+y*y1)/n)))
}

// angleToEdge is the angle to the foot on the plane x = t z of a side of the
// frame, if the foot is between that side's ends.
func angleToEdge(z, x, y, t, other float64) (float64, bool) {
	n := math.Sqrt(1 + t*t)
	out := (x - t*z) / n
	zf, xf := z+out*t/n, x-out/n
	if zf <= 0 || math.Abs(y) > other*zf {
		return 0, false
	}
	return angleTo(z, x, y, zf, xf, y), true
}
