package motion

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/bind"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// randomPlan writes a plan in which performers walk and ride, and a camera does
// one thing after another to them.
func randomPlan(t *rapid.T) string {
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	coordinate := rapid.IntRange(-12, 12)
	say("set \"Anywhere\"")
	const marks = 7
	for i := range marks {
		say("  mark M%d (%d.%d, %d.5)", i, coordinate.Draw(t, "x"), i, coordinate.Draw(t, "y"))
	}
	if rapid.Bool().Draw(t, "platform") {
		say("  platform stand (-3, -3) (4, -3) (4, 4) (-3, 4) high 0.3 m")
	}
	say(`kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm
  rig vest body-rig
  rig dolly dolly
  rig arm crane reach 6 m
  rig hand gimbal
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina
  performer otto
  crew ida
  crew bo
beat "one"
  A takes w24 T2.8`)
	mark := func() string { return fmt.Sprintf("M%d", rapid.IntRange(0, marks-1).Draw(t, "mark")) }
	pick := func(of ...string) string { return rapid.SampledFrom(of).Draw(t, "pick") }
	timing := func() string {
		return pick("", "", " at 1.1 m/s", fmt.Sprintf(" in %d s", rapid.IntRange(15, 60).Draw(t, "in")))
	}
	say("  mina stands at M0\n  ida stands at M2\n  dolly stands at M3\n  arm stands at M4")
	if rapid.Bool().Draw(t, "rides") {
		say("  van drives from M5 via %s to %s at 2 m/s\n  otto rides van at (0.5, 0.5)\n  otto leaves van when van reaches %s plus 0.5 s", mark(), "M6", "M6")
	} else {
		say("  otto stands at M1")
	}
	rig := pick("vest", "dolly", "arm")
	say("  A on %s%s", rig, map[string]string{"vest": " with ida", "dolly": pick("", " with ida")}[rig])
	walk := func(who string) {
		switch rapid.IntRange(0, 6).Draw(t, "deed") {
		case 0:
			say("  %s turns to %s", who, pick("A", "M0", "M5", "135 deg"))
		case 1:
			say("  %s spins %d deg left", who, rapid.IntRange(10, 700).Draw(t, "spin"))
		case 2:
			say("  %s walks round %s %d deg right%s", who, mark(), rapid.IntRange(20, 400).Draw(t, "round"), timing())
		case 3:
			say("  %s walks via %s to %s straight%s", who, mark(), mark(), timing())
		default:
			say("  %s walks via %s to %s%s%s", who, mark(), mark(), pick("", " backwards", " facing M4"), timing())
		}
	}
	shoot := func() {
		target := pick("mina", "otto")
		timing := func() string { return pick("", fmt.Sprintf(" in %d s", rapid.IntRange(2, 30).Draw(t, "in"))) }
		switch rapid.IntRange(0, 6).Draw(t, "shot") {
		case 0:
			say("  A leads %s by 2 m%s", target, timing())
		case 1:
			say("  A follows %s by 2.5 m%s", target, timing())
		case 2:
			say("  A beside %s left 2 m%s", target, timing())
		case 3:
			say("  A circles %s 120 deg right at 2.2 m", target)
		case 4:
			say("  A pushes 1.5 m")
		case 5:
			say("  A sees %s\n  A pans 20 deg left in 2 s", pick("mina", "otto", "mina, otto"))
		case 6:
			say("  A rises to 1.7 m")
		}
	}
	say("  A sees mina")
	for range rapid.IntRange(1, 3).Draw(t, "lines") {
		walk("mina")
		shoot()
	}
	say("beat \"two\"")
	if rapid.Bool().Draw(t, "hands") {
		say("  handoff A from %s to %s", rig, pick("hand with bo", "hand with ida"))
	}
	for range rapid.IntRange(1, 3).Draw(t, "lines") {
		walk(pick("mina", "otto"))
		shoot()
	}
	return b.String()
}

// bound is a plan from text; a random plan that walks to where it stands is
// left alone.
func bound(t *rapid.T, text string) *plan.Plan {
	files, found := bind.Load(func(string) (string, error) { return text, nil }, "random.take")
	require.Zero(t, found.Errors(), "%v\n%s", found.Sorted(), text)
	p, found := bind.Bind(files)
	for _, d := range found.Sorted() {
		if d.Code == "out-of-range" {
			t.Skip()
		}
		require.NotEqual(t, diag.Error, d.Severity, "%s\n%s", d.Message, text)
	}
	return p
}

func TestEverythingGoesOnWithoutAJump(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := randomPlan(rt)
		rt.Log(text)
		p := bound(rt, text)
		tr := Resolve(context.Background(), p)
		for _, b := range tr.Bodies {
			noJumps(rt, tr, b)
			arrives(rt, tr, b)
		}
		for _, c := range tr.Cameras {
			anyOrder(rt, tr, c)
		}
		again := Resolve(context.Background(), p)
		require.Equal(rt, tr.Clock.Length, again.Clock.Length)
		require.Equal(rt, len(tr.Demands), len(again.Demands))
		for i, b := range tr.Bodies {
			mid := tr.Clock.Length / 3
			require.Equal(rt, b.At(mid), again.Bodies[i].At(mid), "twice the same")
		}
	})
}

