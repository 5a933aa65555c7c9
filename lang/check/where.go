package check

import (
	"math"
	"sort"
	"strings"

	"longhand/lang/sight"
	"longhand/lang/units"
)

// Where a box in the frame is said: what reaches within edgeSlack of the frame's
// edge is at it, what spans more than mostOf of it goes all across.
const (
	edgeSlack = 0.005
	mostOf    = 0.75
)

// where says where in the frame a box is: "left third, lower edge".
func where(b sight.Box) string {
	across := third((b.Left+b.Right)/2, "left third", "middle third", "right third")
	if b.Right-b.Left > mostOf {
		across = "all across"
	}
	low, high := b.Bottom < edgeSlack, b.Top > 1-edgeSlack
	up := third((b.Bottom+b.Top)/2, "low", "at mid-height", "high")
	switch {
	case low && high, b.Top-b.Bottom > mostOf:
		up = "from top to bottom"
	case low:
		up = "lower edge"
	case high:
		up = "upper edge"
	}
	if across == "all across" && up == "from top to bottom" {
		return "most of the frame"
	}
	return across + ", " + up
}

func third(at float64, first, second, last string) string {
	switch {
	case at < 1.0/3:
		return first
	case at <= 2.0/3:
		return second
	}
	return last
}

// share prints a part of the frame with two digits that say something: a lamp
// far away may be a thousandth of a per cent, and is seen all the same.
func share(percent float64) string {
	if percent >= 0.1 || percent <= 0 {
		return units.Percent(percent).String()
	}
	if percent < 1e-4 {
		return "less than 0.0001 %"
	}
	decimals := 1 - int(math.Floor(math.Log10(percent)))
	return units.Number(percent, decimals) + " %"
}

// away prints a distance from a lens as one would measure it: to a tenth of a
// metre, to a centimetre within one.
func (p *Pass) away(m float64) string {
	if m >= 1 {
		m = math.Round(m*10) / 10
	}
	return p.Length(units.Metres(m))
}

// things lists names as one says them: "A, ida and vest".
func things(names []string) string {
	switch n := len(names); n {
	case 0:
		return ""
	case 1:
		return names[0]
	default:
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
}

// what names a solid of the set or a body: "the wall street", "otto".
func what(name, kind string) string {
	switch kind {
	case "":
		return "the open"
	case "floor":
		return "the floor"
	case "wall", "door", "block", "pillar", "platform", "stairs", "window", "hole":
		return "the " + kind + " " + name
	}
	return name
}

// behind is what stands behind things in a frame, by the names of the plan, most
// first: parts of one thing are one, and what is in front is not behind itself.
func (p *Pass) behind(camera int, parts []part, f units.Frame) []sight.Backing {
	body, ok := p.main(camera, bodiesOf(parts), f)
	if !ok {
		return nil
	}
	own := map[string]bool{}
	for _, n := range names(parts) {
		own[n] = true
	}
	return p.named(p.Sight.Behind(camera, body, f), own)
}

// covering is what hides a body, by the names of the plan, most first.
func (p *Pass) covering(camera, body int, f units.Frame) []sight.Backing {
	if p.ErrorsOnly {
		const rough = 12 // rays: which hides most, not by how much
		return p.named(p.Sight.CoveringBy(rough, camera, body, f), nil)
	}
	return p.named(p.Sight.Covering(camera, body, f), nil)
}

func (p *Pass) named(list []sight.Backing, without map[string]bool) []sight.Backing {
	return namedIn(p.Stage.Scene, list, without)
}

func namedIn(scene *sight.Scene, list []sight.Backing, without map[string]bool) []sight.Backing {
	var out []sight.Backing
	left := 0.0
	for _, b := range list {
		if i, ok := scene.Body(b.Name); ok && b.Kind == scene.Bodies[i].Kind {
			b.Name = scene.Bodies[i].Of
			if without[b.Name] {
				left += b.Share
				continue
			}
		}
		again := false
		for k := range out {
			if out[k].Name == b.Name && out[k].Kind == b.Kind {
				out[k].Share += b.Share
				out[k].Distance = math.Min(out[k].Distance, b.Distance)
				again = true
			}
		}
		if !again {
			out = append(out, b)
		}
	}
	for k := range out {
		out[k].Share /= 1 - left
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Share > out[j].Share })
	return out
}

// backing lists what stands behind, most first, as far as it counts.
func backing(list []sight.Backing) string {
	var out []string
	for _, b := range list {
		if b.Share < 0.05 && len(out) > 0 {
			break
		}
		s := what(b.Name, b.Kind)
		if len(list) > 1 && b.Share < 0.95 {
			s += " (" + units.Number(b.Share*100, 0) + " %)"
		}
		out = append(out, s)
		if len(out) == 3 {
			break
		}
	}
	return things(out)
}
