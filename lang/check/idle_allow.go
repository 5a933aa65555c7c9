package check

import (
	"fmt"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
)

var idleAllow = &Rule{
	Entry: diag.Entry{
		Code:     "idle-allow",
		Title:    "a paint out or an allow that nothing needs",
		Severity: diag.Warning,
		At:       []string{"beat allow", "beat paint"},
		Explain: `The plan accepts something ("paint out cart from A", "allow flare in B"), and
nothing of the kind is found any more: the thing is out of frame, the beat it was
about has changed, or the name is not the one the finding has.

It matters because it hides the next mistake. A cart that is painted out for
good may come into frame again, somewhere else and much bigger, and nobody is
told; and visual effects bid for a shot that needs no work.

A line without "during" is about the whole take. One that names beats has to find
something in each of them. Mistakes in the text of a plan cannot be allowed.

To mend it: take the line out, or name the beat, the camera or the thing that it
is about now.`,
		Bad: `take "Swept up"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (3, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig cart cart
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  cart stands at (0, -12)
  legs stands at (1.5, -6)
  A on legs with ida
  A takes w35 T4
  A sees mina
  paint out cart from A because "the cart's edge, black yard behind it"
`,
		Good: `take "Swept up"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (3, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig cart cart
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  cart stands at (0, -12)
  legs stands at (1.5, -6)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
	},
	Needs: Seen,
	Run:   func(*Pass) {}, // accept reports it, after all other rules have run
}

// idle reports an excuse that accepted nothing, or nothing in a beat it names.
func (p *Pass) idle(e *excuse, left []item) {
	p.rule = idleAllow
	span, what := source.Span{}, ""
	switch {
	case e.paintOut != nil:
		span = e.paintOut.Span
		what = fmt.Sprintf("%s is not in %s's frame", e.thing.ID().Name, e.camera.Name)
	default:
		span = e.allow.Span
		what = fmt.Sprintf("no finding %s", e.allow.Code)
		if e.thing != nil {
			what += " about " + e.thing.ID().Name
		}
		if e.camera != nil {
			what += " in " + e.camera.Name
		}
	}
	if !e.hit {
		d := p.Report(span, "%s%s: this line accepts nothing", what, during(e.during))
		p.aboutIdle(d, e)
		p.hint(d, e, left)
		d.Fix("take the line out", diag.Edit{Span: wholeLine(span)})
		return
	}
	for _, b := range e.during {
		if !e.beatHit[b] {
			d := p.Report(span, "%s during %s: the line need not name that beat", what, quote(b.Title))
			p.aboutIdle(d, e)
			d.Beat = b.Title
		}
	}
}

func (p *Pass) aboutIdle(d *diag.Diagnostic, e *excuse) {
	if e.thing != nil {
		d.Subject = e.thing.ID().Name
	}
	if e.camera != nil {
		d.Camera = e.camera.Name
	}
}

// hint names a finding that the line may have meant.
func (p *Pass) hint(d *diag.Diagnostic, e *excuse, left []item) {
	if e.allow != nil && !isRule(diag.Code(e.allow.Code)) {
		d.Note("%s is about the text of the plan, which cannot be allowed, only put right", e.allow.Code)
		return
	}
	for _, it := range left {
		switch {
		case e.camera != nil && it.Camera != e.camera.Name:
		case e.allow != nil && it.Code == diag.Code(e.allow.Code):
			d.Note("there is one that it does not cover: %s", it.Message)
			return
		case e.thing != nil && it.told != nil && includes(it.parts, e.thing):
			d.Note("what is found is %s: %s", it.Code, it.Message)
			return
		}
	}
}

func includes(parts []part, thing plan.Thing) bool {
	for _, c := range parts {
		if c.thing == thing {
			return true
		}
	}
	return false
}

// during says the beats of a line.
func during(beats []*plan.Beat) string {
	if len(beats) == 0 {
		return ""
	}
	var titles []string
	for _, b := range beats {
		titles = append(titles, quote(b.Title))
	}
	return " during " + strings.Join(titles, ", ")
}

// wholeLine is a statement's lines with their line end.
func wholeLine(s source.Span) source.Span {
	if !s.Valid() {
		return s
	}
	s.Start = s.File.LineStart(s.StartPos().Line)
	if i := strings.IndexByte(s.File.Text[s.End:], '\n'); i >= 0 {
		s.End += i + 1
	} else {
		s.End = len(s.File.Text)
	}
	return s
}

func isRule(code diag.Code) bool {
	for _, r := range Rules {
		if r.Code == code {
			return true
		}
	}
	return false
}
