package page

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// One browser serves all of these; a page is loaded for each.
func TestInABrowser(t *testing.T) {
	b := browser(t)
	takes := map[string]*compile.Result{}
	for _, name := range examples {
		takes[name] = shipped(t, name)
	}
	for _, name := range examples {
		for _, size := range [][2]int64{{390, 844}, {1440, 900}} {
			t.Run(fmt.Sprintf("%s at %d dots", name, size[0]), func(t *testing.T) {
				p := open(t, b, takes[name], size[0], size[1], "")
				loads(p, takes[name])
			})
		}
	}
	last := takes["last-collection"]
	t.Run("plays", func(t *testing.T) { plays(open(t, b, last, 1440, 900, "#f=100")) })
	t.Run("positions", func(t *testing.T) { positions(open(t, b, last, 1440, 900, ""), last) })
	t.Run("frames", func(t *testing.T) { projections(open(t, b, last, 1440, 900, ""), last) })
	t.Run("views", func(t *testing.T) { views(open(t, b, last, 1440, 900, ""), last) })
	t.Run("findings", func(t *testing.T) { findings(open(t, b, last, 1440, 900, ""), last) })
	t.Run("keys", func(t *testing.T) { keys(open(t, b, last, 1440, 900, ""), last) })
	t.Run("links", func(t *testing.T) { links(open(t, b, last, 1440, 900, "#beat=3"), last) })
	t.Run("pickup", func(t *testing.T) { pickup(open(t, b, last, 1440, 900, ""), last) })
	for _, c := range []struct {
		name       string
		wide, high int64
	}{{"last-collection", 390, 844}, {"last-collection", 1440, 900}, {"night-ferry", 1440, 900}, {"eight-bars", 390, 844}} {
		t.Run(fmt.Sprintf("rehearsal of %s at %d dots", c.name, c.wide), func(t *testing.T) {
			sheet := rehearsed(t, takes[c.name])
			p := openWith(t, b, takes[c.name], Options{Rehearsal: sheet}, c.wide, c.high, "")
			loads(p, takes[c.name])
			weakPlaces(p, takes[c.name], sheet)
		})
	}
	t.Run("no rehearsal", func(t *testing.T) { unrehearsed(open(t, b, last, 1440, 900, "")) })
	bad := spoilt(t)
	glass, err := compile.Text(context.Background(), "glass.take", mirroredPlan, compile.Options{})
	require.NoError(t, err)
	t.Run("mirrors", func(t *testing.T) { reflections(open(t, b, glass, 1440, 900, "#f=20"), glass) })
	t.Run("spoilt", func(t *testing.T) { highlights(open(t, b, bad, 1440, 900, ""), bad) })
}

func loads(p *opened, r *compile.Result) {
	assert.Equal(p, r.Plan.Take.Title, value[string](p, "document.title"))
	assert.Equal(p, len(r.Plan.Beats), value[int](p, "document.querySelectorAll('#beats button').length"))
	assert.Equal(p, len(r.Plan.Actions), value[int](p, "document.querySelectorAll('#lines .line').length"))
	assert.Equal(p, len(r.Findings), value[int](p, "document.querySelectorAll('#findinglist li').length"))
	assert.LessOrEqual(p, value[int](p, "document.documentElement.scrollWidth"), value[int](p, "innerWidth"), "nothing sticks out sideways")
	for _, id := range []string{"overhead", "frames", "scrub", "play", "lines"} {
		r := value[[]float64](p, fmt.Sprintf("(() => { const r = document.getElementById(%q).getBoundingClientRect(); return [r.width, r.height, r.left, r.right]; })()", id))
		assert.Greater(p, r[0], 20.0, id)
		assert.Greater(p, r[1], 10.0, id)
	}
	assert.Zero(p, value[int](p, `[...document.querySelectorAll("button, select, input, canvas, svg[role]")].filter((e) => !(e.textContent.trim() || e.getAttribute("aria-label") || e.closest("label"))).length`), "everything has a name to be read aloud")
	assert.Empty(p, p.complaints())
}

