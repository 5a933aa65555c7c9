// Package format lays out the text of a plan.
//
// It changes blanks and line ends only, has no options, and gives the same text
// when applied again. It works on the tokens of a parsed file; lines that could
// not be read are left as they are, but for blanks at their end. It imports
// syntax and source and nothing else of the project.
package format
