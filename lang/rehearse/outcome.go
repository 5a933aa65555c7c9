package rehearse

// Outcome is a rehearsal as it is handed on: what came of the playings, what
// would help, and what the day makes of it.
type Outcome struct {
	*Report
	ClockOnly bool // what the lenses see was not looked at
	Measured  int  // rehearsal times that took the place of spreads
	// Changes are what would help most; Sought says that they were looked for,
	// Partly that not all that could help was tried.
	Changes        []Change
	Sought, Partly bool
	// Tries is how many there are on the day, 0 where nothing tells; Light the
	// window that holds so many, in words, "" where the number was given.
	Tries int
	Light string
}
