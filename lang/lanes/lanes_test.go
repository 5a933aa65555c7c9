package lanes

import (
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDoCallsEachOnce(t *testing.T) {
	for _, n := range []int{0, 1, 2, 100} {
		for _, lanes := range []int{1, 2, 7, 200} {
			calls := make([]atomic.Int32, n)
			Do(n, lanes, func(i int) { calls[i].Add(1) })
			for i := range calls {
				assert.EqualValues(t, 1, calls[i].Load(), "%d of %d on %d lanes", i, n, lanes)
			}
		}
	}
}

func TestDoPassesOnThePanicOfTheLowest(t *testing.T) {
	var done atomic.Int32
	assert.PanicsWithValue(t, 3, func() {
		Do(20, 4, func(i int) {
			if i == 3 || i == 11 {
				panic(i)
			}
			done.Add(1)
		})
	})
	assert.EqualValues(t, 18, done.Load())
}
