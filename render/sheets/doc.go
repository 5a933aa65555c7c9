// Package sheets works out what each department does in a take: one sheet a
// department, of tables with a row a thing to do, in order of time, with when
// (clock, frame, the cue in words), who, what, where, and what it needs.
//
// The rows come first, as neutral tables (Book, Sheet, Table); the writers turn
// those into HTML, Markdown, CSV, JSON and a workbook, and nothing is worked out
// while writing. Everything is computed from the compiled plan: what does not
// apply is said in a sentence.
//
// What came of a rehearsal is put into the same tables (Rehearsal), which the
// terminal, the book and the page take their words and numbers from.
//
// It may import everything of lang, and of render only what draws nothing.
package sheets
