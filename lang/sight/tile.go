package sight

import (
	"sort"

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
}

func newTileWorker(st *stage, glares []Glare) *tileWorker {
	rows := len(st.shapes) * (1 + len(st.scene.Mirrors))
	return &tileWorker{
		looker:  newLooker(st),
		glares:  glares,
		visible: make([]float32, rows*tileFrames),
		share:   make([]float32, rows*tileFrames),
		stale:   make([]bool, len(st.shapes)),
		filled:  make([]bool, rows),
	}
}

// fresh works out a tile from nothing.
func (w *tileWorker) fresh(t *tile) {
	w.clear(t.camera)
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

// all works out every row at a frame.
func (w *tileWorker) all(t *tile, f units.Frame) {
	col := int(f - t.From)
	c := &w.st.scene.Cameras[t.camera]
	if !w.eye.set(c, c.At(f)) || !w.lookOut(t.camera, f) {
		return
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
		return
	}
	i := row*tileFrames + col
	w.visible[i] = float32(min(1, s.open/s.whole))
	w.share[i] = float32(min(100, 100*s.open/w.eye.area))
}

// store turns the grid into the tile's runs, in one allocation for all of their
// numbers. Rows that are not in the grid, where there are changes, are as they
// were.
func (w *tileWorker) store(t *tile, d *changes) {
	n := int(t.To-t.From) + 1
	rows := len(w.visible) / tileFrames
	count, runs := 0, 0
	for r := range rows {
		if w.st.ignores(t.camera, r%len(w.st.shapes)) {
			continue
		}
		if d != nil && !w.filled[r] {
			runs++
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
		if w.st.ignores(t.camera, r%len(w.st.shapes)) {
			continue
		}
		if d != nil && !w.filled[r] {
			w.keep(t, d, r)
		} else {
			numbers = w.storeRow(t, r, n, numbers)
		}
	}
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

// keep adds what lies within a tile of a row's runs in the earlier report.
func (w *tileWorker) keep(t *tile, d *changes, r int) {
	bodies := len(w.st.shapes)
	before := d.runs[t.camera][r]
	for i := firstAfter(before, t.From); i < len(before) && before[i].From <= t.To; i++ {
		run, _ := before[i].Cut(t.Frames)
		run.Camera, run.Body, run.Mirror = t.camera, r%bodies, r/bodies-1
		t.runs = append(t.runs, run)
	}
}

// firstAfter is the first of some runs, in the order of time, that is not over
// before a frame.
func firstAfter(runs []Run, f units.Frame) int {
	return sort.Search(len(runs), func(i int) bool { return runs[i].To >= f })
}

// assemble joins the tiles' runs where they touch, by camera, mirror, body and
// time. Tiles are in the order of time.
func (st *stage) assemble(tiles []tile, glares []Glare) *Report {
	r := &Report{stage: st, Glares: glares}
	bodies := len(st.shapes)
	rows := bodies * (1 + len(st.scene.Mirrors))
	byRow := make([][]*Run, rows)
	most := 0
	for i := range tiles {
		most += len(tiles[i].runs)
	}
	r.Sight = make([]Run, 0, most)
	for camera := range st.scene.Cameras {
		for i := range byRow {
			byRow[i] = byRow[i][:0]
		}
		for i := range tiles {
			if tiles[i].camera != camera {
				continue
			}
			for k := range tiles[i].runs {
				run := &tiles[i].runs[k]
				row := (run.Mirror+1)*bodies + run.Body
				byRow[row] = append(byRow[row], run)
			}
		}
		for row, pieces := range byRow {
			if row < bodies {
				r.Sight = joinRuns(r.Sight, pieces)
			} else {
				r.Reflected = joinRuns(r.Reflected, pieces)
			}
		}
	}
	return r
}

// joinRuns appends pieces, those that touch as one run.
func joinRuns(out []Run, pieces []*Run) []Run {
	for i := 0; i < len(pieces); {
		j, n := i+1, pieces[i].Len()
		for j < len(pieces) && pieces[j].From == pieces[j-1].To+1 {
			n += pieces[j].Len()
			j++
		}
		run := *pieces[i]
		if parts := pieces[i:j]; oneArray(parts) {
			run.To = pieces[j-1].To
			run.Visible, run.Share = run.Visible[:n:n], run.Share[:n:n]
		} else {
			numbers := make([]float32, 0, 2*n)
			for _, p := range pieces[i:j] {
				numbers = append(numbers, p.Visible...)
			}
			for _, p := range pieces[i:j] {
				numbers = append(numbers, p.Share...)
			}
			run.To = pieces[j-1].To
			run.Visible, run.Share = numbers[:n:n], numbers[n:]
		}
		out = append(out, run)
		i = j
	}
	return out
}

// oneArray is whether the numbers of pieces lie one after another in memory, as
// those do that were cut from one run.
func oneArray(pieces []*Run) bool {
	for i := 1; i < len(pieces); i++ {
		a, b := pieces[i-1], pieces[i]
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
