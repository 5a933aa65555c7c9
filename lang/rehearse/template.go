package rehearse

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// WriteTemplate writes a table to take to rehearsal: a row for each thing to
// time, in the order of the take, with room for so many tries.
func WriteTemplate(w io.Writer, c *clock.Clock, tries int) error {
	table := csv.NewWriter(w)
	row := append([]string(nil), header...)
	for i := range max(tries, 1) {
		row = append(row, fmt.Sprintf("try %d", i+1))
	}
	if err := table.Write(row); err != nil {
		return err
	}
	for _, k := range rows(c) {
		planned := c.Of(k.action).Length()
		if k.measured == afterWord {
			planned = 0
		}
		line := []string{k.beat, strconv.Itoa(k.line), k.what, k.measured, units.Number(float64(planned), 1)}
		for range max(tries, 1) {
			line = append(line, "")
		}
		if err := table.Write(line); err != nil {
			return err
		}
	}
	table.Flush()
	return table.Error()
}

// key is a row of the table.
type key struct {
	beat     string
	line     int // in its beat, from 1
	what     string
	measured string
	action   *plan.Action
}

// rows are the things to time.
func rows(c *clock.Clock) []key {
	var out []key
	count := make(map[*plan.Beat]int)
	for i, a := range c.Lines() {
		count[a.Beat]++
		k := key{line: count[a.Beat], what: clock.Describe(a), action: a}
		if a.Beat != nil {
			k.beat = a.Beat.Title
		} else if a.Pickup != nil {
			k.beat = a.Pickup.Title
		}
		if hasLength(a) {
			k.measured = tookWord
			out = append(out, k)
		}
		if reacts(a, c.Actions[i].Cause) {
			k.measured = afterWord
			k.what += ", " + c.Words(a)
			out = append(out, k)
		}
	}
	return out
}

// hasLength says whether a line takes a time of its own that people make: a fade
// runs as it was set, and a counter lasts as long as its spin.
func hasLength(a *plan.Action) bool {
	switch d := a.Deed.(type) {
	case nil, *plan.Cue:
		return false
	case *plan.Circle:
		if d.Counter {
			return false
		}
	}
	return !clock.Instant(a) && a.Timing.Until == nil
}
