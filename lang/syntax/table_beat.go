package syntax

// beatKinds are the statements of the header of a beat.
var beatKinds = []*Kind{
	define[BeatHead](Kind{
		Words:   []string{"beat"},
		Section: "beat",
		Head:    true,
		Usage:   "beat STRING [TIME|when EVENT] [for DURATION]",
		Means:   "Starts a beat.",
		Example: `beat "Through the dock" when van reaches D1`,
		Doc:     "A beat without a start begins when the beat before it ends: at its stated length, or with the last of its moves.",
	}),
}
