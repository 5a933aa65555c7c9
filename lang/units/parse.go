package units

import (
	"fmt"
	"strconv"
	"strings"
)

// Dimension is what a unit measures.
type Dimension int

// The dimensions a plan speaks of.
const (
	NoDimension Dimension = iota
	Length
	Duration
	Speed
	Angle
	AngularSpeed
	Mass
	Temperature
	Power
	Current
	Voltage
	Intensity
	Luminance
	Section // of a wire
	Share   // percent
	FrameRate
	BeatRate
	WordRate
)

// Unit is a unit as a plan writes it.
type Unit struct {
	Text      string
	Dimension Dimension
	Factor    float64 // to the unit the dimension's type is named after; 1 for frames, counts and bars
	Same      string  // the usual way to write it; "" if this is
}

// Table is every unit, the usual one first of each.
var Table = []Unit{
	{"m", Length, 1, ""}, {"cm", Length, 0.01, ""}, {"mm", Length, 0.001, ""},
	{"ft", Length, float64(Foot), ""}, {"in", Length, float64(Inch), ""},
	{"'", Length, float64(Foot), "ft"}, {`"`, Length, float64(Inch), "in"},
	{"metre", Length, 1, "m"}, {"metres", Length, 1, "m"}, {"meter", Length, 1, "m"}, {"meters", Length, 1, "m"},
	{"foot", Length, float64(Foot), "ft"}, {"feet", Length, float64(Foot), "ft"},
	{"inch", Length, float64(Inch), "in"}, {"inches", Length, float64(Inch), "in"},

	{"s", Duration, 1, ""}, {"ms", Duration, 0.001, ""}, {"min", Duration, 60, ""}, {"h", Duration, 3600, ""},
	{"f", Duration, 1, ""}, {"counts", Duration, 1, ""}, {"count", Duration, 1, "counts"},
	{"bars", Duration, 1, ""}, {"bar", Duration, 1, "bars"}, {"frames", Duration, 1, "f"}, {"frame", Duration, 1, "f"},
	{"sec", Duration, 1, "s"}, {"second", Duration, 1, "s"}, {"seconds", Duration, 1, "s"},
	{"minute", Duration, 60, "min"}, {"minutes", Duration, 60, "min"},
	{"hour", Duration, 3600, "h"}, {"hours", Duration, 3600, "h"},

	{"m/s", Speed, 1, ""}, {"km/h", Speed, 1 / 3.6, ""}, {"mph", Speed, 0.44704, ""}, {"ft/s", Speed, float64(Foot), ""},

	{"deg", Angle, 1, ""}, {"°", Angle, 1, "deg"}, {"degree", Angle, 1, "deg"}, {"degrees", Angle, 1, "deg"},
	{"deg/s", AngularSpeed, 1, ""}, {"°/s", AngularSpeed, 1, "deg/s"},

	{"kg", Mass, 1, ""}, {"g", Mass, 0.001, ""}, {"lb", Mass, float64(Pound), ""}, {"lbs", Mass, float64(Pound), "lb"},
	{"K", Temperature, 1, ""},
	{"W", Power, 1, ""}, {"kW", Power, 1000, ""},
	{"A", Current, 1, ""}, {"V", Voltage, 1, ""},
	{"cd", Intensity, 1, ""}, {"cd/m2", Luminance, 1, ""}, {"%", Share, 1, ""},
	{"mm2", Section, 1, ""}, {"mm²", Section, 1, "mm2"}, {awg, Section, 1, ""},
	{"fps", FrameRate, 1, ""}, {"bpm", BeatRate, 1, ""}, {"words/min", WordRate, 1, ""},
}

var byText = func() map[string]*Unit {
	m := make(map[string]*Unit, len(Table))
	for i := range Table {
		m[Table[i].Text] = &Table[i]
	}
	return m
}()

// IsUnit reports whether a word is a unit.
func IsUnit(word string) bool { return byText[word] != nil }

// Usual is the usual way to write a unit: "s" for "seconds".
func Usual(unit string) string {
	if u := byText[unit]; u != nil && u.Same != "" {
		return u.Same
	}
	return unit
}

// TimeSpan is a duration as written: in seconds, frames, counts or bars, of which one is
// not zero unless all are.
type TimeSpan struct {
	Seconds Seconds
	Frames  float64
	Counts  float64
	Bars    float64
}

