package check

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/sight"
)

// Accepted is a finding, or the part of one, that the plan accepts by a
// `paint out` or an `allow`.
type Accepted struct {
	Finding  diag.Diagnostic
	PaintOut *plan.PaintOut // one of the two is set
	Allow    *plan.Allow
	// For what a camera sees: what stands behind it in its worst frame, most
	// first, and whether the lens moves, turns or zooms over its frames.
	Behind []sight.Backing
	Moves  bool
}

// paintable is the findings that a `paint out` answers: what is in frame.
var paintable = map[diag.Code]bool{
	codeGear: true, codeCrew: true, codeCamera: true, codeLeft: true,
	codeHide: true, codeMirror: true, "modern-in-shot": true,
}

// item is a finding on its way through the excuses.
type item struct {
	diag.Diagnostic
	*told
}

// accept takes out of the findings what the plan accepts and reports what it
// accepts without need. A finding that an excuse covers in part is said again
// for the rest.
func (p *Pass) accept() {
	if len(p.Plan.PaintOuts) == 0 && len(p.Plan.Allows) == 0 {
		return
	}
	items := p.items()
	excuses := p.excuses()
	for _, e := range excuses {
		var left []item
		for _, it := range items {
			left = append(left, p.excused(e, it)...)
		}
		items = left
		p.acceptSeen(e)
	}
	p.bag, p.told = diag.Bag{}, nil
	for _, it := range items {
		p.bag.Add(it.Diagnostic)
	}
	if p.Sight != nil {
		for _, e := range excuses {
			p.idle(e, items)
		}
	}
}

// items is the findings so far.
func (p *Pass) items() []item {
	var out []item
	for i, d := range p.bag.List() {
		it := item{Diagnostic: d}
		if t, ok := p.told[i]; ok {
			it.told = &t
		}
		out = append(out, it)
	}
	return out
}

// excused is what an excuse leaves of a finding.
func (p *Pass) excused(e *excuse, it item) []item {
	switch {
	case e.paintOut != nil && !paintable[it.Code], e.allow != nil && diag.Code(e.allow.Code) != it.Code:
		return []item{it}
	case it.told == nil:
		return p.excusedPlain(e, it)
	case e.camera != nil && it.camera != e.camera:
		return []item{it}
	}
	var taken, left []part
	for _, c := range it.parts {
		t := meet(p.means(e.thing, c.thing, c.frames), e.frames)
		if len(t) == 0 {
			left = append(left, c)
			continue
		}
		taken = append(taken, part{c.thing, c.bodies, t})
		if rest := minus(c.frames, t); len(rest) > 0 {
			left = append(left, part{c.thing, c.bodies, rest})
		}
	}
	if len(taken) == 0 {
		return []item{it}
	}
	p.hit(e, framesOf(taken))
	said := []item{it}
	if len(left) > 0 {
		said = p.again(taken, it.telling)
	}
	for _, s := range said {
		p.keep(e, s)
	}
	if len(left) == 0 {
		return nil
	}
	return p.again(left, it.telling)
}

// again says a finding for other parts.
func (p *Pass) again(parts []part, t telling) []item {
	t.pass.tell(parts, t)
	out := t.pass.items()
	t.pass.bag, t.pass.told = diag.Bag{}, nil
	return out
}

// excusedPlain does the same for a finding that cannot be said again: its frames
// are cut and its words stay.
func (p *Pass) excusedPlain(e *excuse, it item) []item {
	if e.camera != nil && it.Camera != e.camera.Name || e.thing != nil && !p.about(&it.Diagnostic, e.thing) {
		return []item{it}
	}
	if len(it.Frames) == 0 {
		if len(e.during) > 0 {
			b := p.beatOfFinding(&it.Diagnostic)
			if b == nil || !among(e.during, b) {
				return []item{it}
			}
			e.beatHit[b] = true
		}
		e.hit = true
		p.keep(e, it)
		return nil
	}
	taken := meet(tidy(it.Frames), e.frames)
	if len(taken) == 0 {
		return []item{it}
	}
	p.hit(e, taken)
	left := minus(tidy(it.Frames), taken)
	accepted := it
	accepted.Frames = taken
	p.keep(e, accepted)
	if len(left) == 0 {
		return nil
	}
	it.Frames = left
	it.Notes = append(append([]string(nil), it.Notes...), "of this, "+p.when(taken)+" is allowed; what is left is "+p.when(left))
	if !holds(left, it.Worst) {
		it.Worst = left[0].From
	}
	return []item{it}
}

// keep files what is accepted, for the sheets.
func (p *Pass) keep(e *excuse, it item) {
	a := Accepted{Finding: it.Diagnostic, PaintOut: e.paintOut, Allow: e.allow}
	if camera, ok := p.sceneCamera(it.Camera); ok && p.Sight != nil && len(it.Frames) > 0 {
		a.Moves = p.moves(camera, bounds(it.Frames))
		parts := p.partsCalled(it.Subject)
		if it.told != nil {
			parts = it.parts
		}
		if paintable[it.Code] && it.Code != codeMirror && len(parts) > 0 {
			a.Behind = p.behind(camera, parts, it.Worst)
		}
	}
	p.Accepted = append(p.Accepted, a)
}

func (p *Pass) sceneCamera(name string) (int, bool) {
	if p.Stage == nil || name == "" {
		return 0, false
	}
	return p.Stage.Scene.Camera(name)
}

func (p *Pass) partsCalled(name string) []part {
	for _, t := range p.Stage.Things {
		if t != nil && t.ID().Name == name {
			return []part{{thing: t, bodies: p.Stage.Body(t)}}
		}
	}
	return nil
}

// moves says whether a lens is anywhere else, turned any other way or longer at
// any frame than at the first.
func (p *Pass) moves(camera int, f diag.Frames) bool {
	c := &p.Stage.Scene.Cameras[camera]
	first := c.At(f.From)
	for i := f.From + 1; i <= f.To; i++ {
		v := c.At(i)
		v.Focus = first.Focus
		if v != first {
			return true
		}
	}
	return false
}
