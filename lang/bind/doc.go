// Package bind gives the statements of a plan their meaning: it finds what every
// name stands for, converts every quantity, fills in what the text leaves to
// custom, and works out where marks and places lie. What comes out is a
// plan.Plan, from which everything else is computed.
//
// Names are declared before any is looked up, so the order of the text does not
// matter. Each mistake is reported once, at the word to change; whatever only
// follows from it is passed over in silence: a thing declared with a mistake
// stays in the plan, marked Bad, and a line of a beat with a mistake is left out
// of it. A name that was to be declared by a line that could not be read counts
// as declared.
//
// The package does not say whether the plan can be done: no time, path or view
// is computed here. It imports syntax, plan, diag, units, geom and drawing; body,
// solid and timecode for their defaults and tables only; and nothing that comes
// after the plan.
package bind
