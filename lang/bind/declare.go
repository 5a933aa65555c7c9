package bind

import (
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// declareFile declares what a file's set, kit and people hold. Their details
// are bound when everything is declared.
func (b *binder) declareFile(f *syntax.File) {
	system := systemOf(f, b.plan.Take.Units)
	for _, s := range f.Sections {
		if s.Head != nil {
			b.head(f, s)
		}
		for _, ln := range s.Lines {
			if ln.Stmt != nil {
				l := b.newLine(f.Source, ln, system)
				l.declaration(ln.Stmt)
			}
		}
	}
}

func (b *binder) newLine(f *source.File, ln *syntax.Line, system units.System) *line {
	return &line{binder: b, file: f, system: system, span: ln.Span(f), section: ln.Section}
}

// systemOf is what a file's bare numbers are in: its own `units`, or else those
// of the plan that uses it.
func systemOf(f *syntax.File, otherwise units.System) units.System {
	for _, ln := range f.Lines {
		if u, ok := ln.Stmt.(*syntax.Units); ok && u.System != nil {
			switch word := u.System.Text; {
			case word == "feet" || nearest(word, systems) == "feet":
				return units.Feet
			case word == "metres" || nearest(word, systems) == "metres":
				return units.Metric
			}
		}
	}
	return otherwise
}

// systems are the words for the systems of units. A slip in one is reported, and
// still says what was meant.
var systems = []string{"metres", "feet"}

// head takes what a section's header says.
func (b *binder) head(f *syntax.File, s *syntax.Section) {
	if h, ok := s.Head.Stmt.(*syntax.SetHead); ok {
		set := &b.plan.Set
		if !set.Span.Valid() {
			set.Title, set.Span = h.Title.Value(), h.Span(f.Source)
		}
	}
}

func (l *line) declaration(s syntax.Stmt) {
	switch s := s.(type) {
	case *syntax.Plan:
		l.drawing(s)
	case *syntax.Wall:
		l.wall(s)
	case *syntax.SetDoor:
		l.door(s)
	case *syntax.SetWindow:
		l.pane(s)
	case *syntax.Hole:
		l.hole(s)
	case *syntax.Pillar:
		l.pillar(s)
	case *syntax.Block:
		l.block(s)
	case *syntax.Platform:
		l.platform(s)
	case *syntax.Stairs:
		l.stairs(s)
	case *syntax.Mirror:
		l.mirror(s)
	case *syntax.Glow:
		l.glow(s)
	case *syntax.Mark:
		l.mark(s)
	case *syntax.Grid:
		l.grid(s)
	case *syntax.Supply:
		l.supply(s)
	case *syntax.PlaceLamp:
		l.placeLamp(s)
	case *syntax.Camera:
		l.camera(s)
	case *syntax.Lens:
		l.lens(s)
	case *syntax.Rig:
		l.rig(s)
	case *syntax.Vehicle:
		l.vehicle(s)
	case *syntax.Lamp:
		l.lamp(s)
	case *syntax.Wash:
		l.wash(s)
	case *syntax.Card:
		l.card(s)
	case *syntax.Performer:
		l.performer(s)
	case *syntax.Crew:
		l.crew(s)
	}
}

// fill has a thing's details bound once all names are declared; a mistake in
// them, or in its name, marks it.
func (l *line) fill(t plan.Thing, details func()) {
	l.fills = append(l.fills, func() {
		details()
		t.ID().Bad = l.bad
	})
}

// fillFirst is fill for things that others lie on, hang on or are made of.
func (l *line) fillFirst(t plan.Thing, details func()) {
	l.firsts = append(l.firsts, func() {
		details()
		t.ID().Bad = l.bad
	})
}
