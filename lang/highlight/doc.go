// Package highlight writes the grammars by which editors and printers colour a
// plan, and the snippets they offer, from the table of statements, the table of
// units and the words of package syntax. Nothing of the language is listed here
// a second time, so a new statement is coloured everywhere once the files are
// made anew.
//
// A grammar sees one line at a time and knows no names: what it tells apart is
// what can be told from the words themselves and from where they stand in the
// line. The editors' own link to the language server says the rest.
//
// The package imports syntax and units and nothing else of the project.
package highlight

//go:generate go test -run TestFilesAreFresh -update .
