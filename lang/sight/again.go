package sight

import (
	"context"
	"slices"

	"longhand/lang/units"
)

// Again is See for a scene that differs from the one an earlier report was made
// for: the same answer, but worked out anew only where it can have changed.
//
// At a frame where a camera stands and looks as before, a body's numbers are
// kept if it is where it was and nothing that moved, came or went could hide it,
// before or after. Things are matched by name. The earlier report and its scene
// must not have been written to. Where only some bodies are watched, now or then,
// everything is worked out anew.
func Again(ctx context.Context, before *Report, s *Scene, o Options) (*Report, error) {
	if err := s.check(o.workers(), before.stage.scene); err != nil {
		return nil, err
	}
	st := newStage(s)
	st.watch(o)
	var d *changes
	if !st.partly() && !before.stage.partly() {
		d = compare(before.stage, st)
	}
	if d == nil {
		return st.see(ctx, o, nil, func(w *tileWorker, t *tile) { w.fresh(t) })
	}
	d.recall(before)
	return st.see(ctx, o, d, func(w *tileWorker, t *tile) { w.again(t, d) })
}

// changes is what differs between two stages.
type changes struct {
	old, new *stage
	report   *Report
	cameras  []int      // by new index, the old one; -1 for one to do afresh
	alike    []bool     // by new index, whether its track is the very same
	bodies   []int      // by new index, the old one or -1
	moved    []change   // bodies and prisms that differ somewhere
	differs  []*change  // by new index of a body, where it is one of them
	renamed  []int      // by old index of a body, the new one; -1 where it is gone
	rolled   []frameSet // frames each old camera rolled in
	runs     [][][]Run  // of the earlier report, by new camera and row
}

// change is one thing that differs at some frames. Its indices are of the old
// and the new stage, -1 where it is in one of them only.
type change struct {
	prism    bool
	old, new int
	at       frameSet // nil: everywhere
}

// manyChanges is how many changed parts of the set make it quicker to start
// afresh.
const manyChanges = 32

// compare finds what differs, or is nil where everything has to be done afresh.
func compare(old, new *stage) *changes {
	a, b := old.scene, new.scene
	if !slices.Equal(a.Mirrors, b.Mirrors) || !slices.Equal(a.Glows, b.Glows) {
		return nil
	}
	d := &changes{old: old, new: new}
	d.compareCameras()
	d.compareBodies()
	d.comparePrisms()
	d.differs, d.renamed = make([]*change, len(b.Bodies)), make([]int, len(a.Bodies))
	for i := range d.moved {
		if c := &d.moved[i]; !c.prism && c.new >= 0 {
			d.differs[c.new] = c
		}
	}
	for j := range d.renamed {
		d.renamed[j] = slices.Index(d.bodies, j)
	}
	if len(d.moved) > manyChanges+len(b.Bodies)/2 {
		return nil
	}
	return d
}

func (d *changes) compareCameras() {
	a, b := d.old.scene, d.new.scene
	for i := range a.Cameras {
		d.rolled = append(d.rolled, d.old.rolling(i))
	}
	for i := range b.Cameras {
		c := &b.Cameras[i]
		j, ok := a.Camera(c.Name)
		if !ok || a.Cameras[j].Width != c.Width || a.Cameras[j].Height != c.Height || !slices.Equal(a.Cameras[j].Own, c.Own) {
			j = -1
		}
		d.cameras = append(d.cameras, j)
		d.alike = append(d.alike, j >= 0 && same(a.Cameras[j].Track, c.Track))
	}
}

