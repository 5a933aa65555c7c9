package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// What is seen in a mirror is seen where its image is: as far behind the glass as
// it stands before it. The light goes from it to the glass and on to the lens, and
// that way is as long as the straight one from the image, so that aim, size and
// focus are those of something that stands there. The image lies at the height of
// what it is of: the glass hangs upright.

// glass is a mirror that something is seen in.
type glass struct {
	at     geom.Vec // on the middle of its wall
	across geom.Vec // of length 1, to the left of the wall's line
	face   float64  // from there to either face, metres
}

// glassOf is nil for what is seen directly, and false for a mirror that hangs
// nowhere.
func glassOf(m *plan.Mirror) (*glass, bool) {
	if m == nil {
		return nil, true
	}
	if m.Bad || m.Wall == nil {
		return nil, false
	}
	at, dir := m.Middle()
	a, b := m.Face(true)
	g := &glass{at: at, across: dir.Left()}
	g.face = a.Lerp(b, 0.5).Sub(at).Dot(g.across)
	return g, true
}

// image is where the mirror shows what is at a place on the floor, in the face
// that it stands before.
func (g *glass) image(p geom.Vec) geom.Vec {
	d := p.Sub(g.at).Dot(g.across)
	face := g.face
	if d < 0 {
		face = -face
	}
	return p.Sub(g.across.Mul(2 * (d - face)))
}

// Image is where a mirror shows somebody who is somewhere: as far behind the glass,
// turned over across it. Without a mirror, or with one that hangs nowhere, it is where
// they are.
func Image(m *plan.Mirror, p Pose) Pose {
	g, ok := glassOf(m)
	if !ok || g == nil {
		return p
	}
	at := g.image(p.Point())
	p.X, p.Y = units.Metres(at.X), units.Metres(at.Y)
	p.Heading = geom.AngleDiff(0, 2*g.across.Angle()+math.Pi-p.Heading)
	return p
}
