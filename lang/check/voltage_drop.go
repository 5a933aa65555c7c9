package check

import (
	"longhand/lang/diag"
	"longhand/lang/light"
	"longhand/lang/lighting"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var voltageDrop = &Rule{
	Entry: diag.Entry{
		Code:     "voltage-drop",
		Title:    "a cable that takes more of the voltage than is usual for lamps",
		Severity: diag.Note,
		At:       []string{"set supply", "kit wash", "beat cue"},
		Explain: `A supply says how far its lines run and how thick their copper is ("supply mains
230 V 16 A cable 60 m 2.5 mm2"), and at the highest load of the take a line loses
more than 3 % of its voltage on the way. Filament lamps then burn darker and
redder: at 95 % of the voltage they give some 84 % of their light.

3 % is what IEC 60364-5-52 suggests for lighting on a public supply (table G.52.1);
on a supply of one's own, as of a generator, it suggests 6 %. The voltage lost is
2·(ρ·L/S)·I, of a balanced three-phase line √3 times that of one conductor, where
ρ is 0.0225 Ω·mm²/m, of copper in service (annex G), L the run, S the cross-section
and I the current at the peak of what is on the line, power factor 1. Lamps go on
circuits the largest first, each on the first with room.

To mend it: a thicker cable, a shorter one, fewer lamps on the line, or lower
levels.

These are planning figures, and not how a cable is chosen: what it may carry, how it
is laid and what protects it is for a licensed electrician under the local code.`,
		Bad: `take "A long way"
  rate 24 fps
set "Hall"
  supply mains 230 V 16 A cable 60 m 2.5 mm2
  mark M1 (4, 4)
kit
  lamp globe 1 kW
people
  performer mina
set "Lamps"
  place globe at (3, 9) up 4 m aims M1
  place globe at (6, 9) up 4 m aims M1
beat "Evening"
  mina stands at M1 in 12 s
`,
		Good: `take "A long way, thicker"
  rate 24 fps
set "Hall"
  supply mains 230 V 16 A cable 60 m 6 mm2
  mark M1 (4, 4)
kit
  lamp globe 1 kW
people
  performer mina
set "Lamps"
  place globe at (3, 9) up 4 m aims M1
  place globe at (6, 9) up 4 m aims M1
beat "Evening"
  mina stands at M1 in 12 s
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		circuits, _ := p.lighting().Circuits(p.Plan.Set.Supplies)
		over := map[*plan.Supply][]lighting.Lost{}
		for _, d := range p.lighting().Lost(circuits) {
			if d.Part > light.DropForLamps {
				over[d.Circuit.Supply] = append(over[d.Circuit.Supply], d)
			}
		}
		for _, s := range p.Plan.Set.Supplies {
			if lost := over[s]; len(lost) > 0 {
				p.voltageDrop(s, lost)
			}
		}
	},
}

// voltageDrop reports the line of a supply that loses most.
func (p *Pass) voltageDrop(s *plan.Supply, lost []lighting.Lost) {
	worst := &lost[0]
	for i := range lost {
		if lost[i].Volts > worst.Volts {
			worst = &lost[i]
		}
	}
	d := p.Report(s.Decl, "%s of %s copper from %s take %s at %s, %s of the voltage: %s are left of %s at the lamp, and a loss of %s is usual at most for lamps on a public supply",
		p.Length(s.Cable.Run), s.Cable.Thick(), s.Name, worst.Volts, worst.When.Clock(), worst.Part, worst.Left(), s.Volts, light.DropForLamps)
	d.Subject = s.Name
	d.Note("circuit %d carries %s then; a filament lamp gives %s of its light at that voltage", worst.Circuit.Number, worst.Current,
		units.Percent(float64(int(light.FilamentLight(100-worst.Part)+0.5))))
	if len(lost) > 1 {
		d.Note("it is so on %s of this supply", circuits(len(lost)))
	}
	d.Note("the limit is of IEC 60364-5-52, table G.52.1; on a supply of one's own, as of a generator, it is %s", light.DropOnOwnSupply)
	if section, ok := worst.SectionFor(light.DropForLamps); ok {
		d.Note("%s lose no more than %s", section, light.DropForLamps)
		d.Fix("lay a thicker cable, of "+section.String(), replaced(s.Cable.Span, units.Number(float64(section), 2)+" mm2"))
	}
	d.Note("%s", safety.Electricity.Caution())
}