func (d *changes) compareBodies() {
	a, b := d.old.scene, d.new.scene
	byName := make(map[string]int, len(a.Bodies))
	for i := range a.Bodies {
		byName[a.Bodies[i].Name] = i
	}
	found := make([]bool, len(a.Bodies))
	for i := range b.Bodies {
		j, ok := byName[b.Bodies[i].Name]
		switch {
		case !ok:
			j = -1
			d.moved = append(d.moved, change{old: -1, new: i})
		case a.Bodies[j].Radius != b.Bodies[i].Radius || !slices.Equal(a.Bodies[j].Polygon, b.Bodies[i].Polygon):
			d.moved = append(d.moved, change{old: j, new: i})
		default:
			if at := d.poses(&a.Bodies[j], &b.Bodies[i]); at != nil {
				d.moved = append(d.moved, change{old: j, new: i, at: at})
			}
		}
		if ok {
			found[j] = true
		}
		d.bodies = append(d.bodies, j)
	}
	for j, ok := range found {
		if !ok {
			d.moved = append(d.moved, change{old: j, new: -1})
		}
	}
}

// poses is the frames at which two tracks differ; nil for none.
func (d *changes) poses(a, b *Body) frameSet {
	if same(a.Track, b.Track) {
		return nil
	}
	var at frameSet
	n := min(d.old.scene.Frames, d.new.scene.Frames)
	for f := range units.Frame(n) {
		if a.At(f) != b.At(f) {
			if at == nil {
				at = make(frameSet, d.new.scene.Frames>>6+1)
			}
			at.add(Frames{f, f})
		}
	}
	return at
}

// comparePrisms matches parts of the set by where they stand, in order.
func (d *changes) comparePrisms() {
	a, b := d.old.prisms, d.new.prisms
	used := make([]bool, len(b))
	next := 0
	for i := range a {
		j := next
		for j < len(b) && (used[j] || !a[i].samePlace(&b[j])) {
			j++
		}
		if j == len(b) {
			d.moved = append(d.moved, change{prism: true, old: i, new: -1})
			continue
		}
		used[j] = true
		if j == next {
			next++
		}
		if at := d.doors(&a[i], &b[j]); at != nil {
			d.moved = append(d.moved, change{prism: true, old: i, new: j, at: at})
		}
	}
	for j, ok := range used {
		if !ok {
			d.moved = append(d.moved, change{prism: true, old: -1, new: j})
		}
	}
}

func (p *prism) samePlace(o *prism) bool {
	return p.z0 == o.z0 && p.z1 == o.z1 && slices.Equal(p.points, o.points)
}

// doors is the frames at which a door differs; nil for none.
func (d *changes) doors(a, b *prism) frameSet {
	if a.shut == nil && b.shut == nil {
		return nil
	}
	var at frameSet
	for f := range units.Frame(min(d.old.scene.Frames, d.new.scene.Frames)) {
		if (a.shut == nil || a.shut.has(f)) != (b.shut == nil || b.shut.has(f)) {
			if at == nil {
				at = make(frameSet, d.new.scene.Frames>>6+1)
			}
			at.add(Frames{f, f})
		}
	}
	return at
}

// kept is whether a camera's frame was seen before, from the same place.
func (d *changes) kept(camera int, f units.Frame) bool {
	old := d.cameras[camera]
	return old >= 0 && int(f) < d.old.scene.Frames && d.rolled[old].has(f) &&
		(d.alike[camera] || d.old.scene.Cameras[old].At(f) == d.new.scene.Cameras[camera].At(f))
}

// again works out a tile from the earlier report. Rows are recalled into the grid
// when something in them is about to change; those in which nothing does are
// parts of the earlier report's runs still.
func (w *tileWorker) again(t *tile, d *changes) {
	clear(w.filled)
	if d.cameras[t.camera] >= 0 {
		w.recallGlares(t, d)
	}
	w.recallGrazes(t, d)
	w.gatherPresent(t, d)
	sectors := w.st.sectors[t.camera]
	for f := t.From; f <= t.To; f++ {
		if d.kept(t.camera, f) {
			if old := d.old.sectors[d.cameras[t.camera]]; !same(old, sectors) {
				sectors[f] = old[f]
			}
			w.mend(t, d, f)
		} else {
			w.recallAll(t, d)
			w.wipe(int(f - t.From))
			clear(w.grazes.at(int(f - t.From)))
			w.all(t, f)
		}
	}
	w.store(t, d)
}

