package sky

import (
	"math"

	"longhand/lang/units"
)

// BrightSource says where the brightness of the sky comes from, for print.
const BrightSource = "P. K. Seidelmann (ed.), Explanatory Supplement to the Astronomical Almanac, 1992, clear sky without moon, from memory; " +
	"agrees with the AMS Glossary of Meteorology at sunset and at the end of civil twilight"

// brightness is a piece of the curve: log10 of lux over x = elevation / 90°.
type brightness struct {
	from units.Degrees
	l    [4]float64
}

var brightPieces = [...]brightness{
	{20, [4]float64{3.74, 3.97, -4.07, 1.47}},
	{5, [4]float64{3.05, 13.28, -45.98, 64.33}},
	{-0.8, [4]float64{2.88, 22.26, -207.64, 1034.30}},
	{-5, [4]float64{2.88, 21.81, -258.11, -858.36}},
	{-12, [4]float64{2.70, 12.17, -431.69, -1899.83}},
	{-18, [4]float64{13.84, 262.72, 1447.42, 2797.93}},
}

// Bright is the light of sun and clear sky on level ground, the sun's middle
// being at an elevation without refraction. Below the end of astronomical
// twilight it stays at what the stars give. Clouds take up to ten times as much
// away; see [BrightSource].
func Bright(elevation units.Degrees) units.Lux {
	e := math.Max(-18, math.Min(90, float64(elevation)))
	x := e / 90
	for _, p := range brightPieces {
		if e >= float64(p.from) {
			return units.Lux(math.Pow(10, p.l[0]+x*(p.l[1]+x*(p.l[2]+x*p.l[3]))))
		}
	}
	return 0 // not reached: e is at least the last piece's
}

// Fall is how many stops the light of a clear sky changes over a window:
// negative as it gets darker; 0 for a window that never is.
func Fall(p Place, w Window) float64 {
	if w.State == Never {
		return 0
	}
	return math.Log2(float64(Bright(At(p, w.End).Elevation) / Bright(At(p, w.Start).Elevation)))
}
