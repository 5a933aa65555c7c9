// Package sight works out who sees what: for every frame of every rolling
// camera, which bodies are in frame, how much of each shows, and what covers
// the rest.
//
// It knows cameras, solids and bodies at frames, nothing of plans; what it is
// given is what the trace prints, so that other programs can check it.
package sight

import (
	"longhand/lang/geom"
	"longhand/lang/units"
)

// Scene is everything that can see, be seen or stand in the way, at every frame.
type Scene struct {
	Rate    units.Rate
	Frames  int
	Aspect  float64 // of the frame, after squeeze
	Solids  []Solid
	Bodies  []Body
	Cameras []Camera
	Mirrors []Mirror
	Glows   []Glow
}

// Frames is a run of frames, both ends included.
type Frames struct{ From, To units.Frame }

// Solid is a part of the set: an upright prism.
type Solid struct {
	Name    string // of the statement that made it: "street", "bench"
	Kind    string // "wall", "door", "block", "pillar", "platform", "stairs", "window"
	Polygon []geom.Vec
	Z       [2]float64 // lower and upper face, metres
	// Shut lists when the solid is there, for a door; nil is always. A door
	// that is never shut has an empty, non-nil list.
	Shut []Frames
}

// Body is something that moves, or could: a person, a machine, a camera.
type Body struct {
	Name string // unique: "mina", "cart", "crane arm 2"
	Kind string // "performer", "crew", "vehicle", "rig", "camera", "card", "hole", "lamp"
	// Of is the name of the thing in the plan it is a part of; equal to Name
	// for a thing of one part.
	Of      string
	Radius  float64    // of an upright cylinder, metres; 0 for a prism
	Polygon []geom.Vec // convex, in the body's own frame: x ahead, y left
	Track   []Pose     // one a frame, or one in all for a body that never moves
}

// Pose is where a body is at a frame. Height 0 means that it isn't there.
type Pose struct {
	X, Y, Z float64 // metres; Z is the lower face
	Heading float64 // radians, counter-clockwise from +x
	Height  float64 // metres
}

// At is the pose at a frame.
func (b *Body) At(f units.Frame) Pose {
	if len(b.Track) == 1 {
		return b.Track[0]
	}
	return b.Track[f]
}

// Camera is a lens and the frames in which it rolls.
type Camera struct {
	Name          string
	Width, Height float64 // of the part of the sensor the aspect uses, millimetres, after squeeze
	Rolls         []Frames
	Own           []Own
	Track         []View // one a frame, or one in all
}

// Own is a body left out of a camera's own view for a while: its rig, its
// operator, the plug of its own lens hole.
type Own struct {
	Body string // Body.Name
	Frames
}

// View is a lens at a frame. The sensor's plane is perpendicular to the optical
// axis; the lens draws straight lines straight.
type View struct {
	X, Y, Z float64 // of the entrance pupil, metres
	Pan     float64 // radians, counter-clockwise from +x
	Tilt    float64 // radians, up from the horizon
	Roll    float64 // radians, the top of the frame leaning to its right
	Focal   float64 // millimetres
	Focus   float64 // metres along the axis
}

// At is the view at a frame.
func (c *Camera) At(f units.Frame) View {
	if len(c.Track) == 1 {
		return c.Track[0]
	}
	return c.Track[f]
}

// Mirror is an upright rectangle that reflects, on the face to the left of the
// way from A to B.
type Mirror struct {
	Name string
	A, B geom.Vec
	Z    [2]float64
}

// Glow is an upright rectangle that shines: a window, a bright opening.
type Glow struct {
	Name string
	A, B geom.Vec
	Z    [2]float64
	Nits units.Nits
}