func plays(p *opened) {
	assert.Equal(p, 100, p.frame())
	p.key(" ")
	p.until("Number(document.body.dataset.frame) > 110")
	p.key(" ")
	at := p.frame()
	p.drawn()
	assert.Equal(p, at, p.frame(), "it stops where it is")
	p.do(chromedp.Click(chromedp.CSS("#play")))
	p.until(fmt.Sprintf("Number(document.body.dataset.frame) > %d", at+3))
	p.do(chromedp.Click(chromedp.CSS("#play")))
	p.key("l")
	end := value[int](p, `[...document.querySelectorAll("#beats button")].length`)
	require.Greater(p, end, 1)
	assert.Empty(p, p.complaints())
}

// seconds of a frame.
func timeOf(r *compile.Result, f int) units.Seconds { return r.Tracks.Rate.Time(units.Frame(f)) }

// Two marks of the set tell how the page maps the floor; everybody has to be
// where the tracks say, by that map.
func positions(p *opened, r *compile.Result) {
	centres := `Object.fromEntries([...document.querySelectorAll(%q)].filter((e) => e.style.display !== "none").map((e) => { const r = e.querySelector(%q).getBoundingClientRect(); return [%s, [r.left + r.width / 2, r.top + r.height / 2]]; }))`
	for _, f := range []int{0, 371, 900, 1500, 2850, 3500, 4100} {
		value[any](p, fmt.Sprintf("location.hash = 'f=%d'", f))
		p.until(fmt.Sprintf("document.body.dataset.frame === '%d'", f))
		p.drawn()
		// In one go, as the page may lay itself out anew between two.
		at := value[map[string]map[string][2]float64](p, "({marks: "+fmt.Sprintf(centres, "g.marks > g", "path", "e.querySelector('text').textContent")+
			", signs: "+fmt.Sprintf(centres, "g.sign", ".halo", "e.dataset.name")+"})")
		marks, signs := at["marks"], at["signs"]
		a, b := r.Plan.Set.Marks[0], r.Plan.Set.Marks[len(r.Plan.Set.Marks)-1]
		pa, pb := marks[a.Name], marks[b.Name]
		sx, sy := (pb[0]-pa[0])/(b.Point.X-a.Point.X), (pb[1]-pa[1])/(b.Point.Y-a.Point.Y)
		require.InDelta(p, sx, -sy, 0.01, "the floor isn't stretched")
		check := func(name string, at geom.Vec) {
			got, ok := signs[name]
			require.True(p, ok, name)
			assert.InDelta(p, pa[0]+(at.X-a.Point.X)*sx, got[0], 1, "%s at frame %d", name, f)
			assert.InDelta(p, pa[1]+(at.Y-a.Point.Y)*sy, got[1], 1, "%s at frame %d", name, f)
		}
		for _, who := range r.Plan.People {
			check(who.Name, r.Tracks.Body(who).At(timeOf(r, f)).Point())
		}
		for _, c := range r.Tracks.Cameras {
			v := c.At(timeOf(r, f))
			check(c.Camera.Name, geom.Vec{X: v.X, Y: v.Y})
		}
	}
	assert.Empty(p, p.complaints())
}

// Where the page puts people in a frame is where optics does, within a dot.
func projections(p *opened, r *compile.Result) {
	compared := 0
	for _, f := range []int{10, 371, 700, 1100, 1500, 2200, 2850, 3300, 4000, 4400} {
		value[any](p, fmt.Sprintf("location.hash = 'f=%d'", f))
		p.until(fmt.Sprintf("document.body.dataset.frame === '%d'", f))
		p.drawn()
		boxes := value[map[string]string](p, `Object.fromEntries([...document.querySelectorAll(".view")].flatMap((v) => [...v.querySelectorAll(".who li")].map((e) => [v.dataset.camera + "/" + e.dataset.name, e.dataset.box])))`)
		width := value[float64](p, `Math.max(...[...document.querySelectorAll(".view canvas")].map((c) => c.clientWidth))`)
		require.Greater(p, width, 100.0)
		for key, text := range boxes {
			camera, name, _ := strings.Cut(key, "/")
			want, ok := boxIn(r, camera, name, units.Frame(f))
			if !ok {
				continue
			}
			var got [4]float64
			for i, s := range strings.Fields(text) {
				v, err := strconv.ParseFloat(s, 64)
				require.NoError(p, err)
				got[i] = v
			}
			for i := range got { // what is out of frame is out of sight
				want[i], got[i] = max(0, min(1, want[i])), max(0, min(1, got[i]))
				assert.InDelta(p, want[i], got[i], 1/width, "%s at frame %d: %v, not %v", key, f, got, want)
			}
			compared++
		}
		// Whoever sight sees a good part of is named.
		for i, c := range r.Stage.Scene.Cameras {
			for _, s := range r.Sight.At(i, units.Frame(f)) {
				b := r.Stage.Scene.Bodies[s.Body]
				rolls := false
				for _, x := range c.Rolls {
					rolls = rolls || x.From <= units.Frame(f) && units.Frame(f) <= x.To
				}
				if rolls && b.Kind == "performer" && s.Mirror == sight.NoMirror && s.Visible > 0.1 {
					assert.Contains(p, boxes, c.Name+"/"+b.Name, "frame %d", f)
				}
			}
		}
	}
	assert.Greater(p, compared, 12)
}

