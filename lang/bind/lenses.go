package bind

import (
	"math"

	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// sameFocal forgives the rounding of a focal length, in millimetres.
const sameFocal = 0.05

func (l *line) takeLens(s *syntax.TakeLens) {
	c := l.cameraCalled(s.Who, "takes a lens")
	lens := is[*plan.Lens](l, s.Lens, "a camera takes a lens", plan.KindLens)
	deed := &plan.Fit{Lens: lens, Stop: l.stop(s.Stop)}
	focal := l.length(s.Focal, "takes", limits{0, 3, true}).Millimetres()
	deed.Focal = focal
	if c != nil && lens != nil {
		l.fitted(c)
		if !lens.Bad {
			l.focal(s, c, lens, focal)
			l.lensOpening(s, lens, deed.Stop)
		}
	}
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{atOnce: !l.pulls(c, deed)}})
}

// pulls reports whether a line goes on with the lens the camera has, and zooms or
// pulls its stop, which takes a time. A lens is changed at once.
func (l *line) pulls(c *plan.Camera, fit *plan.Fit) bool {
	if c == nil || fit.Lens == nil {
		return true // reported elsewhere
	}
	if fit.Focal == 0 && fit.Stop == 0 {
		return false
	}
	var last *plan.Fit
	for _, act := range l.earlier() {
		if f, ok := act.Deed.(*plan.Fit); ok && act.Subject == plan.Thing(c) {
			last = f
		}
	}
	return last != nil && last.Lens == fit.Lens || l.mayHave(c.Name, l.part(), "takes")
}

// earlier are the lines before this one: of the take, or of the pickup that it
// stands in, which is a shot of its own.
func (l *line) earlier() []*plan.Action {
	if l.pickup != nil {
		return l.pickup.Actions
	}
	return l.plan.Actions
}

// focal checks a focal length against the lens. A zoom is told its first one.
func (l *line) focal(s *syntax.TakeLens, c *plan.Camera, lens *plan.Lens, focal units.Millimetres) {
	switch {
	case s.Focal != nil && focal == 0:
	case focal == 0 && lens.Zoom():
		if !l.zoomed(c, lens) {
			l.errorf(CodeNoDefault, l.at(s.Lens), "`%s` is a zoom from %s to %s; say which: takes %s %s", lens.Name, lens.Short, lens.Long, lens.Name, lens.Short)
		}
	case focal != 0 && !lens.Zoom() && math.Abs(float64(focal-lens.Short)) > sameFocal:
		l.errorf(CodeOutOfRange, l.at(s.Focal), "`%s` is no zoom: it has %s and cannot be set to %s", lens.Name, lens.Short, focal).Relate(lens.At, "the lens")
	case focal != 0 && (focal < lens.Short-sameFocal || focal > lens.Long+sameFocal):
		l.errorf(CodeOutOfRange, l.at(s.Focal), "`%s` goes from %s to %s; %s is outside", lens.Name, lens.Short, lens.Long, focal).Relate(lens.At, "the lens")
	}
}

// zoomed reports whether the camera has been told a focal length of the zoom in
// an earlier line.
func (l *line) zoomed(c *plan.Camera, lens *plan.Lens) bool {
	for _, act := range l.earlier() {
		if f, ok := act.Deed.(*plan.Fit); ok && act.Subject == plan.Thing(c) && f.Lens == lens && f.Focal > 0 {
			return true
		}
	}
	return l.mayHave(c.Name, l.part(), "takes")
}

// lensOpening checks a stop against the lens's own, to a tenth of a stop's number.
func (l *line) lensOpening(s *syntax.TakeLens, lens *plan.Lens, stop units.Stop) {
	const slop = 0.05
	if stop == 0 || lens.Widest == 0 || lens.Closest == 0 {
		return
	}
	if stop < lens.Widest-slop || stop > lens.Closest+slop {
		l.errorf(CodeOutOfRange, l.at(s.Stop), "`%s` opens from %s to %s; %s is outside", lens.Name, lens.Widest, lens.Closest, stop).Relate(lens.At, "the lens")
	}
}
