// Package compare says what a revision of a plan changes, by meaning and not by
// line: which marks moved and how far, which lines are new, gone or different,
// what that does to the clock and to the ways people go, and which findings are
// new and which are gone.
//
// Blanks, comments, the order of declarations and of the lines of different
// subjects mean nothing, so they are no change; two plans differ only in what
// somebody on the floor would notice. Comparing the other way round gives the
// same changes mirrored.
//
// It writes its reports as text, Markdown and JSON and draws nothing. It may
// import everything up to compile.
package compare
