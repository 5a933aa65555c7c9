package check

import (
	"fmt"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
)

// offerPaintOut offers to send a finding to visual effects: a line at the end of
// the beat it happens in, with what there is to say about it as its reason.
func (p *Pass) offerPaintOut(d *diag.Diagnostic, thing plan.Thing, camera *plan.Camera, seen, behind string) {
	beats := p.beatsOf(d.Frames)
	if len(beats) == 0 {
		return
	}
	at, ok := p.endOf(beats[0])
	if !ok {
		return
	}
	because := seen
	if behind != "" {
		because += "; behind it " + behind
	}
	during := make([]string, len(beats))
	for i, b := range beats {
		during[i] = quote(b.Title)
	}
	line := fmt.Sprintf("paint out %s from %s during %s because %s", thing.ID().Name, camera.Name, strings.Join(during, ", "), quote(because))
	d.Fix("send it to visual effects", diag.Edit{Span: at, Text: "\n" + indentAt(at) + line})
	d.Fixes[len(d.Fixes)-1].Decision = true
}

// beatsOf is the beats in which some of the frames lie, in order of time.
func (p *Pass) beatsOf(runs []diag.Frames) []*plan.Beat {
	var out []*plan.Beat
	for _, s := range p.Clock.Spans() {
		if s.Beat != nil && len(meet(p.beatFrames(s.Beat), runs)) > 0 {
			out = append(out, s.Beat)
		}
	}
	return out
}

// beatFrames is the frames of a beat: from its start to the start of the next in
// time; the last one's to the take's end.
func (p *Pass) beatFrames(b *plan.Beat) []diag.Frames {
	if p.Tracks == nil {
		return nil
	}
	spans := p.Clock.Spans()
	for i, s := range spans {
		if s.Beat != b {
			continue
		}
		f := diag.Frames{From: p.Tracks.Rate.From(s.From), To: p.Tracks.Rate.From(s.To) - 1}
		if i == 0 {
			f.From = 0
		}
		if i == len(spans)-1 {
			f.To = max(f.To, p.Tracks.Rate.At(p.Clock.Length))
		}
		if f.From <= f.To {
			return []diag.Frames{f}
		}
	}
	return nil
}

// endOf is the place after the last line of a beat.
func (p *Pass) endOf(b *plan.Beat) (source.Span, bool) {
	at := b.Span
	for _, a := range b.Actions {
		if a.Span.File == at.File && a.Span.End > at.End {
			at = a.Span
		}
	}
	if !at.Valid() {
		return at, false
	}
	// A comment after the line stays with it.
	end := at.End
	if i := strings.IndexByte(at.File.Text[end:], '\n'); i >= 0 {
		end += i
	} else {
		end = len(at.File.Text)
	}
	if end > 0 && at.File.Text[end-1] == '\r' {
		end--
	}
	return source.Span{File: at.File, Start: end, End: end}, true
}

// indentAt is the indent of the line a place is in; two blanks where it has none.
func indentAt(at source.Span) string {
	line := at.File.Line(at.StartPos().Line)
	n := len(line) - len(strings.TrimLeft(line, " \t"))
	if n == 0 {
		return "  "
	}
	return line[:n]
}

// quote writes a text as the language does.
func quote(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + `"`
}
