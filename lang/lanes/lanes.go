// Package lanes does many alike things side by side.
package lanes

import (
	"sync"
	"sync/atomic"
)

// Do calls do with every number from 0 up to n, each once, on so many goroutines or
// fewer, and returns when all are done. Where some of them panic the others are done
// all the same, and Do panics with what the lowest number did.
func Do(n, lanes int, do func(i int)) {
	var next atomic.Int64
	var wg sync.WaitGroup
	failed := make([]any, n)
	for range min(lanes, n) {
		wg.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				failed[i] = caught(do, i)
			}
		})
	}
	wg.Wait()
	for _, f := range failed {
		if f != nil {
			panic(f)
		}
	}
}

// caught is what a call panics with; nil where it doesn't.
func caught(do func(i int), i int) (failed any) {
	defer func() { failed = recover() }()
	do(i)
	return nil
}
