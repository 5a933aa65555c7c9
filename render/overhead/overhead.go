package overhead

import (
	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/render/scene"
)

// Beat draws a beat: the drawing with its list, a detail on a sheet of its own
// where one is needed and finds no room, and what is left of the list. It is nil
// where the plan has mistakes that keep it from being worked out.
func Beat(r *compile.Result, beat *plan.Beat, o Options) []*scene.Sheet {
	m := from(r)
	if m == nil || beat == nil {
		return nil
	}
	return m.titled(beat, o)
}

// Take draws the whole take: everybody's way from first to last, the beats numbered
// where they begin, and what the cameras find out.
func Take(r *compile.Result, o Options) []*scene.Sheet {
	m := from(r)
	if m == nil {
		return nil
	}
	return m.titled(nil, o)
}

func (m *material) titled(beat *plan.Beat, o Options) []*scene.Sheet {
	sheets, title := m.compose(beat, o)
	title(o.Pages)
	return sheets
}

// Untitled draws a beat, or the whole take where beat is nil, without the title
// blocks: they say how many pages there are in all, which is known when all are
// drawn. The function that comes with the sheets puts them in.
func Untitled(r *compile.Result, beat *plan.Beat, o Options) ([]*scene.Sheet, func(pages int)) {
	m := from(r)
	if m == nil {
		return nil, func(int) {}
	}
	return m.compose(beat, o)
}

func from(r *compile.Result) *material {
	if r == nil || r.Plan == nil || r.Tracks == nil {
		return nil
	}
	m := &material{plan: r.Plan, tracks: r.Tracks, findings: r.Findings, report: r.Sight, marks: signs(r.Plan)}
	if r.Stage != nil {
		m.pieces, m.scene, m.things, m.cameras = r.Stage.Pieces, r.Stage.Scene, r.Stage.Things, r.Stage.Cameras
	} else {
		m.pieces = solid.Of(&r.Plan.Set)
	}
	return m
}
