package sheets

import (
	"fmt"
	"sort"
	"strings"

	"longhand/lang/check"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/sight"
	"longhand/lang/units"
)

func (m *maker) effects() ([]*Table, []safety.Topic) {
	return []*Table{m.paintOuts(), m.openInShot()}, nil
}

// paintOuts is what the plan sends to visual effects.
func (m *maker) paintOuts() *Table {
	t := table("paintouts", "Paint-outs", beatColumn(), clockColumns(), untilColumns("until"), measure("frames", "frames", "frames", "in which it shows"), col("what", "what", "to be painted out"), col("camera", "from", "the camera"),
		measure("share", "share", "%", "of the frame, at its most"), col("worst", "at", "when it is most"), measure("worst_frame", "frame", "frames", "number of that frame"), col("where", "where in frame", "in that frame"),
		measure("left", "left", "%", "its box, from the frame's left edge"), measure("bottom", "bottom", "%", "its box, from the lower edge"), measure("right", "right", "%", "its box, from the left edge"), measure("top", "top", "%", "its box, from the lower edge"),
		col("behind", "behind it", "what the lens would see were it gone"), col("lens", "camera", "whether it moves, turns or zooms meanwhile"), col("because", "why", "as the plan says"))
	for _, k := range []string{"left", "bottom", "right", "top"} {
		t.Columns[t.Column(k)].Quiet = true
	}
	t.Empty = "Nothing is sent to visual effects."
	hit := map[*plan.PaintOut]bool{}
	for _, p := range m.parts {
		for i := range p.accepted {
			a := &p.accepted[i]
			if a.PaintOut == nil || len(a.Finding.Frames) == 0 {
				continue
			}
			hit[a.PaintOut] = true
			m.paintOut(t, p, a)
		}
	}
	for _, o := range m.p.PaintOuts {
		if !hit[o] {
			t.note("paint out " + nameOf(o.Thing) + " from " + name(o.Camera) + " is in the plan, and " + nameOf(o.Thing) + " is not in that frame")
		}
	}
	return t
}

func (m *maker) paintOut(t *Table, p *part, a *check.Accepted) {
	d := &a.Finding
	from, to := d.Frames[0].From, d.Frames[len(d.Frames)-1].To
	n := 0
	for _, f := range d.Frames {
		n += int(f.To-f.From) + 1
	}
	lens := "locked"
	if a.Moves {
		lens = "moving"
	}
	box := func(v float64) Cell { return number(v*100, 1, units.Percent(v*100).String()) }
	what := d.Subject
	if what == "" {
		what = nameOf(a.PaintOut.Thing)
	}
	t.add(nil, p.beatAt(m.rate.Time(from)), m.frameClock(from), m.until(m.rate.Time(to)), cells(count(n), word(what), word(d.Camera), percent(float64(d.Share)), word(m.rate.Time(d.Worst).Clock()), number(float64(d.Worst), 0, units.Number(float64(d.Worst), 0)),
		word(inFrame(d.Box)), box(d.Box[0]), box(d.Box[1]), box(d.Box[2]), box(d.Box[3]), word(backing(a.Behind)), word(lens), word(a.PaintOut.Because)))
}

// inFrame says where in the frame a box is: "left third, low".
func inFrame(b [4]float64) string {
	third := func(v float64, names [3]string) string {
		switch {
		case v < 1.0/3:
			return names[0]
		case v <= 2.0/3:
			return names[1]
		}
		return names[2]
	}
	across := third((b[0]+b[2])/2, [3]string{"left third", "middle third", "right third"})
	if b[2]-b[0] > 0.75 {
		across = "all across"
	}
	up := third((b[1]+b[3])/2, [3]string{"low", "at mid-height", "high"})
	if b[3]-b[1] > 0.75 {
		up = "from top to bottom"
	}
	return across + ", " + up
}

func backing(list []sight.Backing) string {
	var out []string
	for _, b := range list {
		if b.Share < 0.05 && len(out) > 0 {
			break
		}
		s := b.Name
		switch b.Kind {
		case "":
			s = "the open"
		case "floor":
			s = "the floor"
		case "wall", "door", "block", "pillar", "platform", "stairs", "window", "hole":
			s = b.Kind + " " + b.Name
		}
		if len(list) > 1 {
			s += " " + units.Number(b.Share*100, 0) + " %"
		}
		out = append(out, s)
		if len(out) == 3 {
			break
		}
	}
	return strings.Join(out, ", ")
}

// openInShot is what is in frame and not accepted: it becomes work for visual
// effects unless the plan changes.
func (m *maker) openInShot() *Table {
	t := table("open", "In frame and not yet accepted", beatColumn(), clockColumns(), untilColumns("until"), col("what", "what", "that must not be seen"), col("camera", "in", "the camera's frame"), measure("share", "share", "%", "of the frame, at its most"), col("found", "found", "the finding"))
	t.Empty = "Nothing else is in frame that must not be."
	for _, p := range m.parts {
		var open []*diag.Diagnostic
		for i := range m.r.Findings {
			if d := &m.r.Findings[i]; inShot(d) && d.Pickup == p.title() {
				open = append(open, d)
			}
		}
		sort.SliceStable(open, func(i, j int) bool { return open[i].Frames[0].From < open[j].Frames[0].From })
		for _, d := range open {
			from, to := d.Frames[0].From, d.Frames[len(d.Frames)-1].To
			says := strings.TrimPrefix(d.Message, fmt.Sprintf("in pickup %q, ", d.Pickup)) // under whose name it stands
			t.add(nil, p.beatAt(m.rate.Time(from)), m.frameClock(from), m.until(m.rate.Time(to)), cells(word(d.Subject), word(d.Camera), percent(float64(d.Share)), word(fmt.Sprintf("%s (%s)", says, d.Code))))
		}
	}
	return t
}

func inShot(d *diag.Diagnostic) bool {
	if d.Camera == "" || len(d.Frames) == 0 || d.Severity == diag.Note {
		return false
	}
	return strings.HasSuffix(string(d.Code), "-in-shot") || d.Code == "hide-seen" || d.Code == "mirror-shows"
}
