package scout

import (
	"errors"
	"fmt"

	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/staging"
	"longhand/lang/units"
)

// Take is a take as it has been worked out.
type Take struct {
	Plan   *plan.Plan
	Tracks *motion.Tracks
	Stage  *staging.Stage
}

// Ask is what to look for.
type Ask struct {
	Take
	Frame  optics.Frame      // of the sensor
	Focal  units.Millimetres //
	Stop   units.Stop        // for the size of the hole
	Close  units.Metres      // nearest focus; 0 for none
	Sees   []plan.Thing      // people, vehicles, rigs
	Frames sight.Frames      // of the beat
	// Except is the camera that is to hide: that it is somewhere else in the plan
	// as it is, and what it sees there, counts for nothing. Nil for a new one.
	Except  *plan.Camera
	Like    *plan.Camera // whose sensor a new one has; for the lines to paste only
	Walls   []*plan.Wall // to look on
	Floor   bool         // look on the floor too
	Count   int          // places to list; 0 for 8
	Workers int          // goroutines; 0 for one a processor
	// Progress is told how far it is, from time to time.
	Progress func(done, all int)
}

// hideStop is the stop taken where neither the lens nor the plan gives one (common
// practice, no source).
const hideStop units.Stop = 2.8

// check says what makes an ask impossible.
func (a *Ask) check() error {
	switch {
	case a.Plan == nil || a.Tracks == nil || a.Stage == nil:
		return errors.New("a take that has not been worked out can't be scouted")
	case !(a.Frame.Width > 0) || !(a.Frame.Height > 0):
		return errors.New("the camera's sensor has no size")
	case !(a.Focal > 0):
		return errors.New("the lens has no focal length")
	case len(a.Sees) == 0:
		return errors.New("there is nobody to see")
	case a.Frames.From < 0 || a.Frames.To < a.Frames.From || int(a.Frames.To) >= a.Stage.Scene.Frames:
		return fmt.Errorf("frames %d to %d are not in a take of %d", a.Frames.From, a.Frames.To, a.Stage.Scene.Frames)
	case len(a.Walls) == 0 && !a.Floor:
		return errors.New("there is nowhere to look: no wall, and not the floor")
	}
	for _, t := range a.Sees {
		if len(a.Stage.Body(t)) == 0 {
			return fmt.Errorf("%s is nowhere in the take", t.ID().Name)
		}
	}
	return nil
}

func (a *Ask) stop() units.Stop {
	if a.Stop > 0 {
		return a.Stop
	}
	return hideStop
}

func (a *Ask) count() int {
	if a.Count > 0 {
		return a.Count
	}
	return 8
}

// seconds is how long so many frames are.
func (a *Ask) seconds(frames float64) units.Seconds {
	return units.Seconds(frames / a.Stage.Scene.Rate.PerSecond())
}
