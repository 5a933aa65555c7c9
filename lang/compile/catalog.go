package compile

import (
	"sort"

	"longhand/lang/bind"
	"longhand/lang/check"
	"longhand/lang/diag"
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
