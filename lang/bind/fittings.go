package bind

import (
	"longhand/lang/body"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// fittings is what every camera that is used needs somewhere in the take, and in
// each pickup anew: a rig or a hole, and a lens. Used says where a camera is first
// used.
type fittings struct {
	used    []use
	mounted map[inShot]bool
	lensed  map[inShot]bool

	on       map[onRig]bool  // every rig that a camera is on at some time
	operated map[inShot]bool // somebody is named who works the camera
	worn     []onRigAt       // rigs that somebody wears, where nobody is named
	handed   []onRigAt       // rigs that a camera is handed from
}

// inShot is a camera in the take, where pickup is nil, or in a pickup.
type inShot struct {
	camera *plan.Camera
	pickup *plan.Pickup
}

type onRig struct {
	inShot
	rig *plan.Rig
}

type onRigAt struct {
	onRig
	section *syntax.Section // of a pickup; nil for the take
	at      source.Span
}

// shot is a camera in the shot that the line is of.
func (l *line) shot(c *plan.Camera) inShot { return inShot{c, l.pickup} }

// part is the section of a line's shot: a pickup's own, nil for the take, which
// has many.
func (l *line) part() *syntax.Section {
	if l.pickup != nil {
		return l.section
	}
	return nil
}

// puts notes a camera that goes on a rig, worked by somebody if one is named.
func (l *line) puts(c *plan.Camera, r *plan.Rig, with *plan.Person, at source.Span) {
	if c == nil {
		return
	}
	if with != nil {
		l.fits.operated[l.shot(c)] = true
	}
	if r == nil {
		return
	}
	on := onRig{l.shot(c), r}
	l.fits.on[on] = true
	if class, err := body.ParseClass(r.Class); err == nil && with == nil && body.RigOf(class).Crewing == body.Worn {
		l.fits.worn = append(l.fits.worn, onRigAt{on, l.part(), at})
	}
}

type use struct {
	inShot
	section *syntax.Section // of a pickup; nil for the take
	at      source.Span
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
		if u.inShot == l.shot(c) {
			return
		}
	}
	l.fits.used = append(l.fits.used, use{l.shot(c), l.part(), l.span})
}

func (l *line) mountedOn(c *plan.Camera) {
	if c != nil {
		l.uses(c)
		l.fits.mounted[l.shot(c)] = true
	}
}

func (l *line) fitted(c *plan.Camera) { l.fits.lensed[l.shot(c)] = true }

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
		mounted := b.fits.mounted[u.inShot] || b.mayHave(name, u.section, "on", "hides")
		lensed := b.fits.lensed[u.inShot] || b.mayHave(name, u.section, "takes")
		line := "no line"
		if u.pickup != nil {
			line = "no line of this pickup"
		}
		switch {
		case !mounted && !lensed:
			b.report(CodeNoDefault, at, "`%s` is used, and %s puts it on a rig or gives it a lens", name, line).
				Note("for example: %s on RIG, %s takes LENS T2.8", name, name)
		case !mounted:
			b.report(CodeNoDefault, at, "`%s` is used, and %s puts it on a rig or behind a hole", name, line).Note("for example: %s on RIG", name)
		case !lensed:
			b.report(CodeNoDefault, at, "`%s` is used, and %s gives it a lens", name, line).Note("for example: %s takes LENS T2.8", name)
		}
	}
	for _, w := range b.spins {
		b.countered(w)
	}
	for _, w := range b.fits.worn {
		if !b.fits.operated[w.inShot] && !b.mayHave(w.camera.Name, w.section, "on") && !b.placed(w.rig) {
			b.report(CodeNoDefault, w.at, "`%s` is worn by its operator, and no line says by whom; add: with NAME", w.at.Text())
			b.fits.operated[w.inShot] = true // once a camera
		}
	}
	for _, h := range b.fits.handed {
		if !b.fits.on[h.onRig] && !b.mayHave(h.camera.Name, h.section, "on") {
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
