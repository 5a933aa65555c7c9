package timecode

import (
	"fmt"
	"strconv"
	"strings"

	"longhand/lang/units"
)

// Code counts frames as labels of hours, minutes, seconds and frames (SMPTE ST
// 12-1). A code is made by [New].
type Code struct {
	nominal int // frames a labelled second has: 30 for 29.97
	drop    int // labels dropped a minute, but for each tenth: 2, 4 or 0
}

// New is the timecode of a frame rate. Drop-frame, which skips labels so that
// they keep up with the clock, is defined for 29.97 and 59.94 alone.
func New(rate units.Rate, dropFrame bool) (Code, error) {
	if rate.Num <= 0 || rate.Den <= 0 {
		return Code{}, fmt.Errorf("there is no timecode at %s fps", rate)
	}
	nominal := (rate.Num + rate.Den - 1) / rate.Den
	broadcast := rate.Den == 1001 && rate.Num == nominal*1000
	if rate.Den != 1 && !broadcast {
		return Code{}, fmt.Errorf("there is no timecode at %s fps: the rate must be whole, or one such as 23.976 or 29.97", rate)
	}
	c := Code{nominal: nominal}
	if dropFrame {
		if !broadcast || nominal != 30 && nominal != 60 {
			return Code{}, fmt.Errorf("there is no drop-frame timecode at %s fps: it is defined for 29.97 and 59.94 alone", rate)
		}
		c.drop = nominal / 15
	}
	return c, nil
}

// DropFrame says whether the code skips labels.
func (c Code) DropFrame() bool { return c.drop > 0 }

// Day is how many labels there are from 00:00:00:00 to the next.
func (c Code) Day() int { return 24 * c.hour() }

func (c Code) hour() int       { return 6 * c.tenMinutes() }
func (c Code) tenMinutes() int { return 600*c.nominal - 9*c.drop }
func (c Code) minute() int     { return 60*c.nominal - c.drop }

// Label is the label of the frame so many frames after 00:00:00:00, around the
// clock: "01:02:03:04", with ";" before the frames for drop-frame.
func (c Code) Label(frame units.Frame) string {
	if c.nominal == 0 {
		return ""
	}
	n := int(frame) % c.Day()
	if n < 0 {
		n += c.Day()
	}
	// In each ten minutes the first minute keeps its labels and each of the others
	// begins by skipping some.
	tens, rest := n/c.tenMinutes(), n%c.tenMinutes()
	n += tens * 9 * c.drop
	if first := 60 * c.nominal; rest >= first {
		n += c.drop * ((rest-first)/c.minute() + 1)
	}
	separator := ":"
	if c.drop > 0 {
		separator = ";"
	}
	seconds := n / c.nominal
	return fmt.Sprintf("%02d:%02d:%02d%s%0*d", seconds/3600, seconds/60%60, seconds%60, separator, c.width(), n%c.nominal)
}

// width is how many digits the frames have.
func (c Code) width() int { return max(2, len(strconv.Itoa(c.nominal-1))) }

// Parse is the frame of a label such as "01:02:03:04". It refuses what is not a
// label of the code, above all those that drop-frame skips. Drop-frame labels
// have ";" before the frames and others ":".
func (c Code) Parse(label string) (units.Frame, error) {
	if c.nominal == 0 {
		return 0, fmt.Errorf("no timecode to read %q by", label)
	}
	fields := strings.FieldsFunc(label, func(r rune) bool { return r == ':' || r == ';' })
	separators := strings.Count(label, ":") + strings.Count(label, ";")
	if len(fields) != 4 || separators != 3 || strings.Contains(label, ";") && !validDropForm(label) {
		return 0, fmt.Errorf("%q is not a timecode: it must be hours, minutes, seconds and frames, such as 01:02:03:04", label)
	}
	var v [4]int
	for i, f := range fields {
		n, err := strconv.ParseUint(f, 10, 16)
		if err != nil || strings.HasPrefix(f, "+") || len(f) > 3 {
			return 0, fmt.Errorf("%q in the timecode %q is not a number", f, label)
		}
		v[i] = int(n)
	}
	if isDrop := strings.Contains(label, ";"); isDrop != c.DropFrame() {
		if isDrop {
			return 0, fmt.Errorf("%q is a drop-frame label, with ;, but this timecode drops none", label)
		}
		return 0, fmt.Errorf("%q is not a drop-frame label: those have ; before the frames", label)
	}
	limits := [4]int{24, 60, 60, c.nominal}
	names := [4]string{"hours", "minutes", "seconds", "frames"}
	for i := range v {
		if v[i] >= limits[i] {
			return 0, fmt.Errorf("the timecode %q does not exist: %d %s, but the highest is %d", label, v[i], names[i], limits[i]-1)
		}
	}
	if v[2] == 0 && v[3] < c.drop && v[1]%10 != 0 {
		return 0, fmt.Errorf("the timecode %q does not exist: drop-frame skips the first %d labels of each minute but every tenth", label, c.drop)
	}
	minutes := v[0]*60 + v[1]
	n := (minutes*60+v[2])*c.nominal + v[3] - c.drop*(minutes-minutes/10)
	return units.Frame(n), nil
}

// validDropForm says whether the only ";" stands before the frames.
func validDropForm(label string) bool {
	return strings.Count(label, ";") == 1 && strings.LastIndexAny(label, ":;") == strings.Index(label, ";")
}
