// Package rehearse plays a take many times with human timing: every length and
// every reaction to a cue differs from the plan by a stated spread, the clock is
// solved anew, and it is counted how often the take holds, what breaks it first,
// and how much each cue has to spare.
//
// A caused start follows its cause, so lateness travels as it does on a floor.
// What the clock alone cannot see (paths, frames, what a lens catches) a caller
// adds to each run by [Options.Evaluate]. Everything is drawn from a seed: the
// same plan, seed and options give the same report, on however many cores.
//
// Of the project it imports plan, clock, body and units.
package rehearse