// Split reads a number and its unit, with any blanks between. Feet and inches
// together come back as feet.
func Split(text string) (float64, Unit, error) {
	text = strings.TrimSpace(text)
	if v, ok := feetAndInches(text); ok {
		return v, *byText["ft"], nil
	}
	if v, ok := spelledFeet(text); ok {
		return v, *byText["ft"], nil
	}
	n := numberLength(text)
	v, err := strconv.ParseFloat(strings.TrimPrefix(text[:n], "+"), 64)
	if err != nil {
		return 0, Unit{}, fmt.Errorf("`%s` is not a number with a unit", text)
	}
	word := strings.Trim(text[n:], blanks)
	if word == "" {
		return v, Unit{}, nil
	}
	u := byText[word]
	if u == nil {
		return 0, Unit{}, fmt.Errorf("`%s` is not a unit", word)
	}
	return v, *u, nil
}

func numberLength(text string) int {
	n := 0
	if n < len(text) && (text[n] == '+' || text[n] == '-') {
		n++
	}
	for n < len(text) && (text[n] == '.' || '0' <= text[n] && text[n] <= '9') {
		n++
	}
	return n
}

// feetAndInches reads 8', 8'6", 8' 6 1/2", 8'-6½", 6 1/2", 1/2" as feet.
func feetAndInches(text string) (float64, bool) {
	text = primes.Replace(text)
	sign := 1.0
	switch {
	case strings.HasPrefix(text, "-"):
		sign, text = -1, text[1:]
	case strings.HasPrefix(text, "+"):
		text = text[1:]
	}
	feet, rest, hasFeet := strings.Cut(text, "'")
	if !hasFeet {
		feet, rest = "0", text
		if !strings.HasSuffix(text, `"`) {
			return 0, false
		}
	}
	f, err := strconv.ParseFloat(strings.TrimSpace(feet), 64)
	if err != nil {
		return 0, false
	}
	rest = strings.TrimPrefix(strings.TrimSpace(rest), "-")
	if rest == "" {
		return sign * f, true
	}
	inches, ok := mixedNumber(strings.TrimSuffix(rest, `"`))
	if !ok || !strings.HasSuffix(rest, `"`) {
		return 0, false
	}
	return sign * (f + inches/12), true
}

// spelledFeet reads 8 ft 6 in as feet.
func spelledFeet(text string) (float64, bool) {
	words := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(blanks, r) })
	if len(words) == 3 { // 8ft 6 in
		n := numberLength(words[0])
		words = append([]string{words[0][:n], words[0][n:]}, words[1:]...)
	}
	if len(words) != 4 || Usual(words[1]) != "ft" || Usual(words[3]) != "in" {
		return 0, false
	}
	feet, err := strconv.ParseFloat(words[0], 64)
	inches, err2 := strconv.ParseFloat(words[2], 64)
	if strings.HasPrefix(words[0], "-") {
		inches = -inches
	}
	return feet + inches/12, err == nil && err2 == nil
}

const blanks = " \t\r\u00a0\u2009\u202f\ufeff"

