package bind

import (
	"longhand/lang/body"
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// look binds what this production does and never does, of the main file.
func (b *binder) look(f *syntax.File) {
	for _, ln := range f.Lines {
		if ln.Stmt != nil {
			b.newLine(f.Source, ln, b.plan.Take.Units).rule(ln.Stmt, &b.plan.Look)
		}
	}
}

func (l *line) rule(s syntax.Stmt, k *plan.Look) {
	const why = "one is enough"
	switch s := s.(type) {
	case *syntax.Never:
		span := l.span
		switch {
		case s.Zoom:
			if l.once("never zoom", why) {
				k.NeverZoom = &span
			}
		case s.Modern:
			if l.once("never modern in frame", why) {
				k.NeverModern = &span
			}
		case s.Tighter != nil:
			known := l.knownWord(s.Tighter, s.Tighter.Text, "shot size", sizeNames())
			if l.once("never tighter than", why) && known {
				k.Tightest = &plan.TightestRule{Size: s.Tighter.Text, Span: span}
			}
		}
	case *syntax.Only:
		rule := &plan.LensRule{Span: l.span}
		for _, n := range s.Lenses {
			if lens := is[*plan.Lens](l, n, "`only lens` takes lenses", plan.KindLens); lens != nil {
				rule.Lenses = append(rule.Lenses, lens)
			}
		}
		if l.once("only lens", "name all lenses on one line") && !l.bad {
			k.OnlyLenses = rule
		}
	case *syntax.BlurLimit:
		v, ok := l.quantity(s.Most, units.Share, "at most", percentage)
		l.limit(&k.Blur, v, ok, "blur behind")
	case *syntax.PanLimit:
		v, ok := l.seconds(s.Least, "at least", day)
		l.limit(&k.PanSeconds, float64(v), ok, "pan at least")
	case *syntax.ExposureLimit:
		v, ok := l.number(s.Stops, "within", limits{0, 20, true}, false)
		l.limit(&k.ExposureStops, v, ok, "exposure within")
	case *syntax.UnderLimit:
		v, ok := l.number(s.Stops, "at most", limits{0, 20, false}, false)
		l.limit(&k.UnderStops, v, ok, "faces at most")
	case *syntax.SpeedLimit:
		known := l.knownWord(s.Class, s.Class.Text, "class of rig", classNames())
		rule := plan.SpeedRule{Class: s.Class.Text, Speed: l.speed(s.Most, "at most"), Back: l.speed(s.Back, "back"), Span: l.span}
		if known && l.once("speed "+s.Class.Text, why) && !l.bad {
			k.Speeds = append(k.Speeds, rule)
		}
	}
}

func (l *line) limit(rule **plan.LimitRule, v float64, ok bool, what string) {
	if l.once(what, "one is enough") && ok {
		*rule = &plan.LimitRule{Limit: v, Span: l.span}
	}
}

func sizeNames() []string {
	var out []string
	for _, s := range body.Sizes() {
		out = append(out, s.String())
	}
	return out
}
