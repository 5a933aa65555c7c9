package lsp

import (
	"slices"

	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// Which kinds of thing may stand where the notation has a name.
var (
	persons  = []plan.Kind{plan.KindPerformer, plan.KindCrew}
	carriers = []plan.Kind{plan.KindVehicle, plan.KindRig}
	movers   = append(append([]plan.Kind(nil), persons...), carriers...)
	subjects = append(append([]plan.Kind(nil), movers...), plan.KindCamera)
	// seen is what can be looked at.
	seen = append(append([]plan.Kind(nil), subjects...), plan.KindDoor, plan.KindWindow, plan.KindHole, plan.KindWall, plan.KindPillar,
		plan.KindBlock, plan.KindPlatform, plan.KindStairs, plan.KindMirror, plan.KindGlow)
)

var nameKinds = map[string][]plan.Kind{
	"WHO": subjects, "CREW": persons, "CARRIER": carriers, "SEEN": seen, "MARK": {plan.KindMark}, "WALL": {plan.KindWall},
	"LENS": {plan.KindLens}, "RIG": {plan.KindRig}, "CAMERA": {plan.KindCamera}, "HOLE": {plan.KindHole}, "MIRROR": {plan.KindMirror}, "CARD": {plan.KindCard},
	"LAMP": {plan.KindLamp}, "WASH": {plan.KindWash, plan.KindLamp}, "GRID": {plan.KindGrid}, "DOOR": {plan.KindDoor}, "ANYTHING": {},
}

// doers are the verbs that only some subjects have; others are everybody's who
// moves.
var doers = map[string][]plan.Kind{
	"walks": persons, "runs": persons, "drives": carriers, "moves": movers, "stands": subjects, "waits": subjects, "turns": movers,
	"spins": movers, "rides": append(append([]plan.Kind(nil), persons...), carriers...), "leaves": movers, "boards": persons, "spots": persons,
	"sits": persons, "kneels": persons, "crouches": persons, "rises": append(append([]plan.Kind(nil), persons...), plan.KindCamera),
	"opens": persons, "shuts": persons, "closes": persons, "says": persons,
}

// does reports whether a kind of thing may have a verb.
func does(k plan.Kind, verb string) bool {
	if kinds, ok := doers[verb]; ok {
		return slices.Contains(kinds, k)
	}
	return k == plan.KindCamera
}

// kindOf is the kind of statement that words begin, in a section; nil if they
// begin none.
func kindOf(section string, words []syntax.Token) *syntax.Kind {
	if len(words) == 0 {
		return nil
	}
	for _, k := range syntax.Statements {
		switch {
		case k.Verb:
			if len(words) > 1 && syntax.IsNameToken(words[0]) && k.In(section) && slices.Contains(k.Words, words[1].Value) && !stands(section, words[0].Value) {
				return k
			}
		case k.Head || k.In(section):
			if slices.Contains(k.Words, words[0].Value) {
				return k
			}
		}
	}
	return nil
}

// stands reports whether a word begins a statement of a section by itself.
func stands(section, word string) bool {
	return slices.ContainsFunc(syntax.Statements, func(k *syntax.Kind) bool {
		return !k.Verb && (k.Head || k.In(section)) && slices.Contains(k.Words, word)
	})
}
