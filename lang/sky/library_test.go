package sky

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/units"
)

// TestAgainstALibrary compares with times worked out by astronomy-engine 2.1.19,
// written by testdata/sun.mjs.
func TestAgainstALibrary(t *testing.T) {
	file, err := os.Open("testdata/sun.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 300)
	find := map[string]func(Place, Day) Moment{
		"rise":         func(p Place, d Day) Moment { return Rises(p, d, Horizon) },
		"set":          func(p Place, d Day) Moment { return Sets(p, d, Horizon) },
		"civil-rise":   func(p Place, d Day) Moment { return Rises(p, d, Civil) },
		"civil-set":    func(p Place, d Day) Moment { return Sets(p, d, Civil) },
		"nautical-set": func(p Place, d Day) Moment { return Sets(p, d, Nautical) },
		"golden-set":   func(p Place, d Day) Moment { return Sets(p, d, Golden) },
	}
	for _, r := range rows {
		number := func(i int) float64 {
			v, err := strconv.ParseFloat(r[i], 64)
			require.NoError(t, err)
			return v
		}
		p := Place{units.Degrees(number(0)), units.Degrees(number(1))}
		d := Day{int(number(3)), int(number(4)), int(number(5)), units.Seconds(number(2)) * h}
		m := find[r[6]](p, d)
		if assert.Equal(t, Timed, m.State, "%v", r) {
			assert.InDelta(t, number(7), float64(d.SinceMidnight(m.Time)), 15, "%v", r)
		}
	}
}
