package motion

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Tracks is a whole take in time and space. It never changes once made and may
// be asked by several goroutines at once.
type Tracks struct {
	Rate    units.Rate
	Frames  int // frame 0 to Frames-1
	Clock   *clock.Clock
	Bodies  []*Track       // people, vehicles, rigs, in the order of the text; what is nowhere is left out
	Cameras []*CameraTrack // likewise
	Cuts    []Cut          // in order of time
	Facts
	Rounds int // it took to settle

	bodies  map[plan.Thing]*Track
	cameras map[*plan.Camera]*CameraTrack
	lengths *lengths
	looped  bool
}

// Cut is from when on the edit uses a camera.
type Cut struct {
	At     units.Seconds
	Camera *plan.Camera
	Action *plan.Action
}

// Body is the track of a person, a vehicle or a rig; nil where it is nowhere.
func (t *Tracks) Body(thing plan.Thing) *Track { return t.bodies[thing] }

// Camera is a camera's track; nil where it is nowhere.
func (t *Tracks) Camera(c *plan.Camera) *CameraTrack { return t.cameras[c] }

// Length is how long the take is.
func (t *Tracks) Length() units.Seconds { return t.Clock.Length }

// exact says that the lengths this round found are those its clock was made of,
// so that another round would find the same.
func (t *Tracks) exact(solved *lengths) bool {
	const slop = 1e-9
	if t.looped {
		return false
	}
	for a, s := range t.lengths.natural {
		if clock.Instant(a) || a.Timing.In != nil || a.Timing.Until != nil {
			continue
		}
		if math.Abs(float64(s-solved.Natural(a))) > slop {
			return false
		}
	}
	for a, w := range t.lengths.ways {
		was, ok := solved.ways[a]
		if !ok || len(was.r.stops) != len(w.r.stops) || math.Abs(was.r.path.Length()-w.r.path.Length()) > slop {
			return false
		}
		for i := range w.r.stops {
			if math.Abs(was.r.stops[i]-w.r.stops[i]) > slop {
				return false
			}
		}
		if was.m.limits != w.m.limits {
			return false
		}
	}
	return true
}

// tracksOf builds everything that moves by itself.
func (b *builder) tracksOf() *Tracks {
	t := &Tracks{
		Rate: b.p.Take.Rate, Clock: b.c, lengths: b.lengths,
		bodies: make(map[plan.Thing]*Track),
	}
	if t.Rate.Num <= 0 || t.Rate.Den <= 0 {
		t.Rate = units.Rate{Num: 24, Den: 1}
	}
	t.Frames = int(t.Rate.At(b.c.Length)) + 1
	put := func(thing plan.Thing) {
		if tr := b.track(thing); tr != nil {
			t.Bodies = append(t.Bodies, tr)
			t.bodies[thing] = tr
		}
	}
	for _, who := range b.p.People {
		put(who)
	}
	for _, v := range b.p.Kit.Vehicles {
		put(v)
	}
	for _, rig := range b.p.Kit.Rigs {
		put(rig)
	}
	t.looped = b.looped
	return t
}

// finish adds the cameras and what else nothing waits for.
func (b *builder) finish(t *Tracks) {
	b.film(t)
	t.Cuts = b.cuts()
	b.backing(t)
	b.facts.sort()
	t.Facts = b.facts
}

// film adds the cameras.
func (b *builder) film(t *Tracks) { t.film(b.p.Kit.Cameras, b.camera) }

// place adds the cameras where they are, for the next round to look at: what they
// see in turn is worked out only where somebody asks.
func (b *builder) place(t *Tracks) { t.film(b.p.Kit.Cameras, b.placed) }

func (t *Tracks) film(cameras []*plan.Camera, track func(*plan.Camera) *CameraTrack) {
	t.Cameras, t.cameras = nil, make(map[*plan.Camera]*CameraTrack)
	for _, camera := range cameras {
		if ct := track(camera); ct != nil {
			t.Cameras = append(t.Cameras, ct)
			t.cameras[camera] = ct
		}
	}
}

func (b *builder) cuts() []Cut {
	var out []Cut
	for _, a := range b.inTime {
		if d, ok := a.Deed.(*plan.Cut); ok && d.Camera != nil {
			out = append(out, Cut{b.c.Of(a).Start, d.Camera, a})
		}
	}
	return out
}

// sort puts facts in the order of time, then of the text.
func (f *Facts) sort() {
	by := func(a *plan.Action) int {
		if a == nil {
			return -1
		}
		return a.Index
	}
	f.Jumps = inTime(f.Jumps, func(j *Jump) (units.Seconds, int) { return j.At, 0 })
	f.Demands = inTime(f.Demands, func(d *Demand) (units.Seconds, int) {
		return d.From, by(d.Action)*quantities + int(d.Quantity)
	})
	f.Joins = inTime(f.Joins, func(j *Join) (units.Seconds, int) { return j.Start, 0 })
	f.Handoffs = inTime(f.Handoffs, func(h *Handoff) (units.Seconds, int) { return h.Start, 0 })
	f.Loads = inTime(f.Loads, func(l *Load) (units.Seconds, int) { return l.Start, 0 })
	f.Backing = inTime(f.Backing, func(b *Backing) (units.Seconds, int) { return b.From, 0 })
	f.Rides = inTime(f.Rides, func(r *Ride) (units.Seconds, int) { return r.From, 0 })
	f.Carries = inTime(f.Carries, func(c *Carry) (units.Seconds, int) { return c.From, 0 })
	f.Armed = inTime(f.Armed, func(a *ArmShort) (units.Seconds, int) { return a.At, 0 })
}
