package check

import (
	"fmt"
	"math"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/source"
	"longhand/lang/units"
)

// acceptSeen files a thing that may be in frame but is to be painted out all the
// same: a performer, a van, a piece of the set.
func (p *Pass) acceptSeen(e *excuse) {
	if e.paintOut == nil || e.hit || p.Sight == nil || forbidden(e.thing) {
		return
	}
	camera, ok := p.sceneCamera(e.camera.Name)
	if !ok {
		return
	}
	if bodies := p.Stage.Body(e.thing); len(bodies) > 0 {
		p.acceptShown(e, p.Stage.Scene, p.Sight, camera, bodies, p.placed(e.thing, 0))
		return
	}
	scene, bodies := p.asBodies(e.thing)
	if len(bodies) == 0 {
		p.acceptUnseen(e, camera)
		return
	}
	cam := scene.Cameras[camera]
	cam.Rolls = nil
	for _, r := range meet(p.rolling(camera), e.frames) {
		cam.Rolls = append(cam.Rolls, sight.Frames{From: r.From, To: r.To})
	}
	scene.Cameras = []sight.Camera{cam}
	seen, err := sight.See(p.Ctx, scene, sight.Options{})
	if err != nil {
		return // cancelled
	}
	p.acceptShown(e, scene, seen, 0, bodies, e.thing.ID().Decl)
}

// acceptShown files every stretch in which some of the bodies show.
func (p *Pass) acceptShown(e *excuse, scene *sight.Scene, seen *sight.Report, camera int, bodies []int, span source.Span) {
	shares := map[units.Frame]float64{}
	var frames []diag.Frames
	for _, b := range bodies {
		for _, r := range seen.Of(camera, b) {
			for i, s := range r.Share {
				if f := r.From + units.Frame(i); float64(s) >= leastShare {
					shares[f] += float64(s)
					frames = append(frames, diag.Frames{From: f, To: f})
				}
			}
		}
	}
	frames = meet(tidy(frames), e.frames)
	if len(frames) == 0 {
		return
	}
	p.hit(e, frames)
	name := e.thing.ID().Name
	for _, stretch := range joined(frames, p.gap()) {
		d := diag.Diagnostic{Severity: diag.Note, Span: span, Subject: name, Camera: e.camera.Name}
		d.Frames = meet(frames, []diag.Frames{stretch})
		p.inBeat(&d)
		d.Worst = d.Frames[0].From
		for _, r := range d.Frames {
			for f := r.From; f <= r.To; f++ {
				if shares[f] > shares[d.Worst] {
					d.Worst = f
				}
			}
		}
		d.Share = units.Percent(shares[d.Worst])
		box, main := boxOf(seen, camera, bodies, d.Worst)
		d.Box = [4]float64{box.Left, box.Bottom, box.Right, box.Top}
		d.Message = fmt.Sprintf("%s is in %s's frame %s: up to %s of the frame, %s", name, d.Camera, p.when(d.Frames), share(shares[d.Worst]), where(box))
		a := Accepted{Finding: d, PaintOut: e.paintOut}
		if at, ok := p.sceneCamera(d.Camera); ok {
			a.Moves = p.moves(at, bounds(d.Frames))
		}
		a.Behind = namedIn(scene, seen.Behind(camera, main, d.Worst), map[string]bool{name: true})
		p.Accepted = append(p.Accepted, a)
	}
}

// boxOf is what shows of some bodies at a frame, and the one that shows most.
func boxOf(seen *sight.Report, camera int, bodies []int, f units.Frame) (sight.Box, int) {
	box := sight.Box{Left: 1, Bottom: 1}
	main, most := bodies[0], 0.0
	for _, s := range seen.At(camera, f) {
		for _, b := range bodies {
			if s.Body != b || s.Mirror != sight.NoMirror || s.Visible <= 0 {
				continue
			}
			box.Left, box.Bottom = math.Min(box.Left, s.Box.Left), math.Min(box.Bottom, s.Box.Bottom)
			box.Right, box.Top = math.Max(box.Right, s.Box.Right), math.Max(box.Top, s.Box.Top)
			if s.Share > most {
				main, most = b, s.Share
			}
		}
	}
	return box, main
}

