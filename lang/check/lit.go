package check

import "longhand/lang/lighting"

// lighting works out, once, the lamps of the take.
func (p *Pass) lighting() *lighting.Lighting {
	return p.known().lighting.get(func() *lighting.Lighting { return lighting.Of(p.Plan, p.Clock) })
}
