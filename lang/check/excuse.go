package check

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// excuse is a `paint out` or an `allow` as it is matched against findings.
type excuse struct {
	paintOut *plan.PaintOut
	allow    *plan.Allow
	thing    plan.Thing
	camera   *plan.Camera
	during   []*plan.Beat
	frames   []diag.Frames // of its beats; all of the take's where it names none
	hit      bool
	beatHit  map[*plan.Beat]bool
}

// excuses is every `paint out`, then every `allow`, of the beats; those of a
// pickup are about the pickup.
func (p *Pass) excuses() []*excuse {
	var out []*excuse
	add := func(e *excuse) {
		e.beatHit = map[*plan.Beat]bool{}
		if len(e.during) == 0 {
			e.frames = p.allFrames()
		}
		for _, b := range e.during {
			e.frames = append(e.frames, p.beatFrames(b)...)
		}
		e.frames = tidy(e.frames)
		out = append(out, e)
	}
	for _, o := range p.Plan.PaintOuts {
		add(&excuse{paintOut: o, thing: o.Thing, camera: o.Camera, during: o.During})
	}
	for _, a := range p.Plan.Allows {
		add(&excuse{allow: a, thing: a.Thing, camera: a.Camera, during: a.During})
	}
	return out
}

func (p *Pass) allFrames() []diag.Frames {
	if p.Tracks == nil {
		return nil
	}
	return []diag.Frames{{From: 0, To: units.Frame(p.Tracks.Frames - 1)}}
}

func (p *Pass) hit(e *excuse, frames []diag.Frames) {
	e.hit = true
	for _, b := range e.during {
		if len(meet(p.beatFrames(b), frames)) > 0 {
			e.beatHit[b] = true
		}
	}
}

// about says whether a finding is about a thing: its subject, or that of the
// line it points at.
func (p *Pass) about(d *diag.Diagnostic, thing plan.Thing) bool {
	if d.Subject != "" {
		return d.Subject == thing.ID().Name || p.meets(d, thing)
	}
	if a := p.lineOf(d); a != nil && a.Subject == thing {
		return true
	}
	return d.Span.Valid() && d.Span == thing.ID().Decl
}

func (p *Pass) beatOfFinding(d *diag.Diagnostic) *plan.Beat {
	if a := p.lineOf(d); a != nil {
		return a.Beat
	}
	for _, b := range p.Plan.Beats {
		if d.Beat != "" && b.Title == d.Beat || d.Span.Valid() && d.Span.File == b.Span.File && d.Span.Start >= b.Span.Start && d.Span.End <= b.Span.End {
			return b
		}
	}
	return nil
}

// lineOf is the line a finding points at.
func (p *Pass) lineOf(d *diag.Diagnostic) *plan.Action {
	for _, a := range p.Plan.Actions {
		if s := a.Span; d.Span.Valid() && s.File == d.Span.File && s.Start <= d.Span.Start && d.Span.End <= s.End {
			return a
		}
	}
	return nil
}

func among(list []*plan.Beat, b *plan.Beat) bool {
	for _, x := range list {
		if x == b {
			return true
		}
	}
	return false
}
