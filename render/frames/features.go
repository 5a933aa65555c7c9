package frames

import (
	"math"
)

// mark is a line on a figure with, at each point, the way its surface faces.
type mark struct {
	points  []joint
	normals []joint
	hair    bool
}

// arcPoints is how many points a line on the head has; lines on the trunk have
// fewer.
const arcPoints = 13

// features are what tells front from back: the face, the hair at the back of the
// head, the opening of a coat.
func (s stance) features() []mark {
	on := func(lat, lon float64) (joint, joint) {
		sl, cl := math.Sincos(lat * math.Pi / 180)
		so, co := math.Sincos(lon * math.Pi / 180)
		return joint{s.head.x + headLong*cl*co, s.head.y + headWide*cl*so, s.head.z + headHigh*sl}, joint{cl * co, cl * so, sl}
	}
	arc := func(lat0, lon0, lat1, lon1 float64, hair bool) mark {
		m := mark{hair: hair}
		for i := range arcPoints {
			k := float64(i) / (arcPoints - 1)
			p, n := on(lat0+(lat1-lat0)*k, lon0+(lon1-lon0)*k)
			m.points, m.normals = append(m.points, p), append(m.normals, n)
		}
		return m
	}
	out := []mark{
		arc(6, 16, 6, 38, false), arc(6, -16, 6, -38, false), // eyes
		arc(2, 0, -22, 0, false), arc(-22, 0, -22, 9, false), // nose
		arc(-44, -20, -44, 20, false), // mouth
		arc(38, -85, 38, 85, false),   // hairline
		arc(38, 85, -18, 95, false), arc(38, -85, -18, -95, false),
	}
	for lon := 105.0; lon <= 255; lon += 15 {
		out = append(out, arc(78, lon, -25, lon, true))
	}
	// The front of a coat: from the collar down, and its two lapels.
	front := joint{x: 1}
	chest := joint{s.neck.x + .052, 0, s.neck.z - .15}
	belly := joint{s.waist.x + .052, 0, s.waist.z}
	line := func(ps ...joint) mark {
		m := mark{points: ps}
		for range ps {
			m.normals = append(m.normals, front)
		}
		return m
	}
	out = append(out,
		line(chest, belly, joint{s.hips.x + .058, 0, s.hips.z + .01}),
		line(joint{s.neck.x + .03, .032, s.neck.z - .015}, chest),
		line(joint{s.neck.x + .03, -.032, s.neck.z - .015}, chest))
	return out
}
