// Package light holds the arithmetic of lighting a set: levels over time, the
// power and current they draw, how far a supply may be loaded, how many lamps
// hang, what dimming does to a lamp, and how bright a lamp makes a place.
//
// The formulas know nothing of plans; they import units and geom only.
//
// Load, drop and counts here are planning figures. Circuits, generators,
// earthing, protection and distribution, and what hangs over people, are for a
// licensed electrician and rigger under the local code.
package light
