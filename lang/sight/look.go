package sight

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// looker sees one frame at a time. It owns every buffer that takes, so that
// looking allocates nothing once it has seen a frame or two; one goroutine uses
// it at a time.
type looker struct {
	st       *stage
	eye      eye
	items    []item   // solids first, then bodies
	extents  []extent // of the items
	may      []int32  // items that may cover another
	n        int      // of items in use
	nset     int      // of those, solids
	pts      [][2]float64
	cover    cover
	gathered []geom.Vec // places of every body from frame from on
	from     units.Frame
	once     bool          // it looks at a frame or so, not at many on end
	ownAt    []units.Frame // by body, the frame if it is left out

	images []item // of a mirror, in use up to nimage
	nimage int
	glass  window
	shown  item // the mirror, and as real things hide it
	pane   item
	aside  *looker // for what is out of frame
}

func newLooker(st *stage) *looker {
	n := len(st.prisms) + len(st.shapes) + 1
	l := &looker{st: st, items: make([]item, n), extents: make([]extent, n), may: make([]int32, n+1), ownAt: make([]units.Frame, len(st.shapes))}
	for i := range l.ownAt {
		l.ownAt[i] = -1
	}
	l.cover.e = &l.eye
	return l
}

// glance is a looker for a frame or so; glanced gives it back.
func (st *stage) glance() *looker {
	if l, ok := st.glances.Get().(*looker); ok {
		return l
	}
	l := newLooker(st)
	l.once = true
	return l
}

func (st *stage) glanced(l *looker) {
	l.cover.box = nil
	st.glances.Put(l)
}

// frame turns to a camera at a frame and finds everything before it; false where
// the camera sees nothing at all.
func (l *looker) frame(camera int, f units.Frame) bool {
	c := &l.st.scene.Cameras[camera]
	return l.turn(c, c.At(f), camera, f)
}

// turn is frame for a view of one's own, through a camera's lens.
func (l *looker) turn(c *Camera, v View, camera int, f units.Frame) bool {
	if !l.eye.set(c, v) {
		return false
	}
	l.around(camera, f)
	return true
}

// around finds everything in the wedge of the eye, which is set.
func (l *looker) around(camera int, f units.Frame) {
	l.solids(f)
	l.leaveOut(camera, f)
	e := &l.eye
	for i, at := range l.places(f) {
		q, left := e.place(at.X, at.Y)
		if !e.misses(q, left, l.st.shapes[i].reach) && l.ownAt[i] != f {
			l.addBody(i, f)
		}
	}
	l.letIn(camera)
}

// bodies adds those of some bodies that are in the wedge.
func (l *looker) bodies(which []int32, camera int, f units.Frame) {
	l.leaveOut(camera, f)
	for _, i := range which {
		if l.ownAt[i] != f {
			l.addBody(int(i), f)
		}
	}
	l.letIn(camera)
}

// leaveOut marks the bodies that are a camera's own at a frame, and letIn takes the
// marks away.
func (l *looker) leaveOut(camera int, f units.Frame) {
	for _, o := range l.st.owns[camera] {
		if o.From <= f && f <= o.To {
			l.ownAt[o.body] = f
		}
	}
}

func (l *looker) letIn(camera int) {
	for _, o := range l.st.owns[camera] {
		l.ownAt[o.body] = -1
	}
}

// gatheredFrames is how many frames' places are gathered at a time.
const gatheredFrames = tileFrames

// places is where every body is on the floor at a frame. Tracks are read many
// frames at a time, since each is a place of its own in memory.
func (l *looker) places(f units.Frame) []geom.Vec {
	n := len(l.st.shapes)
	span := units.Frame(gatheredFrames)
	if l.once {
		span = 1
	}
	if l.gathered == nil {
		l.gathered = make([]geom.Vec, n*int(span))
		l.from = -1
	}
	from := f - f%span
	if from != l.from {
		l.from = from
		to := min(int(span), l.st.scene.Frames-int(from))
		for i := range n {
			b := &l.st.scene.Bodies[i]
			if len(b.Track) == 1 {
				for k := range to {
					l.gathered[k*n+i] = geom.Vec{X: b.Track[0].X, Y: b.Track[0].Y}
				}
				continue
			}
			track := b.Track[from:]
			for k := range to {
				l.gathered[k*n+i] = geom.Vec{X: track[k].X, Y: track[k].Y}
			}
		}
	}
	k := int(f - from)
	return l.gathered[k*n : (k+1)*n]
}

// solids finds the solids before the lens at a frame, the eye being set. Of one
// that holds the lens no piece is kept.
func (l *looker) solids(f units.Frame) {
	l.n = 0
	e := &l.eye
	held := -1
	for i := range l.st.spots {
		s := &l.st.spots[i]
		if q, left := e.place(s.x, s.y); e.misses(q, left, s.reach) {
			continue
		}
		p, t := &l.st.prisms[i], &l.items[l.n]
		if p.shut != nil && !p.shut.has(f) {
			continue
		}
		if !l.seePrism(t, p) {
			if p.pieces > 1 && p.holds(e) {
				held = p.solid
			}
			continue
		}
		t.ref = int32(-1 - i)
		l.extents[l.n] = t.extent
		l.n++
	}
	if held >= 0 {
		l.drop(held)
	}
	l.nset = l.n
}

