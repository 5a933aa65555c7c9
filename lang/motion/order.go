package motion

import (
	"cmp"
	"slices"

	"longhand/lang/units"
)

// place is where something of a list belongs: by time, then as it says, then as
// it was.
type place struct {
	at    units.Seconds
	then  int
	index int
}

// inTime is a list in the order of time; things of one time are in the order of
// then, and those of one of that as they were. Things are moved once each, however
// large they are.
func inTime[T any](list []T, of func(*T) (at units.Seconds, then int)) []T {
	places := make([]place, len(list))
	sorted := true
	for i := range list {
		places[i].at, places[i].then = of(&list[i])
		places[i].index = i
		sorted = sorted && (i == 0 || before(&places[i-1], &places[i]) < 0)
	}
	if sorted {
		return list
	}
	slices.SortFunc(places, func(a, b place) int { return before(&a, &b) })
	out := make([]T, len(list))
	for i := range places {
		out[i] = list[places[i].index]
	}
	return out
}

func before(a, b *place) int {
	return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.then, b.then), cmp.Compare(a.index, b.index))
}
