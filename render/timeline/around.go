package timeline

import (
	"sort"
	"strconv"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/lighting"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
)

func (t *taker) doors() (lane, bool) {
	g := group{}
	for _, d := range t.p.Set.Doors {
		type change struct {
			at   units.Seconds
			open bool
		}
		var list []change
		for _, a := range t.p.Actions {
			if op, ok := a.Deed.(*plan.Operate); ok && op.Door == d {
				i := t.clock.Of(a)
				at := i.Start
				if !op.Open {
					at = i.End
				}
				list = append(list, change{at, op.Open})
			}
		}
		if len(list) == 0 {
			continue
		}
		sort.SliceStable(list, func(i, j int) bool { return list[i].at < list[j].at })
		open, since := d.Open, units.Seconds(0)
		for _, c := range append(list, change{t.length, !open}) {
			if c.at > since {
				state, bar := "shut", "bar-say"
				if open {
					state, bar = "open", "bar-move"
				}
				g.items = append(g.items, item{from: since, to: c.at, text: d.Name + " " + state, bar: bar})
			}
			open, since = c.open, c.at
		}
	}
	return lane{name: "doors", groups: []group{g}}, len(g.items) > 0
}

// lights is the cues, and a curve for each wash and each lamp that moves.
func (t *taker) lights() []lane {
	cues := group{name: "cues"}
	for _, a := range t.p.Actions {
		d, ok := a.Deed.(*plan.Cue)
		if !ok {
			continue
		}
		var levels []string
		for _, l := range d.Levels {
			name := ""
			switch {
			case l.Wash != nil:
				name = l.Wash.Name
			case l.Lamp != nil:
				name = l.Lamp.Name
			}
			levels = append(levels, name+" "+l.Per.String())
		}
		i := t.clock.Of(a)
		cues.items = append(cues.items, item{from: i.Start, to: i.End, text: d.Name + ": " + strings.Join(levels, ", "), bar: "bar-move", face: fonts.Bold})
	}
	l := lane{name: "light", under: "0 to 100 %"}
	if len(cues.items) > 0 {
		l.groups = append(l.groups, cues)
	}
	all := lighting.Of(t.p, t.clock)
	for i := range all.Units {
		u := &all.Units[i]
		if len(u.Cues) > 0 {
			l.groups = append(l.groups, group{name: u.Name, curve: &u.Curve})
		}
	}
	if len(l.groups) == 0 {
		return nil
	}
	return []lane{l}
}

// named is the title of the pickup; "" for the take.
func (t *taker) named() string {
	if t.pickup == nil {
		return ""
	}
	return t.pickup.Title
}

// findings is when what was found happens.
func (t *taker) findings() (lane, bool) {
	g := group{}
	rate := t.r.Tracks.Rate
	for i := range t.r.Findings {
		f := &t.r.Findings[i]
		if f.Pickup != t.named() { // which has a clock of its own
			continue
		}
		bar := map[diag.Severity]string{diag.Error: "bar-error", diag.Warning: "bar-warning", diag.Note: "bar-note"}[f.Severity]
		text := strconv.Itoa(i+1) + " " + string(f.Code)
		if f.Subject != "" {
			text += " " + f.Subject
		}
		face := fonts.Regular
		if f.Severity == diag.Error {
			face = fonts.Bold
		}
		for _, fr := range f.Frames {
			g.items = append(g.items, item{from: rate.Time(fr.From), to: rate.Time(fr.To + 1), text: text, bar: bar, face: face})
		}
	}
	return lane{name: "findings", under: "number, code", groups: []group{g}, heavy: true}, len(g.items) > 0
}
