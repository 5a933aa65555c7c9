package lsp

import (
	"fmt"
	"slices"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// Hover is what there is to say of the word at a place, and of what was found
// there; nil if that is nothing.
func (s *Snapshot) Hover(offset int) *Hover {
	t, line := s.token(offset), s.lineAt(offset)
	if t == nil || t.Type == syntax.TokComment {
		return nil
	}
	parts := s.about(offset, t, line)
	for _, d := range s.found(offset, offset) {
		if text := aboutFinding(d.Code); text != "" && !slices.Contains(parts, text) {
			parts = append(parts, text)
		}
	}
	if len(parts) == 0 {
		return nil
	}
	at := s.Encoding.span(s.tokenSpan(t))
	return &Hover{*markdown(strings.Join(parts, "\n\n---\n\n")), &at}
}

// about is what there is to say of a word.
func (s *Snapshot) about(offset int, t *syntax.Token, line *syntax.Line) []string {
	if m := s.mention(offset); m != nil {
		return notEmpty(s.aboutMention(m, line))
	}
	if u, name := s.useAt(offset); u != nil && t.Type == syntax.TokString {
		return notEmpty("takes set, kit and people from `" + name + "`")
	}
	switch t.Type {
	case syntax.TokQuantity, syntax.TokClock:
		return notEmpty(s.aboutQuantity(t.Value))
	case syntax.TokName, syntax.TokStopName, syntax.TokKeyword:
		return notEmpty(s.aboutWord(t, line))
	case syntax.TokString:
		if p, ok := s.playedAt(offset); ok {
			return notEmpty(s.aboutLine(p))
		}
	}
	return nil
}

func notEmpty(parts ...string) []string {
	return slices.DeleteFunc(parts, func(p string) bool { return p == "" })
}

// aboutWord is about a word of the language.
func (s *Snapshot) aboutWord(t *syntax.Token, line *syntax.Line) string {
	kind := line.Kind
	switch {
	case kind == nil:
		return ""
	case kind.Words[0] == "allow" && t.Pos.Offset == nth(line, 1):
		return aboutFinding(diag.Code(t.Value))
	case slices.Contains(syntax.Sizes, t.Value) && t.Pos.Offset != nth(line, 0):
		return aboutSize(t.Value)
	case slices.Contains(syntax.Classes, t.Value):
		if text := defaultsOf("rig "+t.Value, s.system()); text != "" {
			return text
		}
	}
	text := code(kind.Usage) + "\n" + aboutStatement(kind)
	if kind.Head || t.Pos.Offset == nth(line, 0) || kind.Verb && t.Pos.Offset == nth(line, 1) {
		if codes := foundAt(kind); codes != "" {
			text += "\n\n" + codes
		}
		if when := s.aboutWhen(line); when != "" {
			return when + "\n\n" + text
		}
	}
	return text
}

// nth is where the nth word of a line begins; -1 if it has fewer.
func nth(line *syntax.Line, n int) int {
	if words := line.Words(); n < len(words) {
		return words[n].Pos.Offset
	}
	return -1
}

// aboutWhen is when a line, or the beat that it begins, happens.
func (s *Snapshot) aboutWhen(line *syntax.Line) string {
	at := line.Span(s.File.Source)
	if !at.Valid() {
		return ""
	}
	if line.Section != nil && line.Section.Head == line {
		return s.aboutBeat(at)
	}
	if p, ok := s.playedAt(at.Start); ok {
		return s.aboutLine(p)
	}
	return ""
}

// aboutLine is when a line happens, how fast, and how much later it could.
func (s *Snapshot) aboutLine(p played) string {
	c := p.tracks.Clock
	i := c.Of(p.action)
	if !i.Placed {
		return "it is not known when this happens: what it waits for never comes"
	}
	var b strings.Builder
	fmt.Fprintf(&b, "**%s**", i.Start.Clock())
	if !i.Open && i.Length() > 0 {
		fmt.Fprintf(&b, " to %s, %s", i.End.Clock(), i.Length())
	}
	if w := c.Words(p.action); w != "" {
		b.WriteString(", " + w)
	}
	if w := wayOf(p, s.system()); w != "" {
		b.WriteString("\n\n" + w)
	}
	if !i.Slackless() {
		b.WriteString("\n\n" + slackWords(i.Slack))
	}
	return b.String()
}

func slackWords(slack units.Seconds) string {
	switch {
	case slack < 0:
		return "late by " + (-slack).String()
	case slack < 0.05:
		return "no slack: later, and something that is stated breaks"
	}
	return "could happen " + slack.String() + " later before something that is stated breaks"
}

// aboutBeat is a beat's clock and length.
func (s *Snapshot) aboutBeat(head source.Span) string {
	if s.Whole == nil {
		return ""
	}
	for _, b := range s.Whole.Plan.Beats {
		at, ok := s.shifts.forward(b.Span)
		if !ok || at.File != head.File || at.Start != head.Start {
			continue
		}
		c := s.Whole.Tracks.Clock
		i := c.Beats[b.Index]
		text := fmt.Sprintf("**%s** to %s, %s, %s", i.Start.Clock(), i.End.Clock(), i.Length(), c.BeatWords(b))
		if !i.Slackless() {
			text += "\n\n" + slackWords(i.Slack)
		}
		return text
	}
	for _, shot := range s.Whole.Pickups {
		at, ok := s.shifts.forward(shot.Pickup.Span)
		if ok && shot.Tracks != nil && at.File == head.File && at.Start == head.Start {
			return fmt.Sprintf("a pickup of %s, on a clock of its own", shot.Tracks.Length())
		}
	}
	return ""
}

// aboutQuantity is an amount in other units.
func (s *Snapshot) aboutQuantity(text string) string {
	v, u, err := units.Split(text)
	if err != nil {
		if at, err := units.ParseClock(text); err == nil {
			return "`" + text + "` = " + at.String()
		}
		return ""
	}
	v *= u.Factor
	say := func(list ...string) string { return "`" + text + "` = " + strings.Join(list, " = ") }
	switch u.Dimension {
	case units.Length:
		m := units.Metres(v)
		return say(m.Text(units.Metric), m.Text(units.Feet))
	case units.Speed:
		p := units.MetresPerSecond(v)
		return say(p.Text(units.Metric), units.Number(v*3.6, 1)+" km/h", p.Text(units.Feet))
	case units.Mass:
		return say(units.Kilograms(v).String(), units.Number(v/float64(units.Pound), 1)+" lb")
	case units.Duration:
		return s.aboutDuration(text)
	}
	return ""
}

func (s *Snapshot) aboutDuration(text string) string {
	d, err := units.ParseTimeSpan(text)
	if err != nil {
		return ""
	}
	rate := s.Plan.Take.Rate
	switch {
	case d.Frames > 0 && rate.Num > 0:
		return fmt.Sprintf("`%s` = %s s at %s fps", text, units.Number(d.Frames/rate.PerSecond(), 2), rate)
	case d.Seconds > 0 && rate.Num > 0:
		return fmt.Sprintf("`%s` = %s frames at %s fps", text, units.Number(float64(d.Seconds)*rate.PerSecond(), 1), rate)
	case s.Plan.Take.Tempo != nil && s.Plan.Take.Tempo.BPM > 0:
		counts := d.Counts + d.Bars*float64(s.Plan.Take.Tempo.In)
		return fmt.Sprintf("`%s` = %s s at %s bpm", text, units.Number(counts*60/s.Plan.Take.Tempo.BPM, 2), units.Number(s.Plan.Take.Tempo.BPM, 2))
	}
	return ""
}

// system is how the plan writes lengths.
func (s *Snapshot) system() units.System {
	if s.Plan == nil {
		return units.Metric
	}
	return s.Plan.Take.Units
}

// found are the findings whose place touches a range of the document, or that
// are about all of the plan and shown at its beginning.
func (s *Snapshot) found(start, end int) []diag.Diagnostic {
	var out []diag.Diagnostic
	main := s.Files[0].Source
	for _, d := range s.Findings {
		if !d.Span.Valid() {
			d.Span = source.Span{File: main}
		}
		if d.Span.File.Name == s.File.Source.Name && d.Span.Start <= end && start <= d.Span.End {
			out = append(out, d)
		}
	}
	return out
}
