package sight

import (
	"math/bits"
	"sort"

	"longhand/lang/units"
)

// bodySets is a set of bodies for each frame of a tile.
type bodySets struct {
	words int // of a set
	bits  []uint64
}

func newBodySets(bodies int) bodySets {
	words := (bodies + 63) / 64
	return bodySets{words, make([]uint64, tileFrames*words)}
}

func (b *bodySets) at(col int) []uint64 { return b.bits[col*b.words : (col+1)*b.words] }

func (b *bodySets) add(col, body int) { b.at(col)[body/64] |= 1 << (body % 64) }

// addAll adds a body from one frame to another.
func (b *bodySets) addAll(from, to, body int) {
	bit := uint64(1) << (body % 64)
	for i := from*b.words + body/64; i <= to*b.words+body/64; i += b.words {
		b.bits[i] |= bit
	}
}

// list adds the bodies of a frame, in their order.
func (b *bodySets) list(to []int32, col int) []int32 {
	for n, set := range b.at(col) {
		for ; set != 0; set &= set - 1 {
			to = append(to, int32(64*n+bits.TrailingZeros64(set)))
		}
	}
	return to
}

// graze is a frame whose bounds a body's bounds meet, though nothing of it is in
// frame: it can't hide anything, but where chords are cut is told by it, too.
type graze struct {
	frame units.Frame
	body  int32
}

// keepGrazes lists the grazes of a tile, by frame and body.
func (w *tileWorker) keepGrazes(t *tile) {
	for f := t.From; f <= t.To; f++ {
		w.only = w.grazes.list(w.only[:0], int(f-t.From))
		for _, i := range w.only {
			t.grazes = append(t.grazes, graze{f, i})
		}
	}
}

// recallGrazes finds the grazes of a tile in the earlier report, but for those of
// what differs.
func (w *tileWorker) recallGrazes(t *tile, d *changes) {
	clear(w.grazes.bits)
	if d.cameras[t.camera] < 0 {
		return
	}
	list := d.report.grazes[d.cameras[t.camera]]
	for k := sort.Search(len(list), func(i int) bool { return list[i].frame >= t.From }); k < len(list) && list[k].frame <= t.To; k++ {
		i := d.renamed[list[k].body]
		if i >= 0 && (d.differs[i] == nil || !d.differs[i].changed(list[k].frame)) {
			w.grazes.add(int(list[k].frame-t.From), i)
		}
	}
}
