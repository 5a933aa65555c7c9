package scout

import (
	"context"
	"math"
	"sort"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// How the search goes: so many frames and places at first, and so many of the best
// are looked at nearer, with the step halved each time. They bound its time
// whatever the size of the set.
const (
	coarseFrames = 10
	fineFrames   = 32
	mostOnWalls  = 1600
	mostOnFloor  = 1600
	keptCoarse   = 160 // whose exposure is worked out
	keptFine     = 24  // regions looked about
	rounds       = 3   // of halving the step
	apart        = 1.0 // metres that listed places are apart at least
)

// heights are those at which a lens is tried, metres over the floor: on the knees,
// at a sitter's eyes, at a stander's, over heads.
var heights = []float64{0.4, 0.9, 1.4, 1.9, 2.4}

// floorHeights are those of a camera on legs.
var floorHeights = []float64{0.6, 1.5}

// Cameras looks for places for a camera. A context that is done ends the search
// early, with what there is; the error is of an ask that makes no sense.
func Cameras(ctx context.Context, a Ask) (*Report, error) {
	if err := a.check(); err != nil {
		return nil, err
	}
	s := &search{a: &a, ctx: ctx, report: &Report{Ask: a}, floors: solid.NewFloors(&a.Plan.Set)}
	s.run()
	return s.report, nil
}

type search struct {
	a      *Ask
	ctx    context.Context
	report *Report
	floors *solid.Floors
	done   int
}

// steps is how much of the search Progress is told of.
const steps = 100

func (s *search) tell(to int) {
	if s.a.Progress != nil && to > s.done {
		s.done = to
		s.a.Progress(to, steps)
	}
}

func (s *search) run() {
	a := s.a
	coarse, fine := a.cut(a.sampled(coarseFrames)), a.cut(a.sampled(fineFrames))
	spots, step := s.spread(coarse)
	s.report.Looked = len(spots)
	if !s.coarse(coarse, spots) {
		s.list(nil)
		return
	}
	spots = best(spots, keptCoarse, 0.3)
	for i := range spots {
		if a.expose(s.ctx, coarse, &spots[i], nil) != nil {
			s.list(spots)
			return
		}
		s.tell(35 + 15*(i+1)/len(spots))
	}
	spots = best(spots, keptFine, apart)
	for i := range spots {
		spots[i].region = i
	}
	for round := range rounds {
		step /= 2
		next, ok := s.about(fine, spots, step)
		if !ok {
			s.list(spots)
			return
		}
		spots = bestOfEach(next)
		s.tell(50 + 25*(round+1)/rounds)
	}
	s.list(s.exactly(best(spots, 2*a.count(), apart)))
	s.tell(steps)
}

// coarse looks from all the spots at a few frames, some at a time; false where it
// was broken off.
func (s *search) coarse(c *cut, spots []spot) bool {
	const some = 200
	for i := 0; i < len(spots); i += some {
		if s.a.look(s.ctx, c, spots[i:min(i+some, len(spots))]) != nil {
			return false
		}
		s.tell(35 * min(i+some, len(spots)) / len(spots))
	}
	return true
}

// spread is places all over the walls and the floor asked for, and how far they
// are from each other.
func (s *search) spread(c *cut) ([]spot, float64) {
	a := s.a
	var out []spot
	total := 0.0
	for _, w := range a.Walls {
		total += length(w)
	}
	step := max(0.5, total*float64(len(heights))/mostOnWalls)
	for _, w := range a.Walls {
		n := max(1, int(length(w)/step))
		for i := range n {
			along := (float64(i) + 0.5) * length(w) / float64(n)
			for _, up := range heights {
				if p, ok := a.onWall(c, w, along, float64(w.High.Low)+up); ok {
					out = append(out, p)
				}
			}
		}
	}
	if !a.Floor {
		return out, step
	}
	low, high := s.bounds(c)
	size := high.Sub(low)
	square := max(0.75, math.Sqrt(size.X*size.Y*float64(len(floorHeights))/mostOnFloor))
	for y := low.Y + square/2; y < high.Y; y += square {
		for x := low.X + square/2; x < high.X; x += square {
			for _, up := range floorHeights {
				if p, ok := a.onFloor(c, s.floors, geom.Vec{X: x, Y: y}, up); ok {
					out = append(out, p)
				}
			}
		}
	}
	return out, max(step, square)
}

// bounds is the floor to look on: round the targets, as far as they can be tall
// enough in frame to be made out, within the set where there is one.
func (s *search) bounds(c *cut) (low, high geom.Vec) {
	var points []geom.Vec
	for _, bodies := range c.targets {
		for k := range c.frames {
			p := c.scene.Bodies[bodies[0]].At(units.Frame(k))
			points = append(points, geom.Vec{X: p.X, Y: p.Y})
		}
	}
	low, high = geom.Bounds(points)
	const least = 0.12 // of the frame's height, that a person should fill
	far := 1.7 * float64(s.a.Focal) / (least * float64(s.a.Frame.Height))
	far = min(far, 20)
	low, high = low.Sub(geom.Vec{X: far, Y: far}), high.Add(geom.Vec{X: far, Y: far})
	var walls []geom.Vec
	for i := range c.scene.Solids {
		walls = append(walls, c.scene.Solids[i].Polygon...)
	}
	if len(walls) > 0 {
		a, b := geom.Bounds(append(walls, points...))
		low = geom.Vec{X: max(low.X, a.X-1), Y: max(low.Y, a.Y-1)}
		high = geom.Vec{X: min(high.X, b.X+1), Y: min(high.Y, b.Y+1)}
	}
	return low, high
}

// about looks again from spots and from places a step off them, at more frames.
func (s *search) about(c *cut, spots []spot, step float64) ([]spot, bool) {
	a := s.a
	var next []spot
	have := map[string]bool{}
	add := func(of int, p spot, ok bool) {
		p.region = of
		if k := p.In(units.Metric); ok && !have[k] {
			have[k] = true
			next = append(next, p)
		}
	}
	for _, p := range spots {
		for _, d := range [][2]float64{{0, 0}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
			if p.Wall != nil {
				// Coordinates that one can measure out, to a centimetre.
				along, up := centimetre(float64(p.Along)+d[0]*step), centimetre(float64(p.Up)+d[1]*step/2)
				q, ok := a.onWall(c, p.Wall, along, up)
				add(p.region, q, ok)
				continue
			}
			at := geom.Vec{X: centimetre(p.At.X + d[0]*step), Y: centimetre(p.At.Y + d[1]*step)}
			q, ok := a.onFloor(c, s.floors, at, p.pupil.Z-p.z)
			add(p.region, q, ok)
		}
	}
	if !s.look(c, next) {
		return nil, false
	}
	s.report.Looked += len(next)
	return next, true
}

func (s *search) look(c *cut, spots []spot) bool {
	if s.a.look(s.ctx, c, spots) != nil {
		return false
	}
	for i := range spots {
		if s.a.expose(s.ctx, c, &spots[i], nil) != nil {
			return false
		}
	}
	return true
}

func centimetre(v float64) float64 { return math.Round(v*100) / 100 }

// exactly works spots out at every frame, as many as there is time for.
func (s *search) exactly(spots []spot) []spot {
	a := s.a
	all := make([]units.Frame, 0, a.Frames.To-a.Frames.From+1)
	for f := a.Frames.From; f <= a.Frames.To; f++ {
		all = append(all, f)
	}
	c := a.cut(all)
	for i := range spots {
		if a.exact(s.ctx, c, s.floors, &spots[i]) != nil {
			break
		}
		s.tell(75 + 24*(i+1)/len(spots))
	}
	return spots
}

// list puts the best of the spots into the report.
func (s *search) list(spots []spot) {
	if s.ctx.Err() != nil {
		s.report.Stopped = true
	}
	for _, p := range best(spots, s.a.count(), apart) {
		s.report.Places = append(s.report.Places, p.Place)
	}
}

// bestOfEach is the best spot of each region, so that far places are refined as
// well as the best one is.
func bestOfEach(spots []spot) []spot {
	at := map[int]int{}
	var out []spot
	for _, p := range best(spots, len(spots), 0) {
		if _, ok := at[p.region]; !ok {
			at[p.region] = len(out)
			out = append(out, p)
		}
	}
	return out
}

// best is the spots of highest score, so many at most, those off any better one
// by a distance, best first. Spots that see nothing are left out.
func best(spots []spot, most int, off float64) []spot {
	sorted := append([]spot(nil), spots...)
	sort.SliceStable(sorted, func(i, j int) bool { return sorted[i].Score > sorted[j].Score })
	var out []spot
	for _, p := range sorted {
		if len(out) == most || p.Score <= 0.01 {
			break
		}
		near := false
		for _, q := range out {
			near = near || p.Wall == q.Wall && p.pupil.Dist(q.pupil) < off
		}
		if !near {
			out = append(out, p)
		}
	}
	return out
}

// Walls are those of a set that a lens could look through.
func Walls(set *plan.Set) []*plan.Wall {
	var out []*plan.Wall
	for _, w := range set.Walls {
		if !w.Bad && !w.Glass && length(w) > 0 {
			out = append(out, w)
		}
	}
	return out
}

// whole is all frames of a cut.
func (c *cut) whole() []sight.Frames {
	return []sight.Frames{{From: 0, To: units.Frame(len(c.frames) - 1)}}
}
