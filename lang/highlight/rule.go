package highlight

import (
	"regexp"
	"slices"
	"strings"

	"longhand/lang/syntax"
)

// rule is one or more parts that follow each other in a line with blanks
// between. The rules before it in the list win where both fit.
type rule struct {
	Start bool // the first part is the first of the line
	Parts []part
	Ahead pattern // what must follow; nil if anything may
}

type part struct {
	Role     Role
	Pattern  pattern
	Optional bool // it may be missing, as in a line that is being typed
}

func one(r Role, p pattern) rule { return rule{Parts: []part{{Role: r, Pattern: p}}} }

// word is any of some words, whole.
func word(words ...string) pattern { return seq{wordStart{}, wordsOf(words), wordEnd{}} }

// rules is the grammar but for comments and texts, which each engine has its own
// way with.
func rules() []rule {
	all := []rule{{Start: true, Parts: []part{{Role: Section, Pattern: word(syntax.SectionWords...)}}}}
	var verbs, lines []rule
	for _, s := range shapes() {
		switch {
		case s.verb:
			verbs = append(verbs, s.rule)
		case s.inBeat: // words that can be no name, so that none of them stands before a verb
			all = append(all, s.rule)
		default:
			lines = append(lines, s.rule)
		}
	}
	all = append(all, namedLikeVerbs()...)
	all = append(all, verbs...)
	all = append(all, lines...)
	all = append(all, stopRanges()...)
	all = append(all, lexical()...)
	all = append(all,
		one(Join, word(syntax.Keywords...)),
		rule{Parts: []part{{Role: Join, Pattern: seq{wordStart{}, wordsOf(times)}}}, Ahead: seq{repeat{blank}, set(digits)}},
		one(Option, word(Options()...)),
		one(Name, name),
		one(Mark, set(marks)),
		one(Wrong, set(strings.ReplaceAll(otherMarks, "°", "")+footMarks+"”″")))
	return all
}

// times join the two lengths of a size, and a count to what is counted.
var times = []string{"x"}

// shape is the rule of how the lines of a kind of statement begin.
type shape struct {
	rule
	verb, inBeat bool
}

// shapes are those of all statements but the headers, those with the most parts
// first; statements that begin alike share one.
func shapes() []shape {
	type key struct {
		parts        string
		verb, inBeat bool
	}
	var order []key
	words := map[key][]string{}
	declares := map[string]bool{} // a door stands in the set and moves in a beat: it looks the same in both
	for _, k := range syntax.Statements {
		if !k.Verb && names(k) {
			for _, w := range k.Words {
				declares[w] = len(begins(k)) > 0
			}
		}
	}
	for _, k := range syntax.Statements {
		if k.Head || !k.Verb && !names(k) && declares[k.Words[0]] {
			continue
		}
		id := key{strings.Join(begins(k), " "), k.Verb, k.Section == "beat" || k.Section == ""}
		if words[id] == nil {
			order = append(order, id)
		}
		words[id] = append(words[id], k.Words...)
	}
	slices.SortStableFunc(order, func(a, b key) int {
		return strings.Count(b.parts+" ", " ")*min(1, len(b.parts)) - strings.Count(a.parts+" ", " ")*min(1, len(a.parts))
	})
	var all []shape
	for _, id := range order {
		s := shape{verb: id.verb, inBeat: id.inBeat, rule: rule{Start: true}}
		if id.verb {
			s.Parts = append(s.Parts, part{Role: Name, Pattern: name})
			s.Parts = append(s.Parts, part{Role: Verb, Pattern: word(words[id]...)})
		} else {
			s.Parts = append(s.Parts, part{Role: Statement, Pattern: word(words[id]...)})
		}
		for _, what := range strings.Fields(id.parts) {
			p := parts[strings.Trim(what, "[]")]
			p.Optional = true
			s.Parts = append(s.Parts, p)
		}
		all = append(all, s)
	}
	return all
}

