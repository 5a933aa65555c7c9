package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// A mover is a body that can run into something: a person with a circle about
// them, or a vehicle or a rig with a box.
type mover struct {
	thing  plan.Thing
	track  *motion.Track
	person *plan.Person
	rig    *plan.Rig
	class  body.Rig // of a rig
	radius float64  // of a person
	long   float64  // half the length of a box
	wide   float64  // half its width
	reach  float64  // of the circle about all of it
	low    float64  // of a box: over the floor it stands on
	high   float64

	staged *sight.Body     // that is where it is; nil where there is no scene
	lanes  []lane          // by look, where they were asked for
	looks  []motion.Pose   // at every look, and at the last frame
	close  [][]motion.Pose // at every frame, closeFrames on end where anybody asked
	boxes  []geom.Box      // by stage
	whole  geom.Box        // all of the boxes
	around [][]*obstacle   // by stage
}

// closeFrames is how many frames are looked at on end where a look is not enough.
const closeFrames = 64

// stageLooks is how many looks a stage lasts: two seconds.
const stageLooks = 8

// stages are the boxes about where a body is at some looks on end, so that whole
// stretches of a take may be passed over where two are far from each other; each
// takes in the look that the next begins with.
func (m *movers) stages(b *mover) []geom.Box {
	if b.boxes != nil {
		return b.boxes
	}
	looks := m.looksOf(b)
	b.whole = geom.BoxAt(looks[0].Point())
	for from := 0; from < len(m.lookAt); from += stageLooks {
		box := geom.BoxAt(looks[from].Point())
		for _, q := range looks[from+1 : min(from+stageLooks+1, len(looks))] {
			box = box.With(q.Point())
		}
		b.boxes = append(b.boxes, box)
		b.whole = b.whole.With(box.Low).With(box.High)
	}
	return b.boxes
}

// movers are all bodies of a take that can run into something, and how long a
// look ahead from frame to frame is.
type movers struct {
	rate   units.Rate
	frames int
	stride int // frames between the looks that find what is worth a closer one
	lookAt []units.Seconds
	list   []*mover
	by     map[plan.Thing]*mover
	worn   map[*plan.Rig][]worn
}

// worn is a time for which somebody has a rig on.
type worn struct {
	who      *plan.Person
	camera   *plan.Camera
	from, to units.Seconds
}

// A closer look follows where two things could come near each other between
// looks a quarter of a second apart. Nothing here changes speed by more than
// 8 m/s², so that between two looks it stays within a·t²/8 of the straight way.
const (
	lookEvery = 0.25 // s
	lookSlack = 8 * lookEvery * lookEvery / 8
)

func (p *Pass) moving() *movers {
	if p.bodies != nil {
		return p.bodies
	}
	t := p.Tracks
	m := &movers{rate: t.Rate, frames: t.Frames, by: map[plan.Thing]*mover{}, worn: map[*plan.Rig][]worn{}}
	m.stride = max(1, int(math.Round(t.Rate.PerSecond()*lookEvery)))
	for f := 0; f < m.frames; f += m.stride {
		m.lookAt = append(m.lookAt, m.time(f))
	}
	for _, c := range t.Cameras {
		for _, h := range c.Holds {
			if h.Worn {
				m.worn[h.Rig] = append(m.worn[h.Rig], worn{h.Operator, c.Camera, h.Start, h.End})
			}
		}
	}
	for _, tr := range t.Bodies {
		if b := newMover(tr); b != nil {
			b.staged = p.staged(b)
			m.list = append(m.list, b)
			m.by[tr.Thing] = b
		}
	}
	p.bodies = m
	return m
}

// staged is where a body was found to be at every frame when the scene was made,
// if it was: where its first part is, which stands on the floor.
func (p *Pass) staged(b *mover) *sight.Body {
	if p.Stage == nil || b.person == nil && b.low != 0 {
		return nil
	}
	if bodies := p.Stage.Body(b.thing); len(bodies) > 0 {
		return &p.Stage.Scene.Bodies[bodies[0]]
	}
	return nil
}

