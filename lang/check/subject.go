package check

import (
	"fmt"

	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// subject is what a line has a camera see: itself, or its reflection.
type subject struct {
	thing  plan.Thing
	bodies []int        // of the scene
	glass  *plan.Mirror // it is seen in; nil where it is seen directly
}

// subject is what a target is; false for a place, and for what has no body.
func (p *Pass) subject(t plan.Target) (subject, bool) {
	s := subject{t.Thing, p.Stage.Body(t.Thing), t.Glass}
	return s, t.Thing != nil && len(s.bodies) > 0
}

// persons is the people that an aim has in it, in the order of the text.
func (p *Pass) persons(l *looking) []subject {
	var out []subject
	for _, t := range l.aim.See.Targets {
		if s, ok := p.subject(t); ok && s.person() != nil {
			out = append(out, s)
		}
	}
	return out
}

// directly is a person as seen without a mirror.
func (p *Pass) directly(who *plan.Person) subject {
	return subject{thing: who, bodies: p.Stage.Body(who)}
}

func (s subject) person() *plan.Person { return personOf(s.thing) }

// called is the subject's name, and the mirror's: "mina in glass".
func (s subject) called() string {
	if s.glass != nil {
		return s.thing.ID().Name + " in " + s.glass.Name
	}
	return s.thing.ID().Name
}

// relateGlass points to the mirror that a subject is seen in.
func (p *Pass) relateGlass(d *diag.Diagnostic, s subject) {
	if s.glass != nil {
		d.Relate(s.glass.Decl, "the mirror %s", s.glass.Name)
	}
}

// mirrorFor is the mirror of the scene in which a lens would see the subject at a
// frame: the one of its faces that the lens is before. False where it is seen
// directly, or the lens is before neither.
func (p *Pass) mirrorFor(camera int, s subject, f units.Frame) (int, bool) {
	if s.glass == nil {
		return sight.NoMirror, false
	}
	lens := p.eye(camera, f).at.Floor()
	for i := range p.Stage.Scene.Mirrors {
		if m := &p.Stage.Scene.Mirrors[i]; m.Name == s.glass.Name && beforeGlass(m, lens) > 0 {
			return i, true
		}
	}
	return sight.NoMirror, false
}

// beforeGlass is how far before the bright face of a mirror a place is, metres.
func beforeGlass(m *sight.Mirror, p geom.Vec) float64 {
	return p.Sub(m.A).Dot(m.B.Sub(m.A).Unit().Left())
}

// seenAt is what a camera sees of a subject at a frame; false where it is out of
// frame, or of the mirror.
func (p *Pass) seenAt(camera int, s subject, f units.Frame) (sight.Moment, bool) {
	mirror, ok := p.mirrorFor(camera, s, f)
	if s.glass != nil && !ok {
		return sight.Moment{Frame: f}, false
	}
	return p.views().of(camera, mirror, s.bodies, f)
}

// poseOf is where a lens sees a subject at a frame: where its image stands, if it
// is seen in a mirror. False where the lens is before neither face of that.
func (p *Pass) poseOf(camera int, s subject, f units.Frame) (sight.Pose, bool) {
	pose := p.Stage.Scene.Bodies[s.bodies[0]].At(f)
	if s.glass == nil {
		return pose, true
	}
	i, ok := p.mirrorFor(camera, s, f)
	if !ok {
		return pose, false
	}
	return imageOf(&p.Stage.Scene.Mirrors[i], pose), true
}

// imageOf is a pose turned over across a mirror.
func imageOf(m *sight.Mirror, pose sight.Pose) sight.Pose {
	glass := geom.Segment{A: m.A, B: m.B}
	at := glass.Mirror(geom.Vec{X: pose.X, Y: pose.Y})
	pose.X, pose.Y, pose.Heading = at.X, at.Y, 2*m.B.Sub(m.A).Angle()-pose.Heading
	return pose
}

// whyNotInGlass says why a mirror does not show a subject, and what stands in the
// way where something does.
func (p *Pass) whyNotInGlass(camera int, track *motion.CameraTrack, s subject, f units.Frame) (string, plan.Thing) {
	name, glass := s.thing.ID().Name, s.glass.Name
	i, ok := p.mirrorFor(camera, s, f)
	if !ok {
		return track.Camera.Name + " is before neither face of " + glass, nil
	}
	m := &p.Stage.Scene.Mirrors[i]
	pose := p.Stage.Scene.Bodies[s.bodies[0]].At(f)
	if pose.Height <= 0 {
		return "not there", nil
	}
	if beforeGlass(m, geom.Vec{X: pose.X, Y: pose.Y}) <= 0 {
		return fmt.Sprintf("%s and %s are on different sides of %s", name, track.Camera.Name, glass), nil
	}
	image := imageOf(m, pose)
	if _, in := p.views().of(camera, i, s.bodies, f); in {
		if list := p.named(p.Sight.CoveringIn(i, camera, s.bodies[0], f), nil); len(list) > 0 {
			far := geom.Vec{X: image.X, Y: image.Y}.Dist(p.eye(camera, f).at.Floor())
			return fmt.Sprintf("hidden behind %s; by way of %s, %s is %s away", what(list[0].Name, list[0].Kind), glass, name, p.away(far)),
				p.thing(list[0].Name, list[0].Kind)
		}
		return "hidden", nil
	}
	if off := p.offGlass(camera, m, image, f); off != "" {
		return fmt.Sprintf("the way to %s by %s misses the glass: %s", name, glass, off), nil
	}
	return "out of frame, " + p.outsideAt(camera, image, f), nil
}

// offGlass says by how much the way from the lens to the middle of an image passes
// the glass; empty where it goes through.
func (p *Pass) offGlass(camera int, m *sight.Mirror, image sight.Pose, f units.Frame) string {
	by, side := passesGlass(m, p.eye(camera, f).at, geom.Vec3{X: image.X, Y: image.Y, Z: image.Z + image.Height/2})
	if side == "" {
		return ""
	}
	return p.away(by) + " " + side + " it"
}

// glassEdge is how near the edge of a mirror a line still counts as through it,
// metres.
const glassEdge = 0.005

// passesGlass is by how much, in metres at the glass, the straight line from a lens
// to a point beyond it passes the glass, and on which side; none where it goes
// through.
func passesGlass(m *sight.Mirror, lens, to geom.Vec3) (by float64, side string) {
	a, b := beforeGlass(m, lens.Floor()), beforeGlass(m, to.Floor())
	if a-b < 1e-9 {
		return 0, ""
	}
	hit := lens.Add(to.Sub(lens).Mul(a / (a - b)))
	long := m.B.Sub(m.A)
	along := hit.Floor().Sub(m.A).Dot(long.Unit())
	by = glassEdge
	// Whoever looks at the glass has A at their right.
	for _, o := range []struct {
		by   float64
		side string
	}{{-along, "to the right of"}, {along - long.Len(), "to the left of"}, {hit.Z - m.Z[1], "above"}, {m.Z[0] - hit.Z, "below"}} {
		if o.by > by {
			by, side = o.by, o.side
		}
	}
	if side == "" {
		return 0, ""
	}
	return by, side
}

// headPastGlass is by how much the way to a reflection's head passes the glass: to
// its top, or to its middle on the other sides.
func (p *Pass) headPastGlass(camera int, s subject, f units.Frame) (by float64, side string) {
	i, ok := p.mirrorFor(camera, s, f)
	if !ok {
		return 0, ""
	}
	m := &p.Stage.Scene.Mirrors[i]
	image := imageOf(m, p.Stage.Scene.Bodies[s.bodies[0]].At(f))
	top := geom.Vec3{X: image.X, Y: image.Y, Z: image.Z + image.Height}
	lens := p.eye(camera, f).at
	if by, side = passesGlass(m, lens, top); side != "" {
		return by, side
	}
	top.Z -= (1 - body.ChinFraction) / 2 * float64(s.person().Height)
	return passesGlass(m, lens, top)
}
