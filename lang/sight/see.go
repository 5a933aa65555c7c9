package sight

import (
	"context"
	"runtime"
	"sort"
	"sync"
	"sync/atomic"

	"longhand/lang/units"
)

// Options is how See goes about it; the zero value is good.
type Options struct {
	Workers int // goroutines; 0 for one a processor
	// Progress is told how many camera frames are done of how many, from time
	// to time, by one goroutine at a time.
	Progress func(done, total int)
	// Watch is whether anybody asks what a camera sees of a body; of what nobody
	// asks about the report has nothing, as of what is out of frame. It hides what
	// is behind it all the same. Nil asks about everything.
	Watch func(camera, body int) bool
	// NoGlares leaves the glows out of the report.
	NoGlares bool
	// Trusted says that the scene has been made by what makes sound ones: Check isn't
	// asked.
	Trusted bool
}

func (o Options) workers() int {
	if o.Workers > 0 {
		return o.Workers
	}
	return runtime.GOMAXPROCS(0)
}

// See works out what every rolling camera sees at every frame.
//
// A body is in frame at a frame if its projection meets the frame's rectangle in
// some area. A body or solid that holds the lens within it is left out of that
// view: it neither shows nor hides anything. Where bodies reach into each other,
// the nearer surface along each ray shows.
//
// The answer does not depend on the number of workers. See stops early, with
// ctx's error, when ctx is done; it fails else only for a scene that Check
// refuses.
func See(ctx context.Context, s *Scene, o Options) (*Report, error) {
	if !o.Trusted {
		if err := s.check(o.workers(), nil); err != nil {
			return nil, err
		}
	}
	st := newStage(s)
	st.watch(o)
	return st.see(ctx, o, nil, func(w *tileWorker, t *tile) { w.fresh(t) })
}

// tileFrames is how many frames of a camera are worked out at a time: enough to
// keep the bookkeeping small, few enough to spread over the processors and to
// stop soon when asked to.
const tileFrames = 128

// tile is a stretch of one camera's rolling frames.
type tile struct {
	camera int
	Frames
	runs   []Run // by row, then frame
	grazes []graze
	anew   []bool // rows that are in runs; the others are as they were, where there are changes
}

func (st *stage) tiles() []tile {
	var out []tile
	for c := range st.scene.Cameras {
		for _, r := range st.rolls(c) {
			for f := r.From; f <= r.To; f += tileFrames - f%tileFrames {
				out = append(out, tile{camera: c, Frames: Frames{f, min(f+tileFrames-1-f%tileFrames, r.To)}})
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].From/tileFrames < out[j].From/tileFrames })
	return out
}

// alike is the tiles that begin in the same stretch of the take as the first: what
// moves is read once for all of their cameras.
func alike(tiles []tile) []tile {
	n := 1
	for n < len(tiles) && tiles[n].From/tileFrames == tiles[0].From/tileFrames {
		n++
	}
	return tiles[:n]
}

// rolling is the set of frames a camera rolls in.
func (st *stage) rolling(camera int) frameSet {
	set := make(frameSet, st.scene.Frames>>6+1)
	for _, r := range st.scene.Cameras[camera].Rolls {
		set.add(r)
	}
	return set
}

// rolls is the frames a camera rolls in, in order, none twice.
func (st *stage) rolls(camera int) []Frames {
	set := st.rolling(camera)
	var out []Frames
	for f := units.Frame(0); int(f) < st.scene.Frames; f++ {
		if !set.has(f) {
			continue
		}
		if n := len(out); n > 0 && out[n-1].To == f-1 {
			out[n-1].To = f
		} else {
			out = append(out, Frames{f, f})
		}
	}
	return out
}

// see runs work over every tile on all workers and puts the results together with
// what hasn't changed, if anything has.
func (st *stage) see(ctx context.Context, o Options, d *changes, work func(*tileWorker, *tile)) (*Report, error) {
	if !st.partly() {
		st.makeSectors(d)
	}
	tiles := st.tiles()
	glares := st.newGlares()
	total := 0
	for i := range tiles {
		total += int(tiles[i].To-tiles[i].From) + 1
	}
	var groups [][]tile
	for rest := tiles; len(rest) > 0; {
		groups = append(groups, alike(rest))
		rest = rest[len(groups[len(groups)-1]):]
	}
	var next, done atomic.Int64
	var wg sync.WaitGroup
	var telling sync.Mutex
	for range min(o.workers(), max(1, len(groups))) {
		wg.Add(1)
		go func() {
			defer wg.Done()
			w := newTileWorker(st, glares)
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= len(groups) {
					return
				}
				seen := 0
				for k := range groups[i] {
					t := &groups[i][k]
					if ctx.Err() != nil {
						return
					}
					work(w, t)
					seen += int(t.To-t.From) + 1
				}
				n := done.Add(int64(seen))
				if o.Progress != nil {
					telling.Lock()
					o.Progress(int(n), total)
					telling.Unlock()
				}
			}
		}()
	}
	wg.Wait()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return st.assemble(tiles, glares, d, o.workers()), nil
}
