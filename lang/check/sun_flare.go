package check

import (
	"fmt"
	"math"
	"time"

	"longhand/lang/clock"
	"longhand/lang/daylight"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/sky"
	"longhand/lang/units"
)

// How the sun is looked for (common practice, no source): starts of the take,
// as many as sunStarts in the window, the sun counting while its middle is up, as
// seen, and in frame for longer than sunFor.
const (
	sunStarts               = 32
	sunFor    units.Seconds = 0.25
	sunFar                  = 2000.0 // m: the far end of the line to the sun
	roofStep                = 0.5    // m ahead of the lens
	roofRays                = 16     // looks round for walls
	roofWalls               = 0.75   // of them that meet one, for somebody to be indoors
)

var sunFlare = &Rule{
	Entry: diag.Entry{
		Code:     "sun-flare",
		Title:    "the sun shines into the lens from within the frame",
		Severity: diag.Warning,
		At:       []string{"beat sees", "take roll"},
		Explain: `The take has a place, a day and a window of light, and the sun stands in a camera's
frame, with nothing of the set before it. Whenever in the window the take begins,
there are frames with the sun in them: a warning. If it depends on when it begins,
it is a note that says when not to.

The sun's position is by the method of the NOAA solar calculator; paper's upper
edge is taken for north. Walls, blocks and whatever else the set has hide it. A
camera that has walls on three sides is taken to be indoors, under a roof: the sun
then comes in through doors and windows only. Trees, hills, houses that are not in
the plan and clouds are not known.

To mend it: begin at another time, turn the set or the move on the plan, put
something between, or mean it ("allow sun-flare in A because ...").`,
		Bad: `take "Against the light"
  rate 24 fps
  place 56.05 N 12.69 E
  date 2026-08-20 zone +02:00
  roll in 19:50 to 20:10
set "Yard"
  mark M1 (-6, 2)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 8 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w24 T4
  A sees mina
`,
		Good: `take "With the light"
  rate 24 fps
  place 56.05 N 12.69 E
  date 2026-08-20 zone +02:00
  roll in 19:50 to 20:10
set "Yard"
  mark M1 (6, -2)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 8 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w24 T4
  A sees mina
`,
	},
	Needs: Seen,
	Run: func(p *Pass) {
		place, day, ok := daylight.WhereAndWhen(&p.Plan.Take)
		w, _, timed := daylight.Window(&p.Plan.Take, p.Plan.Take.Roll)
		if !ok || !timed || w.State == sky.Never {
			return
		}
		length := p.Clock.Length
		last := w.End.Add(-time.Duration(float64(length) * float64(time.Second)))
		if last.Before(w.Start) {
			last = w.Start
		}
		var starts []sunStart
		for i := range sunStarts + 1 {
			t := w.Start.Add(last.Sub(w.Start) / sunStarts * time.Duration(i))
			if i > 0 && !t.After(starts[len(starts)-1].at) {
				break
			}
			starts = append(starts, sunStart{t, toSun(place, t), toSun(place, t.Add(time.Duration(float64(length)*float64(time.Second))))})
		}
		for camera := range p.Stage.Cameras {
			p.sunIn(camera, starts, day)
		}
	},
}

// sunStart is a time at which the take may begin, with the way to the sun then
// and at the take's end.
type sunStart struct {
	at         time.Time
	from, till geom.Vec3
}

// toSun is the direction to the sun as it is seen; its length is 1.
func toSun(place sky.Place, t time.Time) geom.Vec3 {
	s := sky.At(place, t)
	up, across := s.Apparent().Radians(), s.Bearing().Radians()
	return geom.Polar(math.Cos(up), across).At(math.Sin(up))
}

