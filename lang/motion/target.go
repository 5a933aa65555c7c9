package motion

import (
	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
)

// target is what is looked at, followed or gone round.
type target struct {
	track *Track       // nil for what stands still
	cam   *CameraTrack // of a camera; track is then nil
	glass *glass       // it is seen in; nil for none
	fixed geom.Vec3    // the middle of what stands still, at the height to aim at
}

// moves says that the target is not always in one place.
func (g target) moves() bool { return g.track != nil || g.cam != nil }

// point is the middle of the target on the floor: of its image, where it is seen in
// a mirror.
func (g target) point(t float64) geom.Vec {
	if g.glass != nil {
		return g.glass.image(g.itself(t))
	}
	return g.itself(t)
}

// itself is where the target stands, wherever it is seen.
func (g target) itself(t float64) geom.Vec {
	switch {
	case g.track != nil:
		return g.track.point(t).Floor()
	case g.cam != nil:
		return g.cam.pupil(t).Floor()
	}
	return g.fixed.Floor()
}

// heading is the way the target faces; what stands still faces +x.
func (g target) heading(t float64) float64 {
	switch {
	case g.track != nil:
		return g.track.heading(t)
	case g.cam != nil:
		return g.cam.pan(t)
	}
	return 0
}

// aimFraction is how high to aim at something without a head, of its height.
const aimFraction = 0.5

// eyesOver is the height to aim at over a place on the floor: the eyes of
// whoever might stand there.
var eyesOver = float64(body.EyeHeight(body.Anybody().Stature, body.Standing))

// target finds what a text names; false where that, or the mirror it is seen in, is
// nowhere in the set or on the floor. Cameras are those of the round before.
func (b *builder) target(t plan.Target) (target, bool) {
	g, ok := b.itself(t)
	if !ok {
		return target{}, false
	}
	g.glass, ok = glassOf(t.Glass)
	return g, ok
}

func (b *builder) itself(t plan.Target) (target, bool) {
	if t.Thing == nil {
		if t.Place == nil {
			return target{}, false
		}
		if z, ok := statedZ(t.Place); ok {
			return target{fixed: t.Place.Point.At(z)}, true
		}
		return target{fixed: t.Place.Point.At(b.placeZ(t.Place) + eyesOver)}, true
	}
	switch thing := t.Thing.(type) {
	case *plan.Person, *plan.Vehicle, *plan.Rig:
		if tr := b.track(thing); tr != nil {
			return target{track: tr}, true
		}
		return target{}, false
	case *plan.Camera:
		if b.prev != nil {
			if cam := b.prev.Camera(thing); cam != nil {
				return target{cam: cam}, true
			}
		}
		b.looped = true
		return target{}, false
	}
	p, ok := b.middle(t.Thing)
	return target{fixed: p}, ok
}

// middle is the middle of something that stands still.
func (b *builder) middle(t plan.Thing) (geom.Vec3, bool) {
	lift := func(p geom.Vec, low, high float64) (geom.Vec3, bool) {
		return p.At(low + aimFraction*(high-low)), true
	}
	on := func(o plan.On, r plan.Range) (geom.Vec3, bool) {
		if o.Wall == nil {
			return geom.Vec3{}, false
		}
		p, _ := o.Middle()
		return lift(p, float64(r.Low), float64(r.High))
	}
	switch t := t.(type) {
	case *plan.Door:
		return on(t.On, t.High)
	case *plan.Pane:
		return on(t.On, t.High)
	case *plan.Mirror:
		return on(t.On, t.High)
	case *plan.Glow:
		return on(t.On, t.High)
	case *plan.Hole:
		if t.Wall == nil {
			return geom.Vec3{}, false
		}
		p, _ := plan.On{Wall: t.Wall, From: t.Along, To: t.Along}.Ends()
		return p.At(float64(t.Up)), true
	case *plan.Mark:
		z := b.g.stand(t.Point)
		if t.Z != nil {
			z = float64(*t.Z)
		}
		return t.Point.At(z + eyesOver), true
	case *plan.Pillar:
		return lift(t.Centre, float64(t.High.Low), float64(t.High.High))
	case *plan.Block:
		return lift(centroid(t.Polygon), float64(t.High.Low), float64(t.High.High))
	case *plan.Platform:
		return centroid(t.Polygon).At(float64(t.High.High)), true
	case *plan.Stairs:
		return t.Foot.Lerp(t.Head, 0.5).At(float64(t.FootZ + t.Rise/2)), true
	case *plan.Wall:
		if len(t.Line) == 0 {
			return geom.Vec3{}, false
		}
		low, high := geom.Bounds(t.Line)
		return lift(low.Lerp(high, 0.5), float64(t.High.Low), float64(t.High.High))
	case *plan.Lamp:
		for _, l := range b.p.Set.Placed {
			if l.Lamp == t {
				return l.At.Point.At(float64(l.Up)), true
			}
		}
	}
	return geom.Vec3{}, false
}

func centroid(points []geom.Vec) geom.Vec {
	if len(points) == 0 {
		return geom.Vec{}
	}
	return geom.Polygon(points).Centroid()
}
