package check

import (
	"math"

	"longhand/lang/diag"
	"longhand/lang/timecode"
	"longhand/lang/units"
)

var rollOut = &Rule{
	Entry: diag.Entry{
		Code:     "roll-out",
		Title:    "a camera rolls for longer than its record lasts",
		Severity: diag.Error,
		At:       []string{"take record", "take film", "kit camera"},
		Explain: `The take says how long a camera can roll ("record 16 min", or a load of film),
and a camera of the plan rolls for longer without a rest.

Film runs at frames per foot by its gauge: 16 for 35mm-4perf, 64/3 for
35mm-3perf, 32 for 35mm-2perf, 40 for 16mm; 1000 ft of 35mm-4perf at 24 fps are
11 minutes and 7 seconds. Of a load 96 % are good, the rest goes to lacing up and to
the end (common practice): a roll that needs more than that is a warning.

To mend it: shorten the take, take a longer load, or rest the camera while
another one has the picture.`,
		Bad: `take "Long"
  rate 24 fps
  record 8 s
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (6, -9)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
		Good: `take "Long"
  rate 24 fps
  record 4 min
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (6, -9)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, r := range p.Clock.RollOuts {
			d := p.Report(p.Plan.Take.Record.Span, "camera %s rolls from %s to %s, %s longer than the %s it can record", r.Camera.Name, r.From.Clock(), r.To.Clock(), r.By(), r.Limit).
				Relate(r.Camera.Decl, "camera %s", r.Camera.Name)
			d.Camera = r.Camera.Name
			p.filmNote(d, r.To-r.From)
		}
		p.runOuts()
	},
}

// runOuts warns of rolls that use the part of a film load that lacing up and the
// end of the roll take.
func (p *Pass) runOuts() {
	record := p.Plan.Take.Record
	if record == nil || record.Gauge == "" {
		return
	}
	usable := record.Duration * timecode.UsableFilm
	for _, c := range p.Tracks.Cameras {
		for _, r := range c.Rolls {
			if long := r.To - r.From; long > usable+slopTime && long <= record.Duration {
				d := p.Report(record.Span, "camera %s rolls from %s to %s, %s longer than the %s that a load of %s is good for", c.Camera.Name, r.From.Clock(), r.To.Clock(), long-usable, usable.Clock(), record.Duration.Clock())
				d.Severity = diag.Warning
				d.Relate(c.Camera.Decl, "camera %s", c.Camera.Name)
				d.Camera = c.Camera.Name
				p.filmNote(d, long)
			}
		}
	}
}

// slopTime is what rounding may add to a time.
const slopTime units.Seconds = 1e-6

// filmNote says how much film a roll runs through.
func (p *Pass) filmNote(d *diag.Diagnostic, long units.Seconds) {
	record := p.Plan.Take.Record
	g, err := timecode.ParseGauge(record.Gauge)
	if record.Gauge == "" || err != nil {
		return
	}
	rate := p.Plan.Take.Rate
	d.Note("%s at %s fps: %s frames a foot, so %s ft run %s; of a load %s are good, common practice", record.Gauge, rate,
		units.Number(g.FramesPerFoot(), 2), units.Number(float64(record.Length/units.Foot), 0), g.Runs(record.Length, rate).Clock(), units.Percent(100*timecode.UsableFilm))
	d.Note("this roll takes %s ft", units.Number(math.Ceil(float64(g.Length(long, rate)/units.Foot)), 0))
}