// rollsAsBefore is whether a camera rolls in the frames it did.
func (d *changes) rollsAsBefore(camera int) bool {
	old := d.cameras[camera]
	return old >= 0 && slices.Equal(d.rolled[old], d.new.rolling(camera))
}

// keep adds what lies within some frames of a row's runs in the earlier report.
func (d *changes) keep(to []Run, within Frames, camera, row int) []Run {
	before := d.runs[camera][row]
	for i := firstAfter(before, within.From); i < len(before) && before[i].From <= within.To; i++ {
		run, _ := before[i].Cut(within)
		to = append(to, d.rowed(run, camera, row))
	}
	return to
}

// all adds a row's runs in the earlier report.
func (d *changes) all(to []Run, camera, row int) []Run {
	for _, run := range d.runs[camera][row] {
		to = append(to, d.rowed(run, camera, row))
	}
	return to
}

// rowed is a run of the earlier report as one of a row of the new.
func (d *changes) rowed(r Run, camera, row int) Run {
	bodies := len(d.bodies)
	r.Camera, r.Body, r.Mirror = camera, row%bodies, row/bodies-1
	return r
}

// recall finds the runs of every row in the earlier report.
func (d *changes) recall(before *Report) {
	d.report = before
	for _, camera := range d.cameras {
		rows := make([][]Run, len(d.bodies)*(1+len(d.new.scene.Mirrors)))
		for row := range rows {
			body, mirror := d.bodies[row%len(d.bodies)], row/len(d.bodies)-1
			switch {
			case body < 0 || camera < 0:
			case mirror == NoMirror:
				rows[row] = before.Of(camera, body)
			default:
				rows[row] = before.In(mirror, camera, body)
			}
		}
		d.runs = append(d.runs, rows)
	}
}

// recall fills a row of the grid from the earlier report, once.
func (w *tileWorker) recall(t *tile, d *changes, row int) {
	if w.filled[row] {
		return
	}
	w.filled[row] = true
	line := w.visible[row*tileFrames : (row+1)*tileFrames]
	for i := range line {
		line[i] = -1
	}
	w.copyRuns(t, row, d.runs[t.camera][row])
}

func (w *tileWorker) recallAll(t *tile, d *changes) {
	for row := range w.filled {
		w.recall(t, d, row)
	}
}

func (w *tileWorker) recallGlares(t *tile, d *changes) {
	camera := d.cameras[t.camera]
	for i := range w.glares {
		g := &w.glares[i]
		for k := range d.report.Glares {
			o := &d.report.Glares[k]
			from, to := max(g.From, o.From, t.From), min(g.To, o.To, t.To)
			if g.Camera != t.camera || o.Camera != camera || g.Glow != o.Glow || from > to {
				continue
			}
			copy(g.Share[from-g.From:to-g.From+1], o.Share[from-o.From:])
			copy(g.Off[from-g.From:to-g.From+1], o.Off[from-o.From:])
			copy(g.Facing[from-g.From:to-g.From+1], o.Facing[from-o.From:])
			copy(g.Open[from-g.From:to-g.From+1], o.Open[from-o.From:])
		}
	}
}

// copyRuns copies what lies within a tile of a row's runs, which are in the order
// of time.
func (w *tileWorker) copyRuns(t *tile, row int, runs []Run) {
	for i := firstAfter(runs, t.From); i < len(runs) && runs[i].From <= t.To; i++ {
		r := &runs[i]
		from, to := max(r.From, t.From), min(r.To, t.To)
		at := row*tileFrames + int(from-t.From)
		copy(w.visible[at:], r.Visible[from-r.From:to-r.From+1])
		copy(w.share[at:], r.Share[from-r.From:to-r.From+1])
	}
}

func (w *tileWorker) wipe(col int) {
	for i := col; i < len(w.visible); i += tileFrames {
		w.visible[i] = -1
	}
}

