package sheets

import (
	"sort"

	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// shortStop is the least time that counts as parked.
const shortStop units.Seconds = 2

// leastSeen is the share of the frame, in per cent, below which nothing is taken
// to be seen: less than one picture element of a frame 4096 wide by 2214 high.
const leastSeen = 1e-5

// parking is where rigs and vehicles stand, for how long, and until when no lens
// sees them there.
func (m *maker) parking() *Table {
	t := table("parking", "Parked", col("who", "what", "rig or vehicle"), col("where", "where", "place on the floor"), clockColumns(), untilColumns("until"),
		measure("stands", "for", "s", "how long it stands"), col("manned", "with", "who or what is on it"), col("safe", "out of sight", "whether, and until when, no rolling camera sees it there"),
		col("seen_by", "then seen by", "the camera"))
	t.Empty = "No rig or vehicle stands anywhere in this take."
	p := m.take
	for _, tr := range p.tracks.Bodies {
		switch thing := tr.Thing.(type) {
		case *plan.Vehicle:
		case *plan.Rig:
			if m.worn(thing) && tr.Segments[0].Kind == motion.Riding && len(tr.Segments) == 1 {
				continue
			}
		default:
			continue
		}
		for _, s := range m.stops(tr) {
			if m.aboardPerson(tr, s[0]) {
				continue
			}
			safe, by := m.safe(tr.Thing, s[0], s[1])
			t.add(nil, cells(word(tr.Thing.ID().Name), word(m.spot(tr.At(s[0]).Point()))), m.clock(s[0]), m.until(s[1]), cells(seconds(s[1]-s[0]), word(m.aboard(p, tr.Thing, s[0], s[1])), word(safe), word(by)))
		}
	}
	return t
}

// aboardPerson says whether a rig is on somebody at a time: then it is not parked.
func (m *maker) aboardPerson(tr *motion.Track, at units.Seconds) bool {
	_, ok := tr.Carrier(at + 1e-6).(*plan.Person)
	return ok
}

// stops are the stretches in which a thing stands still.
func (m *maker) stops(tr *motion.Track) [][2]units.Seconds {
	var out [][2]units.Seconds
	for i := range tr.Segments {
		s := &tr.Segments[i]
		if s.Kind != motion.Resting || s.End <= s.Start {
			continue
		}
		if n := len(out); n > 0 && s.Start-out[n-1][1] < 1e-6 && tr.At(s.Start).Point().Dist(tr.At(out[n-1][0]).Point()) < 0.01 {
			out[n-1][1] = s.End
			continue
		}
		out = append(out, [2]units.Seconds{s.Start, s.End})
	}
	kept := out[:0]
	for _, s := range out {
		if s[1]-s[0] >= shortStop {
			kept = append(kept, s)
		}
	}
	return kept
}

// aboard is who, and which camera, is on a thing during a stretch.
func (m *maker) aboard(p *part, thing plan.Thing, from, to units.Seconds) string {
	var out []string
	for _, ct := range p.cameras() {
		for _, h := range ct.Holds {
			if h.Rig != nil && plan.Thing(h.Rig) == thing && h.Start < to-1e-6 && h.Taken < to && h.End > from+1e-6 {
				out = append(out, ct.Camera.Name)
			}
		}
	}
	for _, r := range p.tracks.Rides {
		if r.Carrier == thing && r.From < to-1e-6 && r.To > from+1e-6 {
			out = append(out, nameOf(r.Who))
		}
	}
	return listed(unique(out))
}

func unique(names []string) []string {
	had := map[string]bool{}
	var out []string
	for _, n := range names {
		if n != "" && !had[n] {
			had[n] = true
			out = append(out, n)
		}
	}
	return out
}

// safe says until when no rolling camera sees a thing during a stretch.
func (m *maker) safe(thing plan.Thing, from, to units.Seconds) (words, camera string) {
	first, last := m.rate.From(from), m.rate.At(to-1e-6)
	var seen units.Frame = -1
	for _, c := range m.take.stage.Cameras {
		for _, f := range m.take.showing(c, thing) {
			if f.To < first || f.From > last {
				continue
			}
			if at := max(f.From, first); seen < 0 || at < seen {
				seen, camera = at, c.Name
			}
		}
	}
	switch {
	case seen < 0:
		return "all the while", ""
	case seen == first:
		return "no, in frame as it stops", camera
	}
	return "until " + m.rate.Time(seen).Clock() + " (frame " + units.Number(float64(seen), 0) + ")", camera
}

// showing is the frames at which a rolling camera shows something of a thing,
// directly or in a mirror.
func (p *part) showing(c *plan.Camera, thing plan.Thing) []diag.Frames {
	if p.seen == nil {
		p.seen = map[*plan.Camera]map[plan.Thing][]diag.Frames{}
		p.gather(p.sight.Sight)
		p.gather(p.sight.Reflected)
		for _, of := range p.seen {
			for t, frames := range of {
				of[t] = tidy(frames)
			}
		}
	}
	return p.seen[c][thing]
}

func (p *part) gather(runs []sight.Run) {
	for i := range runs {
		r := &runs[i]
		if r.Camera >= len(p.stage.Cameras) || r.Body >= len(p.stage.Things) || p.stage.Things[r.Body] == nil {
			continue
		}
		c, thing := p.stage.Cameras[r.Camera], p.stage.Things[r.Body]
		if p.seen[c] == nil {
			p.seen[c] = map[plan.Thing][]diag.Frames{}
		}
		for k, s := range r.Share {
			if float64(s) >= leastSeen {
				f := r.From + units.Frame(k)
				p.seen[c][thing] = append(p.seen[c][thing], diag.Frames{From: f, To: f})
			}
		}
	}
}

// tidy sorts frames and joins what touches.
func tidy(in []diag.Frames) []diag.Frames {
	sort.Slice(in, func(i, j int) bool { return in[i].From < in[j].From })
	var out []diag.Frames
	for _, f := range in {
		if n := len(out); n > 0 && f.From <= out[n-1].To+1 {
			out[n-1].To = max(out[n-1].To, f.To)
			continue
		}
		out = append(out, f)
	}
	return out
}
