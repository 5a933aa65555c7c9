// Package reference makes lang/README.md, the reference of the language, and the
// drawings in it.
//
// What it says of a statement comes from the statement table of package syntax;
// what the statement can lead to from the explanations of the findings; and what it
// looks like from a whole plan in lang/reference that has the table's example for a
// line. All of it is made and held fresh by this package's tests, which is why the
// package has nothing else: it has to import what draws, and nothing needs it.
package reference

//go:generate go test -update .
