package bind

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// Option changes how a plan is bound.
type Option func(*binder)

// KnownCodes lists the codes of findings that `allow` may name. Without it any
// code will do.
func KnownCodes(codes ...string) Option {
	return func(b *binder) { b.codes = codes }
}

// Drawings has the floor plans that a set takes walls and blocks from read by
// this; their paths are resolved as those of used files are. Without it they are
// not read.
func Drawings(read func(path string) (string, error)) Option {
	return func(b *binder) { b.read = read }
}

// Bind makes a plan of the main file, which comes first, and the files it uses,
// of which it takes set, kit and people. It always returns a plan, with as much
// in it as could be understood.
func Bind(files []*syntax.File, opts ...Option) (*plan.Plan, diag.Bag) {
	b := &binder{
		plan:      &plan.Plan{},
		names:     map[string]plan.Thing{},
		lost:      map[string]bool{},
		unknown:   map[string]*diag.Diagnostic{},
		said:      map[string]source.Span{},
		marks:     map[*plan.Mark]*markText{},
		cues:      map[string]source.Span{},
		misplaced: map[string]bool{},
		fits:      fittings{on: map[onRig]bool{}, operated: map[inShot]bool{}, mounted: map[inShot]bool{}, lensed: map[inShot]bool{}},
	}
	for _, o := range opts {
		o(b)
	}
	if len(files) == 0 {
		return b.plan, diag.Bag{}
	}
	for _, f := range files {
		b.plan.Files = append(b.plan.Files, f.Source)
	}
	b.salvage(files)
	b.take(files[0])
	for _, f := range files {
		b.declareFile(f)
	}
	for _, fill := range append(b.firsts, b.fills...) {
		fill()
	}
	b.overlaps()
	b.skins()
	b.window()
	b.look(files[0])
	b.beats(files[0])
	b.checkFittings()
	if b.mistaken(files) {
		b.matchEvents()
	}
	return b.plan, b.bag()
}

// binder is a plan being bound.
type binder struct {
	plan  *plan.Plan
	found []*diag.Diagnostic
	notes []*diag.Diagnostic                // what was made of drawings: nothing wrong
	codes []string                          // that `allow` may name; nil for any
	read  func(path string) (string, error) // drawings; nil to leave them

	names   map[string]plan.Thing       // all that is declared
	lost    map[string]bool             // names that unreadable lines would have declared
	blind   bool                        // a file or drawing is missing: any name may be in it
	unknown map[string]*diag.Diagnostic // names reported as unknown
	said    map[string]source.Span      // statements of which one is enough
	marks   map[*plan.Mark]*markText
	firsts  []func() // give the things that others lie on their details
	fills   []func() // give the others theirs

	noZone     bool // the date says no zone
	toldWindow bool // what a window by name needs has been checked

	noTempo   *diag.Diagnostic // counts were used without a tempo
	untitled  bool             // a beat's header could not be read
	cues      map[string]source.Span
	waits     []wait // events to be matched with lines
	dropped   []droppedLine
	fits      fittings
	spins     []spinWanted
	leaves    []leaving
	misplaced map[string]bool // lamps whose placing has a mistake
}

// line is a statement being bound.
type line struct {
	*binder
	file    *source.File
	system  units.System // of the file's bare numbers
	span    source.Span  // of the statement
	section *syntax.Section
	bad     bool // a mistake was found in it, or follows from one found before
	beat    *plan.Beat
	pickup  *plan.Pickup
}

func (b *binder) bag() diag.Bag {
	var bag diag.Bag
	for _, d := range append(b.found, b.notes...) {
		bag.Add(*d)
	}
	return bag
}

// errorf reports a mistake in the line.
func (l *line) errorf(code diag.Code, at source.Span, format string, args ...any) *diag.Diagnostic {
	l.bad = true
	d := l.report(code, at, format, args...)
	if l.beat != nil {
		d.Beat = l.beat.Title
	}
	return d
}

func (b *binder) report(code diag.Code, at source.Span, format string, args ...any) *diag.Diagnostic {
	var bag diag.Bag
	d := *bag.Errorf(code, at, format, args...)
	b.found = append(b.found, &d)
	return &d
}

// at is where a part of the line stands.
func (l *line) at(part syntax.Spanned) source.Span { return part.Span(l.file) }
