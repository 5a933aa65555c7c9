// Package scene is the drawing before it has a format: shapes and text in
// millimetres on a sheet of paper, styled by class names.
//
// A drawing is made once and handed to render/svg, render/pdf or render/png,
// which show the same thing. The origin is the sheet's top left corner, x runs
// right and y runs down, both in millimetres. Angles are degrees
// counter-clockwise as the reader sees them, from the right. Text sizes are in
// points, stroke widths and dashes in millimetres.
//
// Nothing here knows of plans. It may import lang/geom and render/fonts.
package scene
