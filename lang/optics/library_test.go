package optics

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// TestAgainstALibrary compares with points projected by the camera of three
// 0.187.0, written by testdata/points.mjs.
func TestAgainstALibrary(t *testing.T) {
	file, err := os.Open("testdata/points.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(rows), 200)
	for _, r := range rows {
		n := make([]float64, len(r))
		for i := range r {
			n[i], err = strconv.ParseFloat(r[i], 64)
			require.NoError(t, err)
		}
		at, to, p := geom.Vec3{X: n[0], Y: n[1], Z: n[2]}, geom.Vec3{X: n[3], Y: n[4], Z: n[5]}, geom.Vec3{X: n[10], Y: n[11], Z: n[12]}
		view := View{At: at, Focal: units.Millimetres(n[6])}.LookAt(to)
		view.Roll = units.Degrees(n[9])
		f := Frame{Width: units.Millimetres(n[7]), Height: units.Millimetres(n[8]), Squeeze: 1}
		i, ok := view.Project(p)
		assert.True(t, ok, "%v", r)
		x, y := f.Fraction(i)
		assert.InDelta(t, n[13], 2*x-1, 1e-5, "%v", r)
		assert.InDelta(t, n[14], 2*y-1, 1e-5, "%v", r)
	}
}
