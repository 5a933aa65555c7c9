package diag

// Entry explains a code: what it says, what it means on the floor, and a plan
// that has it beside the same plan mended. Tests run both.
type Entry struct {
	Code     Code
	Title    string // a few words: "something that must not be seen is in frame"
	Severity Severity
	// Explain is plain text for a film crew: what it means, why it matters, the
	// formula and the defaults used, how to mend it.
	Explain string
	// At names the statements that the finding stands at or refers to: "set door",
	// "beat walks", or "beat" for every line of a beat. Nil is any line at all.
	At   []string
	Bad  string // a whole plan with this finding and no other error
	Good string // the plan mended: it has no finding of any kind but notes
}
