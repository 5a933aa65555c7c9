package clock_test

import "flag"

// Property tests try the same cases in every run, so that what failed once fails
// again and a change is never blamed for another's luck. Others: -rapid.seed N.
func init() {
	if err := flag.Set("rapid.seed", "20260820"); err != nil {
		panic(err)
	}
}
