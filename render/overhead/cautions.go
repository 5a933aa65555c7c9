package overhead

import (
	"strings"

	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

// high is how far over the floor somebody has to be for the caution about heights,
// in metres: more than a stair's step.
const high = 0.5

// cautions are what this stretch calls for: a vehicle on the move, an arm, somebody
// up high, a worn rig going backwards; in short their names and the clause they all end with.
func (d *drawing) cautions(short bool) []note {
	var topics []safety.Topic
	add := func(t safety.Topic, when bool) {
		if when {
			topics = append(topics, t)
		}
	}
	drives, up := false, false
	for _, b := range d.tracks.Bodies {
		rig, isRig := b.Thing.(*plan.Rig)
		_, vehicle := b.Thing.(*plan.Vehicle)
		machine := vehicle || isRig && rig.Class == "cart"
		d.each(d.span, func(t units.Seconds) {
			p := b.At(t)
			drives = drives || machine && b.Speed(t) > 0.05
			if b.Thing.Kind() == plan.KindPerformer || b.Thing.Kind() == plan.KindCrew {
				up = up || float64(p.Z) > high && d.shows(p.Point(), 0)
			}
		})
	}
	arm := false
	for _, c := range d.tracks.Cameras {
		d.each(d.span, func(t units.Seconds) {
			_, on := c.Arm(t)
			arm = arm || on
		})
	}
	back := false
	for _, b := range d.tracks.Backing {
		back = back || b.Camera != nil && b.Who != nil && b.Who.Kind() == plan.KindCrew && d.span.meets(b.From, b.To)
	}
	add(safety.Vehicles, drives)
	add(safety.Cranes, arm)
	add(safety.Height, up)
	add(safety.Worn, back)
	if d.o.Department == departments.Electric {
		topics = append(topics, safety.Electricity, safety.Heat)
	}
	if len(topics) == 0 {
		return nil
	}
	notes := []note{{head: "Caution"}}
	if short {
		var names []string
		for _, t := range topics {
			names = append(names, t.String())
		}
		return append(notes, note{under: strings.Join(names, ", ") + ": " + safety.Defer, id: d.id("key", "caution"), title: "caution"})
	}
	for _, t := range topics {
		notes = append(notes, note{under: t.String() + ": " + t.Caution(), id: d.id("key", "caution", t.String()), title: "caution, " + t.String()})
	}
	return notes
}
