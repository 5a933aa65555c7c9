package overhead

import (
	"math"
	"strings"

	"longhand/lang/units"
)

// offSheet lists who and what is somewhere else, by how far from the drawing's
// edge, so that nobody looks for them in vain.
func (d *drawing) offSheet(lost []string) []note {
	var names []string
	t := d.span.from
	for _, b := range d.tracks.Bodies {
		p := d.pt(b.At(t).Point())
		q := d.pt(b.At(d.lastOf(d.span)).Point())
		if inside(p, d.box) || inside(q, d.box) || b.Carrier(t) != nil {
			continue
		}
		side, off := "", 0.0
		try := func(by float64, name string) {
			if by > off {
				off, side = by, name
			}
		}
		try(d.box.Min.X-p.X, "left")
		try(p.X-d.box.Max.X, "right")
		try(d.box.Min.Y-p.Y, "above")
		try(p.Y-d.box.Max.Y, "below")
		unit := 0.1
		if d.plan.Take.Units == units.Feet {
			unit = float64(units.Foot)
		}
		far := units.Metres(math.Round(off*d.view.Scale/1000/unit) * unit)
		names = append(names, b.Thing.ID().Name+" "+d.length(far)+" "+side)
	}
	for _, m := range d.plan.Set.Marks {
		if !m.Bad && d.usedMarks()[m] && !d.shows(m.Point, 1) {
			names = append(names, "mark "+m.Name)
		}
	}
	var notes []note
	if len(names) > 0 {
		notes = append(notes, note{head: "Off this drawing"}, note{texts: []string{strings.Join(names, "; ")}})
	}
	if len(lost) > 0 {
		notes = append(notes, note{head: "Drawn without their names for want of room"}, note{texts: []string{strings.Join(lost, "; ")}})
	}
	return notes
}
