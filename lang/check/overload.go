package check

import (
	"fmt"

	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var overload = &Rule{
	Entry: diag.Entry{
		Code:     "overload",
		Title:    "a rig carries more than it is built for",
		Severity: diag.Error,
		At:       []string{"beat on", "beat handoff", "beat rides", "beat boards", "kit rig"},
		Explain: `The camera and its lens weigh more than the rig carries ("rig vest body-rig
carries 4 kg to 14 kg"), or than its class usually does where the kit says
nothing; or more people are aboard than it has seats. What isn't weighed in the
kit counts nothing: cables, batteries and monitors come on top.

To mend it: take a lighter camera or lens, or a stronger rig, or state what the
rig really carries, from its maker's plate.`,
		Bad: `take "Heavy"
  rate 24 fps
set "Yard"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm weighs 14 kg
  lens z1 24 mm to 290 mm weighs 11 kg
  rig arms gimbal carries 2 kg to 10 kg
people
  crew ida
beat "Stand"
  ida stands at C1
  A on arms with ida
  A takes z1 50 mm T4
  ida waits in 4 s
`,
		Good: `take "Light"
  rate 24 fps
set "Yard"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm weighs 2.6 kg
  lens w35 35 mm weighs 1.2 kg
  rig arms gimbal carries 2 kg to 10 kg
people
  crew ida
beat "Stand"
  ida stands at C1
  A on arms with ida
  A takes w35 T4
  ida waits in 4 s
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, l := range p.Tracks.Loads {
			most, source := mostOn(l.Rig)
			if most <= 0 || l.Weight <= most {
				continue
			}
			with := ""
			if l.Lens != nil {
				with = " with " + l.Lens.Name
			}
			d := p.foundOn(l.Action, l.Rig, l.Start, l.End, "%s%s weighs %s on %s, %s more than the %s it carries",
				l.Camera.Name, with, l.Weight, l.Rig.Name, l.Weight-most, most)
			d.Note("the limit is of %s", source)
			d.Relate(l.Rig.Decl, "rig %s", l.Rig.Name)
			d.Note("%s", safety.Weights.Caution())
		}
		p.overSeated()
	},
}

// mostOn is the most that a rig carries, and who says so.
func mostOn(r *plan.Rig) (units.Kilograms, string) {
	if r.CarriesMax > 0 {
		return r.CarriesMax, "rig " + r.Name + ", carries in the plan"
	}
	c, _ := body.ParseClass(r.Class)
	load := body.RigOf(c).Payload
	source := fmt.Sprintf("a %s, %s", r.Class, body.Practice)
	if load.Plate {
		source += "; the maker's plate decides"
	}
	return load.Max, source
}

// overSeated finds rigs with more people aboard than seats.
func (p *Pass) overSeated() {
	for _, rig := range p.Plan.Kit.Rigs {
		c, _ := body.ParseClass(rig.Class)
		seats := body.RigOf(c).Seats
		if rig.Seats > 0 {
			seats = rig.Seats
		}
		if seats == 0 {
			continue
		}
		var most []int
		for _, r := range p.Tracks.Rides {
			if rigOf(r.Carrier) != rig {
				continue
			}
			var aboard []int // when this one has got on
			for j, o := range p.Tracks.Rides {
				if rigOf(o.Carrier) != rig || o.From > r.From {
					continue
				}
				if p.stays(o, r.From) || o.From == r.From && o.To > r.From { // who begins together swaps with nobody
					aboard = append(aboard, j)
				}
			}
			if len(aboard) > len(most) {
				most = aboard
			}
		}
		if len(most) <= seats {
			continue
		}
		names := ""
		for i, j := range most {
			if i > 0 {
				names += ", "
			}
			names += nameOf(p.Tracks.Rides[j].Who)
		}
		last := p.Tracks.Rides[most[len(most)-1]]
		word := "seats"
		if seats == 1 {
			word = "seat"
		}
		d := p.foundOn(last.Action, rig, last.From, last.To, "%d people are aboard %s at %s and it has %d %s: %s",
			len(most), rig.Name, last.From.Clock(), seats, word, names)
		d.Relate(rig.Decl, "rig %s", rig.Name)
		d.Note("%s", safety.Weights.Caution())
	}
}

// stays says that somebody aboard doesn't get off as another gets on: a swap is
// the crew's to balance.
func (p *Pass) stays(r motion.Ride, from units.Seconds) bool {
	return r.To > from+swapWithin || r.To >= p.Tracks.Length()
}
