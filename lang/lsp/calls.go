package lsp

import (
	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/source"
)

// Who waits for whom is shown as calls: what brings a line about calls it.

// node is a line, or a beat where action is nil.
type node struct {
	action *plan.Action
	beat   *plan.Beat
}

// CallItems is the line or beat at a place, or the one that declares the cue or
// beat named there.
func (s *Snapshot) CallItems(offset int) []CallItem {
	out := []CallItem{}
	if m := s.mention(offset); m != nil && m.space != ofThings {
		if d := s.names().decls[key{m.space, m.name}]; d != nil && d.at.File == s.File.Source {
			offset = d.at.Start
		}
	}
	if n, ok := s.nodeAt(offset); ok {
		if item, ok := s.callItem(n); ok {
			out = append(out, item)
		}
	}
	return out
}

// nodeAt is the line or beat at a place, as it was last worked out.
func (s *Snapshot) nodeAt(offset int) (node, bool) {
	if p, ok := s.playedAt(offset); ok && p.action.Pickup == nil {
		return node{action: p.action}, true
	}
	if s.Whole == nil {
		return node{}, false
	}
	for _, b := range s.Whole.Plan.Beats {
		if at, ok := s.shifts.forward(b.Span); ok && at.File == s.File.Source && at.Start <= offset && offset <= at.End {
			return node{beat: b}, true
		}
	}
	return node{}, false
}

func (s *Snapshot) callItem(n node) (CallItem, bool) {
	span, name, kind, detail := source.Span{}, "", symbolMethod, ""
	c := s.Whole.Tracks.Clock
	if n.action != nil {
		span, name = n.action.Span, clock.Describe(n.action)
		detail = c.Of(n.action).Start.Clock() + ", " + c.Words(n.action)
	} else {
		span, name, kind = n.beat.Span, "beat "+n.beat.Title, symbolEvent
		detail = c.Beats[n.beat.Index].Start.Clock() + ", " + c.BeatWords(n.beat)
	}
	at, ok := s.shifts.forward(span)
	if !ok {
		return CallItem{}, false
	}
	where := s.location(at)
	return CallItem{Name: name, Kind: kind, Detail: detail, URI: where.URI, Range: where.Range, SelectionRange: where.Range}, true
}

// causeOf is what a line or beat waited for; false for the take's own start.
func (s *Snapshot) causeOf(n node) (node, bool) {
	c := s.Whole.Tracks.Clock
	var cause clock.Cause
	if n.action != nil {
		cause = c.Of(n.action).Cause
	} else {
		cause = c.Beats[n.beat.Index].Cause
	}
	switch {
	case cause.Action != nil:
		return node{action: cause.Action}, true
	case cause.Beat != nil:
		return node{beat: cause.Beat}, true
	case cause.Event != nil && cause.Event.Beat != nil:
		return node{beat: cause.Event.Beat}, true
	}
	return node{}, false
}

// WaitsFor is what the line or beat at a place waits for.
func (s *Snapshot) WaitsFor(offset int) []IncomingCall {
	out := []IncomingCall{}
	n, ok := s.nodeAt(offset)
	if !ok {
		return out
	}
	if cause, ok := s.causeOf(n); ok {
		if item, ok := s.callItem(cause); ok {
			out = append(out, IncomingCall{item, []Range{item.SelectionRange}})
		}
	}
	return out
}

// Waiting is every line and beat that waits for the line or beat at a place.
func (s *Snapshot) Waiting(offset int) []OutgoingCall {
	out := []OutgoingCall{}
	n, ok := s.nodeAt(offset)
	if !ok {
		return out
	}
	from, ok := s.callItem(n)
	if !ok {
		return out
	}
	var all []node
	for _, b := range s.Whole.Plan.Beats {
		all = append(all, node{beat: b})
	}
	for _, a := range s.Whole.Plan.Actions {
		all = append(all, node{action: a})
	}
	for _, other := range all {
		if cause, ok := s.causeOf(other); !ok || cause != n {
			continue
		}
		if item, ok := s.callItem(other); ok {
			out = append(out, OutgoingCall{item, []Range{from.SelectionRange}})
		}
	}
	return out
}
