// Package trace writes the numbers the sight of a take was worked out from, and
// what came of it, as JSON, so that other programs can use them and check them;
// and reads them back.
//
// README.md describes every field to whoever reads a trace.
//
// It knows the scene and its report, nothing of plans, and may be imported by
// anything above sight.
package trace

import (
	"encoding/json"
	"math"
)

// Trace is the document. Lengths are in metres, angles in degrees, sensors in
// millimetres; every run of frames includes both its ends.
type Trace struct {
	Rate    float64  `json:"rate"` // frames a second
	Frames  int      `json:"frames"`
	Aspect  float64  `json:"aspect"`
	Solids  []Solid  `json:"solids"`
	Bodies  []Body   `json:"bodies"`
	Cameras []Camera `json:"cameras"`
	Sight   []Seen   `json:"sight"`
}

// Solid is an upright part of the set, its openings cut out.
type Solid struct {
	Name    string       `json:"name"`
	Kind    string       `json:"kind"`
	Polygon [][2]float64 `json:"polygon"`
	Z       [2]float64   `json:"z"` // lower and upper face
	// Shut is when a door stands in the way; nil for what always does.
	Shut [][2]int `json:"shut"`
}

// Body is an upright cylinder or prism that moves.
type Body struct {
	Name    string       `json:"name"`
	Kind    string       `json:"kind"`
	Radius  float64      `json:"radius"`  // of a cylinder
	Polygon [][2]float64 `json:"polygon"` // of a prism, in its own frame: x ahead, y left
	// Track is where it is at each frame: x, y, z of its lower face, heading
	// counter-clockwise from +x, and height, 0 where it isn't there.
	Track [][5]float64 `json:"track"`
}

// Camera is a lens and when it rolls.
type Camera struct {
	Name   string     `json:"name"`
	Sensor [2]float64 `json:"sensor"` // the part the aspect uses
	Rolls  [][2]int   `json:"rolls"`
	Own    []Own      `json:"own"`
	// Track is where it is and looks at each frame: x, y, z, pan
	// counter-clockwise from +x, tilt up from the horizon, focal length in
	// millimetres and focus distance.
	Track []Shot `json:"track"`
	// Roll is how far the top of the frame leans to its right at each frame; nil
	// for a camera that never does.
	Roll []float64 `json:"roll"`
}

// Shot is a camera at a frame. A focus on nothing is +Inf, which JSON can't
// write: there it is null.
type Shot [7]float64

// UnmarshalJSON reads a null as +Inf.
func (s *Shot) UnmarshalJSON(data []byte) error {
	var row [7]*float64
	if err := json.Unmarshal(data, &row); err != nil {
		return err
	}
	for i, v := range row {
		s[i] = math.Inf(1)
		if v != nil {
			s[i] = *v
		}
	}
	return nil
}

// Seen is a body in a camera's frame, by name.
type Seen struct {
	Camera string `json:"camera"`
	Body   string `json:"body"`
	Runs   []Run  `json:"runs"`
}

// Run covers consecutive frames in which the body is in frame, also where it is
// wholly hidden. Visible and Share have one number a frame: the part of its
// in-frame area that nothing nearer covers, 0 to 1, and its visible area over
// the frame's, in per cent.
type Run struct {
	From    int       `json:"from"`
	To      int       `json:"to"`
	Visible []float64 `json:"visible"`
	Share   []float64 `json:"share"`
}