// namedLikeVerbs are the lines that give a name and go on with what follows no
// verb: a wall may be called racks, while somebody called mark racks to a place.
func namedLikeVerbs() []rule {
	var order []string
	words := map[string][]string{}
	for _, k := range syntax.Statements {
		if k.Head || k.Verb || !slices.Equal(begins(k), []string{"NAME"}) {
			continue
		}
		next := strings.Fields(k.Usage)[2]
		if next != "POINT" && next != strings.ToLower(next) || strings.HasPrefix(next, "[") {
			continue
		}
		if words[next] == nil {
			order = append(order, next)
		}
		words[next] = append(words[next], k.Words...)
	}
	var all []rule
	for _, next := range order {
		var ahead pattern = seq{many{blank}, literal(next), wordEnd{}}
		if next == "POINT" {
			ahead = seq{repeat{blank}, literal("(")}
		}
		all = append(all, rule{Start: true, Ahead: ahead, Parts: []part{
			{Role: Statement, Pattern: word(words[next]...)}, {Role: Declared, Pattern: name}}})
	}
	return all
}

// parts are what the capitals after a statement's word stand for, as far as a
// grammar can say more of them than of any word of the line.
var parts = map[string]part{
	"NAME":   {Role: Declared, Pattern: name},
	"LENS":   {Role: Name, Pattern: name},
	"CLASS":  {Role: Class, Pattern: word(syntax.Classes...)},
	"LENGTH": {Role: Number, Pattern: seq{number, repeat{blank}, unit()}},
	"STOP":   {Role: Stop, Pattern: stopName},
}

// begins are the capitals that follow a statement's word: NAME CLASS for a rig.
// A name that is given to something is told by the statement's example, which
// the parser reads.
func begins(k *syntax.Kind) []string {
	fields := strings.Fields(strings.SplitN(k.Usage, " | ", 2)[0])
	if k.Verb {
		fields = fields[1:]
	}
	var found []string
	for _, f := range fields[1:] {
		if _, known := parts[strings.Trim(f, "[]")]; !known {
			break
		}
		found = append(found, f)
	}
	switch {
	case len(found) > 0 && found[0] == "NAME" && !k.Verb && !names(k):
		return nil
	case k.Verb && !slices.Contains(found, "[STOP]"):
		return nil
	}
	return found
}

// names reports whether a kind of statement gives a name: a cue is one that
// others wait for, though it stands in a beat.
func names(k *syntax.Kind) bool { return k.Section != "beat" || k.Words[0] == "cue" }

// stopRanges are the stops from the widest to the smallest, with the word before
// them: stops T2 to T22.
func stopRanges() []rule {
	var all []rule
	for _, k := range syntax.Statements {
		if m := regexp.MustCompile(`([a-z]+) T ([a-z]+) T\b`).FindStringSubmatch(k.Usage); m != nil {
			all = append(all, rule{Parts: []part{{Role: Option, Pattern: word(m[1])}, {Role: Stop, Pattern: stopName},
				{Role: Join, Pattern: word(m[2])}, {Role: Stop, Pattern: stopName}}})
		}
	}
	return all
}

// Options are the words of the language that neither start a line nor join its
// parts: those of the usages, and of what their capitals stand for.
func Options() []string {
	used := map[string]bool{}
	add := func(text string) {
		for _, w := range regexp.MustCompile(`[A-Za-z][A-Za-z0-9/-]*`).FindAllString(text, -1) {
			used[w] = w == strings.ToLower(w) && len(w) > 1
		}
	}
	for _, k := range syntax.Statements {
		fields := strings.Fields(k.Usage)
		for i, f := range fields {
			if i > 0 && slices.Contains([]string{"NUMBER", "INT"}, strings.TrimLeft(fields[i-1], "[")) {
				f = "" // a unit
			}
			if !k.Verb && i == 0 || k.Verb && i == 1 {
				f = "" // the statement's own words
			}
			add(f)
		}
	}
	for _, capitals := range []string{"HIGH", "TIME", "EVENT", "TIMING", "PLACE", "SIZE", "WINDOW"} {
		add(syntax.Notation[capitals])
	}
	for _, w := range strings.Fields(strings.ReplaceAll(syntax.Notation["PATH"], "; each", "")) {
		add(w)
	}
	for _, w := range syntax.ReservedWords() {
		used[w] = used[w] || strings.HasPrefix(w, "camera-")
	}
	var words []string
	for w, is := range used {
		if is && !syntax.IsKeyword(w) {
			words = append(words, w)
		}
	}
	slices.Sort(words)
	return words
}
