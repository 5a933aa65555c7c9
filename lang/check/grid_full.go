package check

import (
	"fmt"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/light"
	"longhand/lang/lighting"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var gridFull = &Rule{
	Entry: diag.Entry{
		Code:     "grid-full",
		Title:    "more lamps on a grid than it has hanging points",
		Severity: diag.Error,
		At:       []string{"set grid", "kit wash"},
		Explain: `The washes on a grid need more lamps than the grid has points to hang them from.

A lamp has one colour for good unless the kit says that it "changes": a second
colour takes a second lamp in the same place. So what hangs is places times
colours, the sum over all washes on the grid. Washes of a lamp that changes share
their lamps if no two of them are ever lit at once; then only the largest counts.

To mend it: lamps that change colour, fewer places or fewer colours, or more
points. What a point may carry and who hangs it is for the rigger in charge.`,
		Bad: `take "Two colours"
  rate 24 fps
set "Hall"
  grid flies (0, 0) (8, 0) (8, 8) (0, 8) high 5 m points 16
  mark M1 (4, 4)
kit
  lamp amber 500 W colour amber
  lamp blue 500 W colour blue
  wash day amber x 12 on flies
  wash night blue x 12 on flies
people
  performer mina
beat "Evening"
  mina stands at M1 in 12 s
  cue start day 80 % over 0 s
  cue dusk day 0 %, night 60 % over 6 s starting +4 s
`,
		Good: `take "Two colours"
  rate 24 fps
set "Hall"
  grid flies (0, 0) (8, 0) (8, 8) (0, 8) high 5 m points 24
  mark M1 (4, 4)
kit
  lamp amber 500 W colour amber
  lamp blue 500 W colour blue
  wash day amber x 12 on flies
  wash night blue x 12 on flies
people
  performer mina
beat "Evening"
  mina stands at M1 in 12 s
  cue start day 80 % over 0 s
  cue dusk day 0 %, night 60 % over 6 s starting +4 s
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, g := range p.Plan.Set.Grids {
			h := p.lighting().Hanging(g)
			if g.Bad || g.Points <= 0 || h.Lamps <= g.Points {
				continue
			}
			var washes []string
			for _, u := range h.Washes {
				washes = append(washes, fmt.Sprintf("%d %s for %s", u.Count, u.Lamp.Name, u.Name))
			}
			d := p.Report(g.Decl, "%d lamps on %s, which has %d points: %s", h.Lamps, g.Name, g.Points, things(washes))
			d.Subject = g.Name
			for _, u := range h.Washes {
				d.Relate(u.Wash.Decl, "%s, %s", u.Name, colourOf(u))
			}
			if len(h.Shared) > 0 {
				d.Note("%s share their lamps, which change colour and are never lit for two of them at once", things(unitNames(h.Shared)))
			}
			area := geom.Polygon(g.Polygon).Area()
			d.Note("%d points over %s m² hang %s apart when spread evenly", g.Points, units.Number(area, 0), p.Length(light.Spacing(area, g.Points)))
			most := 0
			for _, u := range h.Washes {
				most = max(most, u.Count)
			}
			if most < h.Lamps && !h.Together {
				d.Note("no two of the washes are lit at once: with lamps that change colour, %d would do", most)
			}
			d.Note("what a point carries, and what hangs over people, is for a licensed rigger; %s", safety.Defer)
		}
	},
}

func colourOf(u *lighting.Unit) string {
	l := u.Lamp
	switch {
	case l.Changes:
		return "a lamp that changes colour"
	case l.Colour != "":
		return "a lamp that is " + l.Colour + " for good"
	case l.Kelvin > 0:
		return "a lamp of " + l.Kelvin.String()
	}
	return "a lamp of one colour"
}

func unitNames(list []*lighting.Unit) []string {
	out := make([]string, len(list))
	for i, u := range list {
		out[i] = u.Name
	}
	return out
}
