package check

import (
	"fmt"

	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// expose reports the exposures of a rule.
func (p *Pass) expose(r *Rule) {
	for _, e := range p.exposures() {
		if e.code != r.Code {
			continue
		}
		p.tell(e.parts, telling{camera: p.cameraAt(e.camera), rule: r, say: func(parts []part) {
			for _, left := range p.stretches(e.camera, e.carrier, parts) {
				p.sayExposure(&left)
			}
		}})
	}
}

// sayExposure reports one exposure.
func (p *Pass) sayExposure(e *exposure) {
	camera := p.cameraAt(e.camera)
	worst := p.peak(e.camera, sight.NoMirror, e.parts)
	at := p.Tracks.Rate.Time(worst.Frame)
	lead := e.lead()
	first := framesOf(e.parts)[0].From
	d := p.Report(p.placed(lead.thing, p.Tracks.Rate.Time(first)), "")
	d.Code = e.code
	box, distance := p.show(d, e.camera, sight.NoMirror, e.parts, worst)
	d.Subject = lead.thing.ID().Name
	if e.carrier != nil && len(names(e.parts)) > 1 {
		d.Subject = e.carrier.Name
	}
	verb, has := "is", "it has"
	if len(names(e.parts)) > 1 {
		verb, has = "are", "they have"
	}
	d.Message = fmt.Sprintf("%s %s in %s's frame %s: %s", e.called(), verb, camera.Name, p.when(d.Frames), p.seenAs(e.camera, e.parts, worst, box, distance))
	if rig, ok := lead.thing.(*plan.Rig); ok && e.code == codeLeft {
		if l := p.leftBefore(rig, first); l != nil {
			d.Message += fmt.Sprintf("; %s left it %s at %s", l.camera.Name, p.floorSpot(rig, l.at), l.at.Clock())
			if l.action != nil {
				d.Relate(l.action.Span, "left there: %s", clock.Describe(l.action))
			}
		}
	}
	p.relateCamera(d, camera, at)
	p.relateUncovered(d, e.camera, lead, first)
	if p.ErrorsOnly {
		return
	}
	behind := backing(p.behind(e.camera, e.parts, worst.Frame))
	if behind != "" {
		d.Note("behind it: %s", behind)
	}
	switch {
	case p.isOn(camera, lead.thing, first):
		d.Note("%s is on it: mount %s nearer its edge or higher, or tilt less", camera.Name, camera.Name)
	case first == 0:
		d.Note("%s to stand elsewhere from the first frame, or %s to look elsewhere", has, camera.Name)
	default:
		d.Note("%s to be gone or hidden by %s (frame %s), or %s to look elsewhere", has, p.Tracks.Rate.Time(first).Clock(), itoa(first), camera.Name)
	}
	p.noteEdit(d, camera)
	if len(names(e.parts)) == 1 {
		if at := p.refuge(lead.thing, bounds(d.Frames)); at != "" {
			d.Note("no camera sees the floor %s, in these frames", at)
		}
	}
	name := lead.thing
	if e.carrier != nil && len(names(e.parts)) > 1 {
		name = e.carrier
	}
	p.offerPaintOut(d, name, camera, where(box)+", "+share(worst.Share)+" of the frame", behind)
}

// show fills in what a finding says for machines about things in frame.
func (p *Pass) show(d *diag.Diagnostic, camera, mirror int, parts []part, worst sight.Moment) (sight.Box, float64) {
	d.Frames = framesOf(parts)
	d.Subject = parts[0].thing.ID().Name
	d.Camera = p.cameraAt(camera).Name
	d.Worst = worst.Frame
	d.Share = units.Percent(worst.Share)
	if b := p.BeatAt(p.Tracks.Rate.Time(d.Frames[0].From)); b != nil {
		d.Beat = b.Title
	}
	box, distance, _ := p.box(camera, mirror, parts, worst.Frame)
	d.Box = [4]float64{box.Left, box.Bottom, box.Right, box.Top}
	return box, distance
}

// when says runs of frames: the first to the last, and how many there are of
// them in between where they come and go.
func (p *Pass) when(runs []diag.Frames) string {
	s := p.When(bounds(runs))
	if len(runs) > 1 {
		s += fmt.Sprintf(", in %d of them", count(runs))
	}
	return s
}

// seenAs says how much is seen, where, past what, and how far away.
func (p *Pass) seenAs(camera int, parts []part, worst sight.Moment, box sight.Box, distance float64) string {
	s := fmt.Sprintf("up to %s of the frame, %s", share(worst.Share), where(box))
	own := map[string]bool{}
	for _, n := range names(parts) {
		own[n] = true
	}
	if worst.Visible < 0.95 {
		if body, ok := p.main(camera, bodiesOf(parts), worst.Frame); ok {
			for _, by := range p.covering(camera, body, worst.Frame) {
				if h, ok := parts[0].thing.(*plan.Hole); ok && by.Name == h.Wall.Name || own[by.Name] {
					continue // its own edge, or another part of it
				}
				s += ", behind " + what(by.Name, by.Kind)
				break
			}
		}
	}
	return s + ", " + p.away(distance) + " away"
}

func bodiesOf(parts []part) []int {
	var out []int
	for _, c := range parts {
		out = append(out, c.bodies...)
	}
	return out
}
