package body

import (
	"fmt"

	"longhand/lang/units"
)

// Where the values come from.
const (
	// Practice marks a habit of the trade that no published source was at hand for.
	Practice = units.Practice
	// DIN is the table of body sizes used for proportions.
	DIN = "DIN 33402-2:2005-12, men and women 18 to 65 years, 50th percentile"
)

// Limit is a value that comes in two strengths: what is usual, which is the
// default, and what must not be passed without saying so and why.
type Limit[T ~float64] struct{ Typical, Hard T }

// Default is one value taken for granted, as text for people.
type Default = units.Default

// Defaults lists every value of the package, in a fixed order: people, shot
// sizes, rigs by class, changes of hands, clearances, vehicles. Lengths and
// speeds are printed in the system given.
func Defaults(s units.System) []Default {
	l := &list{system: s}
	l.people()
	l.postures()
	l.sizes()
	for _, c := range Classes() {
		l.rig(RigOf(c))
	}
	l.handoffs()
	l.clearances()
	l.vehicles()
	return l.out
}

type list struct {
	system units.System
	out    []Default
}

func (l *list) add(source, name, format string, args ...any) {
	l.out = append(l.out, Default{Name: name, Value: fmt.Sprintf(format, args...), Source: source})
}

func (l *list) length(m units.Metres) string         { return m.Text(l.system) }
func (l *list) speed(v units.MetresPerSecond) string { return v.Text(l.system) }

func (l *list) accel(a units.MetresPerSecond2) string { return a.Text(l.system) }

func (l *list) pace(p Limit[units.MetresPerSecond]) string {
	if p.Hard == 0 {
		return "does not travel"
	}
	return l.speed(p.Typical) + ", limit " + l.speed(p.Hard)
}
