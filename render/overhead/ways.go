package overhead

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/scene"
)

// way is a stretch of somebody's path that is walked or driven without a stop,
// on paper.
type way struct {
	from, to units.Seconds
	points   []scene.Point
	aside    float64 // mm it is drawn to the right of where it is
}

// stop is a time somebody stands, between moves.
type stop struct {
	from, to units.Seconds
	at       scene.Point
}

// step is how far apart in time a path is looked at, about a frame; slow is what
// counts as standing, in m/s.
const (
	step = units.Seconds(1.0 / 24)
	slow = 0.03
)

// ways follows somewhere over a stretch: what moves over the floor by itself, cut
// where it stands or is carried.
func (d *drawing) ways(s span, at func(units.Seconds) (geom.Vec, bool)) (ways []way, stops []stop) {
	n := max(1, int(math.Ceil(float64((s.to-s.from)/step))))
	dt := (s.to - s.from) / units.Seconds(n)
	var cur way
	var was geom.Vec
	still, stillOwn := s.from, false
	flush := func(t units.Seconds) {
		if len(cur.points) > 1 && scene.LengthOf(cur.points) > 0.6 {
			cur.to = t
			cur.points = thin(cur.points, 0.03)
			ways = append(ways, cur)
		}
		cur = way{}
	}
	for i := range n + 1 {
		t := s.from + dt*units.Seconds(i)
		p, own := at(t)
		if i == 0 {
			was, stillOwn = p, own
			continue
		}
		moves := own && p.Dist(was) > slow*float64(dt)
		if moves {
			if len(cur.points) == 0 {
				cur.from = t - dt
				cur.points = []scene.Point{d.pt(was)}
				if stillOwn && t-dt-still > 0 {
					stops = append(stops, stop{still, t - dt, d.pt(was)})
				}
			}
			cur.points = append(cur.points, d.pt(p))
		} else if len(cur.points) > 0 {
			flush(t - dt)
			still, stillOwn = t-dt, own
		}
		if !own {
			stillOwn = false
		}
		was = p
	}
	if len(cur.points) > 0 {
		flush(s.to)
	} else if stillOwn {
		stops = append(stops, stop{still, s.to, d.pt(was)})
	}
	return ways, stops
}

// thin leaves out points that lie within a tolerance of the line without them
// (Douglas and Peucker, 1973).
func thin(ps []scene.Point, tolerance float64) []scene.Point {
	if len(ps) < 3 {
		return ps
	}
	keep := make([]bool, len(ps))
	keep[0], keep[len(ps)-1] = true, true
	var cutAt func(a, b int)
	cutAt = func(a, b int) {
		worst, at := tolerance, -1
		for i := a + 1; i < b; i++ {
			if e := offLine(ps[i], ps[a], ps[b]); e > worst {
				worst, at = e, i
			}
		}
		if at > 0 {
			keep[at] = true
			cutAt(a, at)
			cutAt(at, b)
		}
	}
	cutAt(0, len(ps)-1)
	var out []scene.Point
	for i, p := range ps {
		if keep[i] {
			out = append(out, p)
		}
	}
	return out
}

func offLine(p, a, b scene.Point) float64 {
	e := b.Sub(a)
	k := 0.0
	if l := e.Dot(e); l > 0 {
		k = math.Max(0, math.Min(1, p.Sub(a).Dot(e)/l))
	}
	return p.Dist(a.Add(e.Mul(k)))
}

// mover is a person, a vehicle or a rig in a drawing.
type mover struct {
	track *motion.Track
	thing plan.Thing
	kind  string // performer, crew, vehicle, rig
	ways  []way
	stops []stop
	moved float64 // millimetres it gets on paper, carried or not
}

// movers are those of the take, with their ways on this drawing.
func (d *drawing) movers() []*mover {
	var out []*mover
	for _, t := range d.tracks.Bodies {
		b := &mover{track: t, thing: t.Thing, kind: string(t.Thing.Kind())}
		wornAlways := true
		d.each(d.span, func(at units.Seconds) { wornAlways = wornAlways && d.worn(t, at) })
		if wornAlways {
			continue // it goes where its operator goes
		}
		b.ways, b.stops = d.ways(d.span, func(at units.Seconds) (geom.Vec, bool) {
			return t.At(at).Point(), t.Carrier(at) == nil && !d.worn(t, at)
		})
		first := t.At(d.span.from).Point()
		for i := range 9 {
			at := d.span.from + (d.lastOf(d.span)-d.span.from)*units.Seconds(i)/8
			b.moved = math.Max(b.moved, d.view.Length(t.At(at).Point().Dist(first)))
		}
		out = append(out, b)
	}
	spread(out)
	return out
}

// worn is whether a rig is at a time on somebody, or carried along by who will
// wear it.
func (d *drawing) worn(t *motion.Track, at units.Seconds) bool {
	rig, ok := t.Thing.(*plan.Rig)
	if !ok {
		return false
	}
	class, err := body.ParseClass(rig.Class)
	if err != nil || body.RigOf(class).Crewing != body.Worn {
		return false
	}
	for _, c := range d.tracks.Cameras {
		for _, h := range c.Holds {
			if h.Rig != rig || h.Operator == nil {
				continue
			}
			if who := d.tracks.Body(h.Operator); who != nil && who.At(at).Point().Dist(t.At(at).Point()) < 0.5 {
				return true
			}
		}
	}
	return false
}