// boxIn is the bounds of a person's cylinder in a frame, left, top, right, bottom
// in parts of the frame from its upper left corner.
func boxIn(r *compile.Result, camera, name string, f units.Frame) ([4]float64, bool) {
	s := r.Stage.Scene
	out := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		if c.Name != camera {
			continue
		}
		v := c.At(f)
		view := optics.View{At: geom.Vec3{X: v.X, Y: v.Y, Z: v.Z}, Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Focal: units.Millimetres(v.Focal)}
		frame := optics.Frame{Width: units.Millimetres(c.Width), Height: units.Millimetres(c.Height)}
		for k := range s.Bodies {
			b := &s.Bodies[k]
			if b.Name != name || b.Radius == 0 {
				continue
			}
			at := b.At(f)
			for n := range 360 {
				p := geom.Vec{X: at.X, Y: at.Y}.Add(geom.Polar(b.Radius, float64(n)*math.Pi/180))
				for _, z := range [2]float64{at.Z, at.Z + at.Height} {
					image, ok := view.Project(p.At(z))
					if !ok || image.Depth < 0.2 {
						return out, false
					}
					x, y := frame.Fraction(image)
					out = [4]float64{min(out[0], x), min(out[1], 1-y), max(out[2], x), max(out[3], 1-y)}
				}
			}
			return out, true
		}
	}
	return out, false
}

// The floor that a page shows a lens to see ends where a ray from the lens meets
// the first thing as high as it.
func views(p *opened, r *compile.Result) {
	for _, f := range []int{371, 900, 1500, 2850, 3500} {
		value[any](p, fmt.Sprintf("location.hash = 'f=%d'", f))
		p.until(fmt.Sprintf("document.body.dataset.frame === '%d'", f))
		p.drawn()
		path := value[string](p, `document.querySelector(".world .sight.c0").getAttribute("d")`)
		var ring []geom.Vec
		for _, s := range strings.Split(strings.Trim(path, "MZ"), "L") {
			var v geom.Vec
			_, err := fmt.Sscan(s, &v.X, &v.Y)
			require.NoError(p, err)
			ring = append(ring, v)
		}
		require.Greater(p, len(ring), 3)
		c := r.Tracks.Cameras[0]
		v := c.At(timeOf(r, f))
		eye := geom.Vec{X: v.X, Y: v.Y}
		require.Less(p, ring[0].Dist(eye), 0.002)
		half := math.Atan(float64(c.Frame.Width) / 2 / v.Focal)
		for k := -30; k <= 30; k++ {
			a := v.Pan + half*float64(k)/30.5
			const aside = 0.001
			low, high := math.Inf(1), 0.0
			for _, d := range []float64{-aside, 0, aside} {
				far := meets(r, eye, v.Z, a+d, units.Frame(f))
				low, high = min(low, far), max(high, far)
			}
			got := far(ring[1:], eye, a)
			if got < low-0.05 || got > high+0.05 {
				assert.Fail(p, "seen floor ends elsewhere", "frame %d, %g rad: %g m, not %g to %g", f, a, got, low, high)
			}
		}
	}
}

