package book

import (
	"fmt"

	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/render/flow"
	"longhand/render/fonts"
	"longhand/render/frames"
	"longhand/render/overhead"
	"longhand/render/sheets"
	"longhand/render/timeline"
)

// pickups are the coverage after the take, each like a beat, with what it has of
// its own along its time.
func (m *maker) pickups() func(page int) []leaf {
	drawers := make([]*frames.Drawer, len(m.r.Pickups))
	for i, s := range m.r.Pickups {
		// A pickup is worked out like a take of its own.
		drawers[i] = frames.New(&compile.Result{Plan: s.Plan, Played: s.Played})
	}
	return func(page int) []leaf {
		var out []leaf
		for i, s := range m.r.Pickups {
			name := "Pickup  " + s.Pickup.Title
			above := drawings("overhead of pickup "+s.Pickup.Title, overhead.Pickup(m.r, s, m.overhead(page+len(out))), 0, name)
			out = join(out, above)
			along := timeline.Pickup(m.r, s, timeline.Options{Paper: m.o.paper(), Page: page + len(out), Pages: m.pages})
			out = join(out, drawings("timeline of pickup "+s.Pickup.Title, along, 1, "Along its time"))
			if m.framed() && s.Sight != nil {
				o := frames.Options{Paper: m.o.paper(), Page: page + len(out), Pages: m.pages}
				out = join(out, drawings("frames of pickup "+s.Pickup.Title, drawers[i].Whole(name, o), 1, lensHeading))
			}
			heading := name
			if len(above) > 0 { // which has it already
				heading = ""
			}
			out = join(out, texts(name, "pickup "+s.Pickup.Title, m.pickup(s.Pickup, heading)))
		}
		return out
	}
}

func (m *maker) pickup(k *plan.Pickup, heading string) []flow.Page {
	f := flow.New(m.options(false))
	if heading == "" {
		f.Heading(1, orderHeading)
	} else {
		f.Heading(0, heading)
	}
	if k.Beat != nil {
		where := "follows"
		if k.Into {
			where = "leads into"
		}
		f.Paragraph(fonts.Regular, fmt.Sprintf("Pickup %q %s %q. Its clock starts at 0.", k.Title, where, k.Beat.Title))
	}
	f.Space(1.5)
	t := m.table(departments.Ads, "running", func(r *sheets.Row) bool { return r.Action != nil && r.Action.Pickup == k })
	if t == nil || len(t.Rows) == 0 {
		f.Paragraph(fonts.Regular, "Nobody goes in this pickup.")
	} else {
		m.print(f, t, "pickup "+k.Title, false)
	}
	return f.Pages(nil)
}
