package scout

import (
	"context"
	"errors"
	"fmt"
	"math"
	"sort"

	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// Purpose is what is to stand somewhere unseen.
type Purpose string

// What may stand somewhere.
const (
	Lamp    Purpose = "lamp"
	Boom    Purpose = "boom"
	Person  Purpose = "person"
	Monitor Purpose = "monitor"
)

// purposes are how high each is, how wide a circle it needs on the floor, and how
// far from who it is for it is of use, metres (common practice, no source: a lamp
// on a stand, an operator with the pole held up to 4 m away, a monitor on a cart).
var purposes = map[Purpose]struct{ high, round, reach float64 }{
	Lamp:    {2.2, 0.5, 8},
	Boom:    {2.0, 0.35, 4},
	Person:  {sight.Standing, 0.3, 12},
	Monitor: {1.5, 0.4, 15},
}

// Purposes lists them.
func Purposes() []Purpose { return []Purpose{Boom, Lamp, Monitor, Person} }

// StandAsk is what to find floor for.
type StandAsk struct {
	Take
	For      Purpose
	Near     plan.Thing
	Frames   sight.Frames // of the beat
	Count    int          // places to list; 0 for 8
	Workers  int
	Progress func(done, all int)
}

// Stand is a place on the floor that no rolling camera sees, up to the height of
// what stands there, at any of the frames asked about.
type Stand struct {
	At       geom.Vec
	Mean     units.Metres // from who it is near, averaged over time
	Nearest  units.Metres
	Furthest units.Metres
	InReach  units.Seconds // how long they are near enough
	Clear    units.Seconds // how long nothing hides at least half of them from there
	Score    float64       // 0 to 1: the part of the time that they are in reach and not hidden, nearer ones first
}

// In is the place in the words of the plan: "at (4.2, 3.5)".
func (s *Stand) In(sys units.System) string { return "at " + point(s.At, sys) }

// StandReport is what was found.
type StandReport struct {
	Ask     StandAsk
	High    units.Metres // of what stands there
	Reach   units.Metres
	Unseen  float64 // square metres of floor nobody sees, that high
	Places  []Stand // best first
	Stopped bool
}

// Stands looks for floor that no camera sees near somebody. What passes by hides
// nothing here, so that a place holds when a cue slips.
func Stands(ctx context.Context, a StandAsk) (*StandReport, error) {
	kind, ok := purposes[a.For]
	switch {
	case !ok:
		return nil, fmt.Errorf("there is no place to look for a %q", a.For)
	case a.Plan == nil || a.Tracks == nil || a.Stage == nil:
		return nil, errors.New("a take that has not been worked out can't be scouted")
	case a.Near == nil || len(a.Stage.Body(a.Near)) == 0:
		return nil, errors.New("there is nobody to be near")
	case a.Frames.From < 0 || a.Frames.To < a.Frames.From || int(a.Frames.To) >= a.Stage.Scene.Frames:
		return nil, fmt.Errorf("frames %d to %d are not in a take of %d", a.Frames.From, a.Frames.To, a.Stage.Scene.Frames)
	}
	r := &StandReport{Ask: a, High: units.Metres(kind.high), Reach: units.Metres(kind.reach)}
	tell := func(done int) {
		if a.Progress != nil {
			a.Progress(done, 3)
		}
	}
	// The lens of the ask is only to see who is near from there, whole and in the
	// middle: what it does not see is hidden.
	frame, _ := optics.NewFrame(36, 24, 1, 0)
	look := Ask{Take: a.Take, Frame: frame, Focal: 14, Sees: []plan.Thing{a.Near}, Frames: a.Frames, Floor: true, Workers: a.Workers}
	c := look.cut(look.sampled(fineFrames))
	target := &c.scene.Bodies[c.targets[0][0]]
	var ways []geom.Vec
	for k := range c.frames {
		p := target.At(units.Frame(k))
		ways = append(ways, geom.Vec{X: p.X, Y: p.Y})
	}
	low, high := geom.Bounds(ways)
	around := geom.Vec{X: kind.reach, Y: kind.reach}
	const cell = 0.15
	tell(0)
	floor, err := sight.Floor(ctx, a.Stage.Scene, sight.FloorOptions{
		Cell: cell, Height: kind.high, Frames: []sight.Frames{a.Frames}, Bounds: [2]geom.Vec{low.Sub(around), high.Add(around)}, Workers: a.Workers,
	})
	if err != nil {
		r.Stopped = true
		return r, nil
	}
	r.Unseen = floor.Area()
	tell(1)
	spots := look.standing(c, floor, kind.high, kind.round, kind.reach, ways)
	if err := look.look(ctx, c, spots); err != nil {
		r.Stopped = true
		return r, nil
	}
	tell(2)
	var list []Stand
	for i := range spots {
		list = append(list, look.stand(c, &spots[i], a.For, kind.reach, ways))
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Score > list[j].Score })
	most := a.Count
	if most <= 0 {
		most = 8
	}
	for _, s := range list {
		near := false
		for _, o := range r.Places {
			near = near || o.At.Dist(s.At) < apart
		}
		if !near && len(r.Places) < most && s.Score > 0.01 {
			r.Places = append(r.Places, s)
		}
	}
	tell(3)
	return r, nil
}

