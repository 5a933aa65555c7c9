package clock

import (
	"longhand/lang/plan"
)

// lane is the lines that use one faculty of one subject, in the order of the
// text.
type lane struct {
	use  Faculty
	acts []int32
}

// base is what moves a camera, over the take: the lines that set it on a rig,
// and its own lines that move it.
type base struct {
	camera *plan.Camera
	sets   []int32 // Mount, Handoff, Hide
	moves  []int32 // Keep, Beside, Circle, Travel
	// The moves of each rig and person it may be on.
	of map[plan.Thing][]int32
}

// findLanes sorts lines into lanes. Two light cues may run at once, and so may
// cuts: neither is a subject.
func (g *Graph) findLanes() {
	at := make(map[lineKey]int)
	for a, act := range g.acts {
		key := lineKey{SubjectOf(act), FacultyOf(act.Deed)}
		switch {
		case key.use == NoFaculty, key.use == Light, g.home[a] < 0:
			continue
		case key.who == nil && key.use != Edit:
			continue
		}
		i, ok := at[key]
		if !ok {
			i = len(g.lanes)
			at[key] = i
			g.lanes = append(g.lanes, lane{use: key.use})
		}
		g.lanes[i].acts = append(g.lanes[i].acts, int32(a))
	}
	g.findBases()
}

func (g *Graph) findBases() {
	at := make(map[*plan.Camera]int)
	for a, act := range g.acts {
		camera, ok := SubjectOf(act).(*plan.Camera)
		if !ok || g.home[a] < 0 {
			continue
		}
		i, ok := at[camera]
		if !ok {
			i = len(g.cameras)
			at[camera] = i
			g.cameras = append(g.cameras, base{camera: camera, of: make(map[plan.Thing][]int32)})
		}
		b := &g.cameras[i]
		switch d := act.Deed.(type) {
		case *plan.Mount:
			b.sets = append(b.sets, int32(a))
			g.movesOf(b, d.Rig, d.With)
		case *plan.Handoff:
			b.sets = append(b.sets, int32(a))
			g.movesOf(b, d.From, d.With)
			g.movesOf(b, d.To, d.With)
		case *plan.Hide:
			b.sets = append(b.sets, int32(a))
		case *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel:
			b.moves = append(b.moves, int32(a))
		}
	}
}

func (g *Graph) movesOf(b *base, rig *plan.Rig, person *plan.Person) {
	collect := func(t plan.Thing) {
		if _, ok := b.of[t]; ok {
			return
		}
		b.of[t] = nil
		for a, act := range g.acts {
			if _, ok := act.Deed.(*plan.Move); ok && act.Subject == t && g.home[a] >= 0 {
				b.of[t] = append(b.of[t], int32(a))
			}
		}
	}
	if rig != nil {
		collect(rig)
	}
	if person != nil {
		collect(person)
	}
}

// stretch is a time a camera spends on one rig with one operator.
type stretch struct {
	from, to float64
	rig      *plan.Rig
	operator *plan.Person
}

// stretches is where a camera is, in order of time; between the two rigs of a
// handoff it is on neither. What it is on first it is on from the first frame.
func (g *Graph) stretches(b *base, t []float64, sorted []int32) []stretch {
	var out []stretch
	var operator *plan.Person
	for i, a := range sorted {
		from, to := t[g.end(int(a))], t[takeEnd]
		if i == 0 {
			from = 0
		}
		if i+1 < len(sorted) {
			to = t[g.start(int(sorted[i+1]))]
		}
		s := stretch{from: from, to: max(from, to)}
		switch d := g.acts[a].Deed.(type) {
		case *plan.Mount:
			operator = d.With
			s.rig = d.Rig
		case *plan.Handoff:
			if i == 0 && d.From != nil { // never mounted: it comes from the first rig
				out = append(out, stretch{to: t[g.start(int(a))], rig: d.From})
				s.from = t[g.end(int(a))]
			}
			if d.With != nil {
				operator = d.With
			}
			s.rig = d.To
		}
		s.operator = operator
		out = append(out, s)
	}
	return out
}

// byTime copies lines into buf in order of their starts; those that start at
// once stay in the order of the text.
func (g *Graph) byTime(acts []int32, t []float64, buf []int32) []int32 {
	buf = append(buf[:0], acts...)
	for i := 1; i < len(buf); i++ { // nearly always sorted already
		for k := i; k > 0 && t[g.start(int(buf[k]))] < t[g.start(int(buf[k-1]))]; k-- {
			buf[k], buf[k-1] = buf[k-1], buf[k]
		}
	}
	return buf
}
