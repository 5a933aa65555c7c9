package bind

import (
	"longhand/lang/plan"
	"longhand/lang/source"
)

// fittings is what every camera that is used needs somewhere in the plan: a rig
// or a hole, and a lens. Used says where a camera is first used.
type fittings struct {
	used    []use
	mounted map[*plan.Camera]bool
	lensed  map[*plan.Camera]bool
}

type use struct {
	camera *plan.Camera
	at     source.Span
}

type spinWanted struct {
	line   *line
	target *plan.Target
}

// uses notes that a line needs the camera to be somewhere, with a lens.
func (l *line) uses(c *plan.Camera) {
	if c == nil {
		return
	}
	for _, u := range l.fits.used {
		if u.camera == c {
			return
		}
	}
	at := l.span
	l.fits.used = append(l.fits.used, use{c, at})
}

func (l *line) mountedOn(c *plan.Camera) {
	if c != nil {
		l.uses(c)
		l.fits.mounted[c] = true
	}
}

func (l *line) fitted(c *plan.Camera) { l.fits.lensed[c] = true }

// checkFittings reports cameras that are used without a rig or without a lens,
// once each, and counters without a spin.
func (b *binder) checkFittings() {
	for _, u := range b.fits.used {
		at := u.at
		at.End = min(at.End, at.Start+len(u.camera.Name))
		if at.Text() != u.camera.Name {
			at = u.at
		}
		name := u.camera.Name
		mounted := b.fits.mounted[u.camera] || b.mayHave(name, nil, "on", "hides")
		lensed := b.fits.lensed[u.camera] || b.mayHave(name, nil, "takes")
		switch {
		case !mounted && !lensed:
			b.report(CodeNoDefault, at, "`%s` is used, and no line puts it on a rig or gives it a lens", name).
				Note("for example: %s on RIG, %s takes LENS T2.8", name, name)
		case !mounted:
			b.report(CodeNoDefault, at, "`%s` is used, and no line puts it on a rig or behind a hole", name).Note("for example: %s on RIG", name)
		case !lensed:
			b.report(CodeNoDefault, at, "`%s` is used, and no line gives it a lens", name).Note("for example: %s takes LENS T2.8", name)
		}
	}
	for _, w := range b.spins {
		b.countered(w)
	}
}

// countered reports a counter in whose beat nobody spins.
func (b *binder) countered(w spinWanted) {
	if w.line.bad || b.mayHave(w.target.Name(), w.line.section, "spins") {
		return
	}
	for _, act := range w.line.lines() {
		if _, ok := act.Deed.(*plan.Spin); ok && act.Subject == w.target.Thing {
			return
		}
	}
	b.report(CodeNoSuchLine, w.target.Span, "`counters` goes against the spin of `%s`, who does not spin in this beat", w.target.Name())
}
