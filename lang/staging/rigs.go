package staging

import (
	"fmt"
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// What rigs are as solids (common practice, no source): the deck one rides on is
// at most deck high, above it stands a post; an arm is armWide thick and is cut
// into armParts upright pieces, stepped along its slope; its tail behind the
// pivot is a third of its length; who rides it stands on a platform. The pieces
// keep their length where the arm gets shorter, so that they slide into each
// other, as those of a telescope do, and none comes out past the lens.
const (
	deck     = 0.5
	post     = 0.3
	armWide  = 0.25
	armParts = 6
	tailPart = 1.0 / 3
	wornLow  = 0.8 // of a worn rig, over the floor
	wornOut  = 0.4 // of its middle, ahead of who wears it
	hung     = 0.5 // height of what hangs from a cable
)

func (b *builder) rigs() {
	for _, r := range b.plan.Kit.Rigs {
		track := b.tracks.Body(r)
		if track == nil {
			continue
		}
		class, err := body.ParseClass(r.Class)
		if err != nil {
			continue
		}
		usual := body.RigOf(class)
		l, w, h := float64(track.Length), float64(track.Width), float64(usual.Height)
		if r.High > 0 {
			h = float64(r.High)
		}
		switch {
		case usual.Crewing == body.Worn:
			b.wornRig(r, track, l, w, h)
		case class == body.Cable:
			b.mover(r, "rig", track, []part{{polygon: box(l, w), z: [2]float64{h - hung, h}}})
		case usual.Crewing == body.Ridden:
			parts := []part{{polygon: box(l, w), z: [2]float64{0, math.Min(h, deck)}}}
			if h > deck {
				at := b.mountedAt(r)
				parts = append(parts, part{name: "post", polygon: boxAt(at.X, at.Y, post, post), z: [2]float64{deck, h}})
			}
			b.mover(r, "rig", track, parts)
		default:
			b.mover(r, "rig", track, []part{{polygon: box(l, w), z: [2]float64{0, h}}})
			if class == body.Crane || class == body.Jib {
				b.arm(r, track)
			}
		}
	}
}

// mountedAt is where on a rig its camera first is.
func (b *builder) mountedAt(r *plan.Rig) geom.Vec {
	for _, c := range b.tracks.Cameras {
		for _, h := range c.Holds {
			if h.Rig != r {
				continue
			}
			lens, base := c.At(h.Taken), b.tracks.Body(r).At(h.Taken)
			return geom.Vec{X: lens.X, Y: lens.Y}.Sub(base.Point()).Rotate(-base.Heading)
		}
	}
	return geom.Vec{}
}

// wearing tells who wears a rig at a time.
func (b *builder) wearing(r *plan.Rig, t units.Seconds) *plan.Person {
	for _, c := range b.tracks.Cameras {
		if h := c.Hold(t); h.Worn && h.Rig == r && t >= h.Start {
			return h.Operator
		}
	}
	return nil
}

// wornRig hangs in front of who wears it; left somewhere, it stands on its
// stand.
func (b *builder) wornRig(r *plan.Rig, track *motion.Track, l, w, h float64) {
	out := sight.Body{Name: r.Name, Kind: "rig", Of: r.Name, Polygon: box(l, w)}
	i := b.add(r, out)
	b.later = append(b.later, func() { b.stage.Scene.Bodies[i].Track = b.worn(r, track, h) })
}

// worn is a worn rig's body, h high, at every frame.
func (b *builder) worn(r *plan.Rig, track *motion.Track, h float64) []sight.Pose {
	out := b.room.track(len(b.times))
	b.sampled(track, func(from int, poses []motion.Pose) {
		for k := range poses {
			at := &poses[k]
			pose := sight.Pose{X: float64(at.X), Y: float64(at.Y), Z: float64(at.Z), Heading: at.Heading, Height: h}
			if b.wearing(r, b.times[from+k]) != nil {
				ahead := at.Point().Add(geom.Polar(wornOut, at.Heading))
				pose.X, pose.Y = ahead.X, ahead.Y
				pose.Z += math.Min(wornLow, h/2)
				pose.Height = h - math.Min(wornLow, h/2)
			}
			out[from+k] = pose
		}
	})
	return settle(out)
}

// arm is a crane's or a jib's arm from its tail over the pivot to the lens, and
// the platform of who rides it.
func (b *builder) arm(r *plan.Rig, base *motion.Track) {
	var camera *motion.CameraTrack
	seated := false
	for _, c := range b.tracks.Cameras {
		for _, h := range c.Holds {
			if h.Rig == r {
				camera = c
				seated = seated || h.Ridden
			}
		}
	}
	if camera == nil {
		return
	}
	longest := 0.0 // over the floor
	arms := make([]motion.Arm, b.tracks.Frames)
	b.frames(func(f units.Frame, t units.Seconds) {
		// Before and after the camera is on it the arm rests where it was first,
		// or last, with the camera on it.
		near := b.within(camera, r, t)
		if a, ok := camera.Arm(near); ok {
			arms[f] = carried(a, base.At(near), base.At(t))
			longest = math.Max(longest, overFloor(arms[f]))
		}
	})
	if longest == 0 {
		return
	}
	name := r.Name
	piece := func(label string, polygon []geom.Vec, at func(a motion.Arm) (geom.Vec3, float64)) {
		i := b.add(r, sight.Body{Name: name + " " + label, Kind: "rig", Of: name, Polygon: polygon})
		b.later = append(b.later, func() {
			track := b.room.track(len(arms))
			for f, a := range arms {
				p, height := at(a)
				d := a.Tip.Sub(a.Pivot).Floor()
				track[f] = sight.Pose{X: p.X, Y: p.Y, Z: p.Z, Heading: d.Angle(), Height: height}
			}
			b.stage.Scene.Bodies[i].Track = settle(track)
		})
	}
	// sloped is the arm from one length over the floor to another from its pivot.
	sloped := func(a motion.Arm, from, to float64) (geom.Vec3, float64) {
		along := a.Tip.Sub(a.Pivot).Mul(1 / overFloor(a))
		mid := a.Pivot.Add(along.Mul((from + to) / 2))
		high := armWide + math.Abs(along.Z)*(to-from)
		mid.Z = math.Max(0, mid.Z-high/2)
		return mid, high
	}
	long := longest / armParts
	for i := range armParts {
		piece(fmt.Sprintf("arm %d", i+1), box(long, armWide), func(a motion.Arm) (geom.Vec3, float64) {
			from := (overFloor(a) - long) * float64(i) / (armParts - 1)
			return sloped(a, from, from+long)
		})
	}
	tail := longest * tailPart
	piece("tail", box(tail, 2*armWide), func(a motion.Arm) (geom.Vec3, float64) {
		p, high := sloped(a, -overFloor(a)*tailPart, 0)
		behind := a.Tip.Sub(a.Pivot).Floor().Mul(-tail / 2 / overFloor(a))
		return a.Pivot.Floor().Add(behind).At(p.Z), high
	})
	if seated {
		below := float64(body.RigOf(body.BodyRig).Lens)
		piece("platform", box(float64(body.ArmPlatform), float64(body.ArmPlatform)), func(a motion.Arm) (geom.Vec3, float64) {
			p := a.Tip
			p.Z = math.Max(0, p.Z-below-0.1)
			return p, 0.1
		})
	}
}

// overFloor is an arm's length as seen from above.
func overFloor(a motion.Arm) float64 { return math.Max(a.Tip.Sub(a.Pivot).Floor().Len(), 1e-3) }

// carried is an arm at rest on its base, gone from where it was to where it is.
func carried(a motion.Arm, from, to motion.Pose) motion.Arm {
	if from == to {
		return a
	}
	turn := geom.AngleDiff(from.Heading, to.Heading)
	move := func(p geom.Vec3) geom.Vec3 {
		q := p.Floor().Sub(from.Point()).Rotate(turn).Add(to.Point())
		return q.At(p.Z + float64(to.Z-from.Z))
	}
	return motion.Arm{Pivot: move(a.Pivot), Tip: move(a.Tip), Reach: a.Reach}
}

// within moves a time into the nearest hold of a camera on a rig.
func (b *builder) within(c *motion.CameraTrack, r *plan.Rig, t units.Seconds) units.Seconds {
	best, gap := t, units.Seconds(math.Inf(1))
	for _, h := range c.Holds {
		if h.Rig != r {
			continue
		}
		near := max(h.Start, min(t, h.End-1e-6))
		if d := units.Seconds(math.Abs(float64(near - t))); d < gap {
			best, gap = near, d
		}
	}
	return best
}
