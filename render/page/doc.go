// Package page writes a take as one HTML file that plays it: the overhead in
// time, what each rolling camera sees drawn in perspective beside it, the running
// order, the findings.
//
// The file needs nothing but itself: styles, script and numbers are in it, and it
// asks nothing of any network. Tracks travel as second differences of rounded
// values (see [channels]), so that a long take stays small. What can be worked out
// from the tracks where they are shown, such as the floor that a lens sees, is.
//
// Go decides what the page knows; how it looks and behaves is in files/, which
// are readable as they are. It may import all of lang, and render/frames and
// render/sheets. The same take gives the same bytes.
package page
