// Package scout looks for places: on wall faces and on the floor, where a camera
// with a given lens would see its targets unblocked for a stretch of the take, out
// of every other rolling camera's view; and on the floor, where a lamp, a boom, a
// monitor or a person may stand unseen near somebody.
//
// The search goes from coarse to fine: places at a step apart at a few frames,
// then nearer and nearer about the best of them, and what it lists in the end is
// worked out at every frame, with the lens hole really cut. It may miss a place
// that is good only within half a step; it never lists one that is worse than it
// says.
//
// It changes nothing and prints nothing but the lines to paste. It may import what
// the take is worked out with, up to sight and staging.
package scout
