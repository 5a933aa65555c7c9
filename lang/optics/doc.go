// Package optics holds the formulas of the lens and the exposure: the frame cut
// from a sensor, angle of view, where a point falls in the frame, depth of field
// and blur, the pan that strobes, shutter, stop and light.
//
// Lenses are thin and rectilinear, pixels square. Distances to a subject are in
// metres along the optical axis, sizes on the sensor in millimetres. Widths are
// after squeeze: an anamorphic lens of 50 mm that squeezes by two sees as wide
// as a 25 mm, and the frame it fills counts as twice as wide.
//
// The package knows nothing of plans; it imports units and geom only.
//
// # Limits
//
// Real lenses breathe, distort and lose light towards the corners; real bodies
// differ in sensitivity by most of a stop. The numbers are for planning.
package optics
