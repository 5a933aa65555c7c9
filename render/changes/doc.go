// Package changes draws a revision of a plan on one overhead: what was, grey and
// dashed, and what is, solid. Ways are drawn where they differ and left out where
// they are the same; what stands still is drawn quietly, to see where one is.
//
// It tells nothing that compare does not tell and finds no difference of its own
// but that of ways on the floor. It may import what drawings are made of, and
// lang up to compare.
package changes
