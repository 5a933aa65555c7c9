package rehearse

import (
	"cmp"
	"fmt"
	"slices"

	"longhand/lang/clock"
	"longhand/lang/units"
)

// brokenBy is what a clock shows to be broken, in words without numbers of this
// run, so that the same thing has the same name in all of them.
func brokenBy(c *clock.Clock) []Broken {
	var out []Broken
	for _, l := range c.Lates {
		b := Broken{At: l.Limit, By: l.By(), stated: l.Kind != clock.LateBefore}
		what := ""
		if l.Action != nil {
			what = clock.Describe(l.Action)
		} else if l.Beat != nil {
			what = fmt.Sprintf("beat %q", l.Beat.Title)
		}
		stated := ""
		if l.Moment != nil {
			stated = l.Moment.Text
		}
		switch l.Kind {
		case clock.LateBy:
			b.What = named(what, "is late", "by", stated)
		case clock.LateUntil:
			b.What = named(what, "has no time left", "until", stated)
		case clock.LateBefore:
			b.At = 0
			b.What = named(what, "would begin before the take", "at", stated)
		}
		out = append(out, b)
	}
	for _, o := range c.Overlaps {
		out = append(out, Broken{
			At: o.SecondStarts, By: o.By(),
			What: fmt.Sprintf("%s is not over when %s", clock.Describe(o.First), clock.Describe(o.Second)),
		})
	}
	for _, o := range c.Overruns {
		start := c.Beats[o.Beat.Index].Start
		out = append(out, Broken{
			At: start + o.Limit, By: o.By(), stated: true,
			What: fmt.Sprintf("beat %q is longer than its %s", o.Beat.Title, units.Number(float64(o.Limit), 2)+" s"),
		})
	}
	for _, r := range c.RollOuts {
		out = append(out, Broken{At: r.From + r.Limit, By: r.By(), What: "camera " + r.Camera.Name + " rolls out"})
	}
	return out
}

func named(what, is, word, stated string) string {
	if stated == "" {
		return what + " " + is
	}
	return what + " " + is + ": " + word + " " + stated
}

// inOrder sorts by when things show, then by name.
func inOrder(list []Broken) {
	slices.SortStableFunc(list, func(a, b Broken) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.What, b.What))
	})
}
