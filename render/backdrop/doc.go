// Package backdrop is the quiet plan under a drawing that has something else to
// tell: what stands, the marks, a scale, names that find a place of their own, on a
// sheet of A3.
//
// It may import what drawings are made of, and plan and solid.
package backdrop
