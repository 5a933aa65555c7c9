package bind

import (
	"strings"

	"longhand/lang/plan"
)

// happens reports whether one of the lines of some subjects makes the event
// happen.
func happens(e *plan.Event, who []plan.Thing, lines []*plan.Action) bool {
	for _, t := range who {
		there := false // the subject has been at the place it leaves
		for _, act := range lines {
			if act.Subject == t && brings(e, act.Deed, &there) {
				return true
			}
		}
	}
	return false
}

func brings(e *plan.Event, deed plan.Deed, there *bool) bool {
	leaves := e.Kind == plan.Leaves && e.Place != nil
	switch d := deed.(type) {
	case *plan.Say:
		return e.Kind == plan.Says && partOf(d.Text, e.Text)
	case *plan.Move:
		if leaves && (*there || samePlace(d.Path.From, e.Place)) {
			return true
		}
		for _, stop := range d.Path.Stops() {
			if !samePlace(&stop, e.Place) {
				continue
			}
			if e.Kind == plan.Reaches {
				return true
			}
			*there = true
		}
	case *plan.Leave:
		if e.Carrier != nil && d.Carrier == e.Carrier || e.Kind == plan.Reaches && samePlace(d.To, e.Place) {
			return true
		}
		*there = *there || samePlace(d.To, e.Place)
	case *plan.Stand:
		*there = *there || samePlace(d.At, e.Place)
	case *plan.Ride, *plan.Board:
		return leaves && *there
	}
	return false
}

// samePlace reports whether two places are told the same, or are the same point.
func samePlace(p, q *plan.Place) bool {
	if p == nil || q == nil {
		return false
	}
	return p.Text == q.Text || p.Before == q.Before && p.Point.Dist(q.Point) < nothing
}

// partOf reports whether a line holds some words, whatever their case and blanks.
func partOf(whole, part string) bool {
	fold := func(s string) string { return strings.ToLower(tidy(s)) }
	return strings.Contains(fold(whole), fold(part))
}
