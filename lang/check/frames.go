package check

import (
	"sort"

	"longhand/lang/diag"
	"longhand/lang/units"
)

// Runs of frames are kept in order, apart from each other by a frame or more.

// tidy puts runs in order and joins those that touch or overlap.
func tidy(runs []diag.Frames) []diag.Frames {
	return joined(runs, 0)
}

// joined is tidy that also joins what is at most gap frames apart.
func joined(runs []diag.Frames, gap units.Frame) []diag.Frames {
	in := append([]diag.Frames(nil), runs...)
	sort.Slice(in, func(i, j int) bool { return in[i].From < in[j].From })
	var out []diag.Frames
	for _, r := range in {
		switch n := len(out); {
		case r.From > r.To:
		case n > 0 && r.From <= out[n-1].To+1+gap:
			out[n-1].To = max(out[n-1].To, r.To)
		default:
			out = append(out, r)
		}
	}
	return out
}

// meet is the frames in both a and b.
func meet(a, b []diag.Frames) []diag.Frames {
	var out []diag.Frames
	for i, j := 0, 0; i < len(a) && j < len(b); {
		if from, to := max(a[i].From, b[j].From), min(a[i].To, b[j].To); from <= to {
			out = append(out, diag.Frames{From: from, To: to})
		}
		if a[i].To < b[j].To {
			i++
		} else {
			j++
		}
	}
	return out
}

// minus is the frames of a that aren't in b.
func minus(a, b []diag.Frames) []diag.Frames {
	var out []diag.Frames
	for _, r := range a {
		from := r.From
		for _, c := range b {
			if c.To < from || c.From > r.To {
				continue
			}
			if c.From > from {
				out = append(out, diag.Frames{From: from, To: c.From - 1})
			}
			from = c.To + 1
		}
		if from <= r.To {
			out = append(out, diag.Frames{From: from, To: r.To})
		}
	}
	return out
}

// holds says whether a frame is in one of the runs.
func holds(runs []diag.Frames, f units.Frame) bool {
	i := sort.Search(len(runs), func(i int) bool { return runs[i].To >= f })
	return i < len(runs) && runs[i].From <= f
}

// count is how many frames the runs have.
func count(runs []diag.Frames) int {
	n := 0
	for _, r := range runs {
		n += int(r.To-r.From) + 1
	}
	return n
}

// bounds is the run from the first frame of all to the last.
func bounds(runs []diag.Frames) diag.Frames {
	return diag.Frames{From: runs[0].From, To: runs[len(runs)-1].To}
}
