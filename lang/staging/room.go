package staging

import (
	"sync"

	"longhand/lang/sight"
)

// Room is memory for the poses of one scene after another, for who makes many:
// what a scene was given is given again once the room is cleared. Its zero value
// is ready, and nil gives each scene memory of its own.
type Room struct {
	mu    sync.Mutex
	poses []sight.Pose
	used  int
}

// Clear takes back all that was given: no scene made with it may be used any more.
func (r *Room) Clear() { r.used = 0 }

// track is room for as many poses as there are frames. They may be any.
func (r *Room) track(frames int) []sight.Pose {
	if r == nil {
		return make([]sight.Pose, frames)
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.used+frames > len(r.poses) {
		// What is in use stays where it is.
		r.poses, r.used = make([]sight.Pose, max(2*len(r.poses), 16*frames)), 0
	}
	r.used += frames
	return r.poses[r.used-frames : r.used : r.used]
}
