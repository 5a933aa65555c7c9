package rehearse

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/plan"
)

// ReadTimes reads a table that [WriteTemplate] wrote and somebody filled in.
// Times are in seconds, "7.4" or "1:07.4"; a decimal comma and fields parted
// by semicolons are understood, an empty field is a try without a time. Rows are found by beat and words, the
// number of the line telling apart those that read the same; what no longer
// matches the plan is an error that says what row and why.
func ReadTimes(r io.Reader, c *clock.Clock) (*Times, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, fmt.Errorf("rehearsal times: %w", err)
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	table := csv.NewReader(bytes.NewReader(text))
	// Where commas are decimal, spreadsheets part fields by semicolons.
	if first, _, _ := bytes.Cut(text, []byte("\n")); bytes.Count(first, []byte(";")) > bytes.Count(first, []byte(",")) {
		table.Comma = ';'
	}
	table.FieldsPerRecord = -1
	table.TrimLeadingSpace = true
	t := &Times{lengths: make(map[*plan.Action][]float64), waits: make(map[*plan.Action][]float64)}
	known := rows(c)
	seen := make(map[key]int)
	var wrong []error
	for n := 1; ; n++ {
		row, err := table.Read()
		if err == io.EOF && n == 1 {
			return nil, errors.New("rehearsal times: the table is empty; longhand rehearse --template writes one to fill in")
		}
		if err == io.EOF {
			break
		}
		if bad := (*csv.ParseError)(nil); errors.As(err, &bad) {
			return nil, fmt.Errorf("rehearsal times, row %d: a quotation mark is missing or one too many", bad.Line)
		}
		if err != nil {
			return nil, fmt.Errorf("rehearsal times: %w", err)
		}
		if n == 1 {
			if err := checkHeader(row); err != nil {
				return nil, err
			}
			continue
		}
		line, _ := table.FieldPos(0)
		if err := t.row(row, known, seen, line); err != nil {
			wrong = append(wrong, fmt.Errorf("rehearsal times, row %d: %w", line, err))
		}
	}
	if len(wrong) > 0 {
		return nil, errors.Join(wrong...)
	}
	return t, nil
}

func checkHeader(row []string) error {
	for i, want := range header {
		if i >= len(row) || strings.TrimSpace(row[i]) != want {
			return fmt.Errorf("rehearsal times: the first row has to begin with %s", strings.Join(header, ", "))
		}
	}
	return nil
}

func (t *Times) row(row []string, known []key, seen map[key]int, line int) error {
	if len(row) < len(header) {
		return fmt.Errorf("has %d fields, not the %d it begins with", len(row), len(header))
	}
	tries := row[len(header):]
	filled := false
	for _, s := range tries {
		filled = filled || strings.TrimSpace(s) != ""
	}
	if !filled {
		return nil // a row nobody timed says nothing, whatever it is of
	}
	k, err := findRow(known, strings.TrimSpace(row[0]), strings.TrimSpace(row[1]), strings.TrimSpace(row[2]), strings.TrimSpace(row[3]))
	if err != nil {
		return err
	}
	if before, twice := seen[k]; twice {
		return fmt.Errorf("%s was timed in row %d already", k.what, before)
	}
	seen[k] = line
	var list []float64
	for i, s := range tries {
		if s = strings.TrimSpace(s); s == "" {
			continue
		}
		v, err := parseTime(s)
		if err != nil {
			return fmt.Errorf("try %d: %w", i+1, err)
		}
		list = append(list, v)
	}
	if k.measured == tookWord {
		t.lengths[k.action] = list
	} else {
		t.waits[k.action] = list
	}
	return nil
}

func findRow(known []key, beat, line, what, measured string) (key, error) {
	if measured != tookWord && measured != afterWord {
		return key{}, fmt.Errorf("measured is %q, not %q or %q", measured, tookWord, afterWord)
	}
	var fits []key
	inBeat := false
	for _, k := range known {
		inBeat = inBeat || k.beat == beat
		if k.beat == beat && k.what == what && k.measured == measured {
			fits = append(fits, k)
		}
	}
	switch {
	case len(fits) == 1:
		return fits[0], nil
	case len(fits) == 0 && !inBeat:
		return key{}, fmt.Errorf("the plan has no beat %q with something to time", beat)
	case len(fits) == 0:
		return key{}, fmt.Errorf("beat %q has no %q to time", beat, what)
	}
	for _, k := range fits {
		if strconv.Itoa(k.line) == line {
			return k, nil
		}
	}
	return key{}, fmt.Errorf("beat %q has %d lines that read %q, and none is line %s", beat, len(fits), what, line)
}

// longestTime is the longest time taken for one: a day.
const longestTime = 24 * 60 * 60

// parseTime reads "7.4", "7,4" or "1:07.4".
func parseTime(s string) (float64, error) {
	bad := fmt.Errorf("%q is not a time in seconds like 7.4 or 1:07.4", s)
	minutes, rest, long := strings.Cut(strings.ReplaceAll(s, ",", "."), ":")
	if !long {
		minutes, rest = "0", minutes
	}
	m, err := strconv.ParseUint(minutes, 10, 16)
	if err != nil {
		return 0, bad
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(rest, "s")), 64)
	if err != nil || !(v >= 0) || long && v >= 60 || v > longestTime {
		return 0, bad
	}
	return float64(m)*60 + v, nil
}