func newMover(tr *motion.Track) *mover {
	b := &mover{thing: tr.Thing, track: tr}
	switch thing := tr.Thing.(type) {
	case *plan.Person:
		b.person = thing
		b.radius = float64(tr.Radius)
		b.reach = b.radius
	case *plan.Vehicle:
		b.low, b.high = float64(thing.High.Low), float64(thing.High.High)
	case *plan.Rig:
		class, err := body.ParseClass(thing.Class)
		if err != nil || class == body.Hide {
			return nil
		}
		b.rig, b.class = thing, body.RigOf(class)
		if b.class.Crewing == body.Worn {
			return nil // it goes where its wearer goes
		}
		b.high = float64(b.class.Height)
		if thing.High > 0 {
			b.high = float64(thing.High)
		}
		if class == body.Cable {
			b.low = math.Max(0, b.high-hungHeight)
		}
	default:
		return nil
	}
	if b.person == nil {
		b.long, b.wide = float64(tr.Length)/2, float64(tr.Width)/2
		b.reach = math.Hypot(b.long, b.wide)
	}
	return b
}

// hungHeight is how high what hangs from a cable is itself (common practice, no
// source).
const hungHeight = 0.5

// at is the pose at a frame.
func (m *movers) at(b *mover, frame int) motion.Pose {
	if frame%m.stride == 0 {
		return m.looksOf(b)[frame/m.stride]
	}
	if b.staged != nil {
		return posed(b.staged.At(units.Frame(frame)))
	}
	if b.close == nil {
		b.close = make([][]motion.Pose, m.frames/closeFrames+1)
	}
	poses := &b.close[frame/closeFrames]
	if *poses == nil {
		from := frame - frame%closeFrames
		times := make([]units.Seconds, min(closeFrames, m.frames-from))
		for i := range times {
			times[i] = m.time(from + i)
		}
		*poses = make([]motion.Pose, len(times))
		b.track.Sample(times, *poses)
	}
	return (*poses)[frame%closeFrames]
}

// looksOf are the poses at every look and at the last frame.
func (m *movers) looksOf(b *mover) []motion.Pose {
	if b.looks != nil {
		return b.looks
	}
	n := len(m.lookAt)
	b.looks = make([]motion.Pose, n+1)
	if b.staged == nil {
		b.track.Sample(m.lookAt, b.looks[:n])
	} else {
		for i := range m.lookAt {
			b.looks[i] = posed(b.staged.At(units.Frame(i * m.stride)))
		}
	}
	b.looks[n] = m.at(b, m.frames-1)
	return b.looks
}

func posed(p sight.Pose) motion.Pose {
	return motion.Pose{X: units.Metres(p.X), Y: units.Metres(p.Y), Z: units.Metres(p.Z), Heading: p.Heading, Height: units.Metres(p.Height)}
}

func (m *movers) time(frame int) units.Seconds { return m.rate.Time(units.Frame(frame)) }

// box is the footprint at a pose.
func (b *mover) box(pose motion.Pose) geom.Polygon {
	ahead := geom.Polar(b.long, pose.Heading)
	left := geom.Polar(b.wide, pose.Heading).Left()
	c := pose.Point()
	return geom.Polygon{c.Add(ahead).Sub(left), c.Add(ahead).Add(left), c.Sub(ahead).Add(left), c.Sub(ahead).Sub(left)}
}

// span is the heights it takes up at a pose.
func (b *mover) span(pose motion.Pose) (low, high float64) {
	z := float64(pose.Z)
	if b.person != nil {
		return z, z + float64(pose.Height)
	}
	return z + b.low, z + b.high
}

// looks calls f for each stretch between two looks, with the poses at its ends.
func (m *movers) looks(b *mover, f func(from, to int, p, q *motion.Pose)) {
	looks := m.looksOf(b)
	for n := range m.lookAt {
		i, j := n*m.stride, min((n+1)*m.stride, m.frames-1)
		f(i, j, &looks[n], &looks[n+1])
		if j >= m.frames-1 {
			return
		}
	}
}

// overlap is how deep two convex polygons, both counter-clockwise, are in each
// other: the least way that parts them. Negative where they are apart.
func overlap(p, q geom.Polygon) float64 {
	return math.Min(overlapAlong(p, q), overlapAlong(q, p))
}

// overlapAlong looks along the normals of p's edges.
func overlapAlong(p, q geom.Polygon) float64 {
	least := math.Inf(1)
	for i := range p {
		e := p.Edge(i)
		n := e.B.Sub(e.A).Unit().Left()
		if n == (geom.Vec{}) {
			continue
		}
		deepest := math.Inf(-1) // of q, inside of the edge
		for _, v := range q {
			deepest = math.Max(deepest, v.Sub(e.A).Dot(n))
		}
		least = math.Min(least, deepest)
	}
	return least
}
