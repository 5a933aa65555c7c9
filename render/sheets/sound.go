package sheets

import (
	"fmt"
	"math"

	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/timecode"
	"longhand/lang/units"
)

func (m *maker) sound() ([]*Table, []safety.Topic) {
	var topics []safety.Topic
	lines := m.lines()
	if len(lines.Rows) > 0 {
		topics = append(topics, safety.PowerLines)
	}
	if lines.says(lines.Column("noise")) {
		topics = append(topics, safety.Vehicles)
	}
	return []*Table{lines, m.playback()}, topics
}

// lines is every spoken line, where it is spoken, and how low a boom may come.
func (m *maker) lines() *Table {
	t := table("lines", "Lines", beatColumn(), clockColumns(), untilColumns("out"), cueColumn(), col("who", "who", "speaks"), col("line", "line", "as written"), measure("words", "words", "words", "in the line"),
		col("where", "where", "of the speaker as it begins"), col("where_out", "to", "of the speaker as it ends; empty: the same"), measure("boom", "boom down to", "m", "lowest a microphone may hang over the speaker out of every rolling frame, above the floor there"),
		measure("above", "above head", "m", "the same over the speaker's head"), col("boom_by", "held up by", "the camera that decides and when"), col("noise", "also moving", "vehicles and wheeled rigs that move meanwhile"), slipColumns())
	t.Empty = "Nobody speaks in this plan."
	for _, p := range m.parts {
		for _, a := range p.inTime() {
			d, ok := a.Deed.(*plan.Say)
			if !ok {
				continue
			}
			i := p.clock.Of(a)
			in, out := m.where(p, a.Subject, i.Start), m.where(p, a.Subject, i.End)
			if in == out {
				out = ""
			}
			b := m.boom(p, a.Subject, i.Start, i.End)
			t.add(a, p.beat(a), m.clock(i.Start), m.until(i.End), p.cue(a), cells(word(a.Who()), word(d.Text), count(d.Words), word(in), word(out)), m.boomCells(b), cells(word(m.noise(p, i.Start, i.End))), p.slip(a))
		}
	}
	if len(t.Rows) > 0 {
		t.note("a boom is reckoned straight over the speaker, " + m.metres(micHalf) + " to either side; its pole, its shadow and reflections are not in it, and what hides the speaker is left out of account")
	}
	return t
}

// micHalf is half the width that a microphone with its pole's end takes in frame.
const micHalf units.Metres = 0.15

// boom is how low a microphone may come over somebody.
type boom struct {
	floor, head float64 // heights of the speaker's floor and head, where it is worst
	low         float64 // lowest height; -Inf where no frame holds it up
	camera      string
	at          units.Seconds
	inside      string // the vehicle the speaker is in
	ok          bool
}

// boom goes through every frame of a stretch: over the speaker, each rolling
// camera's frame reaches up to some height, and nothing below it stays unseen.
func (m *maker) boom(p *part, who plan.Thing, from, to units.Seconds) boom {
	tr := p.tracks.Body(who)
	b := boom{low: math.Inf(-1)}
	if tr == nil {
		return b
	}
	b.ok = true
	if v, ok := tr.Carrier(from).(*plan.Vehicle); ok {
		b.inside = v.Name
	}
	for k := m.rate.From(from); m.rate.Time(k) <= to; k++ {
		at := m.rate.Time(k)
		pose := tr.At(at)
		head := float64(pose.Z + pose.Height)
		if math.IsInf(b.low, -1) {
			b.floor, b.head, b.at = float64(pose.Z), head, at
		}
		for _, ct := range p.cameras() {
			v := ct.At(at)
			if !ct.Rolling(at) || v.Focal <= 0 {
				continue
			}
			if z, seen := frameTop(v, ct, pose.Point()); seen && z-float64(pose.Z) > b.low-b.floor && z > head {
				b.low, b.floor, b.head, b.camera, b.at = z, float64(pose.Z), head, ct.Camera.Name, at
			}
		}
	}
	return b
}

