package syntax

import (
	"sync"

	"github.com/alecthomas/participle/v2/lexer"
)

// Stmt is a parsed statement: a pointer to one of the structs of the stmt files.
type Stmt interface {
	Spanned
	// fold puts what the optional phrases say in the fields of the statement,
	// and tells of a phrase said twice or out of place.
	fold(f *folder)
}

// Kind is a kind of statement: everything that the parser, the formatter,
// completion and the reference know of it.
type Kind struct {
	Words   []string // the words that pick it: wall; or in beats, after a name, walks, runs
	Verb    bool     // the words stand after a name
	Section string   // the section it stands in; "" for `use`, which stands anywhere
	Head    bool     // it starts the section
	Usage   string   // its shape, in the notation of the reference
	Means   string   // one sentence
	Example string   // parses
	Doc     string   // defaults and limits, for the reference; may be ""

	parse func(*lexer.PeekingLexer) (Stmt, error)
}

// Name is what a kind is called where its section has to be said too, unlike that of
// any other: "set door", "beat door", "beat header"; a kind of any section goes with
// the take.
func (k *Kind) Name() string {
	section, word := k.Section, k.Words[0]
	if section == "" {
		section = "take"
	}
	if k.Head {
		word = "header"
	}
	return section + " " + word
}

// define makes a kind of statement from its struct.
func define[T any, P interface {
	*T
	Stmt
}](k Kind) *Kind {
	parser := grammarOf[T]()
	k.parse = func(l *lexer.PeekingLexer) (Stmt, error) {
		n, err := parser().ParseFromLexer(l)
		if n == nil {
			return nil, err
		}
		return P(n), err
	}
	return &k
}

// In reports whether the kind may stand in a section: the lines of a beat stand
// in a pickup, too.
func (k *Kind) In(section string) bool {
	return k.Section == section || k.Section == "" || k.Section == "beat" && section == "pickup" && !k.Head
}

// find looks a kind up by section and word.
func find(section, word string, verb bool) *Kind {
	for _, k := range byWord()[word] {
		if k.Verb == verb && !k.Head && k.In(section) {
			return k
		}
	}
	return nil
}

// head is the kind that starts a section.
func head(section string) *Kind {
	for _, k := range byWord()[section] {
		if k.Head {
			return k
		}
	}
	return nil
}

var byWord = sync.OnceValue(func() map[string][]*Kind {
	m := map[string][]*Kind{}
	for _, k := range Statements {
		for _, w := range k.Words {
			m[w] = append(m[w], k)
		}
	}
	return m
})
