package timecode

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/units"
)

// TestAgainstALibrary compares with labels written by smpte-timecode 1.3.6, by
// testdata/labels.mjs.
func TestAgainstALibrary(t *testing.T) {
	file, err := os.Open("testdata/labels.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 200)
	for _, r := range rows {
		rate, err := strconv.ParseFloat(r[0], 64)
		require.NoError(t, err)
		frame, err := strconv.Atoi(r[1])
		require.NoError(t, err)
		c := code(t, rate, true)
		assert.Equal(t, r[2], c.Label(units.Frame(frame)), "%v", r)
		back, err := c.Parse(r[2])
		assert.NoError(t, err)
		assert.Equal(t, frame, int(back))
	}
}
