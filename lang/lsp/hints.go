package lsp

import (
	"strings"

	"longhand/lang/source"
	"longhand/lang/units"
)

// Hints is what is written between the lines of a range: when each beat starts
// and how long it is, how long each move takes and how fast it goes, and how
// much later it could happen.
func (s *Snapshot) Hints(start, end int) []InlayHint {
	out := []InlayHint{}
	if s.Whole == nil {
		return out
	}
	add := func(at source.Span, label, about string) {
		if at.End < start || at.Start > end || label == "" {
			return
		}
		h := InlayHint{Position: s.Encoding.position(at.File, at.End), Label: label, PaddingLeft: true}
		if about != "" {
			h.Tooltip = markdown(about)
		}
		out = append(out, h)
	}
	c := s.Whole.Tracks.Clock
	for _, b := range s.Whole.Plan.Beats {
		if at, ok := s.shifts.forward(b.Span); ok && at.File == s.File.Source && b.Index < len(c.Beats) {
			i := c.Beats[b.Index]
			add(at, i.Start.Clock()+" · "+i.Length().String(), s.aboutBeat(at))
		}
	}
	for _, shot := range s.Whole.Pickups {
		if at, ok := s.shifts.forward(shot.Pickup.Span); ok && at.File == s.File.Source && shot.Tracks != nil {
			add(at, shot.Tracks.Length().String(), s.aboutBeat(at))
		}
	}
	for _, p := range s.played() {
		add(p.at, hintOf(p, s.system()), s.aboutLine(p))
	}
	return out
}

// muchSlack is more than anybody on the floor would need to know of.
const muchSlack units.Seconds = 60

// hintOf is a line's length, pace and slack; "" for one that takes no time.
func hintOf(p played, system units.System) string {
	i := p.tracks.Clock.Of(p.action)
	if !i.Placed || i.Open || i.Length() <= 0 {
		return ""
	}
	parts := []string{i.Length().String()}
	if long, took, ok := moved(p); ok {
		parts = append(parts, units.MetresPerSecond(float64(long)/float64(took)).Text(system))
	}
	switch {
	case i.Slackless() || i.Slack >= muchSlack:
	case i.Slack < 0:
		parts = append(parts, (-i.Slack).String()+" late")
	default:
		parts = append(parts, "slack "+i.Slack.String())
	}
	return strings.Join(parts, " · ")
}
