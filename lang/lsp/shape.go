package lsp

import (
	"strings"
	"sync"

	"longhand/lang/syntax"
	"longhand/lang/units"
)

// A shape is the usage of a kind of statement, read from the notation of the
// reference, so that it can be held against the words of a line to find what may
// come next. It is looser than the grammar: optional parts come in any order.
type shape struct {
	term  *term    // one word of the line; or
	parts []*shape // in this order; or
	any   []*shape // one of these; or
	often *shape   // none, one or several of this
}

// term is what one word of a line may be.
type term struct {
	word string          // a word of the language; or
	want string          // what stands there: NAME, WALL, STRING, SIZE, ...
	dim  units.Dimension // of a quantity
	top  int             // which part of the usage it belongs to
}

// meanings are what capitals of the notation stand for, as far as a line is made
// of them; the others are one word.
var meanings = map[string]string{
	"HIGH": "high LENGTH [to LENGTH]",
	"PATH": "[from PLACE] [via PLACE[, PLACE]] [to PLACE] [round PLACE ANGLE left|right] [eight round PLACE, PLACE] " +
		"[at LENGTH] [straight|curved] [facing TARGET] [backwards]",
	"TIMING": "[starting TIME] [when EVENT [plus|minus DURATION]] [with] [in DURATION] [for DURATION] [at SPEED] [by TIME] [until TIME|EVENT]",
	"TIME":   "+DURATION|DURATION|CLOCK | bar NUMBER",
	"EVENT":  "WHO reaches|leaves SPOT | WHO says SAID | cue CUE | beat BEAT starts|ends",
	"SPOT":   "PLACE|CARRIER",
	"PLACE":  "POINT | POINT + COORDS | LENGTH left|right|camera-left|camera-right of POINT | LENGTH before|after|behind POINT | LENGTH in front of POINT",
	"TARGET": "SEEN | PLACE",
	"POINT":  "MARK | COORDS",
	"COORDS": "( COORDINATE , COORDINATE [, COORDINATE] )",
	"STOPS":  "T to T",
	"KELVIN": "TEMPERATURE",
	"WINDOW": "WINDOWNAME | CLOCK to CLOCK",
}

// dimensions are the capitals that are quantities.
var dimensions = map[string]units.Dimension{
	"LENGTH": units.Length, "MASS": units.Mass, "SPEED": units.Speed, "ANGLE": units.Angle, "DURATION": units.Duration,
	"POWER": units.Power, "TEMPERATURE": units.Temperature, "TURNING": units.AngularSpeed, "SECTION": units.Section,
}

// shapeOf is the shape of a kind of statement.
func shapeOf(k *syntax.Kind) *shape {
	shapes.Lock()
	defer shapes.Unlock()
	if s := shapes.of[k]; s != nil {
		return s
	}
	r := &notation{text: roles(k), tops: true}
	s := r.alternatives("")
	shapes.of[k] = s
	return s
}

// shapes are those read so far: the table they are read from never changes.
var shapes = struct {
	sync.Mutex
	of map[*syntax.Kind]*shape
}{of: map[*syntax.Kind]*shape{}}

// roles is a kind's usage with its names told apart by what they must be.
func roles(k *syntax.Kind) string {
	u := k.Usage
	first := k.Words[0]
	switch {
	case k.Verb:
		u = strings.ReplaceAll(u, "NAME", "WHO")
	case first == "door" && k.Section == "beat":
		u = strings.Replace(u, "NAME", "DOOR", 1)
	case first == "paint":
		u = strings.Replace(u, "NAME", "SEEN", 1)
	case first == "allow":
		u = strings.Replace(u, "NAME", "ANYTHING", 1)
	case first == "only":
		u = strings.Replace(u, "NAME", "LENS", 1)
	default:
		u = strings.Replace(u, "NAME", "NEWNAME", 1)
	}
	for _, r := range [][2]string{
		{"colour NAME", "colour COLOUR"}, {"during STRING[, STRING...]", "during BEAT[, BEAT]"}, {"after|into STRING", "after|into BEAT"},
		{"ANGLE/s", "TURNING"}, {"use STRING", "use FILE"}, {"scene STRING|NUMBER", "scene SCENE"}, {"YYYY-MM-DD", "DATE"},
		{"cue NEWNAME WASH NUMBER %[, WASH NUMBER %...]", "cue NEWNAME WASH NUMBER %[, WASH NUMBER %]"},
	} {
		u = strings.ReplaceAll(u, r[0], r[1])
	}
	return u
}

