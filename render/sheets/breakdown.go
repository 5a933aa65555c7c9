package sheets

import (
	"context"
	"errors"
	"fmt"
	"sort"

	"longhand/lang/check"
	"longhand/lang/clock"
	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/sight"
	"longhand/lang/staging"
	"longhand/lang/timecode"
	"longhand/lang/units"
)

// maker works out sheets from a compiled plan.
type maker struct {
	ctx  context.Context
	r    *compile.Result
	p    *plan.Plan
	sys  units.System
	rate units.Rate
	code *timecode.Code // nil where the rate has none

	take  *part
	parts []*part // the take, then the pickups
	zones []sight.Zone
	stand *Table
}

// part is the take or a pickup: what has a clock of its own.
type part struct {
	name    string // `pickup "Otto reads"`; "" for the take
	pickup  *plan.Pickup
	tracks  *motion.Tracks
	clock   *clock.Clock
	actions []*plan.Action

	stage    *staging.Stage
	sight    *sight.Report
	accepted []check.Accepted
	seen     map[*plan.Camera]map[plan.Thing][]diag.Frames // see showing
}

// Breakdown works out the sheets of all departments. The plan must have been
// compiled to the end; the error says that it was not, or is that of a context
// that ended.
func Breakdown(ctx context.Context, r *compile.Result) (*Book, error) {
	m, err := newMaker(ctx, r)
	if err != nil {
		return nil, err
	}
	b := m.book()
	for _, d := range departments.All() {
		s := Sheet{Department: d, Title: d.Title()}
		tables, topics := m.sheet(d)
		for _, t := range tables {
			s.Tables = append(s.Tables, *t)
		}
		if t := m.notes(d); len(t.Rows) > 0 {
			s.Tables = append(s.Tables, *t)
		}
		for _, t := range topics {
			s.Cautions = append(s.Cautions, t.Caution())
		}
		b.Sheets = append(b.Sheets, s)
	}
	return b, ctx.Err()
}

func newMaker(ctx context.Context, r *compile.Result) (*maker, error) {
	if r == nil || r.Plan == nil || r.Tracks == nil || r.Stage == nil || r.Sight == nil {
		return nil, errors.New("the plan has mistakes in its text, so there is nothing to make sheets of")
	}
	for _, k := range r.Pickups {
		if k.Tracks == nil || k.Stage == nil || k.Sight == nil {
			return nil, fmt.Errorf("pickup %q was not worked out to the end, so there is nothing to make sheets of", k.Pickup.Title)
		}
	}
	m := &maker{ctx: ctx, r: r, p: r.Plan, sys: r.Plan.Take.Units, rate: r.Tracks.Rate}
	if c, err := timecode.New(m.rate, false); err == nil {
		m.code = &c
	}
	m.take = &part{tracks: r.Tracks, clock: r.Tracks.Clock, actions: m.p.Actions, stage: r.Stage, sight: r.Sight, accepted: r.Accepted}
	m.parts = []*part{m.take}
	for _, k := range r.Pickups {
		m.parts = append(m.parts, &part{name: fmt.Sprintf("pickup %q", k.Pickup.Title), pickup: k.Pickup, tracks: k.Tracks, clock: k.Tracks.Clock, actions: k.Pickup.Actions,
			stage: k.Stage, sight: k.Sight, accepted: k.Accepted})
	}
	return m, nil
}

func (m *maker) sheet(d departments.Name) ([]*Table, []safety.Topic) {
	switch d {
	case departments.Camera:
		return m.camera()
	case departments.Grip:
		return m.grip()
	case departments.Electric:
		return m.electric()
	case departments.Art:
		return m.art()
	case departments.Sound:
		return m.sound()
	case departments.Effects:
		return m.effects()
	case departments.Ads:
		return m.ads()
	case departments.Movement:
		return m.movement()
	case departments.Vehicles:
		return m.vehicles()
	}
	return m.script()
}

func (m *maker) book() *Book {
	t := m.p.Take
	b := &Book{
		Title: t.Title, Scene: t.Scene, Set: m.p.Set.Title, Revision: t.Revision, Rate: m.rate.String(),
		Length: fmt.Sprintf("%s, %d frames", m.take.clock.Length.Clock(), m.take.tracks.Frames), Units: "m", Safety: safety.General,
	}
	if m.sys == units.Feet {
		b.Units = "ft"
	}
	if t.RevisionDate != "" && b.Revision != "" {
		b.Revision += ", " + t.RevisionDate
	}
	if t.Date != nil {
		b.Date = fmt.Sprintf("%04d-%02d-%02d", t.Date.Year, t.Date.Month, t.Date.Day)
	}
	if m.r.Errors()+m.r.Warnings() > 0 {
		b.Open = diag.Summary(m.r.Findings)
	}
	return b
}

// notes is what the plan's `note` lines say to a department.
func (m *maker) notes(d departments.Name) *Table {
	t := table("notes", "Notes", beatColumn(), col("note", "note", "as written in the plan"))
	for _, n := range m.p.Notes {
		if n.Department != d {
			continue
		}
		where := "the take"
		if n.Beat != nil {
			where = beatName(n.Beat)
		}
		t.add(nil, cells(word(where), word(n.Text)))
	}
	return t
}

// has says whether a line is one of the part's own.
func (p *part) has(a *plan.Action) bool {
	return a != nil && (p.pickup == nil || a.Pickup == p.pickup)
}

// title is a pickup's; "" for the take.
func (p *part) title() string {
	if p.pickup == nil {
		return ""
	}
	return p.pickup.Title
}

// cameras are the cameras of a part: of a pickup, those it has lines for.
func (p *part) cameras() []*motion.CameraTrack {
	if p.pickup == nil {
		return p.tracks.Cameras
	}
	var out []*motion.CameraTrack
	for _, ct := range p.tracks.Cameras {
		for _, a := range p.actions {
			if cameraOf(a) == ct.Camera {
				out = append(out, ct)
				break
			}
		}
	}
	return out
}

// inTime is a part's lines in the order in which they happen.
func (p *part) inTime() []*plan.Action {
	out := append([]*plan.Action(nil), p.actions...)
	sort.SliceStable(out, func(i, j int) bool { return p.clock.Of(out[i]).Start < p.clock.Of(out[j]).Start })
	return out
}
