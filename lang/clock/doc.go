// Package clock works out when everything in a plan happens: the start and end
// of every line and every beat, what each start waits for, how much later each
// thing could be before something breaks, and which times a plan states that do
// not hold.
//
// Every start and end is the latest of a few other starts and ends plus a
// length, so together they are a graph without circles, solved in one pass in
// topological order (the critical path method: J. E. Kelley and M. R. Walker,
// "Critical-Path Planning and Scheduling", 1959). A circle is reported as the
// way around it; what is in it gets the time it would have without the cue, and
// the rest of the plan is solved all the same.
//
// The package knows nothing of paths, speeds or positions: how long a line
// takes when the text does not say, and when a move passes its places, it asks
// of [Lengths]. Of the project it imports plan, units, and body for which rigs are
// worn.
package clock
