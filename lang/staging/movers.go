package staging

import (
	"fmt"

	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
)

// part is one upright solid of a mover: a footprint in the mover's frame and a
// range of heights above the floor it is on.
type part struct {
	name    string // "" for the main part
	radius  float64
	polygon []geom.Vec
	z       [2]float64
	stands  bool // as tall as its posture, in place of z
}

// place puts the part where it is when what it is of is somewhere.
func (p *part) place(track []sight.Pose, poses []motion.Pose) {
	for k := range track {
		to, at := &track[k], &poses[k]
		to.X, to.Y, to.Z, to.Heading, to.Height = float64(at.X), float64(at.Y), float64(at.Z), at.Heading, float64(at.Height)
		if !p.stands {
			to.Z += p.z[0]
			to.Height = p.z[1] - p.z[0]
		}
	}
}

// mover adds a thing's parts along its track.
func (b *builder) mover(thing plan.Thing, kind string, track *motion.Track, parts []part) {
	name := thing.ID().Name
	first := len(b.stage.Scene.Bodies)
	for _, p := range parts {
		body := sight.Body{Name: name, Kind: kind, Of: name, Radius: p.radius, Polygon: p.polygon}
		if p.name != "" {
			body.Name = name + " " + p.name
		}
		b.add(thing, body)
	}
	b.move(first, parts, track)
}

// people are cylinders as tall as their posture.
func (b *builder) people() {
	for _, person := range b.plan.People {
		track := b.tracks.Body(person)
		if track == nil {
			continue
		}
		body := sight.Body{Name: person.Name, Kind: string(person.Kind()), Of: person.Name, Radius: float64(track.Radius)}
		b.move(b.add(person, body), []part{{stands: true}}, track)
	}
}

// A vehicle that carries nobody is closed: a box. One that carries somebody at
// any time is there for them to be seen in it: solid up to its sill, and its
// roof, open between but for the posts at its corners (common practice, no
// source: sill at two fifths of the height, roof and posts 0.1 m thick).
const (
	sill = 0.4
	roof = 0.1
)

func (b *builder) vehicles() {
	carries := map[plan.Thing]bool{}
	for _, r := range b.tracks.Facts.Rides {
		carries[r.Carrier] = true
	}
	for _, v := range b.plan.Kit.Vehicles {
		track := b.tracks.Body(v)
		if track == nil {
			continue
		}
		low, high := float64(v.High.Low), float64(v.High.High)
		l, w := float64(v.Length), float64(v.Width)
		parts := []part{{polygon: box(l, w), z: [2]float64{low, high}}}
		if carries[v] {
			waist := low + (high-low)*sill
			parts = []part{
				{polygon: box(l, w), z: [2]float64{low, waist}},
				{name: "roof", polygon: box(l, w), z: [2]float64{high - roof, high}},
			}
			n := 0
			for _, x := range []float64{l/2 - roof/2, -l/2 + roof/2} {
				for _, y := range []float64{w/2 - roof/2, -w/2 + roof/2} {
					n++
					parts = append(parts, part{name: fmt.Sprintf("post %d", n), polygon: boxAt(x, y, roof, roof), z: [2]float64{waist, high - roof}})
				}
			}
		}
		b.mover(v, "vehicle", track, parts)
	}
}
