package motion

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/units"
)

// A whole plan, from text: two people get off a van, the operator off a cart
// with the camera, and a second camera waits in the set.
func TestAWholePlan(t *testing.T) {
	text, err := os.ReadFile("testdata/collection.take")
	require.NoError(t, err)
	p := play(t, string(text))
	assert.Empty(t, p.Problems)
	assert.Empty(t, p.Jumps)
	assert.Less(t, p.Rounds, rounds)
	mina, otto, ida := p.body("mina"), p.body("otto"), p.body("ida")
	van, cart := p.body("van"), p.body("cart")
	_, arrives := p.line("van", 0)
	assertAt(t, van, arrives, 3, -7)
	assert.Equal(t, p.thing("van"), mina.Carrier(arrives/2))
	assert.Equal(t, p.thing("cart"), ida.Carrier(arrives/2))

	// They get off on the side they go on from, not through the van.
	_, off := p.line("mina", 2)
	m, o := mina.At(off).Point(), otto.At(off).Point()
	assert.Greater(t, m.Y, van.At(off).Point().Y)
	assert.Greater(t, o.Y, van.At(off).Point().Y)
	assert.Greater(t, m.Dist(o), 0.46, "beside each other")

	start, end := p.line("mina", 4)
	assertAt(t, mina, start, 12, 7)
	assertAt(t, mina, end, 20, 6)
	_, end = p.line("otto", 3)
	assertAt(t, otto, end, 20.8, 6)
	_, end = p.line("cart", 1)
	assertAt(t, cart, end, -4, -0.5)

	a, b := p.cam("A"), p.cam("B")
	require.Len(t, p.Handoffs, 1)
	h := p.Handoffs[0]
	assert.Greater(t, float64(h.Moving), 0.0, "the cart has not stopped yet: for a check to find")
	assert.Equal(t, "cart", h.Left.Name)
	assert.Equal(t, p.thing("ida"), h.Taker)
	assert.False(t, b.Rolling(start-1))
	assert.True(t, b.Rolling(start))
	assertSmooth(t, a, float64(p.Clock.Length), 4)
	for at := units.Seconds(0); at < p.Clock.Length; at += 0.5 {
		v := b.At(at)
		assert.InDelta(t, 24.05+pupilBehind, v.X, 0.06, "behind the racks")
		assert.InDelta(t, 6, v.Y, 1e-9)
	}
}
