package rehearse

import (
	"math"
	"slices"

	"longhand/lang/units"
)

// Quantiles are what 5, 50 and 95 of 100 runs stay at or below.
type Quantiles struct{ P5, P50, P95 units.Seconds }

// quantilesOf sorts the values it is given.
func quantilesOf(values []float64) Quantiles {
	if len(values) == 0 {
		return Quantiles{}
	}
	slices.Sort(values)
	return Quantiles{
		P5:  units.Seconds(quantile(values, 0.05)),
		P50: units.Seconds(quantile(values, 0.5)),
		P95: units.Seconds(quantile(values, 0.95)),
	}
}

// quantile is the sample quantile of sorted values, between two of them in
// proportion (type 7 of R. J. Hyndman and Y. Fan, "Sample quantiles in
// statistical packages", The American Statistician 50, 1996).
func quantile(sorted []float64, p float64) float64 {
	at := p * float64(len(sorted)-1)
	i := int(math.Floor(at))
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	low, high := sorted[i], sorted[i+1]
	if low == high || at == float64(i) { // also where both are without end
		return low
	}
	return low + (at-float64(i))*(high-low)
}
