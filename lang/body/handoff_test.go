package body

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/units"
)

func TestHandoffs(t *testing.T) {
	// Common practice, no source, from memory.
	for _, r := range []struct {
		from, to         Class
		typical, minimum units.Seconds
		still            bool
	}{
		{Gimbal, Gimbal, 3, 2, false},
		{Gimbal, Handheld, 3, 2, false},
		{Gimbal, Crane, 6, 4, false},
		{Crane, Gimbal, 4, 2.5, false},
		{Cable, Handheld, 4, 2.5, false},
		{BodyRig, Crane, 10, 6, true},
		{Crane, BodyRig, 6, 4, true},
		{BodyRig, Cart, 10, 6, true},
		{Cart, BodyRig, 6, 4, true},
		{Gimbal, Cart, 12, 8, true},
		{BodyRig, Dolly, 4, 3, false},
		{Dolly, Handheld, 2, 1.5, false},
		{Sticks, Dolly, 10, 6.5, false},
	} {
		h := HandoffBetween(r.from, r.to)
		assert.Equal(t, r.typical, h.Typical, "%s to %s", r.from, r.to)
		assert.Equal(t, r.minimum, h.Minimum, "%s to %s", r.from, r.to)
		assert.Equal(t, r.still, h.Still, "%s to %s", r.from, r.to)
	}
}
