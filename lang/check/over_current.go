package check

import (
	"fmt"

	"longhand/lang/diag"
	"longhand/lang/light"
	"longhand/lang/lighting"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var overCurrent = &Rule{
	Entry: diag.Entry{
		Code:     "over-current",
		Title:    "lamps that draw more than the supply gives",
		Severity: diag.Error,
		At:       []string{"set supply", "kit wash", "beat cue"},
		Explain: `The set says what feeds the lamps ("supply mains 230 V 16 A x 6"), and the lamps of
the take draw more than that at some moment: an error. More than 80 % of it is a
warning, as lamps burn for hours and a circuit is to carry no more than that
lastingly (US National Electrical Code, 210.20(A); other codes differ). It is a
warning, too, if the lamps cannot be put on the circuits so that each carries no
more than 80 % with all of its lamps in full.

Power is taken in proportion to level; what no cue moves burns in full, what one
does is out until its first. Current is power over voltage, power factor 1. Lamps
go on circuits the largest first, each on the first with room.

To mend it: more circuits, smaller or fewer lamps, lower levels, or cues that take
one wash down before the next comes up.

These are planning figures. Circuits, generators, earthing, protection and
distribution are for a licensed electrician under the local code.`,
		Bad: `take "One fuse"
  rate 24 fps
set "Hall"
  grid flies (0, 0) (8, 0) (8, 8) (0, 8) high 5 m points 16
  supply mains 230 V 16 A x 1
  mark M1 (4, 4)
kit
  lamp globe 500 W
  wash hall globe x 8 on flies
people
  performer mina
beat "Evening"
  mina stands at M1 in 12 s
  cue full hall 100 % over 4 s
`,
		Good: `take "Two fuses"
  rate 24 fps
set "Hall"
  grid flies (0, 0) (8, 0) (8, 8) (0, 8) high 5 m points 16
  supply mains 230 V 16 A x 2
  mark M1 (4, 4)
kit
  lamp globe 500 W
  wash hall globe x 8 on flies
people
  performer mina
beat "Evening"
  mina stands at M1 in 12 s
  cue full hall 100 % over 4 s
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		draw := p.lighting().Draw(p.Plan.Set.Supplies)
		if draw.Circuits == 0 || draw.Peak <= 0 {
			return
		}
		switch {
		case draw.Peak > draw.Rated:
			p.overCurrent(draw, diag.Error, fmt.Sprintf("the lamps draw %s at %s, %s more than the %s of %s",
				kilowatts(draw.Peak), draw.When.Clock(), kilowatts(draw.Peak-draw.Rated), kilowatts(draw.Rated), circuits(draw.Circuits)))
		case draw.Peak > draw.Lasting:
			p.overCurrent(draw, diag.Warning, fmt.Sprintf("the lamps draw %s at %s, %s of the supply: lastingly %s are allowed, %s",
				kilowatts(draw.Peak), draw.When.Clock(), units.Percent(100*float64(draw.Peak/draw.Rated)), kilowatts(draw.Lasting), units.Percent(100*light.ContinuousShare)))
		case len(draw.Homeless) > 0:
			n := 0
			for _, left := range draw.Homeless {
				n += left
			}
			p.overCurrent(draw, diag.Warning, fmt.Sprintf("%s no room on the %s, each lamp in full and each circuit at %s: in full all lamps draw %s, and lastingly %s are allowed",
				finds(n), circuits(draw.Circuits), units.Percent(100*light.ContinuousShare), kilowatts(draw.Full), kilowatts(draw.Lasting)))
		}
	},
}

func (p *Pass) overCurrent(draw lighting.Draw, s diag.Severity, message string) {
	supply := p.Plan.Set.Supplies[0]
	d := p.Report(supply.Decl, "%s", message)
	d.Severity, d.Subject = s, supply.Name
	for _, other := range p.Plan.Set.Supplies[1:] {
		d.Relate(other.Decl, "supply %s", other.Name)
	}
	l := p.lighting()
	for i := range l.Units {
		u := &l.Units[i]
		if w := l.Loads()[i].Law.Power(u.Lamp.Power*units.Watts(u.Count), u.Level(draw.When)); w > 0 {
			d.Note("%s: %d x %s at %s draw %s", u.Name, u.Count, u.Lamp.Power, u.Level(draw.When), kilowatts(w))
		}
	}
	if len(p.Plan.Set.Supplies) == 1 {
		amps := lighting.Current(supply, draw.Peak)
		each := light.ContinuousLimit(supply.Amperes)
		d.Note("at %s that are %s; a circuit of %s lastingly carries %s", supply.Volts, amps, supply.Amperes, each)
		p.offerCircuits(d)
	}
	d.Note("%s", safety.Electricity.Caution())
	d.Note("%s", safety.Heat.Caution())
}

// offerCircuits offers as many circuits of the supply's size as the lamps need.
func (p *Pass) offerCircuits(d *diag.Diagnostic) {
	s := *p.Plan.Set.Supplies[0]
	for s.Count = max(s.Count, 1) + 1; s.Count <= 200; s.Count++ {
		draw := p.lighting().Draw(append(p.Plan.Set.Supplies[:0:0], &s))
		if draw.Peak > draw.Lasting || len(draw.Homeless) > 0 {
			continue
		}
		span, n := s.Decl, fmt.Sprint(s.Count)
		text := span.Text()
		d.Note("%d such circuits carry it", s.Count)
		if i := lastWord(text, "x"); i >= 0 {
			span.Start += i
			d.Fix(fmt.Sprintf("bring %s circuits", n), replaced(span, "x "+n))
		} else {
			span.Start = span.End
			d.Fix(fmt.Sprintf("bring %s circuits", n), replaced(span, " x "+n))
		}
		return
	}
}

func kilowatts(w units.Watts) string {
	if w < 1000 {
		return w.String()
	}
	return units.Number(float64(w)/1000, 2) + " kW"
}

func circuits(n int) string {
	if n == 1 {
		return "1 circuit"
	}
	return fmt.Sprintf("%d circuits", n)
}

// finds are lamps that look for something.
func finds(n int) string {
	if n == 1 {
		return lamps(n) + " finds"
	}
	return lamps(n) + " find"
}

func lamps(n int) string {
	if n == 1 {
		return "1 lamp"
	}
	return fmt.Sprintf("%d lamps", n)
}
