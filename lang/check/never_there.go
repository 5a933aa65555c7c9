package check

import (
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// farOff is how far from its place a camera may still be when its line is over:
// a step (common practice, no source).
const farOff units.Metres = 1

var neverThere = &Rule{
	Entry: diag.Entry{
		Code:     "never-there",
		Title:    "a camera that doesn't get to where its line wants it",
		Severity: diag.Error,
		At:       []string{"beat leads", "beat beside", "beat circles", "beat counters", "beat spots"},
		Explain: `A line has a camera follow, lead, keep beside or circle somebody, or a crew member
spot one, and when the line is over, by the next one or because the take ends,
they are still more than 1 m from where it wants them: a step (common practice, no
source). It is a warning where the rig's limit would have got it there.

Whoever carries the camera goes there as fast as is usual on the rig, and up to
its limit where the one who is followed is as fast; the finding says how far off
they were when the line began and how far off they are in the end. Somebody
who walks at the rig's own pace is never caught up. Until the camera is there its
framing is not looked at, so nothing else tells.

To mend it: let the camera begin nearer, begin the line sooner, let the one who is
followed wait or go slower, or ask for a distance that can be kept.`,
		Bad: `take "Left behind"
  rate 24 fps
set "Street"
  mark M1 (0, 0)
  mark M2 (16, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig vest body-rig
people
  performer mina
  crew ida
beat "Off"
  ida stands at (-20, 3)
  mina walks from M1 to M2 at 1.6 m/s
  A on vest with ida
  A takes w35 T5.6
  A follows mina by 2 m
  A sees mina
`,
		Good: `take "In step"
  rate 24 fps
set "Street"
  mark M1 (0, 0)
  mark M2 (16, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig vest body-rig
people
  performer mina
  crew ida
beat "Off"
  ida stands at (-2.5, 0.5)
  mina walks from M1 to M2 at 1.2 m/s
  A on vest with ida
  A takes w35 T5.6
  A follows mina by 2 m
  A sees mina
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, j := range p.Tracks.Joins {
			if !j.Cut || j.Left <= farOff || j.Camera != nil && !p.rollsBefore(j.Camera, j.Done) {
				continue
			}
			who := nameOf(j.Subject)
			if j.Camera != nil {
				who = j.Camera.Name
			}
			d := p.foundOn(j.Action, j.Subject, j.Start, j.Done, "%s is still %s from where the line wants it when it is over, at %s",
				who, p.Length(j.Left), j.Done.Clock())
			if j.Camera != nil {
				d.Camera = j.Camera.Name
			}
			if spare := float64(j.Limit-j.Peak) * float64(j.Done-j.Start); spare > float64(j.Left) {
				d.Severity = diag.Warning
				d.Note("at its limit it could be there")
			}
			d.Note("in: %s; %s was %s off when it began, at %s, and goes at most %s", clock.Describe(j.Action), nameOf(j.Subject),
				p.Length(j.Gap), j.Start.Clock(), p.Speed(j.Limit))
		}
	},
}

// rollsBefore says that a camera rolls right before a time.
func (p *Pass) rollsBefore(c *plan.Camera, at units.Seconds) bool {
	track := p.Tracks.Camera(c)
	return track != nil && track.Rolling(max(0, at-p.Tracks.Rate.Duration(1)))
}
