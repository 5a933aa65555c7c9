package page

import (
	"context"
	"math"
	"sort"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/lighting"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/staging"
	"longhand/lang/units"
)

// shotMaker collects what is known of a take, or of a pickup.
type shotMaker struct {
	out    *shot
	ch     channels
	plan   *plan.Plan
	tracks *motion.Tracks
	stage  *staging.Stage
	scene  *sight.Scene
	seen   *sight.Report
}

func gatherShot(ctx context.Context, title string, p *plan.Plan, t *motion.Tracks, s *staging.Stage, seen *sight.Report) (*shot, error) {
	m := &shotMaker{plan: p, tracks: t, stage: s, scene: s.Scene, seen: seen, out: &shot{
		Title: title, Frames: t.Frames, Shut: map[int][][2]int{},
		Bodies: []mover{}, Cameras: []camera{}, Beats: []beat{}, Lines: []line{}, Cuts: [][2]int{}, Lights: []lights{}, Findings: []finding{},
	}}
	m.bodies()
	m.cameras()
	for i, solid := range m.scene.Solids {
		if solid.Shut != nil {
			m.out.Shut[i] = runs(solid.Shut)
		}
	}
	m.beats(title)
	m.lines()
	for _, c := range t.Cuts {
		for i, cam := range s.Cameras {
			if cam == c.Camera {
				m.out.Cuts = append(m.out.Cuts, [2]int{m.frame(c.At), i})
			}
		}
	}
	m.lights()
	if err := m.never(ctx); err != nil {
		return nil, err
	}
	m.out.Channels = append([]channel{}, m.ch.list...)
	return m.out, nil
}

// frame is the first frame taken at or after a time, within the take.
func (m *shotMaker) frame(t units.Seconds) int {
	return max(0, min(int(m.tracks.Rate.From(t)), m.tracks.Frames-1))
}

func runs(list []sight.Frames) [][2]int {
	out := [][2]int{}
	for _, r := range list {
		out = append(out, [2]int{int(r.From), int(r.To)})
	}
	return out
}

// values is a number a frame, or one where there is only one.
func values(n int, at func(i int) float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = at(i)
	}
	return out
}

func (m *shotMaker) bodies() {
	for i := range m.scene.Bodies {
		b := &m.scene.Bodies[i]
		n := len(b.Track)
		out := mover{Name: b.Name, Kind: b.Kind, Radius: r4(b.Radius), Polygon: flat(b.Polygon)}
		if b.Of != b.Name {
			out.Of = b.Of
		}
		out.At = [5]int{
			m.ch.add(lengthStep, values(n, func(i int) float64 { return b.Track[i].X })),
			m.ch.add(lengthStep, values(n, func(i int) float64 { return b.Track[i].Y })),
			m.ch.add(lengthStep, values(n, func(i int) float64 { return b.Track[i].Z })),
			m.ch.angles(values(n, func(i int) float64 { return b.Track[i].Heading })),
			m.ch.add(lengthStep, values(n, func(i int) float64 { return max(0, b.Track[i].Height) })),
		}
		if who, ok := m.stage.Things[i].(*plan.Person); ok {
			if t := m.tracks.Body(who); t != nil {
				out.Stature = r4(float64(t.Stature))
				out.Postures = m.postures(t)
			}
		}
		m.out.Bodies = append(m.out.Bodies, out)
	}
}

func (m *shotMaker) postures(t *motion.Track) [][2]int {
	var out [][2]int
	for f := range m.tracks.Frames {
		p := int(t.Posture(m.tracks.Rate.Time(units.Frame(f))))
		if len(out) == 0 || out[len(out)-1][1] != p {
			out = append(out, [2]int{f, p})
		}
	}
	return out
}

func (m *shotMaker) cameras() {
	names := map[string]int{}
	for i := range m.scene.Bodies {
		names[m.scene.Bodies[i].Name] = i
	}
	for i := range m.scene.Cameras {
		c := &m.scene.Cameras[i]
		n := len(c.Track)
		out := camera{Name: c.Name, Gate: [2]float64{r4(c.Width), r4(c.Height)}, Rolls: runs(c.Rolls), Roll: -1}
		for _, o := range c.Own {
			out.Own = append(out.Own, [3]int{names[o.Body], int(o.From), int(o.To)})
		}
		out.At = [7]int{
			m.ch.add(lengthStep, values(n, func(i int) float64 { return c.Track[i].X })),
			m.ch.add(lengthStep, values(n, func(i int) float64 { return c.Track[i].Y })),
			m.ch.add(lengthStep, values(n, func(i int) float64 { return c.Track[i].Z })),
			m.ch.angles(values(n, func(i int) float64 { return c.Track[i].Pan })),
			m.ch.angles(values(n, func(i int) float64 { return c.Track[i].Tilt })),
			m.ch.add(focalStep, values(n, func(i int) float64 { return c.Track[i].Focal })),
			m.ch.add(focusStep, values(n, func(i int) float64 {
				if f := c.Track[i].Focus; f < farthest && !math.IsNaN(f) {
					return f
				}
				return farthest
			})),
		}
		leans := false
		for _, v := range c.Track {
			leans = leans || v.Roll != 0
		}
		if leans {
			out.Roll = m.ch.angles(values(n, func(i int) float64 { return c.Track[i].Roll }))
		}
		if t := m.tracks.Camera(m.stage.Cameras[i]); t != nil {
			out.Held, out.Lens = m.held(t), m.lens(t)
		}
		for _, r := range m.seen.Sight {
			if r.Camera != i {
				continue
			}
			for _, f := range r.Showing(showing) {
				out.Shows = append(out.Shows, [3]int{r.Body, int(f.From), int(f.To)})
			}
		}
		m.out.Cameras = append(m.out.Cameras, out)
	}
}

