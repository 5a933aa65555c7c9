package check

import (
	"sync"

	"longhand/lang/diag"
	"longhand/lang/lighting"
	"longhand/lang/motion"
)

// known is what more than one rule asks for, worked out once for all of them: by
// whichever asks first, while the others wait. Nobody may write to any of it.
type known struct {
	demands   once[[]motion.Demand]
	obstacles once[[]*obstacle]
	bonds     once[map[pair][]bond]
	views     once[*views]
	holders   once[[]holder]
	exposures once[[]exposure]
	lighting  once[*lighting.Lighting]
	lines     once[*sightlines]
	eyes      []once[[]eye] // by camera
}

// once is something made when it is first asked for. Several goroutines may ask at
// once.
type once[T any] struct {
	sync.Once
	value T
}

func (o *once[T]) get(make func() T) T {
	o.Do(func() { o.value = make() })
	return o.value
}

// known is what the pass, and those that run beside it, know.
func (p *Pass) known() *known {
	if p.knows == nil {
		p.knows = &known{}
		if p.Stage != nil {
			p.knows.eyes = make([]once[[]eye], len(p.Stage.Scene.Cameras))
		}
	}
	return p.knows
}

// beside is a pass over the same plan that has found nothing yet and knows what
// this one does.
func (p *Pass) beside() *Pass {
	return &Pass{
		Ctx: p.Ctx, Plan: p.Plan, Clock: p.Clock, Tracks: p.Tracks, Stage: p.Stage, Sight: p.Sight,
		ErrorsOnly: p.ErrorsOnly, knows: p.known(),
	}
}

// take adds what another pass found.
func (p *Pass) take(q *Pass) {
	n := p.bag.Len()
	p.bag.Merge(q.bag)
	for i, t := range q.told {
		if p.told == nil {
			p.told = map[int]told{}
		}
		p.told[i+n] = t
	}
	q.bag, q.told = diag.Bag{}, nil
}
