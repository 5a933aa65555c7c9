// Package frames draws what a lens sees at a moment of a take: the set in true
// perspective with hidden lines removed, people as figures whose facing and
// posture show, machines, other cameras, thirds and the frame line, and beneath
// it which camera, when, how wide and how far.
//
// Hidden lines are taken away exactly, not painted over: each thing is a few
// convex solids, what a convex solid hides from the lens is convex too, and so it
// takes at most one stretch out of any straight line. What is left are lines
// alone, which survive a photocopier and a plotter.
//
// A figure is a stand-in of the size that sight reckons with: its outline fills
// the same box in the frame. It may import lang, render/scene, render/label and
// render/fonts; it decides nothing about what is good or bad.
package frames
