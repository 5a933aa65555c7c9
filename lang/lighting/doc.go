// Package lighting is the lamps of a plan over a take: what hangs and what
// stands, at what level at which moment, how much light that gives at a place,
// and what it draws.
//
// What no cue moves burns in full; what one does is out until its first. A lamp
// is a point that shines evenly all round and gives light in proportion to its
// level; the lamps of a wash hang evenly spread over their grid, at its low
// side. Power is taken in proportion to level too: filament lamps draw somewhat
// less.
//
// It finds no fault. It imports plan, clock, light, geom and units.
//
// Load and counts are planning figures: circuits, generators, earthing and what
// hangs over people are for a licensed electrician and rigger under the local
// code.
package lighting
