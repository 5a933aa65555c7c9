// Package diag holds findings: what is wrong with a plan, where, by how much,
// and what would fix it.
package diag

import (
	"fmt"
	"sort"

	"longhand/lang/source"
	"longhand/lang/units"
)

// Code names a kind of finding for good: codes are never reused.
type Code string

// Severity orders findings. Errors make a check fail.
type Severity int

const (
	Note Severity = iota
	Warning
	Error
)

func (s Severity) String() string { return [...]string{"note", "warning", "error"}[s] }

// Diagnostic is one finding.
type Diagnostic struct {
	Code     Code
	Severity Severity
	Span     source.Span // the statement, or the part of it, to change
	Message  string      // one line, lower case, no full stop, with the numbers
	Related  []Related   // the statements it came from
	Notes    []string    // advice, formulas, defaults used
	Fixes    []Fix
	Frames   []Frames      // when it happens, in order; none for a finding about text
	Subject  string        // the thing found out: "cart"; "" where there is none
	Camera   string        // the camera that sees it; "" where there is none
	Beat     string        // title of the beat it belongs to; "" where there is none
	Pickup   string        // title of the pickup whose clock Frames are on; "" for the take's
	Share    units.Percent // of the frame, at the worst frame; 0 where it does not apply
	Box      [4]float64    // left, bottom, right, top in frame fractions at the worst frame
	Worst    units.Frame
}

// Frames is a run of frames, both ends included.
type Frames struct{ From, To units.Frame }

// Related points at another statement that had a part in it.
type Related struct {
	Span    source.Span
	Message string
}

// Fix is a change of the text that makes the finding go away.
type Fix struct {
	Title string // a verb phrase: "start 1.4 s sooner"
	Edits []Edit
	// Decision marks a fix that somebody has to answer for, such as sending a
	// thing to visual effects: it is offered, and never applied unasked.
	Decision bool
}

// Edit replaces the text of a span.
type Edit struct {
	Span source.Span
	Text string
}

// Bag collects findings. The zero Bag is empty and ready.
type Bag struct{ list []Diagnostic }

// Add puts a finding in the bag and returns it for more to be said about it;
// the pointer is good until the next Add.
func (b *Bag) Add(d Diagnostic) *Diagnostic {
	b.list = append(b.list, d)
	return &b.list[len(b.list)-1]
}

// Errorf adds an error with a formatted message.
func (b *Bag) Errorf(code Code, span source.Span, format string, args ...any) *Diagnostic {
	return b.Add(Diagnostic{Code: code, Severity: Error, Span: span, Message: fmt.Sprintf(format, args...)})
}

// Merge adds all of another bag.
func (b *Bag) Merge(other Bag) { b.list = append(b.list, other.list...) }

// Relate adds a related place.
func (d *Diagnostic) Relate(span source.Span, format string, args ...any) *Diagnostic {
	d.Related = append(d.Related, Related{span, fmt.Sprintf(format, args...)})
	return d
}

// Note adds a line of advice.
func (d *Diagnostic) Note(format string, args ...any) *Diagnostic {
	d.Notes = append(d.Notes, fmt.Sprintf(format, args...))
	return d
}

// Fix offers a change of the text.
func (d *Diagnostic) Fix(title string, edits ...Edit) *Diagnostic {
	d.Fixes = append(d.Fixes, Fix{Title: title, Edits: edits})
	return d
}

// Sorted is the findings by file, place, code and message, without repeats.
func (b *Bag) Sorted() []Diagnostic {
	out := append([]Diagnostic(nil), b.list...)
	sort.SliceStable(out, func(i, j int) bool { return less(&out[i], &out[j]) })
	kept := out[:0]
	for i := range out {
		if n := len(kept); n > 0 && same(&kept[n-1], &out[i]) {
			continue
		}
		kept = append(kept, out[i])
	}
	return kept
}

// List is the findings in the order in which they were added.
func (b *Bag) List() []Diagnostic { return append([]Diagnostic(nil), b.list...) }

// Len is the number of findings collected so far.
func (b *Bag) Len() int { return len(b.list) }

// Errors counts the findings that make a check fail.
func (b *Bag) Errors() int {
	n := 0
	for i := range b.list {
		if b.list[i].Severity == Error {
			n++
		}
	}
	return n
}

func less(a, b *Diagnostic) bool {
	an, bn := fileName(a.Span), fileName(b.Span)
	switch {
	case an != bn:
		return an < bn
	case a.Span.Start != b.Span.Start:
		return a.Span.Start < b.Span.Start
	case a.Code != b.Code:
		return a.Code < b.Code
	case a.Message != b.Message:
		return a.Message < b.Message
	}
	return len(a.Frames) > 0 && len(b.Frames) > 0 && a.Frames[0].From < b.Frames[0].From
}

func same(a, b *Diagnostic) bool {
	return a.Code == b.Code && a.Span == b.Span && a.Message == b.Message
}

func fileName(s source.Span) string {
	if s.File == nil {
		return ""
	}
	return s.File.Name
}
