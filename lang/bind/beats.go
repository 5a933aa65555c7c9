package bind

import (
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// beats binds the beats and pickups of the main file: their titles first, since
// lines may speak of later beats, then their headers and lines.
func (b *binder) beats(f *syntax.File) {
	var sections []*syntax.Section
	heads := map[*syntax.Section]*line{}
	for _, s := range f.Sections {
		if !inBeat(s) {
			continue
		}
		l := b.newLine(f.Source, s.Head, b.plan.Take.Units)
		l.open(s)
		sections, heads[s] = append(sections, s), l
		for _, ln := range s.Lines {
			if cue, ok := ln.Stmt.(*syntax.Cue); ok {
				b.nameCue(b.newLine(f.Source, ln, l.system), cue)
			}
		}
	}
	for _, s := range sections {
		l := heads[s]
		switch h := s.Head.Stmt.(type) {
		case *syntax.BeatHead:
			l.beatHead(h)
		case *syntax.PickupHead:
			l.pickupHead(h)
		}
		for _, ln := range s.Lines {
			if ln.Stmt == nil {
				continue
			}
			at := b.newLine(f.Source, ln, l.system)
			at.beat, at.pickup = l.beat, l.pickup
			at.act(ln.Stmt)
			if at.bad {
				b.drop(ln)
			}
		}
	}
}

// open makes the beat or pickup that a header begins.
func (l *line) open(s *syntax.Section) {
	if s.Word == "pickup" {
		l.pickup = &plan.Pickup{Index: len(l.plan.Pickups), Span: l.span}
		l.plan.Pickups = append(l.plan.Pickups, l.pickup)
		if h, ok := s.Head.Stmt.(*syntax.PickupHead); ok {
			l.pickup.Title = h.Title.Value()
			l.title(h.Title, l.pickup.Title)
		}
		return
	}
	l.beat = &plan.Beat{Index: len(l.plan.Beats), Span: l.span}
	l.plan.Beats = append(l.plan.Beats, l.beat)
	if h, ok := s.Head.Stmt.(*syntax.BeatHead); ok {
		l.beat.Title = h.Title.Value()
		l.title(h.Title, l.beat.Title)
	}
}

// title takes a beat's or pickup's title, which no other may have.
func (l *line) title(at *syntax.String, title string) {
	key := "title " + title
	if first, again := l.said[key]; again {
		l.errorf(CodeNameTwice, l.at(at), "two beats or pickups are called %s", quote(title)).Relate(first, "the first")
		return
	}
	l.said[key] = l.at(at)
}

func (l *line) beatHead(h *syntax.BeatHead) {
	bt := l.beat
	bt.Start = l.time(h.Start)
	if h.When != nil {
		bt.Start = l.trigger(h.When)
	}
	if h.For != nil {
		if v, ok := l.seconds(h.For, "for", day); ok {
			bt.For, bt.ForSpan = v, l.at(h.For)
		}
	}
}

func (l *line) pickupHead(h *syntax.PickupHead) {
	p := l.pickup
	p.Into = h.How == "into"
	p.Beat = l.beatCalled(h.Beat)
	if w := l.rollWindow(h.Window); w != nil {
		p.Roll = w
		l.tellable(w)
	}
}

// beatCalled is the beat of a title; nil if there is none, which is reported.
func (l *line) beatCalled(title *syntax.String) *plan.Beat {
	text := title.Value()
	var titles []string
	for _, bt := range l.plan.Beats {
		if bt.Title == text && bt.Title != "" {
			return bt
		}
		titles = append(titles, syntax.Quote(bt.Title))
	}
	l.bad = true
	if l.untitled {
		return nil
	}
	for _, p := range l.plan.Pickups {
		if p.Title == text {
			l.errorf(CodeWrongKind, l.at(title), "%s is a pickup; only beats fit here", quote(text)).Relate(p.Span, "the pickup")
			return nil
		}
	}
	d := l.errorf(CodeUnknownName, l.at(title), "no beat is called %s", quote(text))
	if !suggest(d, l.at(title), title.Raw, titles) && len(titles) > 0 && len(titles) <= listed {
		d.Note("the beats are %s", and(titles))
	}
	return nil
}

func (l *line) during(list []*syntax.String) []*plan.Beat {
	var out []*plan.Beat
	for _, title := range list {
		bt := l.beatCalled(title)
		for _, other := range out {
			if other == bt && bt != nil {
				l.errorf(CodeSaidTwice, l.at(title), "the beat %s is named a second time", quote(bt.Title))
			}
		}
		if bt != nil {
			out = append(out, bt)
		}
	}
	return out
}

func quote(title string) string { return syntax.Quote(title) }

// action is what a line of a beat comes to, for add.
type action struct {
	subject plan.Thing
	verb    string
	deed    plan.Deed
	timed   *syntax.Timed
	allowed phrases
}

// add puts a line in its beat or pickup, unless it has a mistake.
func (l *line) add(a action) {
	act := &plan.Action{Beat: l.beat, Pickup: l.pickup, Subject: a.subject, Verb: a.verb, Deed: a.deed, Span: l.span}
	act.Timing = l.timing(a.timed, act, a.allowed)
	act.With = a.timed.Timing.With != nil
	if l.bad {
		return
	}
	if l.pickup != nil {
		act.Index = len(l.pickup.Actions)
		l.pickup.Actions = append(l.pickup.Actions, act)
		return
	}
	act.Index = len(l.plan.Actions)
	l.plan.Actions = append(l.plan.Actions, act)
	l.beat.Actions = append(l.beat.Actions, act)
}

// lines are the actions so far of the beat or pickup a line stands in.
func (l *line) lines() []*plan.Action {
	if l.pickup != nil {
		return l.pickup.Actions
	}
	return l.beat.Actions
}

func (l *line) act(s syntax.Stmt) {
	switch s := s.(type) {
	case *syntax.Move:
		l.move(s)
	case *syntax.Stand:
		l.standing(s)
	case *syntax.Turn:
		l.turn(s)
	case *syntax.Spin:
		l.spin(s)
	case *syntax.Ride:
		l.ride(s)
	case *syntax.Leave:
		l.leave(s)
	case *syntax.Board:
		l.board(s)
	case *syntax.Spot:
		l.spotting(s)
	case *syntax.Pose:
		l.pose(s)
	case *syntax.Operate:
		l.operate(s)
	case *syntax.DoorMoves:
		l.doorMoves(s)
	case *syntax.Say:
		l.say(s)
	case *syntax.Mount:
		l.mount(s)
	case *syntax.TakeLens:
		l.takeLens(s)
	case *syntax.See:
		l.see(s)
	case *syntax.Lead:
		l.keep(s)
	case *syntax.Beside:
		l.beside(s)
	case *syntax.Circle:
		l.circle(s)
	case *syntax.Counter:
		l.counter(s)
	case *syntax.Push:
		l.push(s)
	case *syntax.Pan:
		l.swing(s)
	case *syntax.Rack:
		l.rack(s)
	case *syntax.Hide:
		l.hide(s)
	case *syntax.RollCamera:
		l.rollCamera(s)
	case *syntax.Handoff:
		l.handoff(s)
	case *syntax.Cut:
		l.cut(s)
	case *syntax.Cue:
		l.cue(s)
	case *syntax.DeptNote:
		l.note(s)
	case *syntax.PaintOut:
		l.paintOut(s)
	case *syntax.Allow:
		l.allow(s)
	}
}
