// Package solid turns a set into upright prisms: walls with their doors,
// windows and lens holes cut out, blocks, pillars, platforms and stairs, and
// tells how high the floor is under a place.
//
// Both what sees and what moves are held against the same prisms, so a doorway
// that a lens looks through is the one a dolly has to fit through.
package solid

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
)

// Piece is one upright prism of the set.
type Piece struct {
	Name    string     // of the thing it belongs to
	Thing   plan.Thing // *plan.Wall, *plan.Door, *plan.Block, ...
	Polygon []geom.Vec // counter-clockwise; convex but for blocks and platforms
	Z       [2]float64 // lower and upper face, metres
	Glass   bool       // stops bodies, not looks
	Door    *plan.Door // there only while the door is shut
	Hole    *plan.Hole // the plug of a lens hole: not there for its own camera
}

// WallThick is how thick a wall is that doesn't say: a studio flat with its
// frame and return (common practice, no source).
const WallThick = 0.1

// SkinThick is how thick a wall is that doesn't say and has a lens hole in it: a
// flat's skin, cut back and chamfered behind (common practice, no source: 20 mm
// at most at the hole).
const SkinThick = 0.02

// Of lists the pieces of a set, in the order of the text.
func Of(set *plan.Set) []Piece {
	var out []Piece
	for _, w := range set.Walls {
		if !w.Bad {
			out = append(out, wall(set, w)...)
		}
	}
	for _, p := range set.Pillars {
		if !p.Bad {
			out = append(out, Piece{Name: p.Name, Thing: p, Polygon: circle(p.Centre, float64(p.Round)/2), Z: span(p.High)})
		}
	}
	for _, b := range set.Blocks {
		if !b.Bad {
			out = append(out, Piece{Name: b.Name, Thing: b, Polygon: geom.Polygon(b.Polygon).CCW(), Z: span(b.High)})
		}
	}
	for _, p := range set.Platforms {
		if !p.Bad {
			out = append(out, Piece{Name: p.Name, Thing: p, Polygon: geom.Polygon(p.Polygon).CCW(), Z: span(p.High)})
		}
	}
	for _, s := range set.Stairs {
		if !s.Bad {
			out = append(out, stairs(s)...)
		}
	}
	return out
}

func span(r plan.Range) [2]float64 { return [2]float64{float64(r.Low), float64(r.High)} }

// pillarSides keeps a polygon of the pillar's area within 1 % of its radius:
// the corner of a regular 24-gon of equal area stands out by 0.6 %.
const pillarSides = 24

func circle(c geom.Vec, r float64) []geom.Vec {
	r *= math.Sqrt(2 * math.Pi / (pillarSides * math.Sin(2*math.Pi/pillarSides)))
	out := make([]geom.Vec, pillarSides)
	for i := range out {
		out[i] = c.Add(geom.Polar(r, 2*math.Pi*float64(i)/pillarSides))
	}
	return out
}