// meets is how far a ray goes before something as high as the lens, 60 m at most.
func meets(r *compile.Result, eye geom.Vec, z, angle float64, f units.Frame) float64 {
	best := 60.0
	to := eye.Add(geom.Polar(best, angle))
	ring := func(poly []geom.Vec, low, high float64) {
		if low >= z || high <= z || geom.Polygon(poly).Contains(eye) {
			return
		}
		best = min(best, along(poly, eye, angle), to.Dist(eye))
	}
	for _, s := range r.Stage.Scene.Solids {
		there := s.Shut == nil
		for _, x := range s.Shut {
			there = there || x.From <= f && f <= x.To
		}
		if there {
			ring(s.Polygon, s.Z[0], s.Z[1])
		}
	}
	for _, b := range r.Stage.Scene.Bodies {
		if b.Kind == "hole" {
			at := b.At(f)
			var poly []geom.Vec
			for _, v := range b.Polygon {
				poly = append(poly, v.Add(geom.Vec{X: at.X, Y: at.Y}))
			}
			ring(poly, at.Z, at.Z+at.Height)
		}
	}
	return best
}

// along is the nearest crossing of a ray with a ring; infinite for none.
func along(ring []geom.Vec, eye geom.Vec, angle float64) float64 {
	if len(ring) == 0 {
		return math.Inf(1)
	}
	return far(append(append([]geom.Vec(nil), ring...), ring[0]), eye, angle)
}

// far is the nearest crossing of a ray with a line of several points.
func far(line []geom.Vec, eye geom.Vec, angle float64) float64 {
	d, best := geom.Polar(1, angle), math.Inf(1)
	for i, a := range line[:len(line)-1] {
		e := line[i+1].Sub(a)
		k := d.Cross(e)
		if k == 0 {
			continue
		}
		t, u := a.Sub(eye).Cross(e)/k, a.Sub(eye).Cross(d)/k
		if t > 0 && u >= 0 && u <= 1 {
			best = min(best, t)
		}
	}
	return best
}

func findings(p *opened, r *compile.Result) {
	n := value[int](p, `document.querySelectorAll("#findinglist .jump[data-finding]").length`)
	require.Positive(p, n)
	p.do(chromedp.Click(chromedp.CSS(`#findinglist .jump[data-finding="1"]`)))
	p.drawn()
	f := units.Frame(p.frame())
	in := false
	for _, run := range r.Findings[1].Frames {
		in = in || run.From <= f && f <= run.To
	}
	assert.True(p, in, "frame %d is one of the finding's", f)
	assert.True(p, value[bool](p, `document.querySelectorAll("#findinglist li")[1].classList.contains("now")`))
	before := f
	p.key("n")
	assert.NotEqual(p, before, p.frame(), "the next finding is elsewhere")
	assert.Empty(p, p.complaints())
}

// Everything by key alone, nothing having the focus to begin with.
func keys(p *opened, r *compile.Result) {
	p.key(kb.ArrowRight)
	p.key(kb.ArrowRight)
	assert.Equal(p, 2, p.frame())
	p.key(kb.ArrowLeft)
	assert.Equal(p, 1, p.frame())
	p.key(kb.ArrowRight, chromedp.KeyModifiers(kb.ModifierShift))
	assert.Equal(p, 25, p.frame(), "a second on")
	p.key("]")
	second := int(r.Tracks.Rate.From(r.Tracks.Clock.Spans()[1].From))
	assert.Equal(p, second, p.frame())
	p.key(kb.End)
	assert.Equal(p, r.Tracks.Frames-1, p.frame())
	p.key(kb.Home)
	assert.Zero(p, p.frame())
	p.key("s")
	assert.Equal(p, "×2", value[string](p, `document.getElementById("speed").textContent`))
	p.key("u")
	assert.Equal(p, "inline", value[string](p, `getComputedStyle(document.querySelector(".never")).display`))
	p.key("f")
	assert.Equal(p, "set", value[string](p, `document.getElementById("view").value`))
	all := value[int](p, `document.querySelectorAll("#lines .line").length`)
	p.key("d")
	assert.Equal(p, "camera", value[string](p, `document.getElementById("department").value`))
	assert.Less(p, value[int](p, `document.querySelectorAll("#lines .line").length`), all)
	p.key("i")
	assert.Equal(p, "dark", value[string](p, `document.documentElement.dataset.look`))
	p.key("?")
	assert.True(p, value[bool](p, `document.getElementById("keys").open`))
	p.key(kb.Escape)
	assert.False(p, value[bool](p, `document.getElementById("keys").open`))
	p.key("l")
	assert.Equal(p, "true", value[string](p, `document.getElementById("loop").getAttribute("aria-pressed")`))
	// From the last frames of a beat it goes back to the first.
	value[any](p, fmt.Sprintf("location.hash = 'f=%d'", second-3))
	p.until(fmt.Sprintf("document.body.dataset.frame === '%d'", second-3))
	p.key(" ")
	p.until("Number(document.body.dataset.frame) < 100")
	p.key(" ")
	assert.Empty(p, p.complaints())
}

