package body

import (
	"fmt"
	"strings"

	"longhand/lang/units"
)

// Class is the kind of a camera support.
type Class int

// The classes of rig a plan can name. The zero value is none.
const (
	NoClass  Class = iota
	BodyRig        // worn: vest, arm and sled
	Gimbal         // stabilised, held in the hands
	Handheld       // on the shoulder or in the hands
	Sticks         // a tripod
	Dolly          // on wheels or track, pushed by a grip, ridden by the operator
	Slider         // a short rail on feet
	Jib            // a light arm, worked from the ground
	Crane          // a large arm; with seats it carries people
	Cart           // driven or pushed, carries operators
	Cable          // hung from a wire
	Hide           // a camera fixed behind a hole in the set
)

var classNames = [...]string{"", "body-rig", "gimbal", "handheld", "sticks", "dolly", "slider", "jib", "crane", "cart", "cable", "hide"}

// Classes lists the classes in order.
func Classes() []Class {
	return []Class{BodyRig, Gimbal, Handheld, Sticks, Dolly, Slider, Jib, Crane, Cart, Cable, Hide}
}

// String is the word for it; empty for NoClass.
func (c Class) String() string {
	if c < 0 || int(c) >= len(classNames) {
		return ""
	}
	return classNames[c]
}

// ParseClass reads a class's word.
func ParseClass(word string) (Class, error) {
	for _, c := range Classes() {
		if c.String() == word {
			return c, nil
		}
	}
	return NoClass, fmt.Errorf("unknown class of rig %q; the classes are %s", word, strings.Join(classNames[1:], ", "))
}

// Crewing is how an operator belongs to a rig.
type Crewing int

const (
	Unattended Crewing = iota // nobody stands by it: remote or fixed
	Beside                    // worked by someone standing at it
	Worn                      // an operator walks with it: their feet are its wheels
	Ridden                    // the operator rides on it
)

var crewingNames = [...]string{"unattended", "worked from beside it", "worn or held by the operator", "ridden by the operator"}

func (c Crewing) String() string {
	if c < 0 || int(c) >= len(crewingNames) {
		return ""
	}
	return crewingNames[c]
}

// Payload is what a rig is built to carry, the camera with lens and
// accessories.
type Payload struct {
	Min     units.Kilograms // lighter than this it is not steady
	Typical units.Kilograms
	Max     units.Kilograms
	Plate   bool // the maker's plate decides, whatever Max says
}

// Rig is what is taken for granted about a class of rig.
type Rig struct {
	Class   Class
	Crewing Crewing

	Forward, Back Limit[units.MetresPerSecond] // Hard 0: does not travel
	Rise          Limit[units.MetresPerSecond] // of the lens, up and down
	Accel         Limit[units.MetresPerSecond2]
	Pan           Limit[units.DegreesPerSecond] // mechanically; what the picture bears is slower
	Radius        Limit[units.Metres]           // of a curve; 0: turns on the spot

	Length, Width units.Metres // of the footprint, along and across its travel; for a worn rig, of the rig alone
	Height        units.Metres // of the rig as a solid thing, without operator
	Clear         units.Metres // least width of a way for it, typical
	ClearHard     units.Metres
	Doorway       units.Metres // least clear width of a doorway
	Reach         units.Metres // from its base to the lens, sideways
	Seats         int

	Lens            units.Metres // height of the lens above the floor
	LensLow, LensUp units.Metres // lowest and highest lens

	Payload Payload
}

// Travels says whether the rig can move over the floor at all.
func (r Rig) Travels() bool { return r.Forward.Hard > 0 }

// ArmPlatform is how long and how wide the platform is at the end of a crane's
// arm, for whoever rides it: common practice, no source.
const ArmPlatform units.Metres = 0.9

// WithRider is the rig with a person aboard an arm: slower, as people are
// carried. Other rigs are returned unchanged.
func (r Rig) WithRider() Rig {
	if r.Class != Crane {
		return r
	}
	r.Crewing = Ridden
	r.Forward = speedLimit(0.3, 0.5)
	r.Back = r.Forward
	r.Rise = r.Forward
	r.Accel = Limit[units.MetresPerSecond2]{Typical: 0.3, Hard: 0.3}
	r.Seats = max(r.Seats, 1)
	return r
}

// BackSpotter is the backward speed above which someone must spot the operator
// whatever the distance, and the distance from which they must at any speed.
const (
	BackSpotterSpeed    units.MetresPerSecond = 0.8
	BackSpotterDistance units.Metres          = 2
)

// RunLimit is the speed of a worn rig that only a trained runner with a spotter
// and a clear lane goes up to.
const RunLimit units.MetresPerSecond = 3

// TrackGauge is the usual distance between the rails of a dolly track.
const TrackGauge units.Metres = 0.62

func speedLimit(typical, hard units.MetresPerSecond) Limit[units.MetresPerSecond] {
	return Limit[units.MetresPerSecond]{Typical: typical, Hard: hard}
}

func (l *list) rig(r Rig) {
	name := "rig " + r.Class.String() + ", "
	add := func(what, format string, args ...any) { l.add(Practice, name+what, format, args...) }
	add("operator", "%s", r.Crewing)
	add("speed", "%s", l.pace(r.Forward))
	if r.Travels() {
		add("speed backwards", "%s", l.pace(r.Back))
		add("speeding up and braking", "%s, limit %s", l.accel(r.Accel.Typical), l.accel(r.Accel.Hard))
	}
	if r.Radius.Hard > 0 {
		add("curve", "radius %s, least %s", l.length(r.Radius.Typical), l.length(r.Radius.Hard))
	}
	if r.Pan.Hard > 0 {
		add("pan", "%s, limit %s", r.Pan.Typical, r.Pan.Hard)
	}
	if r.Rise.Hard > 0 {
		add("rise", "%s", l.pace(r.Rise))
	}
	add("size", "%s x %s, %s high", l.length(r.Length), l.length(r.Width), l.length(r.Height))
	if r.Clear > 0 {
		add("way", "%s wide, least %s; doorway %s", l.length(r.Clear), l.length(r.ClearHard), l.length(r.Doorway))
	}
	if r.Reach > 0 {
		add("reach", "%s", l.length(r.Reach))
	}
	if r.Seats > 0 {
		add("seats", "%d", r.Seats)
	}
	add("lens height", "%s, from %s to %s", l.length(r.Lens), l.length(r.LensLow), l.length(r.LensUp))
	if p := r.Payload; p.Max > 0 {
		plate := ""
		if p.Plate {
			plate = "; the maker's plate decides"
		}
		from := "up to"
		if p.Min > 0 {
			from = p.Min.String() + " to"
		}
		add("carries", "%s %s, limit %s%s", from, p.Typical, p.Max, plate)
	}
}
