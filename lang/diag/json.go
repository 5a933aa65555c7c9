package diag

import (
	"encoding/json"
	"io"

	"longhand/lang/source"
)

// JSONSchema is the version of the form that WriteJSON writes. It goes up when
// a field is taken away or changes its meaning, not when one is added.
const JSONSchema = 1

type jsonReport struct {
	Schema   int           `json:"schema"`
	Findings []jsonFinding `json:"findings"`
}

type jsonFinding struct {
	Code     Code          `json:"code"`
	Severity string        `json:"severity"`
	Message  string        `json:"message"`
	File     string        `json:"file"`
	Start    jsonPos       `json:"start"`
	End      jsonPos       `json:"end"`
	Frames   [][2]int      `json:"frames"`
	Subject  string        `json:"subject,omitempty"`
	Camera   string        `json:"camera,omitempty"`
	Beat     string        `json:"beat,omitempty"`
	Pickup   string        `json:"pickup,omitempty"`
	Share    float64       `json:"share,omitempty"`
	Related  []jsonRelated `json:"related"`
	Notes    []string      `json:"notes"`
	Fixes    []jsonFix     `json:"fixes"`
}

type jsonPos struct {
	Line   int `json:"line"`
	Column int `json:"column"`
	Offset int `json:"offset"`
}

type jsonRelated struct {
	File    string  `json:"file"`
	Start   jsonPos `json:"start"`
	End     jsonPos `json:"end"`
	Message string  `json:"message"`
}

type jsonFix struct {
	Title string     `json:"title"`
	Edits []jsonEdit `json:"edits"`
}

type jsonEdit struct {
	File  string  `json:"file"`
	Start jsonPos `json:"start"`
	End   jsonPos `json:"end"`
	Text  string  `json:"text"`
}

// WriteJSON prints all findings as one JSON document. Lines and columns count
// from 1, in characters; offsets count bytes from 0; frames are runs with both
// ends included, on the clock of the take or, where one is named, of the pickup;
// share is in per cent of the frame.
func WriteJSON(w io.Writer, list []Diagnostic) error {
	out := jsonReport{Schema: JSONSchema, Findings: []jsonFinding{}}
	for i := range list {
		d := &list[i]
		f := jsonFinding{
			Code: d.Code, Severity: d.Severity.String(), Message: d.Message,
			Subject: d.Subject, Camera: d.Camera, Beat: d.Beat, Pickup: d.Pickup, Share: round3(float64(d.Share)),
			Frames: [][2]int{}, Related: []jsonRelated{}, Notes: append([]string{}, d.Notes...), Fixes: []jsonFix{},
		}
		f.File, f.Start, f.End = jsonSpan(d.Span)
		for _, r := range d.Frames {
			f.Frames = append(f.Frames, [2]int{int(r.From), int(r.To)})
		}
		for _, r := range d.Related {
			rel := jsonRelated{Message: r.Message}
			rel.File, rel.Start, rel.End = jsonSpan(r.Span)
			f.Related = append(f.Related, rel)
		}
		for _, x := range d.Fixes {
			fix := jsonFix{Title: x.Title, Edits: []jsonEdit{}}
			for _, e := range x.Edits {
				edit := jsonEdit{Text: e.Text}
				edit.File, edit.Start, edit.End = jsonSpan(e.Span)
				fix.Edits = append(fix.Edits, edit)
			}
			f.Fixes = append(f.Fixes, fix)
		}
		out.Findings = append(out.Findings, f)
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(out)
}

func jsonSpan(s source.Span) (file string, start, end jsonPos) {
	if !s.Valid() {
		return "", jsonPos{}, jsonPos{}
	}
	a, b := s.StartPos(), s.EndPos()
	return s.File.Name, jsonPos{a.Line, a.Column, s.Start}, jsonPos{b.Line, b.Column, s.End}
}

func round3(v float64) float64 { return float64(int64(v*1000+0.5)) / 1000 }
