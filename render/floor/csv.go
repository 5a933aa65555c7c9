package floor

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// CSV is the marks as a table (RFC 4180): where each is in metres, who uses it,
// and how far it is from two corners of the set.
func CSV(p *plan.Plan) ([]byte, error) {
	marks := Marks(p)
	if len(marks) == 0 {
		return nil, errNoMarks
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	rows := [][]string{{"mark", "x_m", "y_m", "floor_m", "who",
		"corner_1", "corner_1_x_m", "corner_1_y_m", "tape_1_m", "corner_2", "corner_2_x_m", "corner_2_y_m", "tape_2_m"}}
	for _, m := range marks {
		row := []string{m.Name, metres(m.At.X), metres(m.At.Y), metres(m.Z), joined(m.Who)}
		for i := range 2 {
			if i < len(m.Tape) {
				t := m.Tape[i]
				row = append(row, t.Corner, metres(t.From.X), metres(t.From.Y), metres(t.Length))
				continue
			}
			row = append(row, "", "", "", "")
		}
		rows = append(rows, row)
	}
	if err := w.WriteAll(rows); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

var errNoMarks = fmt.Errorf("the set has no marks, so there is nothing to tape")

// metres prints a length to the millimetre.
func metres(v float64) string { return units.Number(v, 3) }

func number(i int) string { return strconv.Itoa(i) }