// mend does again what can have changed at a frame whose camera is as it was.
func (w *tileWorker) mend(t *tile, d *changes, f units.Frame) {
	direct := w.direct()
	if direct && w.aloof(t, d, f) {
		return
	}
	any, met := w.findGhosts(t, d, f)
	if !any || direct && !met {
		return
	}
	if direct {
		w.only = w.present.list(w.only[:0], int(f-t.From))
		if !w.eye.steep {
			w.narrow(f)
		}
		w.solids(f)
		w.bodies(w.only, t.camera, f)
	} else {
		w.around(t.camera, f)
	}
	col := int(f - t.From)
	for i := w.nset; i < w.n; i++ {
		it := &w.items[i]
		if !w.stale[it.ref] && !w.overlaps(it) {
			continue
		}
		at := int(it.ref)*tileFrames + col
		w.recall(t, d, int(it.ref))
		if w.stale[it.ref] || w.haunted(it, w.visible[at]) {
			w.visible[at] = -1
			w.put(int(it.ref), col, w.measure(it))
			w.stale[it.ref] = false
		}
	}
	for _, c := range d.moved {
		if c.prism || c.new < 0 || !c.changed(f) || !w.stale[c.new] {
			continue
		}
		w.stale[c.new] = false // out of frame now
		w.recall(t, d, c.new)
		w.visible[c.new*tileFrames+col] = -1
	}
	if len(w.st.scene.Mirrors) > 0 {
		w.recallAll(t, d)
		for i := len(w.st.shapes)*tileFrames + col; i < len(w.visible); i += tileFrames {
			w.visible[i] = -1
		}
		w.mirrors(t.camera, f, func(row int, s area) { w.put(row, col, s) })
	}
	w.glows(t.camera, f)
}

// aloof is whether everything that differs at a frame is surely out of it, as it
// was and as it is.
func (w *tileWorker) aloof(t *tile, d *changes, f units.Frame) bool {
	s := &d.old.sectors[d.cameras[t.camera]][f]
	for i := range d.moved {
		m := &d.moved[i]
		if !m.changed(f) {
			continue
		}
		if m.prism {
			return false
		}
		if m.old >= 0 && !s.misses(d.old.scene.Bodies[m.old].At(f), d.old.shapes[m.old].reach) ||
			m.new >= 0 && !s.misses(d.new.scene.Bodies[m.new].At(f), d.new.shapes[m.new].reach) {
			return false
		}
	}
	return true
}

// narrow makes the wedge looked at no wider and no deeper than the bodies that any
// ghost could hide or have hidden, or that have changed themselves, going by the
// circles about them.
func (w *tileWorker) narrow(f units.Frame) {
	e := &w.eye
	p0, p1, nearest := e.win.p1, e.win.p0, 0.0
	for i := range w.ghosts[:w.nghost] {
		g := &w.ghosts[i]
		p0, p1, nearest = min(p0, g.p0), max(p1, g.p1), max(nearest, g.w1)
	}
	e.wedge = newWedge(max(p0, e.win.p0), min(p1, e.win.p1))
	deep := 0.0
	for _, i := range w.only {
		reach, at := w.st.shapes[i].reach, w.st.scene.Bodies[i].At(f)
		q, left := e.place(at.X, at.Y)
		if e.misses(q, left, reach) || !w.stale[i] && (q+reach)*nearest < 1 {
			continue
		}
		deep = max(deep, q+reach)
		if q <= reach {
			p0, p1 = e.win.p0, e.win.p1 // beside the lens
			continue
		}
		lq, ll, rq, rl := tangents(q, left, reach, q*q+left*left-reach*reach)
		p0, p1 = min(p0, rl/rq), max(p1, ll/lq)
	}
	e.wedge = newWedge(max(p0, e.win.p0), min(p1, e.win.p1))
	e.wedge.deep = deep * (1 + 1e-9)
}

