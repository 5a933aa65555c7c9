package sight

import (
	"slices"
	"sort"

	"longhand/lang/lanes"
	"longhand/lang/units"
)

// tileWorker fills tiles. Its grid has a row for each body seen directly, then
// one for each body in each mirror, and a column for each frame of the tile.
type tileWorker struct {
	*looker
	glares  []Glare
	visible []float32 // less than 0 where out of frame
	share   []float32

	// of Again, at a frame: bodies that are not as they were, and everything that
	// changed, as it was and as it is
	stale  []bool
	filled []bool // rows that are in the grid
	ghosts []item
	nghost int

	next    [][]int32 // by camera and body
	present bodySets  // what matters
	only    []int32   // of that, at the frame

	grazes bodySets
}

func newTileWorker(st *stage, glares []Glare) *tileWorker {
	rows := len(st.shapes) * (1 + len(st.scene.Mirrors))
	return &tileWorker{
		looker:  newLooker(st),
		glares:  glares,
		visible: make([]float32, rows*tileFrames),
		share:   make([]float32, rows*tileFrames),
		stale:   make([]bool, len(st.shapes)),
		present: newBodySets(len(st.shapes)),
		grazes:  newBodySets(len(st.shapes)),
		filled:  make([]bool, rows),
	}
}

// fresh works out a tile from nothing.
func (w *tileWorker) fresh(t *tile) {
	w.clear(t.camera)
	clear(w.grazes.bits)
	for f := t.From; f <= t.To; f++ {
		w.all(t, f)
	}
	w.store(t, nil)
}

func (w *tileWorker) clear(camera int) {
	for r := range len(w.visible) / tileFrames {
		if w.st.ignores(camera, r%len(w.st.shapes)) {
			continue
		}
		line := w.visible[r*tileFrames : (r+1)*tileFrames]
		for i := range line {
			line[i] = -1
		}
	}
}

// direct is whether nothing matters but what is seen directly: neither mirrors nor
// glows.
func (w *tileWorker) direct() bool { return len(w.st.scene.Mirrors) == 0 && len(w.glares) == 0 }

// all works out every row at a frame.
func (w *tileWorker) all(t *tile, f units.Frame) {
	col := int(f - t.From)
	c := &w.st.scene.Cameras[t.camera]
	v := c.At(f)
	if !w.eye.set(c, v) || !w.lookOut(t.camera, f) {
		return
	}
	if w.st.sectors != nil {
		w.st.sectors[t.camera][f] = newSector(&w.eye, &v)
	}
	w.around(t.camera, f)
	for i := w.nset; i < w.n; i++ {
		if it := &w.items[i]; !w.st.ignores(t.camera, int(it.ref)) {
			w.put(int(it.ref), col, w.measure(it))
		}
	}
	w.mirrors(t.camera, f, func(row int, s area) { w.put(row, col, s) })
	w.glows(t.camera, f)
}

func (w *tileWorker) put(row, col int, s area) {
	if s.whole <= 0 {
		if row < len(w.st.shapes) {
			w.grazes.add(col, row)
		}
		return
	}
	i := row*tileFrames + col
	w.visible[i] = float32(min(1, s.open/s.whole))
	w.share[i] = float32(min(100, 100*s.open/w.eye.area))
}

// store turns the grid into the tile's runs, in one allocation for all of their
// numbers. Where there are changes, rows that are not in the grid are as they were,
// and left to assemble.
func (w *tileWorker) store(t *tile, d *changes) {
	n := int(t.To-t.From) + 1
	rows := len(w.visible) / tileFrames
	asked := func(r int) bool { return (d == nil || w.filled[r]) && !w.st.ignores(t.camera, r%len(w.st.shapes)) }
	count, runs := 0, 0
	for r := range rows {
		if !asked(r) {
			continue
		}
		line := w.visible[r*tileFrames : r*tileFrames+n]
		for i, v := range line {
			if v >= 0 {
				count++
				if i == 0 || line[i-1] < 0 {
					runs++
				}
			}
		}
	}
	numbers := make([]float32, 0, 2*count)
	t.runs = make([]Run, 0, runs)
	for r := range rows {
		if asked(r) {
			numbers = w.storeRow(t, r, n, numbers)
		}
	}
	if d != nil {
		t.anew = slices.Clone(w.filled)
	}
	w.keepGrazes(t)
}

// storeRow adds the runs of a row of the grid to a tile.
func (w *tileWorker) storeRow(t *tile, r, n int, numbers []float32) []float32 {
	bodies := len(w.st.shapes)
	line := w.visible[r*tileFrames : r*tileFrames+n]
	for i := 0; i < n; i++ {
		if line[i] < 0 {
			continue
		}
		j := i
		for j < n && line[j] >= 0 {
			j++
		}
		run := Run{Camera: t.camera, Body: r % bodies, Mirror: r/bodies - 1}
		run.Frames = Frames{t.From + units.Frame(i), t.From + units.Frame(j-1)}
		k := len(numbers)
		numbers = append(numbers, line[i:j]...)
		run.Visible = numbers[k:len(numbers):len(numbers)]
		k = len(numbers)
		numbers = append(numbers, w.share[r*tileFrames+i:r*tileFrames+j]...)
		run.Share = numbers[k:len(numbers):len(numbers)]
		t.runs = append(t.runs, run)
		i = j
	}
	return numbers
}

