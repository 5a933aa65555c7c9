// Package timeline draws a take along its time: a lane for each person, machine
// and camera, the beats and the clock across them, cuts, light levels, doors and
// findings.
//
// Every text stands at the moment it belongs to, over a bar as long as the thing
// lasts; where two would meet, the later goes into a row of its own, so that no
// two texts can lie on each other. Long takes go over several pages of one scale,
// or onto one strip. It may import lang, render/scene and render/fonts.
package timeline
