// Package syntax turns the text of a plan into statements.
//
// A file is cut into tokens, the tokens into lines, the lines into sections;
// each line is parsed by itself, by the grammar its section and first words
// pick from the statement table, so that a bad line costs that line only. All
// tokens are kept: any file, broken or not, prints back byte for byte.
//
// The grammar is loose: it knows the order of words and where a place, a
// quantity or a name must stand, not what a name stands for nor whether a
// length is meant where a weight is given. That is the binder's, which can say
// it better. The package imports source, diag and units and nothing else of the
// project; bind, format and the editors' grammars read it.
package syntax

//go:generate go test longhand/render/reference -update