var primes = strings.NewReplacer("′", "'", "’", "'", "″", `"`, "”", `"`,
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8")

// mixedNumber reads 6, 6.5, 6 1/2, 1/2.
func mixedNumber(text string) (float64, bool) {
	total := 0.0
	fields := strings.Fields(text)
	for _, field := range fields {
		above, below, isFraction := strings.Cut(field, "/")
		v, err := strconv.ParseFloat(above, 64)
		if err != nil {
			return 0, false
		}
		if isFraction {
			d, err := strconv.ParseFloat(below, 64)
			if err != nil || d == 0 {
				return 0, false
			}
			v /= d
		}
		total += v
	}
	return total, len(fields) > 0
}

// DimensionOf is what a quantity measures; NoDimension for a bare number or
// what is no quantity.
func DimensionOf(text string) Dimension {
	_, u, err := Split(text)
	if err != nil {
		return NoDimension
	}
	return u.Dimension
}

// kinds says each dimension in words, with an example.
var kinds = map[Dimension][2]string{
	Length: {"a length", `2.4 m or 8'6"`}, Duration: {"a time", "6 s, 1:04.5, 90 f or 16 counts"},
	Speed: {"a speed", "1.2 m/s or 4 ft/s"}, Angle: {"an angle", "45 deg"}, AngularSpeed: {"a turning speed", "45 deg/s"},
	Mass: {"a weight", "2.6 kg or 5.7 lb"}, Temperature: {"a colour temperature", "3200 K"},
	Power: {"a power", "650 W or 2 kW"}, Current: {"a current", "16 A"}, Voltage: {"a voltage", "230 V"},
	Intensity: {"an intensity", "2400 cd"}, Luminance: {"a luminance", "600 cd/m2"}, Share: {"a percentage", "40 %"},
	Section:   {"a wire's cross-section", "6 mm2 or 10 AWG"},
	FrameRate: {"a frame rate", "24 fps"}, BeatRate: {"a tempo", "96 bpm"}, WordRate: {"a pace", "150 words/min"},
}

// String says the dimension in words: "a length".
func (d Dimension) String() string {
	if k, ok := kinds[d]; ok {
		return k[0]
	}
	return "a number without a unit"
}

// Example is how a quantity of the dimension is written: `2.4 m or 8'6"`.
func (d Dimension) Example() string { return kinds[d][1] }

// Parse reads a quantity of one dimension, in the unit its type is named after.
// The error says what is wrong in a sentence.
func Parse(text string, want Dimension) (float64, error) {
	v, u, err := Split(text)
	switch {
	case err != nil:
		return 0, err
	case u.Dimension == NoDimension && want != NoDimension:
		return 0, fmt.Errorf("`%s` needs its unit: %s is written %s", text, want, want.Example())
	case u.Dimension != want:
		return 0, fmt.Errorf("`%s` is %s, and %s is meant here: %s", text, u.Dimension, want, want.Example())
	}
	if u.Text == awg {
		s, err := wireGauge(v)
		return float64(s), err
	}
	return v * u.Factor, nil
}

// ParseLength reads a length: 2.4 m, 35 mm, 8'6".
func ParseLength(text string) (Metres, error) {
	v, err := Parse(text, Length)
	return Metres(v), err
}

// ParseTimeSpan reads a duration: 12 s, 90 f, 16 counts, 2 bars, or minutes and
// seconds on a clock, 1:04.5.
func ParseTimeSpan(text string) (TimeSpan, error) {
	if strings.Contains(text, ":") {
		s, err := ParseClock(text)
		return TimeSpan{Seconds: s}, err
	}
	v, err := Parse(text, Duration)
	if err != nil {
		return TimeSpan{}, err
	}
	_, u, _ := Split(text)
	switch Usual(u.Text) {
	case "f":
		return TimeSpan{Frames: v}, nil
	case "counts":
		return TimeSpan{Counts: v}, nil
	case "bars":
		return TimeSpan{Bars: v}, nil
	}
	return TimeSpan{Seconds: Seconds(v)}, nil
}

// ParseClock reads minutes and seconds, or hours, minutes and seconds: 1:04.5,
// 1:02:03.
func ParseClock(text string) (Seconds, error) {
	sign, rest := 1.0, strings.TrimPrefix(text, "+")
	if strings.HasPrefix(rest, "-") {
		sign, rest = -1, rest[1:]
	}
	parts := strings.Split(rest, ":")
	total := 0.0
	for i, part := range parts {
		v, err := strconv.ParseFloat(part, 64)
		whole := !strings.Contains(part, ".") || i == len(parts)-1
		if err != nil || len(parts) > 3 || !whole || i > 0 && v >= 60 {
			return 0, fmt.Errorf("`%s` is not a time: minutes and seconds are written 1:04.5", text)
		}
		total = total*60 + v
	}
	return Seconds(sign * total), nil
}

// ParseDayTime reads a time of day, 19:40, as seconds since midnight.
func ParseDayTime(text string) (Seconds, error) {
	hours, minutes, ok := strings.Cut(text, ":")
	h, err := strconv.Atoi(hours)
	m, err2 := strconv.Atoi(minutes)
	if !ok || err != nil || err2 != nil || h < 0 || h > 23 || m < 0 || m > 59 || len(minutes) != 2 {
		return 0, fmt.Errorf("`%s` is not a time of day: it is written 19:40", text)
	}
	return Seconds(h*3600 + m*60), nil
}
