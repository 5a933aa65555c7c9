package clock

import (
	"fmt"
	"math"
	"strings"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// Lengths is asked for what the text does not say about time.
type Lengths interface {
	// Natural is how long a line takes when its text fixes neither its length
	// nor its end. It is not asked about lines that take no time of their own
	// (see [Instant]) nor about light cues.
	Natural(a *plan.Action) units.Seconds
	// Passing is when a move passes stop number `stop` of its path's Stops(),
	// counted from the move's start, if the whole move takes `took`. It grows
	// with took. It is not asked about the end of a move.
	Passing(a *plan.Action, stop int, took units.Seconds) units.Seconds
}

// Clock is every time of a take, or of a pickup. It is never changed once made.
type Clock struct {
	Actions []Interval // by plan.Action.Index
	Beats   []Interval // by plan.Beat.Index; one for a pickup. End is the beat's own end
	Length  units.Seconds

	Loops     []Loop      // cues that wait for each other
	Lates     []Late      // stated times that do not hold
	Overlaps  []Overlap   // one subject told to do two things at once
	Overruns  []Overrun   // beats with more in them than their stated length
	RollOuts  []RollOut   // cameras that roll for longer than the record lasts
	Unmatched []Unmatched // events that nothing in the plan brings about

	g       *Graph
	t       []float64 // by node
	lengths Lengths
}

// Interval is when something happens.
type Interval struct {
	Start, End units.Seconds
	// Open is set where the line takes no time of its own and what it sets up
	// lasts until the subject is told otherwise: End is that moment, but the
	// subject's next line begins at Start.
	Open bool
	// Slack is how much later all of it could happen before something that is
	// stated breaks: a `by`, the fixed start of the same subject's next move, a
	// beat's stated length, the end of the record. Below zero: something is
	// broken by that much already. +Inf: nothing waits for it.
	Slack units.Seconds
	// Free is how much later a line could happen before anything else does: the
	// start or end of another line, the start of a beat, the end of the take. It
	// is never more than Slack, and 0 for beats, as their lines go with them.
	Free  units.Seconds
	Cause Cause
	// Placed is false where the plan does not say when: the line is in a loop,
	// or waits for something that never happens. Start and End are then where it
	// would be if it had no cue, good for a drawing and for nothing else.
	Placed bool
}

// Length is how long it lasts.
func (i Interval) Length() units.Seconds { return i.End - i.Start }

// Slackless reports whether nothing waits for it, so that its slack is no number.
func (i Interval) Slackless() bool { return math.IsInf(float64(i.Slack), 1) }

// CauseKind is the kind of thing a start waits for.
type CauseKind int

const (
	TakeBegins CauseKind = iota
	BeatBegins           // Beat, Offset after it
	BeatOver             // Beat: the one before has ended
	AfterLine            // Action, of the same subject, has ended
	WithLine             // Action begins at the same moment
	OnEvent              // Event, Offset from it; Action is the line that brings it about, if one does
	OnTheClock           // Offset since the take began
)

// Cause is what a start waited for: of several, the last to come.
type Cause struct {
	Kind   CauseKind
	Action *plan.Action
	Beat   *plan.Beat
	Event  *plan.Event
	Offset units.Seconds
	Text   string // as written, where it was written
}

// LateKind is which statement about time does not hold.
type LateKind int

const (
	LateBy     LateKind = iota // `by`: it ends after the time stated
	LateUntil                  // `until`: it begins, or with `in` ends, after the time stated
	LateBefore                 // it is told to begin before the take does
)

// Late is a stated time that does not hold. Measured is always above Limit.
type Late struct {
	Kind     LateKind
	Action   *plan.Action // nil where a beat is told to begin before the take
	Beat     *plan.Beat
	Moment   *plan.Moment
	Measured units.Seconds
	Limit    units.Seconds
}

// By is how much is missing.
func (l Late) By() units.Seconds { return l.Measured - l.Limit }

// Overlap is one subject, or one camera with its rig and operator, told to do
// two things at once that use the same part of it.
type Overlap struct {
	First, Second *plan.Action // in order of time
	Faculty       Faculty
	FirstEnds     units.Seconds // the end of Second where First holds until told otherwise
	SecondStarts  units.Seconds
}

// By is how long both go on.
func (o Overlap) By() units.Seconds { return o.FirstEnds - o.SecondStarts }

// Overrun is a beat whose lines take longer than its stated length.
type Overrun struct {
	Beat     *plan.Beat
	Last     *plan.Action  // the line that ends last
	Measured units.Seconds // from the beat's start to the end of Last
	Limit    units.Seconds // the stated length
}

// By is how much too long it is.
func (o Overrun) By() units.Seconds { return o.Measured - o.Limit }

// RollOut is a camera that rolls for longer than the record lasts.
type RollOut struct {
	Camera   *plan.Camera
	From, To units.Seconds
	Limit    units.Seconds
}

// By is how much is missing.
func (r RollOut) By() units.Seconds { return r.To - r.From - r.Limit }

// Step is one stop on the way around a loop: a line, or a beat where Action is
// nil. It waits for the next step, the last one for the first.
type Step struct {
	Action *plan.Action
	Beat   *plan.Beat
	Waits  string // what it waits for, in words: "when otto reaches M4"
}

// String says a step: "mina walks to M1 when otto reaches M4".
func (s Step) String() string { return join(s.name(), s.Waits) }

func (s Step) name() string {
	switch {
	case s.Action != nil:
		return Describe(s.Action)
	case s.Beat != nil:
		return fmt.Sprintf("beat %q", s.Beat.Title)
	}
	return ""
}

// Loop is cues that wait for each other, as the way around.
type Loop struct{ Steps []Step }

// String says the way around: "mina walks to M1 when otto reaches M4; otto walks
// to M4 when mina reaches M1".
func (l Loop) String() string {
	parts := make([]string, len(l.Steps))
	for i, s := range l.Steps {
		parts[i] = s.String()
	}
	return strings.Join(parts, "; ")
}

// Unmatched is an event that nothing in the plan brings about.
type Unmatched struct {
	Event  *plan.Event
	Moment *plan.Moment // the phrase that names it
	Action *plan.Action // the line that waits for it; nil for a beat's header
	Beat   *plan.Beat   // the beat it is written in; nil in a pickup
	// Suggest is what the plan has instead, nearest first: places the subject
	// does reach or leave, its lines, the names of cues.
	Suggest []string
}

// late is how much a time must pass its limit to count: a microsecond, far
// below a frame and far above what rounding does.
const late = 1e-6

// Solve is every time of the take.
func Solve(p *plan.Plan, l Lengths) *Clock { return Prepare(p).Solve(l, nil) }

// SolvePickup is every time of a pickup, on a clock of its own from 0.
func SolvePickup(p *plan.Plan, pickup *plan.Pickup, l Lengths) *Clock {
	return PreparePickup(p, pickup).Solve(l, nil)
}

// Of is the interval of an action of this take or pickup; the zero Interval for
// any other.
func (c *Clock) Of(a *plan.Action) Interval {
	if i, ok := c.g.index[a]; ok {
		return c.Actions[i]
	}
	return Interval{}
}

// At is when an event happens, as a line (nil: anybody) that waits for it
// understands it; false if nothing brings it about.
func (c *Clock) At(e *plan.Event, from *plan.Action) (units.Seconds, bool) {
	if e == nil {
		return 0, false
	}
	h, ok := c.g.find(e, c.g.contextOf(from))
	if !ok {
		return 0, false
	}
	return units.Seconds(c.g.timeOf(h, c.t, c.lengths)), true
}

// Lines are the lines the clock is of, as Actions has their intervals. They are
// not to be changed.
func (c *Clock) Lines() []*plan.Action { return c.g.acts }

// Beat is the beat whose interval is Beats[i]; nil in a pickup.
func (c *Clock) Beat(i int) *plan.Beat { return c.g.scopes[i].beat }
