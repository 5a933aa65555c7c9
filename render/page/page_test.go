package page

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestTheSameTakeGivesTheSameBytes(t *testing.T) {
	for _, name := range examples {
		a, err := Write(context.Background(), shipped(t, name), Options{})
		require.NoError(t, err)
		b, err := Write(context.Background(), shipped(t, name), Options{})
		require.NoError(t, err)
		assert.True(t, bytes.Equal(a, b), name)
		assert.Less(t, len(a), 2_000_000, "%s has to travel", name)
		assert.NotContains(t, string(a), "-0,", name)
	}
}

// The page must need nothing but itself.
func TestThePageNamesNoOtherPlace(t *testing.T) {
	data, err := Write(context.Background(), shipped(t, "last-collection"), Options{})
	require.NoError(t, err)
	text := strings.ReplaceAll(string(data), "http://www.w3.org/2000/svg", "") // the name of a language, not a place
	for _, bad := range []string{"http:", "https:", "src=", "@import", "url(//", "fetch(", "EventSource", "{{"} {
		assert.NotContains(t, text, bad)
	}
	assert.Contains(t, text, "connect-src 'none'")
}

func TestAServedPageAsksItsOwnServerOnly(t *testing.T) {
	data, err := Live("plan", nil, 0)
	require.NoError(t, err)
	assert.Contains(t, string(data), "connect-src 'self'")
	assert.Contains(t, string(data), `new EventSource("/news")`)
}

// What is in a plan's text can't end the script that holds it.
func TestTextOfAPlanStaysText(t *testing.T) {
	r := shipped(t, "eight-bars")
	r.Plan.Take.Title = `</script><script>alert(1)</script>{{script}}`
	data, err := Write(context.Background(), r, Options{})
	require.NoError(t, err)
	assert.NotContains(t, string(data), "<script>alert")
	assert.Equal(t, 1, strings.Count(string(data), "class Player"))
}

func TestAPlanThatWasNotWorkedOutHasNoPage(t *testing.T) {
	_, err := Data(context.Background(), nil, Options{})
	assert.ErrorIs(t, err, errNothing)
}

// decode reads a channel as files/decode.js does.
func decode(t require.TestingT, c channel, n int) []int64 {
	out := []int64{c.first}
	value, pace := c.first, int64(0)
	put := func(d int64) {
		pace += d
		value += pace
		out = append(out, value)
	}
	rest := c.rest
	next := func() (n uint64) {
		for shift := 0; ; shift += 5 {
			d := strings.IndexByte(digits, rest[0])
			require.GreaterOrEqual(t, d, 0)
			rest = rest[1:]
			n |= uint64(d&31) << shift
			if d < 32 {
				return n
			}
		}
	}
	for rest != "" {
		if rest[0] == '.' {
			rest = rest[1:]
			for k := next(); k > 0; k-- {
				put(0)
			}
			continue
		}
		if k := next(); k&1 == 1 {
			put(-int64(k >> 1))
		} else {
			put(int64(k >> 1))
		}
	}
	for len(out) < n && c.rest == "" {
		out = append(out, c.first)
	}
	return out
}

// A quantity comes back within half a step, whatever it does.
func TestChannelsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64Range(-500, 500), 1, 60).Draw(t, "values")
		for k := rapid.IntRange(0, 40).Draw(t, "still"); k > 0; k-- {
			values = append(values, values[len(values)-1])
		}
		step := rapid.SampledFrom([]float64{lengthStep, angleStep, focalStep, focusStep}).Draw(t, "step")
		var c channels
		i := c.add(step, values)
		got := decode(t, c.list[i], len(values))
		require.Len(t, got, len(values))
		for k, v := range values {
			require.InDelta(t, v, float64(got[k])*step, step/2+1e-9)
		}
	})
}

// Turning on past half a turn must not spin back the long way between frames.
func TestAnglesTurnOn(t *testing.T) {
	var c channels
	got := decode(t, c.list[c.angles([]float64{3, 3.1, -3.1, -3})], 4)
	for i := 1; i < len(got); i++ {
		assert.Less(t, math.Abs(float64(got[i]-got[i-1]))*angleStep, 0.2)
	}
}

func TestQuantitiesAlikeAreSentOnce(t *testing.T) {
	var c channels
	a, b := c.add(lengthStep, []float64{1, 2, 3}), c.add(lengthStep, []float64{1, 2, 3})
	assert.Equal(t, a, b)
	assert.NotEqual(t, a, c.add(angleStep, []float64{1, 2, 3}))
	out, err := json.Marshal(c.list[a])
	require.NoError(t, err)
	// 2000 more is 4000 with its sign: digits 0, 29 and 3 of base 32, lowest first.
	assert.JSONEq(t, `[0.0005, 2000, "g9DA"]`, string(out))
}
