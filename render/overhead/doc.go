// Package overhead draws a beat, or the whole take, from above: the set, who goes
// where and when, what each rolling camera sees of the floor, and what happens in
// which order, to a scale that a ruler confirms.
//
// The drawing is made for paper. It reads in black and white and at arm's length:
// people, machines and cameras differ by shape and label, and colour, where it is
// asked for, only repeats what shape says. What the signs look like is what
// architects and surveyors draw, and what people draw by hand on a floor plan.
//
// It decides nothing about the take: every place and time is that of the tracks,
// every finding that of the checks. It may import all of lang, and render/scene,
// render/label and render/fonts. Lengths on paper are millimetres, those of the
// plan metres.
package overhead
