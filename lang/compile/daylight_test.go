package compile

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/sky"
)

// A plan that gives no reset has the usual one between its tries, not none.
func TestTriesOfAPlanWithoutAReset(t *testing.T) {
	tries := func(line string) int {
		r, err := Text(context.Background(), "plan.take", "take \"Hours\"\n  roll in 19:40 to 20:40\n"+line, Options{})
		require.NoError(t, err)
		day, ok := Daylight(r)
		require.True(t, ok)
		return day.Tries.Count()
	}
	assert.Equal(t, 60*60/int(sky.Reset)+1, tries(""), "a take without length, an hour, a try at either end")
	assert.Less(t, tries("  reset 20 min\n"), tries("  reset 1 min\n"))
}