// drop takes the pieces of a solid out of the items, which are solids so far.
func (l *looker) drop(solid int) {
	kept := 0
	for i := range l.items[:l.n] {
		if l.st.prisms[-1-l.items[i].ref].solid == solid {
			continue
		}
		l.items[kept], l.items[i] = l.items[i], l.items[kept] // each keeps what it has room for
		l.extents[kept] = l.extents[i]
		kept++
	}
	l.n = kept
}

// seePrism projects a solid; false where it meets no part of the frame.
func (l *looker) seePrism(t *item, p *prism) bool {
	e := &l.eye
	l.pts = l.pts[:0]
	for _, v := range p.points {
		q, left := e.place(v.X, v.Y)
		l.pts = append(l.pts, [2]float64{q, left})
	}
	return e.prismItem(t, l.pts, p.z0-e.z, p.z1-e.z) && e.meets(t)
}

// addBody projects a body and keeps it if it can matter.
func (l *looker) addBody(i int, f units.Frame) {
	t := &l.items[l.n]
	if l.seeBody(t, &l.st.shapes[i], l.st.scene.Bodies[i].At(f)) {
		t.ref = int32(i)
		l.extents[l.n] = t.extent
		l.n++
	}
}

// seeBody projects a body; false where it meets no part of the frame.
func (l *looker) seeBody(t *item, s *shape, pose Pose) bool {
	e := &l.eye
	if pose.Height <= 0 || s.reach == 0 {
		return false
	}
	q, left := e.place(pose.X, pose.Y)
	if e.misses(q, left, s.reach) {
		return false
	}
	h0 := pose.Z - e.z
	if s.radius > 0 {
		return e.roundItem(t, q, left, s.radius, h0, h0+pose.Height) && e.meets(t)
	}
	l.placeShape(s, pose, q, left)
	return e.prismItem(t, l.pts, h0, h0+pose.Height) && e.meets(t)
}

// placeShape puts a body's footprint in pts.
func (l *looker) placeShape(s *shape, pose Pose, q, left float64) {
	sin, cos := math.Sincos(pose.Heading)
	c, d := cos*l.eye.cos+sin*l.eye.sin, sin*l.eye.cos-cos*l.eye.sin // of heading less pan
	l.pts = l.pts[:0]
	for _, v := range s.points {
		l.pts = append(l.pts, [2]float64{q + v.X*c - v.Y*d, left + v.X*d + v.Y*c})
	}
}

// misses is whether a circle on the floor lies outside the wedge looked at.
func (e *eye) misses(q, l, r float64) bool {
	if e.steep {
		return false
	}
	w := &e.wedge
	return q < -r || q-r > w.deep || l-w.p1*q > r*w.n1 || w.p0*q-l > r*w.n0
}

// meets is whether an item's bounds meet the window's.
func (e *eye) meets(t *item) bool {
	if e.steep {
		return true
	}
	w := &e.win
	return t.p1 > w.p0 && t.p0 < w.p1 && t.hi > w.smin && t.lo < w.smax
}

// mayCover is whether o could cover part of t, by their bounds.
func (e *eye) mayCover(o, t *extent) bool {
	return (o.p0 < t.p1 && o.p1 > t.p0 || e.steep) && o.hi > t.lo && o.lo < t.hi && o.w1 > t.w0
}

// measure measures an item past every other; where nothing is open, whole is
// some number above nought.
func (l *looker) measure(t *item) area {
	c := &l.cover
	c.win = &l.eye.win
	if !c.begin(t) {
		return area{}
	}
	// Which may is anybody's guess, so that to find them first, without a branch
	// for each, is faster.
	n := 0
	may := l.may[:l.n+1]
	for i := range l.extents[:l.n] {
		o := &l.extents[i]
		may[n] = int32(i)
		n += one(o.p0 < t.p1) & one(o.p1 > t.p0) & one(o.hi > t.lo) & one(o.lo < t.hi) & one(o.w1 > t.w0)
	}
	if l.eye.steep {
		n = 0
		for i := range l.extents[:l.n] {
			if l.eye.mayCover(&l.extents[i], &t.extent) {
				may[n] = int32(i)
				n++
			}
		}
	}
	for _, i := range may[:n] {
		if o := &l.items[i]; o != t && !c.hide(o, t) {
			return c.hidden(t)
		}
	}
	return c.shown(t)
}

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}

// hidden is the outcome for an item of which nothing is left.
func (c *cover) hidden(t *item) area {
	if !c.inWindow(t) {
		return area{}
	}
	return area{whole: 1}
}

// shown is the outcome once every item that may hide t has been.
func (c *cover) shown(t *item) area {
	if a := c.result(); a.whole > 0 {
		return a
	}
	return area{}
}
