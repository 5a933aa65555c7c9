// Package book makes one PDF of everything a crew works from: a cover with the
// take at a glance, contents, the whole take from above and along its time, each
// beat with its overhead, what the lenses see and who goes on what cue, what was
// found, a section for each department, and the cautions; or the booklet of one
// department; or a small card for each person.
//
// It decides nothing: drawings come from render/overhead, render/frames and
// render/timeline, rows from render/sheets. Dates in the file come from the plan,
// so that the same text gives the same bytes.
package book
