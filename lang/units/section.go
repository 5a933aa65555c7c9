package units

import (
	"fmt"
	"math"
)

// SquareMillimetres is the cross-section of a wire.
type SquareMillimetres float64

func (s SquareMillimetres) String() string { return decimal(float64(s), 2) + " mm²" }

// awg is the American wire gauge, a size and no quantity: the higher, the thinner.
const awg = "AWG"

// The gauges that cables for lamps come in.
const thickestGauge, thinnestGauge = 0, 20

// wireGauge is the section of a solid wire of a gauge: its diameter is
// 0.005 in · 92^((36-n)/39) (ASTM B258).
func wireGauge(n float64) (SquareMillimetres, error) {
	if n != math.Trunc(n) || n < thickestGauge || n > thinnestGauge {
		return 0, fmt.Errorf("gauges go from %d AWG to %d AWG; thicker wire is written by its cross-section: 70 mm2", thickestGauge, thinnestGauge)
	}
	d := 0.127 * math.Pow(92, (36-n)/39)
	return SquareMillimetres(math.Pi / 4 * d * d), nil
}
