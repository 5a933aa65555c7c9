package sight

import (
	"math"
	"sort"
)

// What a ray meets where it meets no item.
const (
	floorBeyond   = -1
	nothingBeyond = -2
)

// tally adds up what rays meet, by item and then by name; the images of a mirror
// count on from the items.
type tally struct {
	l       *looker
	share   []float64 // by item, two on
	nearest []float64
}

func newTally(l *looker) *tally {
	n := l.n + l.nimage + 2
	t := &tally{l: l, share: make([]float64, n), nearest: make([]float64, n)}
	for i := range t.nearest {
		t.nearest[i] = math.Inf(1)
	}
	return t
}

func (t *tally) add(item int, share, distance float64) {
	t.share[item+2] += share
	t.nearest[item+2] = min(t.nearest[item+2], distance)
}

// backings is the tally by name, as parts of a whole, most first.
func (t *tally) backings(whole float64) []Backing {
	out := []Backing{}
	for i, share := range t.share {
		if share == 0 {
			continue
		}
		nearest := t.nearest[i]
		var b Backing
		switch i - 2 {
		case nothingBeyond:
		case floorBeyond:
			b.Kind = "floor"
		default:
			if i -= 2; i < t.l.n {
				b = t.l.named(&t.l.items[i])
			} else {
				b = t.l.named(&t.l.images[i-t.l.n])
			}
		}
		b.Share, b.Distance = share, nearest
		again := false
		for k := range out {
			if o := &out[k]; o.Name == b.Name && o.Kind == b.Kind {
				o.Share += b.Share
				o.Distance = min(o.Distance, b.Distance)
				again = true
			}
		}
		if !again {
			out = append(out, b)
		}
	}
	for i := range out {
		out[i].Share /= whole
	}
	sort.Slice(out, func(i, j int) bool {
		a, b := &out[i], &out[j]
		if a.Share != b.Share {
			return a.Share > b.Share
		}
		return a.Name+"\x00"+a.Kind < b.Name+"\x00"+b.Kind
	})
	return out
}