func links(p *opened, r *compile.Result) {
	third := int(r.Tracks.Rate.From(r.Tracks.Clock.Spans()[2].From))
	assert.Equal(p, third, p.frame())
	p.key("]")
	p.until("location.hash !== '#beat=3'")
	assert.Equal(p, fmt.Sprintf("#f=%d", p.frame()), value[string](p, "location.hash"))
	assert.Empty(p, p.complaints())
}

func pickup(p *opened, r *compile.Result) {
	require.NotEmpty(p, r.Pickups)
	p.key("t")
	assert.Equal(p, r.Pickups[0].Tracks.Frames-1, value[int](p, `Number(document.getElementById("scrub").max)`))
	assert.Equal(p, len(r.Pickups[0].Pickup.Actions), value[int](p, "document.querySelectorAll('#lines .line').length"))
	assert.Empty(p, p.complaints())
}

const spoiltPlan = `take "Spoilt"
  rate 24 fps
set "Room"
  mark M1 (0, 0)
  mark M2 (6, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
  crew gus
beat "Across"
  mina walks from M1 to M2
  A on legs with ida at (3, -9)
  A takes w35 T8
  A sees mina
  gus stands at (3, 2)
`

func spoilt(t *testing.T) *compile.Result {
	r, err := compile.Text(context.Background(), "spoilt.take", spoiltPlan, compile.Options{})
	require.NoError(t, err)
	require.False(t, r.Stopped, "%v", r.Findings)
	return r
}

func highlights(p *opened, r *compile.Result) {
	at := -1
	for i := range r.Findings {
		if d := &r.Findings[i]; d.Code == "crew-in-shot" && d.Subject == "gus" {
			at = i
		}
	}
	require.GreaterOrEqual(p, at, 0, "%v", r.Findings)
	p.do(chromedp.Click(chromedp.CSS(fmt.Sprintf(`#findinglist .jump[data-finding="%d"]`, at))))
	p.drawn()
	assert.Contains(p, value[string](p, `document.querySelector(".view .wrong .error").textContent`), "crew-in-shot")
	assert.True(p, value[bool](p, `document.querySelector('.sign[data-name="gus"]').classList.contains("spoils")`))
	// The colour of alarm is in the picture, and isn't without the finding.
	assert.Greater(p, value[int](p, alarmed), 50)
	assert.Empty(p, p.complaints())
}

// alarmed counts the dots of a frame in the colour of alarm.
const alarmed = `(() => { const c = document.querySelector(".view canvas"), d = c.getContext("2d").getImageData(0, 0, c.width, c.height).data; let n = 0; for (let i = 0; i < d.length; i += 4) if (d[i] > 150 && d[i + 1] < 60 && d[i + 2] < 80) n++; return n; })()`

const mirroredPlan = `take "In the cloakroom"
  aspect 1.85
set "Cloakroom"
  wall north (-2, 3.1) (8, 3.1) high 3 m thick 0.2 m
  mirror glass on north 3 m to 7 m high 0.3 m to 2.4 m
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig trolley cart
people
  performer mina
  crew ida
beat "At the glass"
  mina stands at (4, 0) for 2 s
  trolley stands at (5, -2)
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina in glass
`

// reflections: a trolley that is in frame in a mirror alone is painted there, in the
// colour of alarm, since it must not be.
func reflections(p *opened, r *compile.Result) {
	body := r.Stage.Body(r.Plan.Kit.Rigs[1])[0]
	require.Empty(p, r.Sight.Of(0, body))
	require.NotEmpty(p, append(r.Sight.In(0, 0, body), r.Sight.In(1, 0, body)...))
	p.drawn()
	assert.Greater(p, value[int](p, alarmed), 50)
	assert.Empty(p, p.complaints())
}