// standing are free places that nobody sees with room round them, a step apart.
func (a *Ask) standing(c *cut, m *sight.FloorMap, high, round, reach float64, ways []geom.Vec) []spot {
	all := a.cut(a.sampled(1 << 20)) // who passes is looked at at every frame
	floors := solid.NewFloors(&a.Plan.Set)
	cells := int(math.Ceil(round / m.Cell))
	step := max(2, cells)
	var out []spot
	for row := cells; row < m.Rows-cells; row += step {
		for col := cells; col < m.Columns-cells; col += step {
			if !free(m, col, row, cells) {
				continue
			}
			p := m.Middle(col, row)
			p = geom.Vec{X: centimetre(p.X), Y: centimetre(p.Y)}
			near := false
			for _, w := range ways {
				near = near || w.Dist(p) <= reach
			}
			if !near || floors.Stand(p) > 0.01 { // the map is of the ground
				continue
			}
			if s, ok := a.onFloor(all, floors, p, high-overLens); ok {
				out = append(out, s)
			}
		}
	}
	const most = 2400
	if len(out) > most { // thin out evenly; what is left is still a step or two apart
		every := (len(out) + most - 1) / most
		kept := out[:0]
		for i := 0; i < len(out); i += every {
			kept = append(kept, out[i])
		}
		out = kept
	}
	return out
}

// free says whether all cells about one are floor that is never seen.
func free(m *sight.FloorMap, col, row, cells int) bool {
	for y := -cells; y <= cells; y++ {
		for x := -cells; x <= cells; x++ {
			if x*x+y*y <= cells*cells && !m.Never(col+x, row+y) {
				return false
			}
		}
	}
	return true
}

// stand puts a place in numbers.
func (a *Ask) stand(c *cut, s *spot, what Purpose, reach float64, ways []geom.Vec) Stand {
	out := Stand{At: s.At, Nearest: units.Metres(math.Inf(1)), Clear: s.For}
	in := 0
	for _, w := range ways {
		d := w.Dist(s.At)
		out.Mean += units.Metres(d / float64(len(ways)))
		out.Nearest, out.Furthest = min(out.Nearest, units.Metres(d)), max(out.Furthest, units.Metres(d))
		if d <= reach {
			in++
		}
	}
	out.InReach = a.share(c, in)
	out.Score = float64(in) / float64(len(ways)) * (1 - 0.3*min(1, float64(out.Mean)/reach))
	if what != Monitor { // a picture goes through a wall
		out.Score *= s.Sees
	}
	return out
}
