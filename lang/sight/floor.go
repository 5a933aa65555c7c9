package sight

import (
	"context"
	"math"
	"math/bits"
	"sort"
	"sync"
	"sync/atomic"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// Standing is the height, in metres, of a person for whom the never-seen floor
// is worked out: most people, with a cap on.
const Standing = 1.75

// FloorOptions is what to look for on the floor; the zero value asks for the
// bare floor the whole take never shows.
type FloorOptions struct {
	Cell    float64 // side of a cell in metres; 0 for 0.1
	Height  float64 // 0 for the floor itself; Standing for anyone standing there
	Frames  []Frames
	Cameras []int       // indices; nil for all
	Bounds  [2]geom.Vec // lower left and upper right; zero for the bounds of the solids
	Times   bool        // fill in the first and last frame at which each cell is seen
	Workers int
}

// FloorMap tells, cell by cell, what no rolling camera sees at any of the frames
// asked about. A cell is seen if its middle is, or, with a height, any point of
// the upright line from there to that height, however short the glimpse. Only
// solids hide it; bodies come and go, and mirrors are not looked into.
type FloorMap struct {
	Cell, Height  float64
	Origin        geom.Vec // lower left corner of the first cell
	Columns, Rows int
	Frames        []Frames

	words  int // of a row
	unseen []uint64
	taken  []uint64
	first  []int32
	last   []int32
	run    *floorRun
}

// Never is whether a cell is free floor that is never seen.
func (m *FloorMap) Never(column, row int) bool {
	w, b := m.bit(column, row)
	return m.unseen[w]&^m.taken[w]&b != 0
}

// Seen is whether some camera sees a cell at some frame.
func (m *FloorMap) Seen(column, row int) bool {
	w, b := m.bit(column, row)
	return m.unseen[w]&b == 0
}

// Taken is whether something that never moves stands on a cell.
func (m *FloorMap) Taken(column, row int) bool {
	w, b := m.bit(column, row)
	return m.taken[w]&b != 0
}

func (m *FloorMap) bit(column, row int) (word int, bit uint64) {
	return row*m.words + column>>6, 1 << (uint(column) & 63)
}

// Middle is the middle of a cell.
func (m *FloorMap) Middle(column, row int) geom.Vec {
	return geom.Vec{X: m.Origin.X + (float64(column)+0.5)*m.Cell, Y: m.Origin.Y + (float64(row)+0.5)*m.Cell}
}

// SeenFrom is the first and last frame at which a cell is seen; false where it
// never is. It needs FloorOptions.Times.
func (m *FloorMap) SeenFrom(column, row int) (first, last units.Frame, ok bool) {
	if m.first == nil || !m.Seen(column, row) {
		return 0, 0, false
	}
	i := row*m.Columns + column
	return units.Frame(m.first[i]), units.Frame(m.last[i]), true
}

// Area is the free floor that is never seen, in square metres.
func (m *FloorMap) Area() float64 {
	n := 0
	for i, w := range m.unseen {
		n += bits.OnesCount64(w &^ m.taken[i])
	}
	return float64(n) * m.Cell * m.Cell
}

// Floor works out the never-seen floor. It looks at every frame; it leaves out
// only frames at which a camera and every door are as they were at the frame
// before.
func Floor(ctx context.Context, s *Scene, o FloorOptions) (*FloorMap, error) {
	if err := s.checkStill(nil); err != nil {
		return nil, err
	}
	r := newFloorRun(s, o)
	m := r.m
	m.unseen = r.all()
	if !o.Times {
		return m, r.sweep(ctx, m.unseen, nil, false)
	}
	m.first, m.last = make([]int32, m.Columns*m.Rows), make([]int32, m.Columns*m.Rows)
	if err := r.sweep(ctx, m.unseen, m.first, false); err != nil {
		return nil, err
	}
	return m, r.sweep(ctx, r.all(), m.last, true)
}

// floorRun is the work of one map.
type floorRun struct {
	st      *stage
	m       *FloorMap
	cameras []int
	rolling []frameSet // of each of them
	workers int
}

func newFloorRun(s *Scene, o FloorOptions) *floorRun {
	if o.Cell <= 0 {
		o.Cell = 0.1
	}
	if o.Frames == nil {
		o.Frames = []Frames{{0, units.Frame(s.Frames - 1)}}
	}
	if o.Cameras == nil {
		for i := range s.Cameras {
			o.Cameras = append(o.Cameras, i)
		}
	}
	if o.Bounds[0] == o.Bounds[1] {
		o.Bounds = solidBounds(s)
	}
	size := o.Bounds[1].Sub(o.Bounds[0])
	m := &FloorMap{Cell: o.Cell, Height: max(0, o.Height), Origin: o.Bounds[0], Frames: o.Frames,
		Columns: max(1, int(math.Ceil(size.X/o.Cell-1e-9))), Rows: max(1, int(math.Ceil(size.Y/o.Cell-1e-9)))}
	m.words = (m.Columns + 63) >> 6
	r := &floorRun{st: newStage(s), m: m, cameras: o.Cameras, workers: Options{Workers: o.Workers}.workers()}
	m.run = r
	for _, c := range r.cameras {
		r.rolling = append(r.rolling, r.st.rolling(c))
	}
	m.taken = make([]uint64, m.words*m.Rows)
	for _, solid := range s.Solids {
		top := max(m.Height, 0.01)
		if solid.Shut != nil || min(solid.Z[0], solid.Z[1]) >= top || max(solid.Z[0], solid.Z[1]) <= 0 {
			continue
		}
		for _, piece := range convexPieces(solid.Polygon) {
			m.fill(m.taken, floorAreaOf(m, piece))
		}
	}
	return r
}

func solidBounds(s *Scene) [2]geom.Vec {
	b := [2]geom.Vec{{X: math.Inf(1), Y: math.Inf(1)}, {X: math.Inf(-1), Y: math.Inf(-1)}}
	for _, o := range s.Solids {
		for _, p := range o.Polygon {
			b[0] = geom.Vec{X: min(b[0].X, p.X), Y: min(b[0].Y, p.Y)}
			b[1] = geom.Vec{X: max(b[1].X, p.X), Y: max(b[1].Y, p.Y)}
		}
	}
	if b[0].X > b[1].X {
		return [2]geom.Vec{{}, {X: 1, Y: 1}}
	}
	return b
}

// all is a grid with every cell set.
func (r *floorRun) all() []uint64 {
	m := r.m
	g := make([]uint64, m.words*m.Rows)
	for row := range m.Rows {
		for c := 0; c < m.Columns; c += 64 {
			g[row*m.words+c>>6] = ^uint64(0) >> uint(max(0, 64-(m.Columns-c)))
		}
	}
	return g
}

const floorFrames = 128 // of a chunk

// chunks cuts the frames asked about into stretches, in the order of time or,
// going backward, against it.
func (r *floorRun) chunks(backward bool) []Frames {
	var out []Frames
	for _, want := range r.m.Frames {
		from, to := max(0, want.From), min(units.Frame(r.st.scene.Frames-1), want.To)
		for f := from; f <= to; f += floorFrames {
			out = append(out, Frames{f, min(f+floorFrames-1, to)})
		}
	}
	sort.Slice(out, func(i, j int) bool { return (out[i].From < out[j].From) != backward })
	return out
}

// sweep clears from unseen every cell that is seen. With times it notes the
// first frame at which each was, or, going backward, the last.
func (r *floorRun) sweep(ctx context.Context, unseen []uint64, times []int32, backward bool) error {
	chunks := r.chunks(backward)
	var next atomic.Int64
	var sharing sync.Mutex
	var wg sync.WaitGroup
	for i := range times {
		times[i] = -1
	}
	for range min(r.workers, max(1, len(chunks))) {
		wg.Add(1)
		go func() {
			defer wg.Done()
			v := newFloorView(r)
			copy(v.unseen, r.all())
			if times != nil {
				v.times = make([]int32, len(times))
				for i := range v.times {
					v.times[i] = -1
				}
				v.backward = backward
			}
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= len(chunks) {
					break
				}
				v.chunk(chunks[i])
				if times == nil { // what others have seen need not be seen again
					sharing.Lock()
					merge(unseen, v.unseen)
					copy(v.unseen, unseen)
					sharing.Unlock()
				}
			}
			sharing.Lock()
			merge(unseen, v.unseen)
			for i, f := range v.times {
				if f >= 0 && (times[i] < 0 || (f < times[i]) != backward && f != times[i]) {
					times[i] = f
				}
			}
			sharing.Unlock()
		}()
	}
	wg.Wait()
	return ctx.Err()
}

func merge(into, from []uint64) {
	for i, w := range from {
		into[i] &= w
	}
}
