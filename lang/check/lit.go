package check

import "longhand/lang/lighting"

// lighting works out, once, the lamps of the take.
func (p *Pass) lighting() *lighting.Lighting {
	if p.lit == nil {
		p.lit = lighting.Of(p.Plan, p.Clock)
	}
	return p.lit
}
