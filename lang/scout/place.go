package scout

import (
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Place is where a camera could be. Times are of the frames asked about.
type Place struct {
	Wall  *plan.Wall   // nil on the floor
	Along units.Metres // of the hole's middle, from the wall's first point
	Up    units.Metres // of the lens: on a wall over the set's floor, else over the floor it stands on
	At    geom.Vec     // of the hole's middle on the wall's line, or of the camera on the floor
	Left  bool         // the lens looks out of the wall's left face, seen along its line

	Sees     float64           // 0 to 1: how much of its targets it sees, the least seen of them, averaged over time
	For      units.Seconds     // how long at least half of each of them is seen
	Tall     float64           // the smallest target's height over the frame's, averaged over time
	Nearest  units.Metres      // any target comes to the lens
	Furthest units.Metres      // any target goes from the lens
	Seen     units.Seconds     // how long another rolling camera has it, or its hole, in view
	Covered  units.Seconds     // how long one has it in frame with something before it
	By       string            // the camera that has it in view longest; "" where none has
	Hole     units.Millimetres // how wide the hole has to be, with the usual margin; 0 on the floor
	Score    float64           // 0 to 1: what places are ranked by
	// Checked says that all this is of every frame, with the hole cut; without it
	// it is an estimate, of a search that was broken off.
	Checked bool
}

// score is how good a place is: what it sees, times how large its targets are, times
// how much of the time no other camera has it in view, to the fourth power, as a
// place in view for a tenth of the beat spoils the take as well as any (a choice, no
// source: a target as tall as the frame is worth twice one at the horizon).
func score(sees, seen, tall float64) float64 {
	clear := (1 - seen) * (1 - seen)
	return sees * clear * clear * (0.5 + 0.5*min(1, tall))
}

// Report is what a search found.
type Report struct {
	Ask     Ask
	Places  []Place // best first
	Looked  int     // places looked at
	Stopped bool    // it was broken off before it was through
}
