package check

// Rules is every rule, in the order in which they run: what the clock shows,
// what movement shows, what the lenses show.
var Rules = []*Rule{
	clockLoop,
	unmatchedCue,
	late,
	twoMoves,
	overLength,
	rollOut,
	jump,
	tooFast,
	throughWall,
	handoffApart,
	gearInShot,
	crewInShot,
	cameraInShot,
	leftInShot,
	idleAllow,
}