// gatherPresent finds which bodies matter at which frame of a tile: those that
// changed, and others while they were in frame or grazed it, since they do again.
func (w *tileWorker) gatherPresent(t *tile, d *changes) {
	copy(w.present.bits, w.grazes.bits)
	mark := func(body int, f Frames) {
		w.present.addAll(int(max(f.From, t.From)-t.From), int(min(f.To, t.To)-t.From), body)
	}
	next := w.nextRuns(t.camera)
	for i := range w.st.shapes {
		if d.differs[i] != nil {
			mark(i, t.Frames)
			continue
		}
		// Tiles come in the order of time, nearly.
		runs, k := d.runs[t.camera][i], int(next[i])
		for k > 0 && runs[k-1].To >= t.From {
			k--
		}
		for k < len(runs) && runs[k].To < t.From {
			k++
		}
		next[i] = int32(k)
		for ; k < len(runs) && runs[k].From <= t.To; k++ {
			mark(i, runs[k].Frames)
		}
	}
}

// nextRuns is, by body, about which run of a camera's comes next.
func (w *tileWorker) nextRuns(camera int) []int32 {
	if w.next == nil {
		w.next = make([][]int32, len(w.st.scene.Cameras))
	}
	if w.next[camera] == nil {
		w.next[camera] = make([]int32, len(w.st.shapes))
	}
	return w.next[camera]
}

func (c *change) changed(f units.Frame) bool { return c.at == nil || c.at.has(f) }

// findGhosts projects everything that differs at a frame, as it was and as it is:
// whether anything differs, and whether any of it meets the frame.
func (w *tileWorker) findGhosts(t *tile, d *changes, f units.Frame) (any, met bool) {
	w.nghost = 0
	for i := range d.moved {
		c := &d.moved[i]
		if !c.changed(f) {
			continue
		}
		if !any {
			any = true
			cam := &w.st.scene.Cameras[t.camera]
			if !w.eye.set(cam, cam.At(f)) {
				return false, false
			}
		}
		if !c.prism && c.new >= 0 {
			w.stale[c.new] = true
		}
		w.ghost(d.old, c, c.old, f, ghostBefore)
		w.ghost(d.new, c, c.new, f, ghostAfter)
	}
	return any, w.nghost > 0 || any && w.anyStaleShown(t, d, f)
}

// anyStaleShown is whether a body that changed was in frame: it has to be taken
// out even if it is not any more.
func (w *tileWorker) anyStaleShown(t *tile, d *changes, f units.Frame) bool {
	shown := false
	for i := range d.moved {
		c := &d.moved[i]
		if !c.prism && c.new >= 0 && c.changed(f) {
			w.recall(t, d, c.new)
			if w.visible[c.new*tileFrames+int(f-t.From)] >= 0 {
				shown = true
			} else {
				w.stale[c.new] = false
			}
		}
	}
	return shown
}

// ghost projects one thing out of a stage, if it is there and meets the frame.
func (w *tileWorker) ghost(st *stage, c *change, i int, f units.Frame, when int32) {
	if i < 0 {
		return
	}
	for len(w.ghosts) <= w.nghost {
		w.ghosts = append(w.ghosts, item{})
	}
	g := &w.ghosts[w.nghost]
	ok := false
	if c.prism {
		p := &st.prisms[i]
		ok = (p.shut == nil || p.shut.has(f)) && w.seePrism(g, p)
	} else {
		ok = w.seeBody(g, &st.shapes[i], st.scene.Bodies[i].At(f))
	}
	if ok {
		g.ref = when
		w.nghost++
	}
}

// haunted is whether anything that changed could hide part of an item, before or
// after. What was wholly hidden stays so whatever else comes before it.
func (w *tileWorker) haunted(it *item, visible float32) bool {
	for i := range w.ghosts[:w.nghost] {
		g := &w.ghosts[i]
		if w.eye.mayCover(&g.extent, &it.extent) && (g.ref == ghostBefore || visible != 0) {
			return true
		}
	}
	return false
}

// overlaps is whether anything that changed could hide part of an item that it
// did not hide wholly.
func (w *tileWorker) overlaps(it *item) bool {
	for i := range w.ghosts[:w.nghost] {
		if w.eye.mayCover(&w.ghosts[i].extent, &it.extent) {
			return true
		}
	}
	return false
}

// What a ghost's ref says: whether it is a thing as it was or as it is.
const (
	ghostBefore = iota
	ghostAfter
)
