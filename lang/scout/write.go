package scout

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"longhand/lang/body"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Size is the framing, in a word, of the smallest of the targets.
func (p *Place) Size() string {
	if p.Tall <= 0 {
		return ""
	}
	return body.SizeOf(units.Metres(1/p.Tall), 1).String()
}

// WriteText writes what was found for people. Beat is what the frames are called.
func (r *Report) WriteText(w io.Writer, beat string, lens *plan.Lens) error {
	var b strings.Builder
	a := &r.Ask
	sys := a.Plan.Take.Units
	all := a.seconds(float64(a.Frames.To-a.Frames.From) + 1)
	fmt.Fprintf(&b, "%s, %s: where a lens of %s would see %s\n", a.Plan.Take.Title, beat, a.Focal, names(a.Sees))
	fmt.Fprintf(&b, "%d places looked at", r.Looked)
	if r.Stopped {
		b.WriteString("; broken off, what is not marked * is an estimate")
	}
	b.WriteString("\n")
	if len(r.Places) == 0 {
		b.WriteString("\nnowhere: try a shorter lens, another wall, or fewer to see\n")
	}
	for i := range r.Places {
		p := &r.Places[i]
		mark := ""
		if r.Stopped && p.Checked {
			mark = " *"
		}
		fmt.Fprintf(&b, "\n%2d  %s%s\n", i+1, p.In(sys), mark)
		fmt.Fprintf(&b, "    sees %s of them, at least half of each for %s of %s\n", per(p.Sees), p.For, all)
		fmt.Fprintf(&b, "    %s at the smallest, %s of the frame's height; %s to %s away\n", p.Size(), per(p.Tall), p.Nearest.Text(sys), p.Furthest.Text(sys))
		fmt.Fprintf(&b, "    %s\n", p.seen())
		if p.Wall != nil {
			fmt.Fprintf(&b, "    through a hole of %s\n", p.Hole)
		}
	}
	if len(r.Places) > 0 {
		b.WriteString("\nto paste for the first:\n")
		for _, l := range r.Paste(&r.Places[0], lens) {
			fmt.Fprintf(&b, "  %-5s %s\n", l.Section, l.Text)
		}
	}
	for i := range r.Places {
		if r.Places[i].Wall != nil {
			b.WriteString("\nbefore a wall is cut, whoever built it says where it may be\n")
			break
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// seen says what the other cameras have of a place.
func (p *Place) seen() string {
	var out []string
	if p.Seen > 0 {
		out = append(out, fmt.Sprintf("in view of another camera for %s, most of it %s's", p.Seen, p.By))
	}
	if p.Covered > 0 {
		out = append(out, fmt.Sprintf("in frame but covered for %s", p.Covered))
	}
	if len(out) == 0 {
		return "out of every other camera's view"
	}
	return strings.Join(out, "; ")
}

func names(list []plan.Thing) string {
	var out []string
	for _, t := range list {
		out = append(out, t.ID().Name)
	}
	if n := len(out); n > 1 {
		return strings.Join(out[:n-1], ", ") + " and " + out[n-1]
	}
	return strings.Join(out, "")
}

func per(v float64) string { return units.Number(100*v, 0) + " %" }

// WriteText writes what was found for people.
func (r *StandReport) WriteText(w io.Writer, beat string) error {
	var b strings.Builder
	a := &r.Ask
	sys := a.Plan.Take.Units
	all := units.Seconds((float64(a.Frames.To-a.Frames.From) + 1) / a.Stage.Scene.Rate.PerSecond())
	fmt.Fprintf(&b, "%s, %s: floor that no camera sees, up to %s, for a %s near %s\n", a.Plan.Take.Title, beat, r.High.Text(sys), a.For, a.Near.ID().Name)
	if r.Stopped {
		b.WriteString("broken off before it was through\n")
	} else if len(r.Places) == 0 {
		fmt.Fprintf(&b, "\nnone with room and within %s\n", r.Reach.Text(sys))
	}
	for i, p := range r.Places {
		fmt.Fprintf(&b, "\n%2d  %s\n", i+1, p.In(sys))
		fmt.Fprintf(&b, "    %s to %s from %s, within %s for %s of %s\n", p.Nearest.Text(sys), p.Furthest.Text(sys), a.Near.ID().Name, r.Reach.Text(sys), p.InReach, all)
		fmt.Fprintf(&b, "    not hidden from there for %s\n", p.Clear)
	}
	if a.For == Lamp {
		b.WriteString("\nstands, weights, heat and cables: by local codes, and the electrician in charge\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

type (
	jsonReport struct {
		Schema  int         `json:"schema"`
		Take    string      `json:"take"`
		Beat    string      `json:"beat"`
		For     string      `json:"for"`
		Sees    []string    `json:"sees"`
		Focal   float64     `json:"focal_mm,omitempty"`
		Seconds float64     `json:"seconds"`
		Looked  int         `json:"looked,omitempty"`
		Stopped bool        `json:"stopped"`
		Places  []jsonPlace `json:"places"`
	}
	jsonPlace struct {
		Text     string     `json:"text"`
		Wall     string     `json:"wall,omitempty"`
		Along    float64    `json:"along_m,omitempty"`
		Up       float64    `json:"up_m,omitempty"`
		At       [2]float64 `json:"at"`
		Sees     float64    `json:"sees"`
		For      float64    `json:"for_s"`
		Tall     float64    `json:"tall,omitempty"`
		Size     string     `json:"size,omitempty"`
		Nearest  float64    `json:"nearest_m"`
		Furthest float64    `json:"furthest_m"`
		Seen     float64    `json:"seen_s"`
		Covered  float64    `json:"covered_s"`
		By       string     `json:"by,omitempty"`
		Hole     float64    `json:"hole_mm,omitempty"`
		InReach  float64    `json:"in_reach_s,omitempty"`
		Score    float64    `json:"score"`
		Checked  bool       `json:"checked"`
		Paste    []jsonLine `json:"paste,omitempty"`
	}
	jsonLine struct {
		Section string `json:"section"`
		Text    string `json:"text"`
	}
)

// WriteJSON writes what was found for other programs: schema 1.
func (r *Report) WriteJSON(w io.Writer, beat string, lens *plan.Lens) error {
	a := &r.Ask
	out := jsonReport{Schema: 1, Take: a.Plan.Take.Title, Beat: beat, For: "camera", Focal: units.Thousandth(float64(a.Focal)), Looked: r.Looked, Stopped: r.Stopped,
		Seconds: units.Thousandth(float64(a.seconds(float64(a.Frames.To-a.Frames.From) + 1))), Places: []jsonPlace{}}
	for _, t := range a.Sees {
		out.Sees = append(out.Sees, t.ID().Name)
	}
	for i := range r.Places {
		p := &r.Places[i]
		j := jsonPlace{Text: p.In(a.Plan.Take.Units), Along: units.Thousandth(float64(p.Along)), Up: units.Thousandth(float64(p.Up)), At: [2]float64{units.Thousandth(p.At.X), units.Thousandth(p.At.Y)},
			Sees: units.Thousandth(p.Sees), For: units.Thousandth(float64(p.For)), Tall: units.Thousandth(p.Tall), Size: p.Size(), Nearest: units.Thousandth(float64(p.Nearest)), Furthest: units.Thousandth(float64(p.Furthest)),
			Seen: units.Thousandth(float64(p.Seen)), Covered: units.Thousandth(float64(p.Covered)), By: p.By, Hole: units.Thousandth(float64(p.Hole)), Score: units.Thousandth(p.Score), Checked: p.Checked}
		if p.Wall != nil {
			j.Wall = p.Wall.Name
		}
		for _, l := range r.Paste(p, lens) {
			j.Paste = append(j.Paste, jsonLine(l))
		}
		out.Places = append(out.Places, j)
	}
	return encode(w, out)
}

// WriteJSON writes what was found for other programs: schema 1.
func (r *StandReport) WriteJSON(w io.Writer, beat string) error {
	a := &r.Ask
	out := jsonReport{Schema: 1, Take: a.Plan.Take.Title, Beat: beat, For: string(a.For), Sees: []string{a.Near.ID().Name}, Stopped: r.Stopped,
		Seconds: units.Thousandth((float64(a.Frames.To-a.Frames.From) + 1) / a.Stage.Scene.Rate.PerSecond()), Places: []jsonPlace{}}
	for _, p := range r.Places {
		out.Places = append(out.Places, jsonPlace{Text: p.In(a.Plan.Take.Units), At: [2]float64{units.Thousandth(p.At.X), units.Thousandth(p.At.Y)},
			For: units.Thousandth(float64(p.Clear)), Sees: units.Thousandth(float64(p.Clear) / math.Max(out.Seconds, 1e-9)), Nearest: units.Thousandth(float64(p.Nearest)), Furthest: units.Thousandth(float64(p.Furthest)),
			InReach: units.Thousandth(float64(p.InReach)), Score: units.Thousandth(p.Score), Checked: !r.Stopped})
	}
	return encode(w, out)
}

func encode(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(v)
}
