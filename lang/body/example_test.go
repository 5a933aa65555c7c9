package body_test

import (
	"fmt"

	"longhand/lang/body"
)

func ExampleSizeOf() {
	// The frame is 0.8 m high where someone of 1.70 m stands.
	fmt.Println(body.SizeOf(0.8, 1.70))
	// Output: waist
}

func ExampleHandoffBetween() {
	h := body.HandoffBetween(body.BodyRig, body.Crane)
	fmt.Printf("%s: %s, least %s\n", h.How, h.Typical, h.Minimum)
	// Output: the wearer steps on the arm's platform, belted: 10 s, least 6 s
}
