package compile

import (
	"slices"
	"sort"
	"strings"

	"longhand/lang/bind"
	"longhand/lang/check"
	"longhand/lang/diag"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// Catalog is every code there is with its explanation, sorted by code.
func Catalog() []diag.Entry {
	out := append([]diag.Entry(nil), bind.Codes...)
	for _, r := range check.Rules {
		out = append(out, r.Entry)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].Code < out[j].Code })
	return out
}

// Explained is the entry of a code.
func Explained(code diag.Code) (diag.Entry, bool) {
	for _, e := range Catalog() {
		if e.Code == code {
			return e, true
		}
	}
	return diag.Entry{}, false
}

// KnownCodes is every code that an `allow` may name.
func KnownCodes() []string {
	var out []string
	for _, e := range Catalog() {
		out = append(out, string(e.Code))
	}
	return out
}

// Concerns is whether a finding can be about a statement in particular: its
// explanation names the statement, or all of its section.
func Concerns(e diag.Entry, k *syntax.Kind) bool {
	return slices.Contains(e.At, k.Name()) || slices.Contains(e.At, k.Section)
}

// FoundAt is every finding that is about a statement in particular, by code.
func FoundAt(k *syntax.Kind) []diag.Entry {
	var out []diag.Entry
	for _, e := range Catalog() {
		if slices.Contains(e.At, k.Name()) {
			out = append(out, e)
		}
	}
	return out
}

// Where says in words where a finding can stand: "`wall`, `block` of the set; any
// line of a beat", each statement by its first word; "" for any line at all.
func Where(e diag.Entry) string {
	var out []string
	for _, section := range syntax.SectionWords {
		of := "the " + section
		if section == "beat" || section == "pickup" {
			of = "a " + section
		}
		if slices.Contains(e.At, section) {
			out = append(out, "any line of "+of)
			continue
		}
		var words []string
		for _, k := range syntax.Statements {
			switch {
			case !slices.Contains(e.At, k.Name()) || !strings.HasPrefix(k.Name(), section+" "):
			case k.Head:
				words = append(words, "the header")
			default:
				words = append(words, "`"+k.Words[0]+"`")
			}
		}
		if len(words) > 0 {
			out = append(out, strings.Join(words, ", ")+" of "+of)
		}
	}
	return strings.Join(out, "; ")
}

// StatementAt is the kind of statement that a place in the text belongs to; nil for
// a line that is none.
func StatementAt(files []*syntax.File, at source.Span) *syntax.Kind {
	for _, f := range files {
		if f.Source != at.File {
			continue
		}
		for _, s := range f.Sections {
			for _, l := range append([]*syntax.Line{s.Head}, s.Lines...) {
				if l == nil {
					continue
				}
				if own := l.Span(f.Source); own.Valid() && own.Start <= at.Start && at.Start < own.End {
					return l.Kind
				}
			}
		}
	}
	return nil
}
