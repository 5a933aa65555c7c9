package check

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// part is a thing that a finding is about, with the frames it is about.
type part struct {
	thing  plan.Thing
	bodies []int // of the scene; none for a thing that isn't staged
	frames []diag.Frames
}

// telling is how a finding that holds over frames is said, so that it can be
// said again for what is left of it once a part is accepted.
type telling struct {
	rule   *Rule
	camera *plan.Camera // that sees it
	say    func(parts []part)
	pass   *Pass // it is said in
}

// told is a finding with the way to say it again.
type told struct {
	telling
	parts []part
}

// apart is how far apart two stretches have to be to count as two findings.
const apart units.Seconds = 0.5

// gap is apart in frames.
func (p *Pass) gap() units.Frame { return p.Plan.Take.Rate.From(apart) - 1 }

// tell reports what is found about things over frames: one finding for each
// stretch, where stretches less than half a second from each other are one. Only
// rules about what is seen tell: theirs is the pass that takes excuses into account.
func (p *Pass) tell(parts []part, t telling) {
	if t.rule.Needs < Seen {
		panic("the rule " + string(t.rule.Code) + " tells, and needs less than what is seen")
	}
	var all []diag.Frames
	for _, c := range parts {
		all = append(all, c.frames...)
	}
	t.pass = p
	for _, stretch := range joined(all, p.gap()) {
		within := cut(parts, []diag.Frames{stretch})
		before := p.bag.Len()
		was := p.rule
		p.rule = t.rule
		t.say(within)
		p.rule = was
		for i := before; i < p.bag.Len(); i++ {
			if p.told == nil {
				p.told = map[int]told{}
			}
			p.told[i] = told{telling: t, parts: within}
		}
	}
}

// cut keeps the frames of each part that are in to.
func cut(parts []part, to []diag.Frames) []part {
	var out []part
	for _, c := range parts {
		if c.frames = meet(c.frames, to); len(c.frames) > 0 {
			out = append(out, c)
		}
	}
	return out
}

// framesOf is every frame of the parts.
func framesOf(parts []part) []diag.Frames {
	var all []diag.Frames
	for _, c := range parts {
		all = append(all, c.frames...)
	}
	return tidy(all)
}

// names is the things of the parts, each once, in the order of the parts.
func names(parts []part) []string {
	var out []string
	seen := map[plan.Thing]bool{}
	for _, c := range parts {
		if !seen[c.thing] {
			seen[c.thing] = true
			out = append(out, c.thing.ID().Name)
		}
	}
	return out
}
