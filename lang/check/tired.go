package check

import (
	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var tired = &Rule{
	Entry: diag.Entry{
		Code:     "tired",
		Title:    "a rig is worn for longer than a body bears",
		Severity: diag.Error,
		At:       []string{"people crew"},
		Explain: `A full body rig is worn for 5 minutes, 12 at the most, and then twice as long not
at all. A camera of 8 kg and more held in the hands is held for 6 minutes at the
most (common practice, no source). A rest shorter than twice the time before it
is no rest: the two times count together.

A warning says that the time is longer than usual for a heavy rig, an error that
it is longer than anybody should.

To mend it: hand over to a second operator, put the rig on a cart or a hook for a
while, or shorten the take. The reset between takes has to hold the rest.`,
		Bad: `take "Ten more"
  rate 24 fps
set "Yard"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm weighs 12 kg
  lens w35 35 mm weighs 2 kg
  rig vest body-rig
people
  crew ida
beat "Stand" for 14 min
  ida stands at C1
  A on vest with ida
  A takes w35 T4
`,
		Good: `take "Four"
  rate 24 fps
set "Yard"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm weighs 12 kg
  lens w35 35 mm weighs 2 kg
  rig vest body-rig
people
  crew ida
beat "Stand" for 4 min
  ida stands at C1
  A on vest with ida
  A takes w35 T4
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		spells := map[*plan.Person]*spell{}
		var order []*plan.Person
		for _, c := range p.Tracks.Carries {
			limit, ok := carryLimit(c)
			if !ok {
				continue
			}
			s := spells[c.Who]
			if s == nil {
				order = append(order, c.Who)
			}
			if s == nil || c.From-s.to >= units.Seconds(body.RestAfterWorn)*s.worn {
				s = &spell{from: c.From, limit: limit, was: s}
				spells[c.Who] = s
			}
			s.worn += c.To - max(c.From, s.to)
			s.to = c.To
			s.load = max(s.load, c.Load)
			s.rig = c.Rig
			s.limit.Hard = min(s.limit.Hard, limit.Hard)
			s.limit.Typical = min(s.limit.Typical, limit.Typical)
		}
		for _, who := range order {
			for s := spells[who]; s != nil; s = s.was {
				p.tired(who, s)
			}
		}
	},
}

// spell is a time of wearing rigs without a rest that counts.
type spell struct {
	from, to units.Seconds
	worn     units.Seconds
	load     units.Kilograms
	rig      *plan.Rig
	limit    body.Limit[units.Seconds]
	was      *spell
}

// What is heavy: a full body rig, and a camera in the hands (common practice, no
// source: 12 to 20 kg, and 8 kg).
const (
	fullRig  units.Kilograms = 12
	heavyArm units.Kilograms = 8
)

// armsOut is how long a heavy camera is held in the hands (common practice, no
// source).
var armsOut = body.Limit[units.Seconds]{Typical: 2 * 60, Hard: 6 * 60}

// carryLimit is how long something may be worn or held; false where it is light
// enough to be of no account.
func carryLimit(c motion.Carry) (body.Limit[units.Seconds], bool) {
	switch class, _ := body.ParseClass(c.Rig.Class); class {
	case body.BodyRig:
		return body.WornTime, true
	case body.Gimbal, body.Handheld:
		return armsOut, c.Load >= heavyArm
	}
	return body.Limit[units.Seconds]{}, false
}

func (p *Pass) tired(who *plan.Person, s *spell) {
	hard := s.worn > s.limit.Hard
	heavy := s.load >= fullRig || s.limit == armsOut
	if !hard && !(heavy && s.worn > s.limit.Typical) {
		return
	}
	limit := s.limit.Hard
	if !hard {
		limit = s.limit.Typical
	}
	d := p.foundOn(nil, who, s.from, s.to, "%s has %s on for %s, %s longer than the %s it is worn at a stretch", who.Name, s.rig.Name,
		inMinutes(s.worn), inMinutes(s.worn-limit), inMinutes(limit))
	if !hard {
		d.Severity = diag.Warning
	}
	d.Note("usually %s, at the most %s, %s", inMinutes(s.limit.Typical), inMinutes(s.limit.Hard), body.Practice)
	rest := s.worn * body.RestAfterWorn
	d.Note("the rest after it is %s", inMinutes(rest))
	if p.Plan.Take.Reset > 0 && p.Plan.Take.Reset < rest {
		d.Note("the reset of %s between takes is %s shorter", inMinutes(p.Plan.Take.Reset), inMinutes(rest-p.Plan.Take.Reset))
	}
	d.Note("%s", safety.Worn.Caution())
}

func inMinutes(s units.Seconds) string { return units.Number(float64(s)/60, 1) + " min" }
