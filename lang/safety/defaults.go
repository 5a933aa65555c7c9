package safety

import (
	"fmt"

	"longhand/lang/units"
)

// Defaults lists what the package takes for granted, lengths and speeds in the
// system given.
func Defaults(s units.System) []units.Default {
	const road = "AASHTO, A Policy on Geometric Design of Highways and Streets; Texas DOT Roadway Design Manual"
	return []units.Default{
		{Name: "driver, time to react", Value: Reaction.String(), Source: road},
		{Name: "driver, braking", Value: Braking.Text(s), Source: road},
		{Name: "wet road, stopping distance", Value: fmt.Sprintf("x %s", units.Number(Wet.Factor(), 0)), Source: "UK road safety pages"},
		{Name: "ice, stopping distance", Value: fmt.Sprintf("x %s", units.Number(Ice.Factor(), 0)), Source: "UK road safety pages"},
		{Name: "person nearing a machine", Value: BodyApproach.Text(s), Source: "ISO 13855"},
	}
}
