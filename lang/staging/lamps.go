package staging

import (
	"fmt"

	"longhand/lang/plan"
	"longhand/lang/sight"
)

// A lamp that stands in the set is a head on a stand (common practice, no
// source: a head 0.35 m across, a stand 0.08 m).
const (
	lampHead  = 0.35
	lampStand = 0.08
)

func (b *builder) lamps() {
	count := map[*plan.Lamp]int{}
	for _, l := range b.plan.Set.Placed {
		if l.Lamp == nil {
			continue
		}
		count[l.Lamp]++
		name := l.Lamp.Name
		if n := count[l.Lamp]; n > 1 {
			name = fmt.Sprintf("%s %d", name, n)
		}
		up := float64(l.Up)
		z := 0.0
		if l.At.Z != nil {
			z = float64(*l.At.Z)
		}
		heading := 0.0
		if l.Aims != nil {
			heading = l.Aims.Point.Sub(l.At.Point).Angle()
		}
		at := sight.Pose{X: l.At.Point.X, Y: l.At.Point.Y, Heading: heading}
		head := at
		head.Z, head.Height = z+max(0, up-lampHead/2), lampHead
		b.add(l.Lamp, sight.Body{Name: name, Kind: "lamp", Of: name, Polygon: box(lampHead, lampHead), Track: []sight.Pose{head}})
		if low := up - lampHead/2; low > 0 {
			stand := at
			stand.Z, stand.Height = z, low
			b.add(l.Lamp, sight.Body{Name: name + " stand", Kind: "lamp", Of: name, Polygon: box(lampStand, lampStand), Track: []sight.Pose{stand}})
		}
	}
}
