package overhead

import (
	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/render/scene"
)

// Beat draws a beat: the drawing with its list, a detail on a sheet of its own
// where one is needed and finds no room, and what is left of the list. It is nil
// where the plan has mistakes that keep it from being worked out.
func Beat(r *compile.Result, beat *plan.Beat, o Options) []*scene.Sheet {
	m := from(r)
	if m == nil || beat == nil {
		return nil
	}
	return m.titled(beat, o)
}

// Take draws the whole take: everybody's way from first to last, the beats numbered
// where they begin, and what the cameras find out.
func Take(r *compile.Result, o Options) []*scene.Sheet {
	m := from(r)
	if m == nil {
		return nil
	}
	return m.titled(nil, o)
}

func (m *material) titled(beat *plan.Beat, o Options) []*scene.Sheet {
	sheets, title := m.compose(beat, o)
	title(o.Pages)
	return sheets
}

// Untitled draws a beat, or the whole take where beat is nil, without the title
// blocks: they say how many pages there are in all, which is known when all are
// drawn. The function that comes with the sheets puts them in.
func Untitled(r *compile.Result, beat *plan.Beat, o Options) ([]*scene.Sheet, func(pages int)) {
	m := from(r)
	if m == nil {
		return nil, func(int) {}
	}
	return m.compose(beat, o)
}

// Pickup draws a pickup on the clock of its own, like a beat.
func Pickup(r *compile.Result, shot *compile.Shot, o Options) []*scene.Sheet {
	sheets, title := UntitledPickup(r, shot, o)
	title(o.Pages)
	return sheets
}

// UntitledPickup is to Pickup what Untitled is to Beat.
func UntitledPickup(r *compile.Result, shot *compile.Shot, o Options) ([]*scene.Sheet, func(pages int)) {
	if r == nil || r.Plan == nil || shot == nil {
		return nil, func(int) {}
	}
	m := of(shot.Plan, &shot.Played, r.Findings, shot.Pickup)
	if m == nil {
		return nil, func(int) {}
	}
	return m.compose(nil, o)
}

func from(r *compile.Result) *material {
	if r == nil || r.Plan == nil {
		return nil
	}
	return of(r.Plan, &r.Played, r.Findings, nil)
}

// of is what is known of the take, or of a pickup.
func of(p *plan.Plan, played *compile.Played, findings []diag.Diagnostic, pickup *plan.Pickup) *material {
	if p == nil || played.Tracks == nil {
		return nil
	}
	m := &material{plan: p, pickup: pickup, tracks: played.Tracks, report: played.Sight, marks: signs(p)}
	for i := range findings {
		if d := &findings[i]; pickup == nil && d.Pickup == "" || pickup != nil && d.Pickup == pickup.Title {
			m.findings = append(m.findings, *d)
		}
	}
	if s := played.Stage; s != nil {
		m.pieces, m.scene, m.things, m.cameras = s.Pieces, s.Scene, s.Things, s.Cameras
	} else {
		m.pieces = solid.Of(&p.Set)
	}
	return m
}