// sunIn looks for the sun in a camera's frame, for every start of the take.
func (p *Pass) sunIn(camera int, starts []sunStart, day sky.Day) {
	const low = 0.0 // the sine of the apparent elevation of its middle: half of it shows
	rolls := p.rolling(camera)
	if len(rolls) == 0 {
		return
	}
	sheltered := map[units.Frame]bool{}
	var hit, free []sunStart
	var all []diag.Frames
	var first sunStart
	for _, s := range starts {
		if s.from.Z < low && s.till.Z < low {
			free = append(free, s)
			continue
		}
		frames := framesWhere(rolls, func(f units.Frame) bool {
			k := float64(f) / math.Max(1, float64(p.Tracks.Frames-1))
			to := s.from.Mul(1 - k).Add(s.till.Mul(k))
			e := p.eye(camera, f)
			return to.Z >= low && e.holds(to) && !p.sunHidden(e, to, f, sheltered)
		})
		if frames = p.longer(frames, sunFor); len(frames) == 0 {
			free = append(free, s)
			continue
		}
		if len(hit) == 0 {
			first = s
		}
		hit = append(hit, s)
		all = append(all, frames...)
	}
	if len(hit) == 0 {
		return
	}
	p.saySun(camera, first, hit, free, tidy(all), day)
}

// sunHidden says whether the set stands before the sun.
func (p *Pass) sunHidden(e *eye, to geom.Vec3, f units.Frame, sheltered map[units.Frame]bool) bool {
	lens := e.at
	l := p.sightlines()
	roofed, known := sheltered[f]
	if !known {
		walls := 0
		// From a step ahead: a lens behind a hole in a wall looks in from outside.
		from := lens.Add(e.ahead.Mul(roofStep))
		for i := range roofRays {
			a := 2 * math.Pi * float64(i) / roofRays
			// Openings count as wall: the look goes along above all of them.
			if l.walled(from, from.Add(geom.Polar(60, a).At(0))) {
				walls++
			}
		}
		roofed = float64(walls) >= roofWalls*roofRays
		sheltered[f] = roofed
	}
	return l.blocked(lens, lens.Add(to.Mul(sunFar)), f, roofed) != nil
}

func (p *Pass) saySun(camera int, first sunStart, hit, free []sunStart, frames []diag.Frames, day sky.Day) {
	c := p.cameraAt(camera)
	track := p.Tracks.Camera(c)
	f := longest(frames)
	worst := (f.From + f.To) / 2
	at := p.Tracks.Rate.Time(worst)
	span := c.Decl
	aim := track.Aim(at)
	if aim != nil && aim.Action != nil {
		span = aim.Action.Span
	}
	when := "whenever in the window the take begins"
	if len(free) > 0 {
		when = "for a start " + spells(hit, free, day)
	}
	k := float64(worst) / math.Max(1, float64(p.Tracks.Frames-1))
	to := first.from.Mul(1 - k).Add(first.till.Mul(k))
	d := p.Report(span, "the sun is in %s's frame %s, %s: at %s it stands %s up, at %s on the compass",
		c.Name, p.when(frames), when, day.Clock(first.at.Add(time.Duration(float64(at)*float64(time.Second)))),
		units.Degrees(math.Asin(math.Max(-1, math.Min(1, to.Z/to.Len())))*180/math.Pi), compass(to))
	if len(free) > 0 {
		d.Severity = diag.Note
	}
	p.found(d, c, c.Name, frames, worst)
	d.Relate(p.Plan.Take.Roll.Span, "the window")
	if line := p.putThere(c, at); line != nil && line.Span != span {
		d.Relate(line.Span, "%s is there: %s", c.Name, clock.Describe(line))
	}
	if len(free) > 0 {
		d.Note("a start at %s is free of it", day.Clock(free[0].at))
	}
	d.Note("north is up on the plan; the sun by the method of the NOAA solar calculator; trees, hills and clouds are not known")
}

// spells says between which starts there is sun in the lens: "at 06:17, and from
// 18:05 to 20:30".
func spells(hit, free []sunStart, day sky.Day) string {
	var out []string
	for i := 0; i < len(hit); {
		k := i
		for k+1 < len(hit) && !anyBetween(free, hit[k].at, hit[k+1].at) {
			k++
		}
		if a, b := day.Clock(hit[i].at), day.Clock(hit[k].at); a == b {
			out = append(out, "at "+a)
		} else {
			out = append(out, "from "+a+" to "+b)
		}
		i = k + 1
	}
	return things(out)
}

func anyBetween(list []sunStart, a, b time.Time) bool {
	for _, s := range list {
		if s.at.After(a) && s.at.Before(b) {
			return true
		}
	}
	return false
}

// compass is a direction as on a compass: "285°".
func compass(to geom.Vec3) string {
	a := math.Mod(90-to.Floor().Angle()*180/math.Pi+360, 360)
	return fmt.Sprintf("%s°", units.Number(a, 0))
}
