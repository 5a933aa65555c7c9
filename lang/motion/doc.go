// Package motion says where everything is at every moment of a take: people,
// vehicles, rigs and cameras, their headings, postures and heights, what each
// lens is aimed at, fitted with and focused on.
//
// [Resolve] takes a bound plan to its [Tracks]. A track is a list of segments,
// each a closed form in time, so that any moment may be asked for, in any
// order, and gives the same answer. Lengths of ways depend on where a subject
// is, that on the clock, and the clock on the lengths; Resolve goes round until
// nothing moves.
//
// It finds no fault. What a check needs to find one (jumps, paces asked for and
// allowed, gaps closed on the way into a relation, changes of hands, who walks
// backwards, who carries what) it records in [Facts].
//
// Lengths are in metres, times in seconds, angles in radians counter-clockwise
// from +x. It imports plan, clock, geom, pace, body, optics, solid and units.
package motion
