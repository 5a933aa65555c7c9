package bind

import (
	"longhand/lang/body"
	"longhand/lang/plan"
	"longhand/lang/source"
)

// fittings is what every camera that is used needs somewhere in the plan: a rig
// or a hole, and a lens. Used says where a camera is first used.
type fittings struct {
	used    []use
	mounted map[*plan.Camera]bool
	lensed  map[*plan.Camera]bool

	on       map[onRig]bool        // every rig that a camera is on at some time
	operated map[*plan.Camera]bool // somebody is named who works the camera
	worn     []wornBy
	handed   []handedFrom
}

type onRig struct {
	camera *plan.Camera
	rig    *plan.Rig
}

// wornBy is a camera on a rig that somebody wears, where nobody is named.
type wornBy struct {
	camera *plan.Camera
	rig    *plan.Rig
	at     source.Span
}

// handedFrom is a camera handed from a rig.
type handedFrom struct {
	camera *plan.Camera
	rig    *plan.Rig
	at     source.Span
}

// puts notes a camera that goes on a rig, worked by somebody if one is named.
func (l *line) puts(c *plan.Camera, r *plan.Rig, with *plan.Person, at source.Span) {
	if c == nil {
		return
	}
	if with != nil {
		l.fits.operated[c] = true
	}
	if r == nil {
		return
	}
	l.fits.on[onRig{c, r}] = true
	if class, err := body.ParseClass(r.Class); err == nil && with == nil && body.RigOf(class).Crewing == body.Worn {
		l.fits.worn = append(l.fits.worn, wornBy{c, r, at})
	}
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
	for _, w := range b.fits.worn {
		if !b.fits.operated[w.camera] && !b.mayHave(w.camera.Name, nil, "on") && !b.placed(w.rig) {
			b.report(CodeNoDefault, w.at, "`%s` is worn by its operator, and no line says by whom; add: with NAME", w.at.Text())
			b.fits.operated[w.camera] = true // once a camera
		}
	}
	for _, h := range b.fits.handed {
		if !b.fits.on[onRig{h.camera, h.rig}] && !b.mayHave(h.camera.Name, nil, "on") {
			b.report(CodeNoSuchLine, h.at, "no line puts `%s` on `%s`, from which it is handed", h.camera.Name, h.rig.Name)
		}
	}
	for _, g := range b.leaves {
		b.wasAboard(g)
	}
}

// placed reports whether a rig has lines of its own, and so is somewhere.
func (b *binder) placed(r *plan.Rig) bool {
	for _, act := range b.plan.Actions {
		if act.Subject == plan.Thing(r) {
			return true
		}
	}
	return b.mayHave(r.Name, nil)
}

// leaving is somebody getting off a carrier.
type leaving struct {
	line    *line
	who     plan.Thing
	carrier plan.Thing
	at      source.Span
}

// wasAboard reports somebody who leaves what they are never on. Operators are on
// the rigs their cameras are on.
func (b *binder) wasAboard(g leaving) {
	name := g.who.ID().Name
	if g.line.bad || b.mayHave(name, nil, "rides", "boards") {
		return
	}
	for _, d := range b.dropped {
		if d.does("on") && d.names(b, g.carrier.ID().Name) {
			return
		}
	}
	if rig, ok := g.carrier.(*plan.Rig); ok {
		if person, ok := g.who.(*plan.Person); ok && person.Crew {
			for at := range b.fits.on {
				if at.rig == rig {
					return
				}
			}
		}
	}
	lines := b.plan.Actions
	for _, p := range b.plan.Pickups {
		lines = append(lines[:len(lines):len(lines)], p.Actions...)
	}
	for _, act := range lines {
		switch deed := act.Deed.(type) {
		case *plan.Ride:
			if act.Subject == g.who && deed.Carrier == g.carrier {
				return
			}
		case *plan.Board:
			if act.Subject == g.who && deed.Carrier == g.carrier {
				return
			}
		case *plan.Handoff:
			if plan.Thing(deed.Weight) == g.who && plan.Thing(deed.From) == g.carrier {
				return
			}
		}
	}
	b.report(CodeNoSuchLine, g.at, "`%s` leaves `%s`, and no line has `%s` ride or board it", name, g.carrier.ID().Name, name)
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
