package clock_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/clock"
	"longhand/lang/plan"
)

func TestSmoke(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil)
	a := s.walk(mina, "M1 M2")
	b := s.walk(otto, "M4", starting(when(s.reaches(mina, "M1"), 1)), by(plus(6)))
	s.beat("two", nil)
	e := s.say(otto, "one two three four")
	c := clock.Solve(s.p, lengths{})
	assert.EqualValues(t, 0, c.Of(a).Start)
	assert.EqualValues(t, 3, c.Of(b).Start)
	assert.EqualValues(t, 7, c.Of(b).End)
	assert.EqualValues(t, 7, c.Of(e).Start)
	assert.Len(t, c.Lates, 1)
	assert.Equal(t, "when mina reaches M1, +1 s", c.Words(b))
	_ = plan.Move{}
}
