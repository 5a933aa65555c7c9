// Package places draws what a search for places found as a map: the places
// numbered as they are listed, what each lens would look at, the ways of those it
// is to see, and the other cameras.
//
// It may import what drawings are made of, and lang up to scout.
package places
