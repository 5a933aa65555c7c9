package sight

import (
	"sync"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// stage is a scene made ready to be looked at: footprints convex and
// counter-clockwise, frames of doors and of own bodies as bits.
type stage struct {
	scene  *Scene
	prisms []prism
	spots  []spot   // one a prism
	shapes []shape  // one a body
	owns   [][]own  // one list a camera
	flats  []upflat // mirrors first, then glows

	sectors [][]sector // of the cameras where they rolled, frame by frame; nil for a partial report

	watched [][]int  // by camera, the bodies somebody asks about; nil: all
	ignored [][]bool // by camera and body; nil: none
	unlit   bool     // nobody asks about the glows

	glances sync.Pool // of lookers
}

// prism is a convex part of a solid.
type prism struct {
	solid  int
	pieces int // of the solid
	points []geom.Vec
	z0, z1 float64
	middle geom.Vec
	reach  float64  // of the circle about the middle that holds the footprint
	shut   frameSet // nil: always there
}

// spot is a circle on the floor that holds a prism.
type spot struct{ x, y, reach float64 }

// shape is a body's footprint about its own origin.
type shape struct {
	radius float64
	points []geom.Vec
	reach  float64
}

type own struct {
	body int
	Frames
}

// upflat is an upright rectangle without thickness.
type upflat struct {
	a, b   geom.Vec
	z0, z1 float64
}

// frameSet is a set of frames.
type frameSet []uint64

func (b frameSet) has(f units.Frame) bool { return b[f>>6]>>(uint(f)&63)&1 != 0 }

func (b frameSet) add(r Frames) {
	for f := max(0, r.From); f <= r.To && int(f>>6) < len(b); f++ {
		b[f>>6] |= 1 << (uint(f) & 63)
	}
}

func newStage(s *Scene) *stage {
	st := &stage{scene: s, shapes: make([]shape, len(s.Bodies)), owns: make([][]own, len(s.Cameras))}
	for i := range s.Solids {
		st.addSolid(i)
	}
	for i := range st.prisms {
		p := &st.prisms[i]
		st.spots = append(st.spots, spot{p.middle.X, p.middle.Y, p.reach})
	}
	byName := make(map[string]int, len(s.Bodies))
	for i := range s.Bodies {
		st.shapes[i] = newShape(&s.Bodies[i])
		byName[s.Bodies[i].Name] = i
	}
	for i := range s.Cameras {
		for _, o := range s.Cameras[i].Own {
			if b, ok := byName[o.Body]; ok {
				st.owns[i] = append(st.owns[i], own{b, o.Frames})
			}
		}
	}
	for _, m := range s.Mirrors {
		st.flats = append(st.flats, upflat{m.A, m.B, min(m.Z[0], m.Z[1]), max(m.Z[0], m.Z[1])})
	}
	for _, g := range s.Glows {
		st.flats = append(st.flats, upflat{g.A, g.B, min(g.Z[0], g.Z[1]), max(g.Z[0], g.Z[1])})
	}
	return st
}

func (st *stage) addSolid(i int) {
	s := &st.scene.Solids[i]
	z0, z1 := min(s.Z[0], s.Z[1]), max(s.Z[0], s.Z[1])
	if z0 == z1 {
		return
	}
	var shut frameSet
	if s.Shut != nil {
		shut = make(frameSet, st.scene.Frames>>6+1)
		for _, r := range s.Shut {
			shut.add(r)
		}
	}
	pieces := convexPieces(s.Polygon)
	for _, piece := range pieces {
		p := prism{solid: i, pieces: len(pieces), points: piece, z0: z0, z1: z1, shut: shut}
		p.middle, p.reach = enclosing(piece)
		st.prisms = append(st.prisms, p)
	}
}

// holds is whether a lens is within a prism.
func (p *prism) holds(e *eye) bool {
	return p.z0 < e.z && e.z < p.z1 && geom.Polygon(p.points).Contains(geom.Vec{X: e.x, Y: e.y})
}

func newShape(b *Body) shape {
	if b.Radius > 0 {
		return shape{radius: b.Radius, reach: b.Radius}
	}
	s := shape{points: tidy(counterClockwise(b.Polygon))}
	if len(s.points) < 3 || area2(s.points) < flat {
		return shape{}
	}
	for _, p := range s.points {
		s.reach = max(s.reach, p.Len())
	}
	return s
}

// enclosing is a circle that holds the points: about the middle of their bounds.
func enclosing(points []geom.Vec) (geom.Vec, float64) {
	lo, hi := points[0], points[0]
	for _, p := range points {
		lo = geom.Vec{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
		hi = geom.Vec{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
	}
	middle, reach := lo.Lerp(hi, 0.5), 0.0
	for _, p := range points {
		reach = max(reach, middle.Dist(p))
	}
	return middle, reach
}
