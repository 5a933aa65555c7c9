// Package staging puts the set and the tracks together into the scene that
// sight looks at: what every person, vehicle, rig, camera, card and lamp is as
// upright solids, frame by frame, and which of them belong to which camera.
//
// It decides nothing about what may be seen; it only says what is there.
package staging

import (
	"runtime"
	"slices"

	"longhand/lang/geom"
	"longhand/lang/lanes"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// Stage is the scene with the way back from its parts to the plan.
type Stage struct {
	Scene *sight.Scene
	// Things has, for each body of the scene, the thing in the plan it is a
	// part of: *plan.Person, *plan.Vehicle, *plan.Rig, *plan.Camera, *plan.Card,
	// *plan.Hole or *plan.PlacedLamp's lamp.
	Things []plan.Thing
	// Cameras has, for each camera of the scene, the one in the plan.
	Cameras []*plan.Camera
	// Pieces is the set.
	Pieces []solid.Piece
	// Hides is the cameras in the set, with the bodies that stand for them.
	Hides []Hide
}

// Hide is a camera behind a lens hole.
type Hide struct {
	Camera *plan.Camera
	Action *plan.Action
	Hole   *plan.Hole
	Card   *plan.Card // nil: the lens is bare
	Plugs  []int      // bodies that fill the hole for every other camera
}

// Build makes the scene of a resolved take, on all processors.
func Build(p *plan.Plan, t *motion.Tracks) *Stage { return BuildOn(p, t, 0, nil) }

// BuildOn is Build on so many goroutines; 0 for one a processor. Poses are kept in
// the room where there is one.
func BuildOn(p *plan.Plan, t *motion.Tracks, workers int, room *Room) *Stage {
	b := &builder{plan: p, tracks: t, room: room, stage: &Stage{Scene: &sight.Scene{
		Rate: t.Rate, Frames: t.Frames, Aspect: p.Take.Aspect,
	}}, times: make([]units.Seconds, t.Frames)}
	for f := range b.times {
		b.times[f] = t.Rate.Time(units.Frame(f))
	}
	b.set()
	b.people()
	b.vehicles()
	b.rigs()
	b.lamps()
	b.holes()
	b.cameras()
	b.fill(workers)
	boxes := make([][]geom.Box, len(b.stage.Scene.Bodies))
	for i := range boxes {
		b.later = append(b.later, func() { boxes[i] = boxesOf(&b.stage.Scene.Bodies[i]) })
	}
	b.fill(workers)
	for i := range b.stage.Scene.Cameras {
		c := &b.stage.Scene.Cameras[i]
		b.later = append(b.later, func() { c.Own = tidy(append(c.Own, b.holding(c, boxes)...)) })
	}
	b.fill(workers)
	return b.stage
}

// Body finds the bodies that a thing of the plan consists of.
func (s *Stage) Body(thing plan.Thing) []int {
	var out []int
	for i, t := range s.Things {
		if t == thing {
			out = append(out, i)
		}
	}
	return out
}

type builder struct {
	plan   *plan.Plan
	tracks *motion.Tracks
	stage  *Stage
	times  []units.Seconds // of the frames
	room   *Room
	// later is what is done for every frame, such as to say where bodies and
	// lenses are: none looks at what another does.
	later []func()
}

// fill does what was left for later.
func (b *builder) fill(workers int) {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	lanes.Do(len(b.later), workers, func(i int) { b.later[i]() })
	b.later = nil
}

// move is to put the parts of something, of which i is the first body, where its
// track is at every frame.
func (b *builder) move(i int, parts []part, t *motion.Track) {
	b.later = append(b.later, func() {
		tracks := make([][]sight.Pose, len(parts))
		for n := range tracks {
			tracks[n] = b.room.track(len(b.times))
		}
		b.sampled(t, func(from int, poses []motion.Pose) {
			for n := range parts {
				part, track := &parts[n], tracks[n][from:from+len(poses)]
				part.place(track, poses)
			}
		})
		for n := range tracks {
			b.stage.Scene.Bodies[i+n].Track = settle(tracks[n])
		}
	})
}

// sampled calls for many frames at a time, from one on, with where a track is at
// them.
func (b *builder) sampled(t *motion.Track, do func(from int, poses []motion.Pose)) {
	var poses [256]motion.Pose
	for from := 0; from < len(b.times); from += len(poses) {
		times := b.times[from:min(from+len(poses), len(b.times))]
		t.Sample(times, poses[:len(times)])
		do(from, poses[:len(times)])
	}
}

// add puts a body into the scene and returns its index.
func (b *builder) add(thing plan.Thing, body sight.Body) int {
	b.stage.Scene.Bodies = append(b.stage.Scene.Bodies, body)
	b.stage.Things = append(b.stage.Things, thing)
	return len(b.stage.Scene.Bodies) - 1
}

// frames calls for each frame of the take with its time.
func (b *builder) frames(do func(f units.Frame, t units.Seconds)) {
	for f, t := range b.times {
		do(units.Frame(f), t)
	}
}

// settle keeps one pose of a body that never moves.
func settle(track []sight.Pose) []sight.Pose {
	for i := 1; i < len(track); i++ {
		if track[i] != track[0] {
			return track
		}
	}
	return slices.Clone(track[:min(1, len(track))])
}
