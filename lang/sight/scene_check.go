package sight

import (
	"fmt"

	"longhand/lang/lanes"
)

// Check says what makes the scene impossible to look at: a track that is too
// short, a run of frames past the end, a number that is none. It is a mistake
// of the program that built the scene, not of a plan.
func (s *Scene) Check() error { return s.check(1, nil) }

// check is Check on so many goroutines, where a scene may be known to be sound.
func (s *Scene) check(workers int, known *Scene) error {
	found := make([]error, len(s.Bodies))
	lanes.Do(len(s.Bodies), workers, func(i int) { found[i] = s.checkBody(i, known) })
	for _, err := range found {
		if err != nil {
			return err
		}
	}
	return s.checkStill(known)
}

func (s *Scene) checkBody(i int, known *Scene) error {
	b := &s.Bodies[i]
	if n := len(b.Track); n != 1 && n < s.Frames {
		return fmt.Errorf("body %s: a track of %d frames in a take of %d", b.Name, n, s.Frames)
	}
	if b.Radius <= 0 && len(b.Polygon) < 3 {
		return fmt.Errorf("body %s: neither a radius nor a footprint", b.Name)
	}
	if known != nil {
		if k, ok := known.Body(b.Name); ok && same(known.Bodies[k].Track, b.Track) {
			return nil
		}
	}
	for f := range b.Track {
		if p := &b.Track[f]; !finite(p.X, p.Y, p.Z, p.Heading, p.Height) {
			return fmt.Errorf("body %s: no position at frame %d", b.Name, f)
		}
	}
	return nil
}

// same is whether two tracks are one, not only alike.
func same[T any](a, b []T) bool { return len(a) == len(b) && len(a) > 0 && &a[0] == &b[0] }

// checkStill is check for all but the bodies.
func (s *Scene) checkStill(known *Scene) error {
	within := func(what string, list []Frames) error {
		for _, r := range list {
			if r.From < 0 || r.To >= 0 && int(r.To) >= s.Frames && r.From <= r.To {
				return fmt.Errorf("%s: frames %d to %d of a take of %d", what, r.From, r.To, s.Frames)
			}
		}
		return nil
	}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		if n := len(c.Track); n != 1 && n < s.Frames {
			return fmt.Errorf("camera %s: a track of %d frames in a take of %d", c.Name, n, s.Frames)
		}
		if err := within("camera "+c.Name, c.Rolls); err != nil {
			return err
		}
		if known != nil {
			if k, ok := known.Camera(c.Name); ok && same(known.Cameras[k].Track, c.Track) {
				continue
			}
		}
		for f := range c.Track {
			if v := &c.Track[f]; !finite(v.X, v.Y, v.Z, v.Pan, v.Tilt, v.Roll, v.Focal) {
				return fmt.Errorf("camera %s: no view at frame %d", c.Name, f)
			}
		}
	}
	for i := range s.Solids {
		o := &s.Solids[i]
		if !finite(o.Z[0], o.Z[1]) {
			return fmt.Errorf("solid %s: no height", o.Name)
		}
		for _, p := range o.Polygon {
			if !finite(p.X, p.Y) {
				return fmt.Errorf("solid %s: a corner that is nowhere", o.Name)
			}
		}
	}
	return nil
}

func finite(values ...float64) bool {
	sum := 0.0 // what is no number, or none that is finite, times nought is no number
	for _, v := range values {
		sum += v * 0
	}
	return sum == 0
}