// frameTop is the height at which the upper edge of a frame cuts the upright line
// over a point; false where the frame does not hold the line, with the width of
// a microphone to either side.
func frameTop(v motion.View, ct *motion.CameraTrack, p geom.Vec) (float64, bool) {
	dx, dy := p.X-v.X, p.Y-v.Y
	cosT, sinT := math.Cos(v.Tilt), math.Sin(v.Tilt)
	ahead := dx*math.Cos(v.Pan) + dy*math.Sin(v.Pan) // level distance along the pan
	right := dx*math.Sin(v.Pan) - dy*math.Cos(v.Pan)
	// In the frame's own axes, h above the lens: depth = ahead·cosT + h·sinT,
	// up = h·cosT - ahead·sinT. The upper edge is up/depth = H/2f.
	k := float64(ct.Frame.Height) / 2 / v.Focal
	den := cosT - k*sinT
	if den <= 1e-9 {
		return math.Inf(1), ahead > 0
	}
	h := ahead * (k*cosT + sinT) / den
	depth := ahead*cosT + h*sinT
	if depth <= 0.05 {
		return 0, false
	}
	half := float64(ct.Frame.Width) / 2 / v.Focal * depth
	return v.Z + h, math.Abs(right) <= half+float64(micHalf)
}

func (m *maker) boomCells(b boom) []Cell {
	switch {
	case !b.ok:
		return cells(word("not placed"), word(""), word(""))
	case math.IsInf(b.low, -1):
		return cells(word("any height"), word(""), word("no frame reaches over the speaker's head"))
	case math.IsInf(b.low, 1):
		return cells(word("no boom"), word(""), word(b.camera+" at "+b.at.Clock()))
	}
	by := b.camera + " at " + b.at.Clock()
	if b.inside != "" {
		by += "; inside " + b.inside
	}
	return cells(m.length(units.Metres(b.low-b.floor)), m.length(units.Metres(b.low-b.head)), word(by))
}

// noise is what rolls on wheels during a stretch.
func (m *maker) noise(p *part, from, to units.Seconds) string {
	var out []string
	for _, tr := range p.tracks.Bodies {
		switch thing := tr.Thing.(type) {
		case *plan.Vehicle:
		case *plan.Rig:
			if m.worn(thing) {
				continue
			}
		default:
			continue
		}
		for k := m.rate.From(from); m.rate.Time(k) < to; k++ {
			if at := m.rate.Time(k); float64(tr.Speed(at)) > still && tr.Carrier(at) == nil {
				out = append(out, tr.Thing.ID().Name)
				break
			}
		}
	}
	return listed(out)
}

// playback is the take in bars and counts, where the plan has a tempo.
func (m *maker) playback() *Table {
	t := table("playback", "Playback", beatColumn(), clockColumns(), measure("bar", "bar", "no.", "it begins in, from 1"), measure("count", "count", "no.", "of the bar, from 1"), untilColumns("until"), measure("until_bar", "to bar", "no.", "it ends in"), measure("until_count", "count", "no.", "of that bar"), measure("counts", "counts", "counts", "in all"), measure("bars", "bars", "bars", "in all"))
	t.Empty = "There is no tempo in this plan, so nothing is played back to counts."
	tempo := m.p.Take.Tempo
	if tempo == nil || tempo.BPM <= 0 || tempo.In <= 0 {
		return t
	}
	music := timecode.Tempo{BPM: tempo.BPM, In: tempo.In}
	for _, s := range m.take.spans() {
		if s.To <= s.From {
			continue
		}
		n := float64(s.To-s.From) / float64(music.Beat())
		b1, c1 := music.Position(s.From)
		b2, c2 := music.Position(s.To)
		t.add(nil, m.take.beatAt(s.From), m.clock(s.From), cells(count(b1), number(c1, 2, units.Number(c1, 1))), m.until(s.To), cells(count(b2), number(c2, 2, units.Number(c2, 1)), number(n, 2, units.Number(n, 1)), number(n/float64(tempo.In), 2, units.Number(n/float64(tempo.In), 1))))
	}
	t.note(fmt.Sprintf("%s beats a minute, %d to the bar; bar 1, count 1 is the take's first frame", units.Number(tempo.BPM, 2), tempo.In))
	all := float64(m.take.clock.Length) / float64(music.Beat())
	t.note(fmt.Sprintf("the take is %s counts, %s bars", units.Number(all, 1), units.Number(all/float64(tempo.In), 1)))
	return t
}
