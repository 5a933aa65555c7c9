package compile

import (
	"context"
	"slices"
	"strings"
	"sync"

	"longhand/lang/check"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/rehearse"
	"longhand/lang/sight"
	"longhand/lang/source"
	"longhand/lang/staging"
)

// Player plays a bound plan for rehearsals: each playing has its clock, its
// tracks and its sight worked out anew, at every frame, and what breaks is what
// the rules find, errors only, with paint-outs and allows taken into account.
// What the clock itself shows is left to rehearse, which asks the clock.
func Player(p *plan.Plan) rehearse.Player {
	resolver := motion.NewResolver(p)
	p = takeOnly(p)
	rooms := sync.Pool{New: func() any { return new(staging.Room) }}
	return func(ctx context.Context, v *clock.Vary) (*clock.Clock, []rehearse.Broken) {
		tracks := resolver.Resolve(ctx, v)
		// Rehearsals run side by side already; each is worked out on its own.
		played := Played{Tracks: tracks}
		room := rooms.Get().(*staging.Room)
		defer rooms.Put(room)
		room.Clear()
		bag, err := played.play(ctx, p, playing{upTo: check.Seen, sight: sight.Options{Workers: 1}, errorsOnly: true, room: room})
		if err != nil {
			return tracks.Clock, nil
		}
		return tracks.Clock, broken(bag, tracks)
	}
}

// ofTheClock are the findings that rehearse makes of the clock itself.
var ofTheClock = map[diag.Code]bool{"late": true, "over-length": true, "roll-out": true, "two-moves": true}

func broken(bag diag.Bag, tracks *motion.Tracks) []rehearse.Broken {
	var out []rehearse.Broken
	for _, d := range bag.Sorted() {
		if d.Severity != diag.Error || ofTheClock[d.Code] {
			continue
		}
		what := []string{string(d.Code)}
		if d.Subject != "" {
			what = append(what, d.Subject)
		}
		if d.Camera != "" {
			what = append(what, "in "+d.Camera)
		}
		if d.Subject == "" && d.Span.Valid() {
			what = append(what, strings.TrimSpace(d.Span.Text()))
		}
		b := rehearse.Broken{What: strings.Join(what, " "), Lines: linesOf(&d, tracks.Clock)}
		if len(d.Frames) > 0 {
			b.At = tracks.Rate.Time(d.Frames[0].From)
		}
		out = append(out, b)
	}
	return out
}

// linesOf are the lines that a finding stands at, and those that it came of.
func linesOf(d *diag.Diagnostic, c *clock.Clock) []*plan.Action {
	var out []*plan.Action
	add := func(s source.Span) {
		for _, a := range c.Lines() {
			if s.Valid() && s.File == a.Span.File && a.Span.Start <= s.Start && s.End <= a.Span.End && !slices.Contains(out, a) {
				out = append(out, a)
			}
		}
	}
	add(d.Span)
	for _, r := range d.Related {
		add(r.Span)
	}
	return out
}
