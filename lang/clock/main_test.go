package clock_test

import (
	"flag"
	"os"
	"testing"
)

// The property tests draw the same plans every time unless -rapid.seed says
// otherwise.
func TestMain(m *testing.M) {
	for name, value := range map[string]string{"rapid.seed": "31", "rapid.checks": "1000", "rapid.nofailfile": "true"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
