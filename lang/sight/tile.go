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
	}
}

// fresh works out a tile from nothing.
func (w *tileWorker) fresh(t *tile) {
	w.clear()
	for f := t.From; f <= t.To; f++ {
		w.all(t, f)
	}
	w.store(t)
}

func (w *tileWorker) clear() {
	for i := range w.visible {
		w.visible[i] = -1
	}
}

// all works out every row at a frame.
func (w *tileWorker) all(t *tile, f units.Frame) {
	col := int(f - t.From)
	if !w.frame(t.camera, f) {
		return
	}
	for i := w.nset; i < w.n; i++ {
		it := &w.items[i]
		w.put(int(it.ref), col, w.measure(it))
	}
	w.mirrors(t.camera, f, func(row int, s seen) { w.put(row, col, s) })
	w.glows(t.camera, f)
}

func (w *tileWorker) put(row, col int, s seen) {
	if s.whole <= 0 {
		return
	}
	i := row*tileFrames + col
	w.visible[i] = float32(min(1, s.open/s.whole))
	w.share[i] = float32(100 * s.open / w.eye.area)
}

// store turns the grid into the tile's runs, in one allocation for all of their
// numbers.
func (w *tileWorker) store(t *tile) {
	n := int(t.To-t.From) + 1
	rows := len(w.visible) / tileFrames
	bodies := len(w.st.shapes)
	count, runs := 0, 0
	for r := range rows {
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
	}
}

// assemble joins the tiles' runs where they touch.
func (st *stage) assemble(tiles []tile, glares []Glare) *Report {
	r := &Report{stage: st, Glares: glares}
	var pieces []Run
	for i := range tiles {
		pieces = append(pieces, tiles[i].runs...)
		tiles[i].runs = nil
	}
	sort.SliceStable(pieces, func(i, j int) bool {
		a, b := &pieces[i], &pieces[j]
		switch {
		case (a.Mirror == NoMirror) != (b.Mirror == NoMirror):
			return a.Mirror == NoMirror
		case a.Camera != b.Camera:
			return a.Camera < b.Camera
		case a.Mirror != b.Mirror:
			return a.Mirror < b.Mirror
		case a.Body != b.Body:
			return a.Body < b.Body
		}
		return a.From < b.From
	})
	for i := 0; i < len(pieces); {
		j, n := i+1, pieces[i].Len()
		for j < len(pieces) && pieces[j].continues(&pieces[j-1]) {
			n += pieces[j].Len()
			j++
		}
		run := pieces[i]
		if j > i+1 {
			numbers := make([]float32, 0, 2*n)
			for k := i; k < j; k++ {
				numbers = append(numbers, pieces[k].Visible...)
			}
			for k := i; k < j; k++ {
				numbers = append(numbers, pieces[k].Share...)
			}
			run.To = pieces[j-1].To
			run.Visible, run.Share = numbers[:n:n], numbers[n:]
		}
		if run.Mirror == NoMirror {
			r.Sight = append(r.Sight, run)
		} else {
			r.Reflected = append(r.Reflected, run)
		}
		i = j
	}
	return r
}

func (r *Run) continues(before *Run) bool {
	return r.Camera == before.Camera && r.Mirror == before.Mirror && r.Body == before.Body && r.From == before.To+1
}
