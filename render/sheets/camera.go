package sheets

import (
	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

func (m *maker) camera() ([]*Table, []safety.Topic) {
	topics := []safety.Topic{safety.Weights}
	if len(m.take.tracks.Carries) > 0 {
		topics = append(topics, safety.Worn)
	}
	hides := m.hides()
	if len(hides.Rows) > 0 {
		topics = append(topics, safety.Hiding)
	}
	if len(m.p.Kit.Cameras) == 0 {
		topics = nil
	}
	out := []*Table{m.builds(), m.lenses(), m.operating(), m.sizes()}
	return append(append(out, m.focus()...), hides), topics
}

// builds is every camera with its lens on every rig, and whether the rig carries
// it.
func (m *maker) builds() *Table {
	t := table("builds", "Builds", beatColumn(),
		col("camera", "camera", "name"), col("lens", "lens", "name and focal length"), col("rig", "rig", "name and class"), col("operator", "operator", "who has it"),
		clockColumns(), untilColumns("until"),
		measure("weight", "weight", "kg", "camera and lens"), measure("carries_min", "rig carries from", "kg", "lighter than this it is not steady"),
		measure("carries_max", "to", "kg", "the rig's limit"))
	t.Empty = "No camera is on a rig in this plan."
	for _, p := range m.parts {
		for _, l := range p.tracks.Loads {
			if l.Rig == nil || p.pickup != nil && !p.has(l.Action) {
				continue
			}
			low, high := carries(l.Rig)
			lens := ""
			if l.Lens != nil {
				lens = l.Lens.Name + ", " + focals(l.Lens)
			}
			t.add(l.Action, p.beatAt(l.Start), cells(word(name(l.Camera)), word(lens), word(l.Rig.Name+", "+l.Rig.Class), word(name(l.Operator))),
				m.clock(l.Start), m.until(l.End), cells(m.kilograms(l.Weight), m.optional(low), m.optional(high)))
			if l.Weight > 0 && (l.Camera.Weight == 0 || l.Lens != nil && l.Lens.Weight == 0) {
				t.note("a weight counts only what the plan gives: " + name(l.Camera) + " or its lens has none")
			}
		}
	}
	if len(t.Rows) > 0 {
		t.note("batteries, matte box, motors, video and cables are not in the weight; the maker's plate decides what a rig carries")
	}
	return t
}

func (m *maker) optional(kg units.Kilograms) Cell {
	if kg <= 0 {
		return word("")
	}
	return m.kilograms(kg)
}

// carries is what a rig is for, by the plan or its class.
func carries(r *plan.Rig) (low, high units.Kilograms) {
	low, high = r.CarriesMin, r.CarriesMax
	if class, err := body.ParseClass(r.Class); err == nil && high == 0 {
		load := body.RigOf(class).Payload
		low, high = load.Min, load.Max
	}
	return low, high
}

func focals(l *plan.Lens) string {
	if l.Zoom() {
		return units.Number(float64(l.Short), 1) + "–" + l.Long.String()
	}
	return l.Short.String()
}

// lenses is what is fitted when.
func (m *maker) lenses() *Table {
	t := table("lenses", "Lenses and stops", beatColumn(), clockColumns(), cueColumn(),
		col("camera", "camera", "name"), col("lens", "lens", "name"), measure("focal", "focal length", "mm", "as fitted; of a zoom, where it starts"),
		measure("stop", "stop", "T", "as planned"), measure("angle", "angle of view", "deg", "across the frame, at infinity"),
		measure("close", "close focus", "m", "nearest from the lens"))
	t.Empty = "No camera is given a lens in this plan."
	for _, p := range m.parts {
		for _, ct := range p.cameras() {
			for _, f := range ct.Fits {
				at, cue := f.At, "as the take begins"
				if p.has(f.Action) {
					at, cue = p.clock.Of(f.Action).Start, p.words(f.Action)
				}
				across, _, _ := ct.Frame.Angles(f.Focal)
				stop, close := word("not given"), word("not given")
				if f.Stop > 0 {
					stop = number(float64(f.Stop), 2, f.Stop.String())
				}
				if f.Lens.Close > 0 {
					close = m.length(f.Lens.Close)
				}
				t.add(f.Action, p.beatAt(at), m.clock(at), cells(word(cue), word(ct.Camera.Name), word(f.Lens.Name), number(float64(f.Focal), 2, f.Focal.String()),
					stop, number(float64(across), 2, across.String()), close))
			}
		}
	}
	return t
}

// operating is everything a camera is told to do, in order of time.
func (m *maker) operating() *Table {
	t := table("operating", "Operating", beatColumn(), clockColumns(), cueColumn(),
		col("camera", "camera", "name"), col("operator", "operator", "who has it"), col("does", "does", "the line in full"),
		col("where", "from", "where the lens is as it begins"), col("needs", "needs", "what it asks of operator, head and rig"), slipColumns())
	t.Empty = "No camera does anything in this plan."
	for _, p := range m.parts {
		lens := p.tracks.LensDemands()
		for _, a := range p.inTime() {
			c := cameraOf(a)
			if c == nil {
				continue
			}
			if _, cut := a.Deed.(*plan.Cut); cut {
				continue
			}
			i := p.clock.Of(a)
			operator, where := "", ""
			if ct := p.tracks.Camera(c); ct != nil {
				operator, where = name(ct.Operator(i.Start+1e-6)), m.where(p, c, i.Start)
			}
			t.add(a, p.beat(a), m.clock(i.Start), p.cue(a), cells(word(c.Name), word(operator), word(m.says(a)), word(where), word(m.needs(p, a, lens))), p.slip(a))
		}
	}
	return t
}

// cameraOf is the camera a line is about.
func cameraOf(a *plan.Action) *plan.Camera {
	c, _ := clock.SubjectOf(a).(*plan.Camera)
	if c == nil {
		if d, ok := a.Deed.(*plan.Cut); ok {
			return d.Camera
		}
	}
	return c
}

// needs is what a line asks of bodies, rigs and rings: the gap it has to close
// first, and its peaks.
func (m *maker) needs(p *part, a *plan.Action, lens []motion.Demand) string {
	var out []string
	for _, j := range p.tracks.Joins {
		if j.Action == a && j.Gap > 0.05 {
			out = append(out, m.metres(j.Gap)+" to close, "+(j.Done-j.Start).String())
		}
	}
	for _, h := range p.tracks.Handoffs {
		if h.Action == a {
			out = append(out, (h.End-h.Start).String()+": "+h.Way.How)
		}
	}
	for _, list := range [][]motion.Demand{p.tracks.Demands, lens} {
		for _, d := range list {
			if d.Action != a || d.Peak <= 0 {
				continue
			}
			if s := m.demand(d); s != "" {
				out = append(out, s)
			}
		}
	}
	s := ""
	for i, o := range out {
		if i > 0 {
			s += "; "
		}
		s += o
	}
	return s
}

// demand says a peak, and that it is over what is usual or possible.
func (m *maker) demand(d motion.Demand) string {
	s := ""
	switch d.Quantity {
	case motion.Speed:
		s = "up to " + units.MetresPerSecond(d.Peak).Text(m.sys)
	case motion.BackSpeed:
		s = "backwards up to " + units.MetresPerSecond(d.Peak).Text(m.sys)
	case motion.PanRate:
		s = "pan " + units.DegreesPerSecond(d.Peak).String()
	case motion.TiltRate:
		s = "tilt " + units.DegreesPerSecond(d.Peak).String()
	case motion.RiseRate:
		s = "rise " + units.MetresPerSecond(d.Peak).Text(m.sys)
	case motion.FocusRate:
		s = "focus " + units.MetresPerSecond(d.Peak).Text(m.sys)
	default:
		return ""
	}
	switch {
	case d.Over():
		s += " (over its limit)"
	case d.Peak > d.Typical+1e-6 && d.Typical > 0:
		s += " (brisk)"
	case d.Peak < 0.005:
		return ""
	}
	return s
}
