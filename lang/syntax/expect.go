package syntax

import (
	"regexp"
	"slices"
	"strings"

	"longhand/lang/units"
)

// parts says the parts of the grammar in the user's words.
var parts = map[string]string{
	"Name":       "a name",
	"Word":       "a word",
	"String":     `a text in quotes, "..."`,
	"Number":     "a number",
	"Coordinate": "a number",
	"Point":      "a point, (x, y) or (x, y, z)",
	"Place":      "a place: a mark's name or a point (x, y)",
	"Corner":     "a point: (x, y) or a mark's name",
	"Corners":    "a point: (x, y) or a mark's name",
	"Goal":       "a place: a mark's name or a point (x, y)",
	"Time":       "a time: +9 s, 1:04 or bar 12.3",
	"Moment":     "a time or an event: +9 s, or mina reaches M2",
	"Event":      "an event: mina reaches M2, mina says \"...\", cue dusk, beat \"...\" ends",
	"Trigger":    "an event: mina reaches M2, mina says \"...\", cue dusk, beat \"...\" ends",
	"Size":       "a length by a length: 2.4 m x 1.2 m",
	"Stop":       "a stop: T2.8",
	"Stops":      "the widest and the smallest stop: T2 to T22",
	"Colour":     "a colour: a name, or 3200 K",
	"Ratio":      "a ratio: 1.85, 16:9 or 1:50",
	"Cable":      "how long the cable is and how thick its wires: 40 m 6 mm2",
	"Zone":       "the clocks' offset: +02:00",
	"Date":       "a date: 2026-08-20",
	"Bearing":    "degrees and their letter: 56.05 N",
	"Window":     "`in` and a part of the day: in civil-dusk, or in 19:40 to 20:25",
	"Opening":    "`on`, the wall's name, and from where to where along it: on street 4.8 m to 7.4 m",
	"CueLevel":   "a wash and its level: amber 40 %",
}

var firstTerm = regexp.MustCompile(`^\(*\??=? ?\(*("(?:[^"\\]|\\.)*"|<\w+>|\w+)`)

// expected says what must stand at a word, from the notation of the grammar.
func expected(kind *Kind, words []Token, at int, expect string) string {
	if before := words[at-1]; before.Type == TokKeyword || before.Type == TokName {
		switch {
		case strings.HasPrefix(expect, "(Name | Point)"):
			return parts["Place"]
		case before.Value == "when":
			return parts["Trigger"]
		case before.Value == "until":
			return parts["Moment"]
		}
	}
	if strings.HasPrefix(expect, "Word") {
		switch kind.Words[0] {
		case "rig", "speed":
			return "a class of rig: " + strings.Join(Classes, ", ")
		case "never":
			return "a size: " + strings.Join(Sizes, ", ")
		case "note":
			return "a department: camera, grip, electric"
		case "units":
			return "`metres` or `feet`"
		}
	}
	if literals := literalsOf(expect); len(literals) > 0 {
		return orList(literals)
	}
	term := firstTerm.FindStringSubmatch(expect)
	if term == nil {
		return "more"
	}
	if strings.HasPrefix(expect, "(Name | Point)") {
		return parts["Place"]
	}
	if wantsQuantity(expect) {
		if d := meant(kind, words, at); d != units.NoDimension {
			return d.String() + ": " + d.Example()
		}
		return `a quantity with its unit: 2.4 m, 8'6", 12 s`
	}
	if s, ok := parts[term[1]]; ok {
		return s
	}
	switch strings.ToLower(term[1]) {
	case "<string>":
		return parts["String"]
	case "<number>":
		return parts["Number"]
	case "<name>", "<stopname>":
		return parts["Name"]
	}
	return "more"
}

// wantsQuantity reports whether a number with a unit is expected.
func wantsQuantity(expect string) bool {
	term := firstTerm.FindStringSubmatch(expect)
	return term != nil && slices.Contains([]string{"Quantity", "Range", "Measure", "Size", "<quantity>"}, term[1])
}

var literal = regexp.MustCompile(`^\(*"((?:[^"\\]|\\.)*)"`)

// literalsOf are the words of which one is expected first.
func literalsOf(expect string) []string {
	var found []string
	for _, alternative := range strings.Split(expect, "|") {
		m := literal.FindStringSubmatch(strings.TrimSpace(alternative))
		if m == nil {
			if len(found) > 0 && strings.Count(expect, "|") > 0 {
				break
			}
			return nil
		}
		if m[1] != "×" {
			found = append(found, m[1])
		}
	}
	return found
}

func orList(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = "`" + w + "`"
	}
	if len(quoted) == 1 {
		return quoted[0]
	}
	return strings.Join(quoted[:len(quoted)-1], ", ") + " or " + quoted[len(quoted)-1]
}

// choices are the words that a mistyped one may stand for.
func choices(kind *Kind, expect string) []string {
	if literals := literalsOf(expect); len(literals) > 0 {
		return literals
	}
	if expect == "" || strings.HasPrefix(expect, "Number") {
		return kind.usageWords()
	}
	return nil
}

// after says what a quantity measures by the word before it.
var after = map[string]units.Dimension{
	"in": units.Duration, "for": units.Duration, "over": units.Duration, "plus": units.Duration,
	"minus": units.Duration, "starting": units.Duration, "reset": units.Duration, "record": units.Duration,
	"least": units.Duration, "high": units.Length, "thick": units.Length, "up": units.Length,
	"wide": units.Length, "width": units.Length, "rise": units.Length, "close": units.Length,
	"reach": units.Length, "height": units.Length, "size": units.Length, "sensor": units.Length,
	"weighs": units.Mass, "carries": units.Mass, "speed": units.Speed, "back": units.Speed,
	"pan": units.AngularSpeed, "spread": units.Share, "rate": units.FrameRate, "shutter": units.Angle,
	"pace": units.WordRate, "tempo": units.BeatRate, "pushes": units.Length, "pulls": units.Length,
	"spins": units.Angle, "pans": units.Angle, "tilts": units.Angle, "x": units.Length,
}

// usual is what a quantity measures in a line without such a word.
var usual = map[string]units.Dimension{
	"lens": units.Length, "door": units.Length, "window": units.Length, "mirror": units.Length,
	"glow": units.Length, "card": units.Length, "vehicle": units.Length, "lamp": units.Power,
	"cue": units.Share, "beside": units.Length, "circles": units.Angle, "leads": units.Length,
	"pillar": units.Length, "blur": units.Share, "pans": units.Angle, "spins": units.Angle, "film": units.Length,
}

// meant is what the quantity at a word measures, as far as the words before
// tell.
func meant(kind *Kind, words []Token, at int) units.Dimension {
	before := words[at-1].Value
	if d, ok := after[before]; ok {
		return d
	}
	switch word := kind.Words[0]; {
	case before == "at" && (word == "walks" || word == "sits"):
		return units.Speed
	case before == "at":
		return units.Length
	case before == "to" && word == "turns":
		return units.Angle
	case before == "to":
		return units.Length
	case before == "by" && word != "leads":
		return units.Duration
	case before == "most" && word == "speed":
		return units.Speed
	case before == "round" && word == "pillar":
		return units.Length
	case word == "supply" && before == "cable":
		return units.Length
	case word == "supply" && at > 1 && words[at-2].Value == "cable":
		return units.Section
	case word == "supply" && words[at-1].Type == TokQuantity:
		return units.Current
	case word == "supply":
		return units.Voltage
	default:
		return usual[word]
	}
}
