package clock

import (
	"fmt"
	"math"
	"strings"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// Words is the cue of a line as one would call it on the floor: "when otto
// reaches M4, +1 s", "after mina walks to M2", "as the beat begins".
func (c *Clock) Words(a *plan.Action) string {
	i, ok := c.g.index[a]
	if !ok {
		return ""
	}
	return c.cueOf(i)
}

// BeatWords is what a beat waits for, in words.
func (c *Clock) BeatWords(b *plan.Beat) string {
	if b == nil || b.Index < 0 || b.Index >= len(c.Beats) {
		return ""
	}
	return words(c.Beats[b.Index].Cause)
}

// cueOf goes back through lines that take no time, which nobody on the floor
// sees begin or end.
func (c *Clock) cueOf(i int) string {
	cause := c.Actions[i].Cause
	for range c.Actions {
		if cause.Kind != AfterLine && cause.Kind != WithLine {
			break
		}
		k, ok := c.g.index[cause.Action]
		if !ok || !Instant(cause.Action) {
			break
		}
		cause = c.Actions[k].Cause
	}
	return words(cause)
}

// words says a cause.
func words(c Cause) string {
	switch c.Kind {
	case TakeBegins:
		return "as the take begins"
	case BeatBegins:
		if c.Offset == 0 || c.Beat == nil && c.Text == "" {
			return "as the beat begins"
		}
		return offset(c.Offset) + " into the beat"
	case BeatOver:
		if c.Beat == nil {
			return "as the take begins"
		}
		return fmt.Sprintf("when %q ends", c.Beat.Title)
	case AfterLine:
		return "after " + Describe(c.Action)
	case WithLine:
		return "as " + Describe(c.Action)
	case OnEvent:
		s := EventWords(c.Event)
		if c.Offset != 0 {
			s += ", " + signed(c.Offset)
		}
		return s
	case OnTheClock:
		if strings.HasPrefix(c.Text, "bar") {
			return "at " + c.Text + " (" + c.Offset.Clock() + ")"
		}
		return "at " + c.Offset.Clock()
	}
	return ""
}

func offset(s units.Seconds) string {
	if s < 0 {
		return signed(s)
	}
	return units.Number(float64(s), 2) + " s"
}

func signed(s units.Seconds) string {
	sign := "+"
	if s < 0 {
		sign = "-"
	}
	return sign + units.Number(math.Abs(float64(s)), 2) + " s"
}

// EventWords says an event as a cue: "when otto reaches M4", "on cue dusk".
func EventWords(e *plan.Event) string {
	if e == nil {
		return ""
	}
	who := ""
	if e.Subject != nil {
		who = e.Subject.ID().Name
	}
	switch e.Kind {
	case plan.Reaches:
		return "when " + who + " reaches " + placeName(e.Place)
	case plan.Leaves:
		if e.Carrier != nil {
			return "when " + who + " leaves " + e.Carrier.ID().Name
		}
		return "when " + who + " leaves " + placeName(e.Place)
	case plan.Says:
		return "when " + who + " says " + quoted(e.Text)
	case plan.CueFires:
		return "on cue " + e.Cue
	case plan.BeatStarts, plan.BeatEnds:
		verb := "starts"
		if e.Kind == plan.BeatEnds {
			verb = "ends"
		}
		if e.Beat == nil {
			return "when the beat " + verb
		}
		return fmt.Sprintf("when %q %s", e.Beat.Title, verb)
	}
	return ""
}

func placeName(p *plan.Place) string {
	if p == nil {
		return "its place"
	}
	return p.Text
}

// longestQuote is how much of a spoken line is quoted, in characters.
const longestQuote = 40

func quoted(text string) string {
	r := []rune(text)
	if len(r) > longestQuote {
		cut := string(r[:longestQuote-1])
		if i := strings.LastIndexByte(cut, ' '); i > longestQuote/2 {
			cut = cut[:i]
		}
		text = cut + "…"
	}
	return `"` + text + `"`
}
