package scene

import (
	"math"
	"strconv"
)

// Round is how every coordinate leaves the project: three decimals, a
// thousandth of a millimetre, which hides what differs between processors; and
// never minus zero.
func Round(v float64) float64 {
	r := math.Round(v*1000) / 1000
	if r == 0 {
		return 0
	}
	return r
}

// Number prints a rounded value without trailing zeros.
func Number(v float64) string {
	return string(AppendNumber(nil, v))
}

// AppendNumber appends what Number prints.
func AppendNumber(b []byte, v float64) []byte {
	if !finite(v) {
		return append(b, '0') // Check reports it; a writer must still write a file that opens
	}
	return strconv.AppendFloat(b, Round(v), 'f', -1, 64)
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
