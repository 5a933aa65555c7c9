package bind

import (
	"fmt"
	"sort"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// Codes of what is wrong with a name.
const (
	CodeUnknownName diag.Code = "unknown-name"
	CodeNameTwice   diag.Code = "name-twice"
	CodeWrongKind   diag.Code = "wrong-kind"
	CodeUnknownWord diag.Code = "unknown-word" // shared with package syntax
)

// declare gives a thing its name, which nothing else may have.
func (l *line) declare(n *syntax.Name, t plan.Thing) {
	id := t.ID()
	id.Name, id.At, id.Decl = n.Text, l.at(n), l.span
	first := l.names[n.Text]
	if first == nil {
		l.names[n.Text] = t
		return
	}
	as := "first declared here"
	if first.Kind() != t.Kind() {
		as = "first declared here, as " + a(first.Kind())
	}
	l.errorf(CodeNameTwice, id.At, "`%s` is declared twice; each name can stand for one thing only", n.Text).Relate(first.ID().At, "%s", as)
}

// find looks a name up that has to be of one of some kinds; no kinds for any.
// The reason says what may stand here, for a thing of another kind: "only a
// person says something".
func (l *line) find(n *syntax.Name, reason string, kinds ...plan.Kind) plan.Thing {
	t := l.names[n.Text]
	switch {
	case t == nil:
		l.unknownName(n, kinds)
		return nil
	case !isOf(t, kinds):
		l.wrongKind(n, t, reason)
		return nil
	}
	return t
}

func (l *line) wrongKind(n *syntax.Name, t plan.Thing, reason string) *diag.Diagnostic {
	return l.errorf(CodeWrongKind, l.at(n), "`%s` is %s; %s", n.Text, a(t.Kind()), reason).
		Relate(t.ID().At, "declared here")
}

// unknownName reports a name that nothing has: once, with every place where it
// is used.
func (l *line) unknownName(n *syntax.Name, kinds []plan.Kind) {
	l.bad = true
	if l.blind || l.lost[n.Text] {
		return
	}
	at := l.at(n)
	if d := l.unknown[n.Text]; d != nil {
		d.Relate(at, "used here, too")
		if len(d.Fixes) > 0 {
			fix := &d.Fixes[0]
			fix.Edits = append(fix.Edits, diag.Edit{Span: at, Text: fix.Edits[0].Text})
		}
		return
	}
	what := "nothing is called"
	if len(kinds) > 0 {
		what = "no " + or(words(kinds)) + " is called"
	}
	d := l.errorf(CodeUnknownName, at, "%s `%s`", what, n.Text)
	l.unknown[n.Text] = d
	if suggest(d, at, n.Text, l.namesOf(kinds)) {
		return
	}
	have := l.namesOf(kinds)
	switch {
	case len(have) == 0 && len(kinds) > 0:
		d.Note("the plan has no %s", or(words(kinds)))
	case len(have) > 0 && len(have) <= listed:
		d.Note("the plan has %s", strings.Join(have, ", "))
	case len(have) > listed:
		d.Note("the plan has %s and %d more", strings.Join(have[:listed], ", "), len(have)-listed)
	}
}

// listed is how many names a note lists at most.
const listed = 12

// namesOf lists the declared names of some kinds, sorted; all for no kinds.
func (b *binder) namesOf(kinds []plan.Kind) []string {
	var out []string
	for name, t := range b.names {
		if isOf(t, kinds) {
			out = append(out, name)
		}
	}
	sort.Strings(out)
	return out
}

func isOf(t plan.Thing, kinds []plan.Kind) bool {
	for _, k := range kinds {
		if t.Kind() == k {
			return true
		}
	}
	return len(kinds) == 0
}

// is looks a name up whose kind is all one Go type.
func is[T plan.Thing](l *line, n *syntax.Name, reason string, kinds ...plan.Kind) (thing T) {
	if n == nil {
		return thing
	}
	thing, _ = l.find(n, reason, kinds...).(T)
	return thing
}

// Kinds that often go together.
var (
	people   = []plan.Kind{plan.KindPerformer, plan.KindCrew}
	movers   = []plan.Kind{plan.KindPerformer, plan.KindCrew, plan.KindVehicle, plan.KindRig}
	carriers = []plan.Kind{plan.KindVehicle, plan.KindRig}
	// visible is what can be looked at, besides marks.
	visible = []plan.Kind{plan.KindPerformer, plan.KindCrew, plan.KindVehicle, plan.KindRig, plan.KindCamera,
		plan.KindDoor, plan.KindWindow, plan.KindHole, plan.KindWall, plan.KindPillar, plan.KindBlock,
		plan.KindPlatform, plan.KindStairs, plan.KindMirror, plan.KindGlow}
)

func word(k plan.Kind) string {
	switch k {
	case plan.KindCrew:
		return "crew member"
	case plan.KindHole:
		return "lens hole"
	case plan.KindStairs:
		return "flight of stairs"
	}
	return string(k)
}

// a says a kind with its article: a van is "a vehicle".
func a(k plan.Kind) string { return "a " + word(k) }

// words says kinds in words; performers and crew together are persons.
func words(kinds []plan.Kind) []string {
	if len(kinds) > 5 {
		return []string{"person", "vehicle", "rig", "camera", "mark", "part of the set"}
	}
	var out []string
	for i, k := range kinds {
		if k == plan.KindPerformer && i+1 < len(kinds) && kinds[i+1] == plan.KindCrew {
			out = append(out, "person")
			continue
		}
		if k == plan.KindCrew && i > 0 && kinds[i-1] == plan.KindPerformer {
			continue
		}
		out = append(out, word(k))
	}
	return out
}

// or joins words: a, b or c.
func or(list []string) string { return join(list, "or") }

// and joins words: a, b and c.
func and(list []string) string { return join(list, "and") }

func join(list []string, last string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	n := len(list) - 1
	return fmt.Sprintf("%s %s %s", strings.Join(list[:n], ", "), last, list[n])
}

// knownWord checks a word of the language against those there are.
func (l *line) knownWord(w syntax.Spanned, text, what string, there []string) bool {
	for _, t := range there {
		if t == text {
			return true
		}
	}
	at := l.at(w)
	d := l.errorf(CodeUnknownWord, at, "there is no %s `%s`", what, text)
	if !suggest(d, at, text, there) {
		d.Note("there are %s", and(there))
	}
	return false
}
