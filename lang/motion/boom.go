package motion

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// boom is an arm or a rail: its base stands, or goes by its own lines, and its
// end carries the camera. A crane's arm telescopes from a third of its reach
// outwards, a jib's is as long as its reach, a slider's camera goes along the
// rail. Arms rise and fall about a pivot as high as the rig is.
type boom struct {
	b     *builder
	rig   *plan.Rig
	class body.Rig
	base  *Track
	tip   *Track
	lens  *lift // the height of the lens over the floor
}

// boom is a rig's arm, built when first asked for; nil where its base is
// nowhere or the rig has none.
func (b *builder) boom(rig *plan.Rig) *boom {
	if bm, ok := b.booms[rig]; ok {
		return bm
	}
	class := classOf(rig)
	if !armedClass(class.Class) || b.arming[rig] {
		b.looped = b.looped || b.arming[rig]
		return nil
	}
	b.arming[rig] = true
	defer delete(b.arming, rig)
	base := b.track(rig)
	if base == nil {
		b.booms[rig] = nil
		return nil
	}
	bm := &boom{b: b, rig: rig, class: class, base: base, lens: b.liftOf(rig)}
	at := geom.Vec{}
	if class.Class != body.Slider {
		at.X = armOut * float64(class.Reach)
	}
	for _, camera := range b.p.Kit.Cameras {
		for _, h := range b.holds[camera] {
			if h.rig == rig {
				at = h.at
				break
			}
		}
	}
	l := &lane{b: b, t: &Track{Thing: rig}, events: b.tipEvents[rig], boom: bm, known: true}
	l.wrap = func(w way) way { return reached{w, bm} }
	l.aboard = &boarded{thing: rig, on: base, by: at.At(-base.deck), quiet: true}
	l.t.add(Segment{Kind: Riding, Carrier: rig, way: l.wrap(held{base, l.aboard.by})})
	l.t.heads = []head{{dir: turning(func(t float64) float64 { return bm.bearing(l.t, t) })}}
	bm.tip = l.t
	for i := range l.events {
		e := &l.events[i]
		l.cut(e.start)
		l.advance(e.start)
		l.apply(e, l.until(i))
	}
	l.advance(b.end)
	l.t.heads = l.t.heads[:1]
	l.t.tidy()
	b.booms[rig] = bm
	return bm
}

// lashed is the end of the arm kept where it is on its base.
func (bm *boom) lashed(p geom.Vec3, at float64) *boarded {
	o, heading := bm.base.frame(at)
	by := p.Floor().Sub(o.Floor()).Rotate(-heading)
	return &boarded{thing: bm.rig, on: bm.base, by: by.At(p.Z - o.Z), since: at, quiet: true}
}

// bearing is the direction of the arm.
func (bm *boom) bearing(tip *Track, t float64) float64 {
	o := bm.base.point(t)
	d := tip.point(t).Floor().Sub(o.Floor())
	if d.Len() < 1e-9 || bm.class.Class == body.Slider {
		return bm.base.heading(t)
	}
	return d.Angle()
}

// out is how far from the pivot, over the floor, the lens can be: the arm's
// reach, less what its slope takes.
func (bm *boom) out(t float64) float64 {
	reach := float64(bm.class.Reach)
	rise := bm.lens.at(t) - float64(bm.class.Height)
	return math.Sqrt(max(reach*reach-rise*rise, 0.01))
}

// reached is a way kept to where an arm or a rail can be.
type reached struct {
	way
	boom *boom
}

func (r reached) at(t float64) geom.Vec3 {
	p := r.way.at(t)
	q := r.boom.nearest(p.Floor(), t)
	return q.At(p.Z)
}

// nearest is the place nearest to p that the lens can be.
func (bm *boom) nearest(p geom.Vec, t float64) geom.Vec {
	o, heading := bm.base.frame(t)
	d := p.Sub(o.Floor())
	if bm.class.Class == body.Slider {
		half := float64(bm.class.Reach) / 2
		x := clamp(d.Rotate(-heading).X, -half, half)
		return o.Floor().Add(geom.Polar(x, heading))
	}
	most := bm.out(t)
	least := most
	if bm.class.Class == body.Crane {
		least = min(most, float64(bm.class.Reach)/3)
	}
	l := d.Len()
	if l < 1e-9 {
		return o.Floor().Add(geom.Polar(least, heading))
	}
	return o.Floor().Add(d.Mul(clamp(l, least, most) / l))
}

// swinging is a way as an arm goes it: it turns about its base no faster than its
// end may go, and round it where the way leads across.
func (bm *boom) swinging(flat func(t float64) geom.Vec, lim Limits, start, until float64) func(t float64) geom.Vec {
	if bm.class.Class == body.Slider {
		return flat
	}
	off := func(t float64) geom.Vec { return flat(t).Sub(bm.base.point(t).Floor()) }
	rate := max(float64(lim.Forward.Hard), 0.3) / (float64(bm.class.Reach) / 3)
	turn := newSway(func(t float64) float64 { return off(t).Angle() }, rate, rate, start, until)
	return func(t float64) geom.Vec {
		return bm.base.point(t).Floor().Add(geom.Polar(off(t).Len(), turn.at(t)))
	}
}

// platformBelow is how far below the lens the feet of who rides an arm are: the
// lens's usual height on a body rig.
var platformBelow = float64(body.RigOf(body.BodyRig).Lens)

// frame makes the platform at the end of an arm a carrier.
func (bm *boom) frame(t float64) (geom.Vec3, float64) {
	p := bm.tip.point(t)
	p.Z += max(0.1, bm.lens.at(t)-platformBelow)
	return p, bm.bearing(bm.tip, t)
}

// Arm is an arm at a time: from its pivot to the lens.
type Arm struct {
	Pivot, Tip geom.Vec3
	Reach      units.Metres
}

func (bm *boom) arm(t float64) Arm {
	o, tip := bm.base.point(t), bm.tip.point(t)
	return Arm{
		Pivot: o.Floor().At(o.Z + float64(bm.class.Height)),
		Tip:   tip.Floor().At(tip.Z + bm.lens.at(t)),
		Reach: bm.class.Reach,
	}
}