// noJumps follows a body in small steps: no step is longer than the fastest that
// anything was recorded to go, where no jump was recorded.
func noJumps(t *rapid.T, tr *Tracks, b *Track) {
	for _, j := range tr.Jumps {
		if j.Subject == b.Thing || j.Subject == b.Carrier(j.At) {
			return
		}
	}
	fastest := fastest(tr)
	const h = 1.0 / 24
	was := b.point(0)
	heading := b.heading(0)
	for at := h; at <= float64(tr.Clock.Length); at += h {
		now := b.point(at)
		require.LessOrEqual(t, now.Dist(was), fastest*1.6*h+1e-9, "%s at %.2f s", b.Thing.ID().Name, at)
		turned := geom.AngleDiff(heading, b.heading(at))
		if b.Segment(units.Seconds(at)).Kind != Relating {
			require.LessOrEqual(t, math.Abs(turned), 1.5, "%s turns at %.2f s", b.Thing.ID().Name, at)
		}
		was, heading = now, b.heading(at)
	}
}

// arrives says that every move that wasn't cut short ends where its text says,
// when the clock says.
func arrives(t *rapid.T, tr *Tracks, b *Track) {
	for _, s := range b.Segments {
		if s.Kind != Moving || s.Action == nil {
			continue
		}
		d, ok := s.Action.Deed.(*plan.Move)
		iv := tr.Clock.Of(s.Action)
		if !ok || d.Path.To == nil || math.Abs(float64(s.End-iv.End)) > 1e-6 {
			continue
		}
		p := b.At(s.End)
		require.InDelta(t, d.Path.To.Point.X, float64(p.X), 1e-6)
		require.InDelta(t, d.Path.To.Point.Y, float64(p.Y), 1e-6)
		for i, stop := range d.Path.Via {
			off := tr.lengths.Passing(s.Action, i, iv.Length())
			q := b.At(iv.Start + off)
			require.InDelta(t, stop.Point.X, float64(q.X), 1e-3)
			require.InDelta(t, stop.Point.Y, float64(q.Y), 1e-3)
		}
	}
}

// anyOrder asks forwards, then backwards: the same answers, and all of them
// numbers.
func anyOrder(t *rapid.T, tr *Tracks, c *CameraTrack) {
	views := make([]View, tr.Frames)
	for k := range views {
		views[k] = c.At(tr.Rate.Time(units.Frame(k)))
		for _, v := range []float64{views[k].X, views[k].Y, views[k].Z, views[k].Pan, views[k].Tilt} {
			require.False(t, math.IsNaN(v) || math.IsInf(v, 0))
		}
		if k == 0 {
			continue
		}
		// Nothing flings a lens round or carries it off.
		dt := float64(tr.Rate.Duration(1))
		limit := 0.0
		for _, h := range c.Holds {
			limit = math.Max(limit, units.Degrees(h.Limits.Pan.Hard).Radians())
		}
		require.LessOrEqual(t, math.Abs(geom.AngleDiff(views[k-1].Pan, views[k].Pan)), 1.5*limit*dt, "frame %d", k)
		step := geom.Vec3{X: views[k].X, Y: views[k].Y, Z: views[k].Z}.Dist(geom.Vec3{X: views[k-1].X, Y: views[k-1].Y, Z: views[k-1].Z})
		require.LessOrEqual(t, step, 1.6*fastest(tr)*dt, "frame %d", k)
	}
	for k := tr.Frames - 1; k >= 0; k -= 7 {
		require.Equal(t, views[k], c.At(tr.Rate.Time(units.Frame(k))))
	}
}

func TestResolvingALotAtOnceIsSafe(t *testing.T) {
	p := parse(t, stage+`
  mina walks from M0 via M1 to M2
  A on vest with ida
  A follows mina by 2 m
  A sees mina
`)
	r := NewResolver(p)
	want := r.Resolve(context.Background(), nil)
	done := make(chan *Tracks)
	for range 4 {
		go func() { done <- r.Resolve(context.Background(), nil) }()
	}
	for range 4 {
		got := <-done
		assert.Equal(t, want.Clock.Length, got.Clock.Length)
		assert.Equal(t, want.Cameras[0].At(4), got.Cameras[0].At(4))
	}
}

// fastest is the most that anything was recorded to go, or a step on or off.
func fastest(tr *Tracks) float64 {
	most := 3.0
	for _, h := range tr.Handoffs { // from hand to hand, however far apart
		gap := math.Max(float64(h.GapStart), float64(h.GapEnd))
		most = math.Max(most, 3+1.5*gap/float64(h.End-h.Start))
	}
	for _, d := range tr.Demands {
		if d.Quantity == Speed || d.Quantity == BackSpeed {
			most = math.Max(most, d.Peak)
		}
	}
	return most
}
