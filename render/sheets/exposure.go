package sheets

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// fallbackIndex is the exposure index reckoned with where the plan gives none:
// common practice, no source.
const fallbackIndex = 800

// faceIn says whether a face is in frame, or its reflection in the mirror in which the
// camera is told to see it.
func faceIn(ct *motion.CameraTrack, v motion.View, who *plan.Person, pose motion.Pose, at units.Seconds) bool {
	if _, ok := faceDepth(v, ct.Frame, pose); ok {
		return true
	}
	for _, t := range ct.Targets(at) {
		if t.Thing == plan.Thing(who) && t.Glass != nil {
			if _, ok := faceDepth(v, ct.Frame, motion.Image(t.Glass, pose)); ok {
				return true
			}
		}
	}
	return false
}

// onPeople is the light that lamps give on each performer a rolling camera sees, per
// beat: how it changes, and the stop it asks for.
func (m *maker) onPeople() *Table {
	t := table("people", "Light on people", beatColumn(), col("who", "who", "a performer whose face is in a rolling frame"), col("camera", "camera", "name"), measure("least", "least", "lx", "at the face, from the lamps"), col("least_clock", "at", "when it is"), measure("most", "most", "lx", "at the face, from the lamps"), col("most_clock", "at", "when it is"),
		measure("swing", "swing", "stops", "between the two"), measure("stop_least", "stop for least", "T", "that exposes the least"), measure("stop_most", "for most", "T", "that exposes the most"), measure("stop", "planned", "T", "of the lens"))
	t.Empty = "No lamp with an intensity lights a person before a rolling camera."
	all := m.lights(m.take)
	index, given := float64(m.p.Take.Sensitivity), m.p.Take.Sensitivity > 0
	if !given {
		index = fallbackIndex
	}
	shutter := m.p.Take.Shutter
	if shutter <= 0 {
		shutter = optics.HalfOpen
	}
	exposed := optics.ShutterTime(shutter, m.rate)
	if !all.Measured() {
		return t
	}
	p := m.take
	for _, s := range p.spans() {
		for _, ct := range p.cameras() {
			for _, who := range m.p.People {
				tr := p.tracks.Body(who)
				if tr == nil || who.Crew {
					continue
				}
				least, most := units.Lux(math.Inf(1)), units.Lux(-1)
				var leastAt, mostAt units.Seconds
				for k := m.rate.From(s.From); m.rate.Time(k) < s.To; k++ {
					at := m.rate.Time(k)
					v := ct.At(at)
					pose := tr.At(at)
					if !ct.Rolling(at) || v.Focal <= 0 {
						continue
					}
					if !faceIn(ct, v, who, pose, at) {
						continue
					}
					e := all.Lux(geom.Vec3{X: float64(pose.X), Y: float64(pose.Y), Z: float64(pose.Z) + float64(pose.Height)*body.EyeFraction}, at)
					if e < least {
						least, leastAt = e, at
					}
					if e > most {
						most, mostAt = e, at
					}
				}
				if most <= 0 {
					continue
				}
				t.add(nil, p.beatAt(s.From), cells(word(who.Name), word(ct.Camera.Name), m.lux(least), word(leastAt.Clock()), m.lux(most), word(mostAt.Clock()), swing(least, most),
					stopFor(least, index, exposed), stopFor(most, index, exposed), planned(ct.Stop(mostAt))))
			}
		}
	}
	if len(t.Rows) > 0 {
		taken := ""
		if !given {
			taken = ", taken as the plan gives none"
		}
		t.note("stops by ISO 2720, C = " + units.Number(optics.IncidentC, 0) + ", for exposure index " + units.Number(index, 0) + taken + " and " + units.Number(1/float64(exposed), 1) + " to the second")
		t.note("light from the lamps alone on a face turned to each (inverse square); no daylight, shadows, walls or filters")
	}
	for _, u := range all.Blind() {
		t.note(u.Name + " burns, and the plan does not say how bright it is, so it counts for nothing here")
	}
	return t
}

func (m *maker) lux(e units.Lux) Cell {
	if m.sys == units.Feet {
		return number(float64(e), 3, e.Footcandles())
	}
	return number(float64(e), 3, e.String())
}

func swing(least, most units.Lux) Cell {
	if least <= 0 {
		return word("from dark")
	}
	n := optics.StopsBetween(least, most)
	return number(n, 2, units.Number(n, 1)+" stops")
}

func stopFor(e units.Lux, index float64, t units.Seconds) Cell {
	if e <= 0 {
		return word("dark")
	}
	n := optics.StopFor(e, index, t, optics.IncidentC)
	return number(float64(n), 2, units.Stop(math.Round(float64(n)*10)/10).String())
}

func planned(n units.Stop) Cell {
	if n <= 0 {
		return word("not given")
	}
	return number(float64(n), 2, n.String())
}
