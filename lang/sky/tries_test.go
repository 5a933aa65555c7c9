package sky

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestStartsOnTheMinute: starts put off to the minute leave room for the take and
// the reset, and all of them fit; where they would not, they stay as they are.
func TestStartsOnTheMinute(t *testing.T) {
	from := time.Date(2050, 7, 1, 19, 31, 20, 0, time.UTC)
	within := func(minutes float64) Window {
		return Window{Start: from, End: from.Add(time.Duration(minutes * float64(time.Minute)))}
	}
	tries := TriesIn(within(45), 300, 660) // 16 minutes from one to the next
	require.Equal(t, 3, tries.Count())
	starts, ok := tries.OnTheMinute(960)
	require.True(t, ok)
	for i, want := range []string{"19:32", "19:48", "20:04"} {
		assert.Equal(t, want, starts[i].Format("15:04"))
	}

	tries = TriesIn(within(37.2), 300, 660)
	require.Equal(t, 3, tries.Count())
	starts, ok = tries.OnTheMinute(960)
	assert.False(t, ok, "20 s to spare, and 40 s to the minute")
	assert.Equal(t, tries.Starts, starts)

	tries = TriesIn(within(10.5), 100, 85) // not full minutes
	starts, ok = tries.OnTheMinute(185)
	require.True(t, ok)
	require.Len(t, starts, 3)
	for i := 1; i < len(starts); i++ {
		assert.GreaterOrEqual(t, starts[i].Sub(starts[i-1]), 185*time.Second)
		assert.Zero(t, starts[i].Second())
	}
}