// showing is the part of a body that must be uncovered for the page to name it in
// a frame: a fiftieth.
const showing = 0.02

// held says what carries a camera and who has it.
func (m *shotMaker) held(t *motion.CameraTrack) []since {
	out := []since{}
	for _, h := range t.Holds {
		var words []string
		switch {
		case h.Hide != nil && h.Hide.Hole != nil:
			words = append(words, "behind "+h.Hide.Hole.Name)
		case h.Rig != nil:
			words = append(words, "on "+h.Rig.Name)
		}
		if h.Operator != nil {
			words = append(words, "with "+h.Operator.Name)
		}
		out = append(out, since{m.frame(h.Start), strings.Join(words, ", ")})
	}
	return out
}

func (m *shotMaker) lens(t *motion.CameraTrack) []since {
	out := []since{}
	for _, f := range t.Fits {
		text := f.Lens.Name
		if f.Stop > 0 {
			text += ", " + f.Stop.String()
		}
		out = append(out, since{m.frame(f.At), text})
	}
	return out
}

func (m *shotMaker) beats(title string) {
	for _, s := range m.tracks.Clock.Spans() {
		from := m.frame(s.From)
		b := beat{Title: title, From: from, To: m.tracks.Frames - 1}
		if s.Beat != nil {
			b.Title, b.Cue = s.Beat.Title, m.tracks.Clock.BeatWords(s.Beat)
			b.To = int(m.tracks.Rate.From(s.To)) - 1
		}
		b.To = max(from, min(b.To, m.tracks.Frames-1))
		m.out.Beats = append(m.out.Beats, b)
	}
	if n := len(m.out.Beats); n > 0 {
		m.out.Beats[n-1].To = m.tracks.Frames - 1
	}
}

// inTime is a clock's lines by when they begin, then as the text has them.
func inTime(c *clock.Clock) []*plan.Action {
	out := append([]*plan.Action(nil), c.Lines()...)
	sort.SliceStable(out, func(i, j int) bool { return c.Of(out[i]).Start < c.Of(out[j]).Start })
	return out
}

func (m *shotMaker) lines() {
	c := m.tracks.Clock
	for _, a := range inTime(c) {
		i := c.Of(a)
		l := line{
			From: r4(float64(i.Start)), To: r4(float64(i.End)), Who: a.Who(), What: clock.Describe(a), Cue: c.Words(a),
			Text: strings.TrimSpace(a.Span.Text()), Kind: kindOf(a.Deed), Open: i.Open,
		}
		if math.IsInf(l.To, 0) || math.IsNaN(l.To) {
			l.To = l.From
		}
		for k, b := range m.out.Beats {
			if m.frame(i.Start) >= b.From {
				l.Beat = k
			}
		}
		m.out.Lines = append(m.out.Lines, l)
	}
}

// kindOf groups lines by what one looks or listens for.
func kindOf(d plan.Deed) string {
	switch d.(type) {
	case *plan.Say:
		return "says"
	case *plan.Cue:
		return "light"
	case *plan.Cut:
		return "cut"
	case *plan.Handoff:
		return "handoff"
	case *plan.Mount, *plan.Fit, *plan.See, *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel, *plan.Lift, *plan.Swing, *plan.Rack, *plan.Hide, *plan.Roll:
		return "camera"
	case *plan.Operate:
		return "door"
	}
	return "moves"
}

func (m *shotMaker) lights() {
	l := lighting.Of(m.plan, m.tracks.Clock)
	for i := range l.Units {
		u := &l.Units[i]
		out := lights{Name: u.Name, Count: u.Count, At: [][2]float64{}}
		knot := func(t units.Seconds) {
			out.Knots = append(out.Knots, [2]float64{r4(float64(t)), r4(float64(u.Level(t)))})
		}
		knot(0)
		for _, t := range u.Curve.Knots() {
			if t > 0 && t < l.Length {
				const before = 1e-6 // a step has two levels at one time
				if now, then := u.Level(t), u.Level(t-before); math.Abs(float64(now-then)) > 0.5 {
					out.Knots = append(out.Knots, [2]float64{r4(float64(t)), r4(float64(then))})
				}
				knot(t)
			}
		}
		knot(l.Length)
		for _, at := range u.At {
			out.At = append(out.At, [2]float64{r4(at.X), r4(at.Y)})
		}
		m.out.Lights = append(m.out.Lights, out)
	}
}

// neverCell is the side of a cell of the never-seen floor: half a pace.
const neverCell = 0.4

func (m *shotMaker) never(ctx context.Context) error {
	rolls := false
	for _, c := range m.scene.Cameras {
		rolls = rolls || len(c.Rolls) > 0
	}
	if !rolls {
		return nil
	}
	f, err := sight.Floor(ctx, m.scene, sight.FloorOptions{Cell: neverCell, Height: sight.Standing})
	if err != nil {
		return err
	}
	out := &never{X: r4(f.Origin.X), Y: r4(f.Origin.Y), Cell: f.Cell, Runs: []int{}, Area: math.Round(f.Area())}
	for row := range f.Rows {
		for col := 0; col < f.Columns; col++ {
			if !f.Never(col, row) {
				continue
			}
			from := col
			for col < f.Columns && f.Never(col, row) {
				col++
			}
			out.Runs = append(out.Runs, row, from, col-from)
		}
	}
	m.out.Never = out
	return nil
}