// notation reads usages.
type notation struct {
	text string
	at   int
	tops bool // count the parts of the outermost level
	top  int
	deep int
}

// alternatives reads up to an end: sequences with " | " between them.
func (n *notation) alternatives(end string) *shape {
	n.deep++
	defer func() { n.deep-- }()
	var all []*shape
	for {
		all = append(all, n.sequence(end))
		if !strings.HasPrefix(n.text[n.at:], "| ") {
			break
		}
		n.at += 2
	}
	if end != "" && strings.HasPrefix(n.text[n.at:], end) {
		n.at += len(end)
	}
	if len(all) == 1 {
		return all[0]
	}
	return &shape{any: all}
}

// sequence reads parts up to an end or a bar; optional parts next to each other
// may come in any order.
func (n *notation) sequence(end string) *shape {
	s := &shape{}
	var loose []*shape
	flush := func() {
		if len(loose) > 0 {
			s.parts = append(s.parts, &shape{often: &shape{any: loose}})
			loose = nil
		}
	}
	for {
		for n.at < len(n.text) && n.text[n.at] == ' ' {
			n.at++
		}
		rest := n.text[n.at:]
		if rest == "" || end != "" && strings.HasPrefix(rest, end) || strings.HasPrefix(rest, "| ") {
			break
		}
		if rest[0] == '[' {
			n.at++
			part := n.alternatives("]")
			loose = append(loose, part)
			n.next()
			continue
		}
		part, again := n.word()
		if p := part.optional(); p != nil {
			loose = append(loose, p...) // PATH and TIMING: nothing but optional parts
		} else {
			flush()
			s.parts = append(s.parts, part)
			if again {
				loose = append(loose, part)
			}
		}
		n.next()
	}
	flush()
	return s
}

// optional is the parts of a shape that has optional parts only; nil if it has
// others.
func (s *shape) optional() []*shape {
	if len(s.parts) == 1 && s.parts[0].often != nil {
		return s.parts[0].often.any
	}
	return nil
}

func (n *notation) next() {
	if n.deep == 1 {
		n.top++
	}
}

// word reads words joined by bars; again says that several may follow each
// other.
func (n *notation) word() (part *shape, again bool) {
	var all []*shape
	for {
		start := n.at
		if strings.IndexByte("(),+", n.text[n.at]) >= 0 && !strings.HasPrefix(n.text[n.at:], "+DURATION") {
			n.at++
		} else {
			n.at++
			for n.at < len(n.text) && strings.IndexByte(" []|,()", n.text[n.at]) < 0 {
				n.at++
			}
		}
		w := n.text[start:n.at]
		if w != "+" && strings.HasSuffix(w, "+") {
			w, again = strings.TrimSuffix(w, "+"), true
		}
		w = strings.TrimSuffix(w, "...")
		if w != "" {
			all = append(all, n.meaning(w))
		}
		if n.at+1 < len(n.text) && n.text[n.at] == '|' && n.text[n.at+1] != ' ' {
			n.at++
			continue
		}
		break
	}
	if len(all) == 1 {
		return all[0], again
	}
	return &shape{any: all}, again
}

// meaning is a word of the notation as a shape.
func (n *notation) meaning(w string) *shape {
	if w == "NUMBER" {
		if unit, ok := n.unit(); ok {
			return &shape{term: &term{want: "QUANTITY", dim: unit, top: n.top}}
		}
	}
	w = strings.TrimPrefix(w, "+")
	if w == "" {
		w = "+"
	}
	if d, ok := dimensions[w]; ok {
		return &shape{term: &term{want: "QUANTITY", dim: d, top: n.top}}
	}
	if text, ok := meanings[w]; ok {
		inner := &notation{text: text, top: n.top, deep: 1}
		return inner.alternatives("")
	}
	if strings.ToUpper(w) == w && strings.ToLower(w) != w && w != "N" && w != "S" && w != "E" && w != "W" {
		return &shape{term: &term{want: w, top: n.top}}
	}
	return &shape{term: &term{word: w, top: n.top}}
}

// unit takes the unit after NUMBER, if one stands there.
func (n *notation) unit() (units.Dimension, bool) {
	rest := n.text[n.at:]
	if !strings.HasPrefix(rest, " ") {
		return 0, false
	}
	w := rest[1:]
	if i := strings.IndexAny(w, " [],|"); i >= 0 {
		w = w[:i]
	}
	if d := units.DimensionOf("1 " + w); w != "" && d != units.NoDimension {
		n.at += 1 + len(w)
		return d, true
	}
	return 0, false
}
