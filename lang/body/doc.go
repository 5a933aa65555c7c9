// Package body holds what longhand takes for granted about people, rigs and
// vehicles where a plan says nothing: how tall people are and where a frame
// cuts them, how fast they and each class of rig go, what a rig carries, how
// long a change of hands takes. Every value has a source, and [Defaults] lists
// them all, so that nobody has to guess what a check was made with.
//
// It holds values and the arithmetic of body proportions only: no plan, no
// paths, no optics. It imports units and nothing else of the project.
//
// None of these values is a safety approval: the local code, the maker's plate
// and the licensed person in charge decide on the day.
package body
