package frames

import (
	"math"

	"longhand/lang/body"
)

// A stand-in person, in parts of stature, x ahead, y to its left, z up: rounded
// limbs between joints. Proportions follow the drawing manuals' figure of seven
// and a half heads (common practice, no source); the whole is then fitted to the
// box of the upright cylinder that sight reckons with.
type joint struct{ x, y, z float64 }

// limb is the hull of a few level ellipses.
type limb struct {
	rings []ring
	head  bool
	trunk bool
}

type ring struct {
	at     joint
	rx, ry float64
}

// stance is where the joints of a posture are.
type stance struct {
	head, neck, waist, hips joint
	knees, ankles           [2]joint // left, right
	elbows, hands           [2]joint
	toes                    float64
}

func stanceOf(p body.Posture) stance {
	switch p {
	case body.Sitting:
		return stance{
			head: joint{0, 0, .725}, neck: joint{0, 0, .635}, waist: joint{0, 0, .42}, hips: joint{-.02, 0, .29},
			knees:  [2]joint{{.25, .06, .27}, {.25, -.06, .27}},
			ankles: [2]joint{{.22, .06, .04}, {.24, -.06, .04}},
			elbows: [2]joint{{.04, .125, .44}, {.04, -.125, .44}},
			hands:  [2]joint{{.17, .08, .33}, {.17, -.08, .33}},
			toes:   .1,
		}
	case body.Kneeling:
		return stance{
			head: joint{.01, 0, .675}, neck: joint{0, 0, .585}, waist: joint{0, 0, .36}, hips: joint{0, 0, .25},
			knees:  [2]joint{{.04, .06, .035}, {.04, -.06, .035}},
			ankles: [2]joint{{-.19, .06, .035}, {-.19, -.06, .035}},
			elbows: [2]joint{{.03, .125, .39}, {.03, -.125, .39}},
			hands:  [2]joint{{.14, .07, .29}, {.12, -.08, .25}},
			toes:   -.07,
		}
	case body.Crouching:
		return stance{
			head: joint{.08, 0, .54}, neck: joint{.04, 0, .45}, waist: joint{-.03, 0, .27}, hips: joint{-.07, 0, .15},
			knees:  [2]joint{{.14, .07, .27}, {.14, -.07, .27}},
			ankles: [2]joint{{0, .06, .04}, {0, -.06, .04}},
			elbows: [2]joint{{.1, .125, .3}, {.1, -.125, .3}},
			hands:  [2]joint{{.2, .06, .25}, {.2, -.06, .25}},
			toes:   .1,
		}
	}
	return stance{ // one foot a little ahead, the arms as if walking
		head: joint{0, 0, .935}, neck: joint{0, 0, .845}, waist: joint{0, 0, .62}, hips: joint{0, 0, .5},
		knees:  [2]joint{{.035, .052, .28}, {-.015, -.052, .28}},
		ankles: [2]joint{{.04, .055, .035}, {-.085, -.055, .035}},
		elbows: [2]joint{{-.05, .118, .63}, {.02, -.118, .63}},
		hands:  [2]joint{{-.03, .118, .47}, {.09, -.115, .49}},
		toes:   .09,
	}
}

// blend is a stance on the way to another: 0 is s, 1 is o.
func (s stance) blend(o stance, k float64) stance {
	mix := func(a, b joint) joint { return joint{a.x + (b.x-a.x)*k, a.y + (b.y-a.y)*k, a.z + (b.z-a.z)*k} }
	out := stance{head: mix(s.head, o.head), neck: mix(s.neck, o.neck), waist: mix(s.waist, o.waist), hips: mix(s.hips, o.hips), toes: s.toes + (o.toes-s.toes)*k}
	for i := range 2 {
		out.knees[i], out.ankles[i] = mix(s.knees[i], o.knees[i]), mix(s.ankles[i], o.ankles[i])
		out.elbows[i], out.hands[i] = mix(s.elbows[i], o.elbows[i]), mix(s.hands[i], o.hands[i])
	}
	return out
}

// held is how somebody holds themself who is so high, of a stature, and in a
// posture or on the way to it. Who is on the way up from one comes up off their
// knees.
func held(p body.Posture, height, stature float64) (s stance, fraction float64) {
	down := p
	if p == body.Standing {
		down = body.Kneeling
	}
	low := down.HeightFraction()
	fraction = max(low, min(1, height/stature))
	k := (1 - fraction) / (1 - low)
	return stanceOf(body.Standing).blend(stanceOf(down), k), fraction
}

func (s stance) limbs() []limb {
	level := func(j joint, dz, rx, ry float64) ring { return ring{joint{j.x, j.y, j.z + dz}, rx, ry} }
	limbs := []limb{
		{head: true, rings: headRings(s.head)},
		{rings: []ring{level(s.neck, -.01, .036, .036), level(s.neck, .01, .028, .028), level(s.neck, .045, .026, .026)}},
		{trunk: true, rings: []ring{level(s.neck, .004, .026, .03), level(s.neck, -.022, .04, .1), level(s.neck, -.045, .05, .114), level(s.neck, -.13, .056, .1), level(s.waist, 0, .05, .078), level(s.hips, 0, .06, .088), level(s.hips, -.03, .045, .07)}},
	}
	for i, side := range [2]float64{1, -1} {
		hip := joint{s.hips.x, s.hips.y + side*.045, s.hips.z}
		shoulder := joint{s.neck.x, s.neck.y + side*.107, s.neck.z - .05}
		knee, ankle, elbow, hand := s.knees[i], s.ankles[i], s.elbows[i], s.hands[i]
		toe := joint{ankle.x + s.toes, ankle.y, .012}
		heel := joint{ankle.x - .025, ankle.y, .014}
		if s.toes < 0 {
			heel.x, heel.z = ankle.x+.02, ankle.z
			toe.z = ankle.z - .01
		}
		limbs = append(limbs,
			limb{rings: []ring{level(hip, -.01, .045, .045), level(knee, 0, .034, .034)}},
			limb{rings: []ring{level(knee, 0, .034, .034), level(ankle, 0, .023, .023)}},
			limb{rings: []ring{level(heel, -.012, .02, .022), level(ankle, .01, .022, .022), level(toe, 0, .025, .026), level(toe, -.01, .03, .028)}},
			limb{rings: []ring{level(shoulder, .028, .01, .01), level(shoulder, .02, .022, .022), level(shoulder, 0, .029, .029), level(elbow, 0, .023, .023)}},
			limb{rings: []ring{level(elbow, 0, .023, .023), level(hand, 0, .018, .018), level(hand, -.03, .008, .008)}},
		)
	}
	return limbs
}

// The head is a little longer than wide, its face ahead.
const headHigh, headLong, headWide = .065, .052, .045

func headRings(c joint) []ring {
	var out []ring
	for lat := -90; lat <= 90; lat += 15 {
		s, k := math.Sincos(float64(lat) * math.Pi / 180)
		out = append(out, ring{joint{c.x, c.y, c.z + headHigh*s}, headLong * k, headWide * k})
	}
	// the nose
	return append(out, ring{joint{c.x + headLong - .002, c.y, c.z - .017}, .008, .006}, ring{joint{c.x + headLong*.9, c.y, c.z + .012}, .004, .004})
}
