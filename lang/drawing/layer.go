package drawing

import (
	"regexp"
	"strings"

	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// layer is what a layer's name says.
type layer struct {
	kind  plan.Kind
	name  string // "" where it says none
	high  *plan.Range
	thick units.Metres
}

var kinds = map[string]plan.Kind{
	"wall": plan.KindWall, "walls": plan.KindWall,
	"block": plan.KindBlock, "blocks": plan.KindBlock,
	"platform": plan.KindPlatform, "platforms": plan.KindPlatform,
	"pillar": plan.KindPillar, "pillars": plan.KindPillar,
}

var (
	words = regexp.MustCompile(`[\p{L}\d.,'"]+`)
	// A length is a number and its unit, feet and inches included.
	lengths = regexp.MustCompile(`\d+'\s?\d+(?:\.\d+)?"|(\d+(?:[.,]\d+)?)[\s_]*((?i)mm|cm|m|ft|in|'|")`)
	thicks  = regexp.MustCompile(`(?i)thick[\s_]+$`)
)

// layerOf reads a layer's name: what it is for, and after that, in any order, a
// name for what lies on it, a height or two, and a thickness.
func layerOf(text string) (layer, bool) {
	var l layer
	rest, found := "", false
	for _, at := range words.FindAllStringIndex(text, -1) {
		if k, ok := kinds[strings.ToLower(text[at[0]:at[1]])]; ok {
			l.kind, rest, found = k, text[at[1]:], true
			break
		}
	}
	if !found {
		return l, false
	}
	var high []units.Metres
	left, last := "", 0
	for _, at := range lengths.FindAllStringIndex(rest, -1) {
		if at[1] < len(rest) && strings.ContainsAny(rest[at[1]:at[1]+1], letters) || at[0] > 0 && strings.ContainsAny(rest[at[0]-1:at[0]], letters) {
			continue // a piece of a word
		}
		v, ok := lengthOf(rest[at[0]:at[1]])
		if !ok {
			continue
		}
		before := rest[last:at[0]]
		if m := thicks.FindStringIndex(before); m != nil {
			l.thick = v
			before = before[:m[0]]
		} else {
			high = append(high, v)
		}
		left += before + " "
		last = at[1]
	}
	left += rest[last:]
	switch {
	case len(high) == 1 && high[0] > 0:
		l.high = &plan.Range{High: high[0]}
	case len(high) > 1 && high[1] > high[0]:
		l.high = &plan.Range{Low: high[0], High: high[1]}
	}
	var keep []string
	for _, w := range words.FindAllString(left, -1) {
		switch strings.ToLower(w) {
		case "to", "high", "thick":
		default:
			keep = append(keep, w)
		}
	}
	l.name = nameOf(strings.Join(keep, "-"))
	return l, true
}

const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"

func lengthOf(text string) (units.Metres, bool) {
	m := lengths.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	if m[1] != "" {
		text = strings.ReplaceAll(m[1], ",", ".") + m[2]
		if m[2] != "'" && m[2] != `"` {
			text = strings.ReplaceAll(m[1], ",", ".") + " " + strings.ToLower(m[2])
		}
	}
	v, err := units.ParseLength(text)
	return v, err == nil && v >= 0 && v < 1000
}

var unnamed = regexp.MustCompile(`[^\p{L}\d]+`)

// nameOf is a name of the language, as near to a text as can be; "" where there
// is nothing in it to make one of.
func nameOf(text string) string {
	name := strings.Trim(unnamed.ReplaceAllString(text, "-"), "-")
	if name == "" {
		return ""
	}
	if tokens := syntax.Lex("", name); len(tokens) == 0 || tokens[0].Value != name || !syntax.IsNameToken(tokens[0]) {
		return ""
	}
	for _, w := range syntax.ReservedWords() {
		if w == name {
			return ""
		}
	}
	return name
}

// given reports whether somebody has chosen an id, not the program that drew it.
func given(id string) bool { return !counted.MatchString(id) }

var counted = regexp.MustCompile(`^(?i:path|rect|line|polyline|polygon|circle|ellipse|use|g|group|layer|svg|shape|object|xmlid)[-_]?\d[\d_-]*$`)
