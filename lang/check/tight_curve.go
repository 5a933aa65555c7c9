package check

import (
	"longhand/lang/diag"
	"longhand/lang/motion"
)

var tightCurve = &Rule{
	Entry: diag.Entry{
		Code:     "tight-curve",
		Title:    "a curve tighter than the wheels take",
		Severity: diag.Error,
		At:       []string{"beat walks"},
		Explain: `A vehicle, a cart, a dolly or the base of an arm is led round a curve whose radius
is less than it can steer: 4 m for a vehicle, 2.5 m for a cart, 1.2 m for a dolly
on the floor (common practice, no source). A corner of a straight way is rounded
off as far as its legs allow.

To mend it: lead the way wider, with marks further out, or take it in two moves
with a change of direction.`,
		Bad: `take "Hairpin"
  rate 24 fps
set "Yard"
  mark D0 (0, 0)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
beat "Round"
  van stands at D0
  van drives round (0, 2) 180 deg left at 2 m at 1 m/s
`,
		Good: `take "Wide"
  rate 24 fps
set "Yard"
  mark D0 (0, 0)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
beat "Round"
  van stands at D0
  van drives round (0, 6) 180 deg left at 6 m at 1 m/s
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, d := range p.Tracks.Demands {
			if d.Quantity != motion.Radius || !d.Over() || p.closesIn(d) {
				continue
			}
			p.foundOn(d.Action, d.Subject, d.From, d.To, "%s goes round a curve of %s, %s tighter than the %s it takes",
				nameOf(d.Subject), p.amount(d.Quantity, d.Peak), p.Length(metres(d.Limit-d.Peak)), p.amount(d.Quantity, d.Limit)).
				Note("the limit is of %s", d.Source)
		}
	},
}

// turnsBack is the radius below which a way that follows somebody doesn't curve
// but turns back on itself: wheels stop there and go the other way, m.
const turnsBack = 0.3

// closesIn says that a tight curve is of the way into a relation, which a grip
// takes as it suits the wheels, or where what is followed turns back.
func (p *Pass) closesIn(d motion.Demand) bool {
	t := p.Tracks.Body(d.Subject)
	if t == nil || t.Segment(d.At).Kind == motion.Moving {
		return false
	}
	if d.Peak < turnsBack {
		return true
	}
	for _, j := range p.Tracks.Joins {
		if j.Action == d.Action && j.Subject == d.Subject && d.At >= j.Start && d.At <= j.Done {
			return true
		}
	}
	return false
}
