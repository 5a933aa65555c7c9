package page

import (
	"math"

	"longhand/lang/geom"
)

// document is all that the page knows; field names are short because there are
// many of some. Lengths are metres, angles radians, times seconds.
type document struct {
	Title    string       `json:"title"`
	Scene    string       `json:"scene,omitempty"`
	Set      string       `json:"set,omitempty"`
	Revision string       `json:"revision,omitempty"`
	File     string       `json:"file"`
	Rate     [2]int       `json:"rate"`
	Feet     bool         `json:"feet,omitempty"`
	Safety   string       `json:"safety"`
	Pieces   []piece      `json:"pieces"`
	Meeting  [][]float64  `json:"meeting"`
	Plan     planDrawing  `json:"plan"`
	Figures  []figure     `json:"figures"` // by posture
	People   []person     `json:"people"`
	Depts    []department `json:"departments"`
	Shots    []shot       `json:"shots"` // the take, then its pickups
	General  []finding    `json:"general"`
	// Rehearsal is of the take, the first of the shots; nil where there was none.
	Rehearsal *rehearsal `json:"rehearsal,omitempty"`
}

// piece is an upright solid of the set. Lines are 13 numbers each: both ends, the
// directions of the two faces that meet there, and 1 where the surface is curved.
type piece struct {
	Name    string      `json:"n"`
	Kind    string      `json:"k"`
	Polygon []float64   `json:"p"`
	Parts   [][]float64 `json:"c,omitempty"` // convex, where Polygon is not
	Z       [2]float64  `json:"z"`
	Glass   bool        `json:"g,omitempty"`
	Lines   []float64   `json:"l,omitempty"`
	Solid   int         `json:"s"` // its index in a shot's shut; -1 for glass
}

// planDrawing is what the overhead shows beside solids.
type planDrawing struct {
	Marks []place   `json:"marks"`
	Doors []leaf    `json:"doors"`
	Hung  []hanging `json:"hung"`
	// Mirrors are the faces of mirrors, each to the left of the way from A to B.
	Mirrors []mirror    `json:"mirrors,omitempty"`
	Grids   [][]float64 `json:"grids"`
}

type place struct {
	Name string  `json:"n"`
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
}

// leaf is a door: where it hangs and where it shuts.
type leaf struct {
	Name string     `json:"n"`
	A    [2]float64 `json:"a"`
	B    [2]float64 `json:"b"`
	// Solid is its index in a shot's shut.
	Solid int `json:"s"`
}

type hanging struct {
	Name string     `json:"n"`
	Kind string     `json:"k"` // window, hole, mirror, glow
	A    [2]float64 `json:"a"`
	B    [2]float64 `json:"b"`
}

type mirror struct {
	Name string     `json:"n"`
	A    [2]float64 `json:"a"`
	B    [2]float64 `json:"b"`
	Z    [2]float64 `json:"z"`
}

// figure is the stand-in in a posture: rings of five numbers, and traits of six a
// point with a leading 1 for the head, 0 for the trunk.
type figure struct {
	Tall   float64     `json:"tall"` // part of the stature it stands up
	Limbs  [][]float64 `json:"limbs"`
	Head   int         `json:"head"`
	Trunk  int         `json:"trunk"`
	Traits [][]float64 `json:"traits"`
}

type person struct {
	Name string `json:"n"`
	Crew bool   `json:"crew,omitempty"`
	Role string `json:"role,omitempty"`
}

// department is who is given which lines of the take.
type department struct {
	ID    string   `json:"id"`
	Title string   `json:"title"`
	Lines []int    `json:"lines"`
	Notes []string `json:"notes,omitempty"`
}

// shot is the take, or a pickup on its own clock.
type shot struct {
	Title    string           `json:"title"`
	Frames   int              `json:"frames"`
	Channels []channel        `json:"channels"`
	Bodies   []mover          `json:"bodies"`
	Cameras  []camera         `json:"cameras"`
	Shut     map[int][][2]int `json:"shut"` // by solid: when a door stands in the way
	Beats    []beat           `json:"beats"`
	Lines    []line           `json:"lines"`
	Cuts     [][2]int         `json:"cuts"` // frame, camera
	Lights   []lights         `json:"lights"`
	Findings []finding        `json:"findings"`
	Never    *never           `json:"never,omitempty"`
}

// mover is something that moves; x, y, z, heading and height are channels.
type mover struct {
	Name    string    `json:"n"`
	Of      string    `json:"of,omitempty"` // where it is a part of something of another name
	Kind    string    `json:"k"`
	Radius  float64   `json:"r,omitempty"`
	Polygon []float64 `json:"p,omitempty"`
	At      [5]int    `json:"t"`
	// Postures are the frames from which on a posture is held, for a person.
	Postures [][2]int `json:"b,omitempty"`
	Stature  float64  `json:"h,omitempty"`
}

// camera's channels are x, y, z, pan, tilt, focal length and focus.
type camera struct {
	Name  string     `json:"n"`
	Gate  [2]float64 `json:"gate"` // mm
	Rolls [][2]int   `json:"rolls"`
	Own   [][3]int   `json:"own,omitempty"` // body, from, to
	At    [7]int     `json:"t"`
	Roll  int        `json:"roll"` // channel; -1 where it never leans
	Held  []since    `json:"held"` // what carries it and who has it
	// Shows are the frames in which enough of a body shows to name it: body, from, to.
	Shows [][3]int `json:"shows,omitempty"`
	Lens  []since  `json:"lens"`
}

// since is words that hold from a frame on.
type since struct {
	From int    `json:"f"`
	Text string `json:"t"`
}

type beat struct {
	Title string `json:"n"`
	From  int    `json:"f"`
	To    int    `json:"to"` // its last frame
	Cue   string `json:"cue"`
}

// line is something to do, in order of time.
type line struct {
	From float64 `json:"f"` // s
	To   float64 `json:"to"`
	Who  string  `json:"who,omitempty"`
	What string  `json:"what"`
	Cue  string  `json:"cue"`
	Text string  `json:"text"`
	Kind string  `json:"k"`
	Beat int     `json:"beat"`
	Open bool    `json:"open,omitempty"`
}

type lights struct {
	Name  string       `json:"n"`
	Count int          `json:"count"`
	Knots [][2]float64 `json:"knots"` // s, per cent
	At    [][2]float64 `json:"at"`
}

type finding struct {
	Code     string   `json:"code"`
	Severity string   `json:"sev"`
	Message  string   `json:"msg"`
	Where    string   `json:"at"` // file:line
	Subject  string   `json:"who,omitempty"`
	Camera   string   `json:"cam,omitempty"`
	Frames   [][2]int `json:"frames,omitempty"`
	Worst    int      `json:"worst"`
	Notes    []string `json:"notes,omitempty"`
	Fixes    []string `json:"fixes,omitempty"`
}

// never is the floor on which somebody standing is never seen, as runs along
// rows: row, first column, how many.
type never struct {
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
	Cell float64 `json:"cell"`
	Runs []int   `json:"runs"`
	Area float64 `json:"area"`
}

// r4 rounds to a tenth of a millimetre, and never to -0.
func r4(v float64) float64 { return math.Round(v*1e4)/1e4 + 0 }

func flat(poly []geom.Vec) []float64 {
	out := make([]float64, 0, 2*len(poly))
	for _, v := range poly {
		out = append(out, r4(v.X), r4(v.Y))
	}
	return out
}

func pair(v geom.Vec) [2]float64 { return [2]float64{r4(v.X), r4(v.Y)} }