// acceptUnseen files what no drawing of the set shows, such as a wash or a grid
// overhead: for all the frames it is asked for.
func (p *Pass) acceptUnseen(e *excuse, camera int) {
	frames := meet(p.rolling(camera), e.frames)
	if len(frames) == 0 {
		return
	}
	p.hit(e, frames)
	d := diag.Diagnostic{
		Severity: diag.Note, Span: e.thing.ID().Decl, Subject: e.thing.ID().Name, Camera: e.camera.Name, Frames: frames, Worst: frames[0].From,
		Message: fmt.Sprintf("%s is to be painted out of %s's frame %s; how much of it shows is not worked out", e.thing.ID().Name, e.camera.Name, p.when(frames)),
	}
	p.inBeat(&d)
	p.Accepted = append(p.Accepted, Accepted{Finding: d, PaintOut: e.paintOut, Moves: p.moves(camera, bounds(frames))})
}

// asBodies is the scene with a piece of the set as bodies, so that it can be
// looked at by itself.
func (p *Pass) asBodies(thing plan.Thing) (*sight.Scene, []int) {
	scene := *p.Stage.Scene
	scene.Mirrors, scene.Glows, scene.Solids = nil, nil, nil
	scene.Bodies = append([]sight.Body(nil), p.Stage.Scene.Bodies...)
	name, kind := thing.ID().Name, string(thing.Kind())
	var own []int
	add := func(polygon []geom.Vec, z [2]float64, shut []sight.Frames) {
		parts, _ := geom.Polygon(polygon).ConvexParts()
		for _, convex := range parts {
			own = append(own, len(scene.Bodies))
			b := sight.Body{Name: fmt.Sprintf("%s\x00%d", name, len(own)), Kind: kind, Of: name, Polygon: convex}
			b.Track = []sight.Pose{{Z: z[0], Height: z[1] - z[0]}}
			if shut != nil {
				b.Track = make([]sight.Pose, scene.Frames)
				for _, r := range shut {
					for f := r.From; f <= r.To; f++ {
						b.Track[f] = sight.Pose{Z: z[0], Height: z[1] - z[0]}
					}
				}
			}
			scene.Bodies = append(scene.Bodies, b)
		}
	}
	for _, s := range p.Stage.Scene.Solids {
		if s.Name == name && s.Kind == kind {
			add(s.Polygon, s.Z, s.Shut)
		} else {
			scene.Solids = append(scene.Solids, s)
		}
	}
	if on, high, ok := opening(thing); ok && len(own) == 0 {
		add(pane(on), [2]float64{float64(high.Low), float64(high.High)}, nil)
	}
	return &scene, own
}

// opening is what hangs on a wall or is cut into it and is no solid of its own.
func opening(thing plan.Thing) (plan.On, plan.Range, bool) {
	switch t := thing.(type) {
	case *plan.Pane:
		return t.On, t.High, t.Wall != nil
	case *plan.Mirror:
		return t.On, t.High, t.Wall != nil
	case *plan.Glow:
		return t.On, t.High, t.Wall != nil
	}
	return plan.On{}, plan.Range{}, false
}

// pane is the footprint of a stretch of a wall, a little thicker than the wall.
func pane(on plan.On) []geom.Vec {
	const proud = 0.002
	thick := float64(on.Wall.Thick)
	if thick <= 0 {
		thick = solid.WallThick
	}
	a, b := on.Ends()
	out := b.Sub(a).Unit().Left().Mul(thick/2 + proud)
	return []geom.Vec{a.Sub(out), b.Sub(out), b.Add(out), a.Add(out)}
}
