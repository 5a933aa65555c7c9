package compare

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// leastTime is the smallest shift told: half of the tenth of a second that times
// are printed to. leastWay is the same for lengths and paces, in m and m/s.
const (
	leastTime = 0.05
	leastWay  = 0.05
)

// timing tells what happens sooner or later and what takes longer.
func (c *comparing) timing() {
	o, n := c.old.Tracks, c.new.Tracks
	if o == nil || n == nil {
		return
	}
	if by := n.Length() - o.Length(); notable(by) {
		c.add(Change{Section: Timing, Kind: Changed, What: "take", Name: c.new.Plan.Take.Title, Longer: by, order: -1, Departments: concern(departments.Camera, departments.Ads, departments.Script, departments.Sound),
			Fields: []Field{{"length", o.Length().Clock(), n.Length().Clock()}}})
	}
	spans := func(t *motion.Tracks) map[*plan.Beat]clock.Span {
		out := map[*plan.Beat]clock.Span{}
		for _, s := range t.Clock.Spans() {
			out[s.Beat] = s
		}
		return out
	}
	was, is := spans(o), spans(n)
	for _, a := range c.was {
		b := c.scopes[a]
		switch {
		case b == nil:
		case a.pickup != nil:
			c.pickupTiming(a, b)
		default:
			x, y := was[a.beat], is[b.beat]
			later, longer := y.From-x.From, (y.To-y.From)-(x.To-x.From)
			ch := Change{Section: Timing, Kind: Changed, What: "beat", Name: b.title, order: b.order(), Departments: concern(departments.Camera, departments.Ads, departments.Script, departments.Sound)}
			if notable(later) {
				ch.Later = later
				ch.Fields = append(ch.Fields, Field{"begins", x.From.Clock(), y.From.Clock()})
			}
			if notable(longer) {
				ch.Longer = longer
				ch.Fields = append(ch.Fields, Field{"length", (x.To - x.From).String(), (y.To - y.From).String()})
			}
			if ch.Fields != nil {
				c.add(ch)
			}
			c.lineTiming(a, b, o.Clock, n.Clock, x.From, y.From)
		}
	}
}

func notable(s units.Seconds) bool { return math.Abs(float64(s)) >= leastTime }

// lineTiming tells which lines happen at another time of their beat, or take
// longer.
func (c *comparing) lineTiming(a, b *scope, was, is *clock.Clock, from, to units.Seconds) {
	for _, l := range a.lines {
		n := c.lines[l.act]
		if n == nil {
			continue
		}
		x, y := was.Of(l.act), is.Of(n)
		if !x.Placed || !y.Placed {
			continue
		}
		base := to
		if n.Beat != b.beat { // it is in another beat now; its time is the take's
			base, from = 0, 0
		}
		later := (y.Start - base) - (x.Start - from)
		longer := units.Seconds(0)
		if !x.Open && !y.Open {
			longer = y.Length() - x.Length()
		}
		ch := Change{Section: Timing, Kind: Changed, What: "line", Name: clock.Describe(n), Beat: b.title, order: b.order() + n.Index + 1, Departments: n.Concerns()}
		if notable(later) {
			ch.Later = later
			ch.Fields = append(ch.Fields, Field{"begins into the beat", (x.Start - from).String(), (y.Start - base).String()})
		}
		if notable(longer) {
			ch.Longer = longer
			ch.Fields = append(ch.Fields, Field{"takes", x.Length().String(), y.Length().String()})
		}
		if ch.Fields != nil {
			c.add(ch)
		}
	}
}

func (c *comparing) pickupTiming(a, b *scope) {
	x, y := shotOf(c.old, a.pickup), shotOf(c.new, b.pickup)
	if x == nil || y == nil || x.Tracks == nil || y.Tracks == nil {
		return
	}
	if by := y.Tracks.Length() - x.Tracks.Length(); notable(by) {
		c.add(Change{Section: Timing, Kind: Changed, What: "pickup", Name: b.title, Longer: by, order: b.order(), Departments: concern(departments.Camera, departments.Ads, departments.Script, departments.Sound),
			Fields: []Field{{"length", x.Tracks.Length().Clock(), y.Tracks.Length().Clock()}}})
	}
}

func shotOf(r *compile.Result, u *plan.Pickup) *compile.Shot {
	for _, s := range r.Pickups {
		if s.Pickup == u {
			return s
		}
	}
	return nil
}

// going is how far a line takes somebody and the fastest they go.
type going struct {
	way  float64
	peak units.MetresPerSecond
}

// ways tells which lines take somebody further, less far, or at another pace.
func (c *comparing) ways() {
	if c.old.Tracks == nil || c.new.Tracks == nil {
		return
	}
	was, is := goings(c.old.Tracks), goings(c.new.Tracks)
	for _, a := range c.was {
		b := c.scopes[a]
		if b == nil || a.beat == nil {
			continue
		}
		for _, l := range a.lines {
			n := c.lines[l.act]
			x, y := was[l.act], is[n]
			if n == nil || x == nil || y == nil {
				continue
			}
			ch := Change{Section: Ways, Kind: Changed, What: "way", Name: clock.Describe(n), Beat: b.title, order: b.order() + n.Index + 1, Departments: n.Concerns()}
			if by := y.way - x.way; math.Abs(by) >= leastWay {
				ch.Distance = units.Metres(by)
				ch.Fields = append(ch.Fields, Field{"length", units.Metres(x.way).Text(c.report.System), units.Metres(y.way).Text(c.report.System)})
			}
			if math.Abs(float64(y.peak-x.peak)) >= leastWay {
				ch.Fields = append(ch.Fields, Field{"fastest", x.peak.Text(c.report.System), y.peak.Text(c.report.System)})
			}
			if ch.Fields != nil {
				c.add(ch)
			}
		}
	}
}

func goings(t *motion.Tracks) map[*plan.Action]*going {
	out := map[*plan.Action]*going{}
	for _, b := range t.Bodies {
		for i := range b.Segments {
			s := &b.Segments[i]
			if s.Action == nil || s.Kind == motion.Riding || s.Kind == motion.Stepping {
				continue
			}
			g := out[s.Action]
			if g == nil {
				g = &going{}
				out[s.Action] = g
			}
			if s.Kind == motion.Moving && s.Path != nil && s.Profile != nil {
				g.way += s.Path.Length()
				g.peak = max(g.peak, s.Profile.Peak())
				continue
			}
			g.sample(b, s)
		}
	}
	return out
}

// sample follows a stretch that has no path of its own, twelve times a second.
func (g *going) sample(b *motion.Track, s *motion.Segment) {
	const perSecond = 12
	n := max(1, int(math.Ceil(float64(s.End-s.Start)*perSecond)))
	at := func(i int) units.Seconds { return s.Start + (s.End-s.Start)*units.Seconds(i)/units.Seconds(n) }
	p := b.At(at(0)).Point()
	for i := 1; i <= n; i++ {
		q := b.At(at(i)).Point()
		g.way += q.Dist(p)
		g.peak = max(g.peak, b.Speed((at(i-1)+at(i))/2))
		p = q
	}
}
