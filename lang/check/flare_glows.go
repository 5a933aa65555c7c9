package check

import (
	"fmt"

	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// glows looks for bright openings before a camera.
func (p *Pass) glows(camera int) {
	shines := map[plan.Thing]*shine{}
	var order []*shine
	for _, g := range p.Sight.Glares {
		if g.Camera != camera {
			continue
		}
		glow := p.glow(p.Stage.Scene.Glows[g.Glow].Name)
		if glow == nil {
			continue
		}
		for i := range g.Share {
			f := g.From + units.Frame(i)
			in := g.Off[i] == 0 && g.Share[i] > 0
			switch {
			case g.Facing[i] <= 0, !p.blinds(camera, glow.Nits, f):
				continue
			case in && float64(g.Share[i]) < flareShare:
				continue
			case !in && (g.Off[i] == 0 || float64(g.Off[i]) > flareOff || float64(g.Open[i]) < flareOpen):
				continue
			}
			s := shines[glow]
			if s == nil {
				s = &shine{camera: camera, thing: glow, span: glow.Decl, share: map[units.Frame]float64{}, off: map[units.Frame]float64{}}
				s.bright = func(t units.Seconds) string { return p.brightness(camera, glow.Nits, t) }
				shines[glow] = s
				order = append(order, s)
			}
			s.add(f, float64(g.Share[i]), float64(g.Off[i]))
		}
	}
	for _, s := range order {
		p.tellShine(s)
	}
}

func (p *Pass) glow(name string) *plan.Glow {
	for _, g := range p.Plan.Set.Glows {
		if g.Name == name {
			return g
		}
	}
	return nil
}

// grey is how bright middle grey is for a camera at a time; 0 where the plan
// doesn't say enough.
func (p *Pass) grey(camera int, t units.Seconds) units.Nits {
	track := p.Tracks.Camera(p.cameraAt(camera))
	take := &p.Plan.Take
	open := units.Seconds(float64(take.Shutter) / 360 / take.Rate.PerSecond())
	if track == nil || take.Sensitivity <= 0 || track.Stop(t) <= 0 || !(open > 0) {
		return 0
	}
	return optics.LuminanceFor(track.Stop(t), float64(take.Sensitivity), open)
}

func (p *Pass) blinds(camera int, n units.Nits, f units.Frame) bool {
	if grey := p.grey(camera, p.Tracks.Rate.Time(f)); grey > 0 {
		return optics.StopsBetween(grey, n) >= flareOver
	}
	return n >= flareNits
}

func (p *Pass) brightness(camera int, n units.Nits, t units.Seconds) string {
	if grey := p.grey(camera, t); grey > 0 {
		return fmt.Sprintf("%s cd/m2, %s stops over middle grey", units.Number(float64(n), 0), units.Number(optics.StopsBetween(grey, n), 1))
	}
	return fmt.Sprintf("%s cd/m2; the plan gives no sensitivity or stop to hold that against", units.Number(float64(n), 0))
}