// firstAfter is the first of some runs, in the order of time, that is not over
// before a frame.
func firstAfter(runs []Run, f units.Frame) int {
	return sort.Search(len(runs), func(i int) bool { return runs[i].To >= f })
}

// assemble joins the tiles' runs where they touch, by camera, mirror, body and
// time. Tiles are in the order of time; where there are changes, what they don't
// have is as it was.
func (st *stage) assemble(tiles []tile, glares []Glare, d *changes, workers int) *Report {
	cameras := len(st.scene.Cameras)
	r := &Report{stage: st, Glares: glares, grazes: make([][]graze, cameras)}
	// Each camera has a part of one array to fill, which is most of the memory here.
	room := make([]int, cameras+1)
	for i := range tiles {
		room[tiles[i].camera+1] += len(tiles[i].runs)
	}
	for c := range cameras {
		if d != nil {
			for _, runs := range d.runs[c] {
				room[c+1] += len(runs)
			}
		}
		room[c+1] += room[c]
	}
	all := make([]Run, room[cameras])
	direct, reflected := make([][]Run, cameras), make([][]Run, cameras)
	lanes.Do(cameras, workers, func(c int) {
		direct[c], reflected[c] = st.assembleCamera(c, tiles, d, all[room[c]:room[c]:room[c+1]])
		for i := range tiles {
			if tiles[i].camera == c {
				r.grazes[c] = append(r.grazes[c], tiles[i].grazes...)
			}
		}
	})
	r.Sight, r.Reflected = together(all, direct, room), slices.Concat(reflected...)
	return r
}

// together is lists, which begin at some places of an array, on end in it; elsewhere
// where one, cut into more pieces than it was, had no room there.
func together(all []Run, lists [][]Run, at []int) []Run {
	for i, list := range lists {
		if len(list) > at[i+1]-at[i] {
			return slices.Concat(lists...)
		}
	}
	out := all[:0]
	for _, list := range lists {
		out = append(out, list...) // no further on than it was
	}
	return out
}

// assembleCamera is assemble for one camera: what it sees directly, in the room given,
// and in mirrors.
func (st *stage) assembleCamera(camera int, tiles []tile, d *changes, room []Run) (direct, reflected []Run) {
	direct = room
	bodies := len(st.shapes)
	rows := bodies * (1 + len(st.scene.Mirrors))
	var own []*tile
	for i := range tiles {
		if tiles[i].camera == camera {
			own = append(own, &tiles[i])
		}
	}
	next := make([]int, len(own)) // run of each tile
	same := d != nil && d.rollsAsBefore(camera)
	var pieces []Run
	for row := range rows {
		pieces = pieces[:0]
		if same && !slices.ContainsFunc(own, func(t *tile) bool { return t.anew[row] }) {
			pieces = d.all(pieces, camera, row)
		} else {
			for i := 0; i < len(own); i++ {
				t := own[i]
				if d != nil && !t.anew[row] {
					as := t.Frames
					for i+1 < len(own) && !own[i+1].anew[row] && own[i+1].From == as.To+1 {
						i++
						as.To = own[i].To
					}
					pieces = d.keep(pieces, as, camera, row)
					continue
				}
				for ; next[i] < len(t.runs) && t.runs[next[i]].row(bodies) == row; next[i]++ {
					pieces = append(pieces, t.runs[next[i]])
				}
			}
			pieces = joined(pieces)
		}
		if row < bodies {
			direct = append(direct, pieces...)
		} else {
			reflected = append(reflected, pieces...)
		}
	}
	return direct, reflected
}

// row is a run's row in a grid.
func (r *Run) row(bodies int) int { return (r.Mirror+1)*bodies + r.Body }

// joined is pieces in the order of time, those that touch as one run, in the room
// they took.
func joined(pieces []Run) []Run {
	out := pieces[:0]
	for i := 0; i < len(pieces); {
		j, n := i+1, pieces[i].Len()
		for j < len(pieces) && pieces[j].From == pieces[j-1].To+1 {
			n += pieces[j].Len()
			j++
		}
		run := pieces[i]
		run.To = pieces[j-1].To
		if parts := pieces[i:j]; oneArray(parts) {
			run.Visible, run.Share = run.Visible[:n:n], run.Share[:n:n]
		} else {
			numbers := make([]float32, 0, 2*n)
			for k := range parts {
				numbers = append(numbers, parts[k].Visible...)
			}
			for k := range parts {
				numbers = append(numbers, parts[k].Share...)
			}
			run.Visible, run.Share = numbers[:n:n], numbers[n:]
		}
		out = append(out, run)
		i = j
	}
	return out
}

// oneArray is whether the numbers of pieces lie one after another in memory, as
// those do that were cut from one run.
func oneArray(pieces []Run) bool {
	for i := 1; i < len(pieces); i++ {
		a, b := &pieces[i-1], &pieces[i]
		if !follows(a.Visible, b.Visible) || !follows(a.Share, b.Share) {
			return false
		}
	}
	return true
}

func follows(a, b []float32) bool {
	n := len(a)
	return cap(a) >= n+len(b) && &a[:n+1][n] == &b[0]
}
