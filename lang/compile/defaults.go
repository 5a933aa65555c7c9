package compile

import (
	"longhand/lang/bind"
	"longhand/lang/body"
	"longhand/lang/check"
	"longhand/lang/light"
	"longhand/lang/optics"
	"longhand/lang/safety"
	"longhand/lang/sky"
	"longhand/lang/timecode"
	"longhand/lang/units"
)

// Defaults is every value taken for granted where a plan says nothing, with its
// source, in the order in which a plan is read.
func Defaults(s units.System) []units.Default {
	var out []units.Default
	for _, list := range [][]units.Default{
		bind.Defaults(s), body.Defaults(s), optics.Defaults(s), timecode.Defaults(s), light.Defaults(), sky.Defaults(), safety.Defaults(s), check.Defaults(s),
	} {
		out = append(out, list...)
	}
	return out
}
