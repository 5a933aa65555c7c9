package check

// Statements that findings stand at, in groups that several rules share. A rule's
// own list is held by its tests to what its findings stand at.
var (
	// going are the lines that take somebody, something or a camera along.
	going = []string{"beat walks", "beat spots", "beat leads", "beat beside", "beat circles", "beat counters", "beat pushes"}
	// beingThere are the lines that say where somebody, something or a camera is.
	beingThere = these(going, "beat stands", "beat rides", "beat leaves", "beat boards", "beat on", "beat hides", "beat handoff")
	// bodies are the lines that say that there is somebody or something.
	bodies = []string{"people crew", "kit camera", "kit rig", "kit vehicle"}
	// inTheWay are what stands in somebody's way, or across a view.
	inTheWay = []string{"set wall", "set door", "set window", "set pillar", "set block", "set plan"}
)

// these is a list with more to it.
func these(list []string, more ...string) []string {
	return append(append([]string(nil), list...), more...)
}
