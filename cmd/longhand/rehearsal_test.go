package main

import (
	"context"
	"io"
	"runtime"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/render/sheets"
)

// impatient is a context that is cancelled once it was asked so many times.
type impatient struct {
	context.Context
	stop context.CancelFunc

	mu   sync.Mutex
	left int
}

func newImpatient(asked int) *impatient {
	ctx, stop := context.WithCancel(context.Background())
	return &impatient{Context: ctx, stop: stop, left: asked}
}

func (c *impatient) Err() error {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.left--; c.left < 0 {
		c.stop()
	}
	return c.Context.Err()
}

// An interrupted rehearsal tells what was played until then, and nothing is made
// of one for a book or a page.
func TestAnInterruptedRehearsal(t *testing.T) {
	// One worker, which plays in order: of two, the one with the first playing may be
	// kept waiting until the other has been interrupted, and then nothing counts.
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	r, err := compile.Text(context.Background(), "plan.take", string(firstPlan), compile.Options{})
	require.NoError(t, err)
	a := &app{err: io.Discard, getenv: func(string) string { return "" }}
	f := &rehearsalFlags{runs: 1000, seed: 1, clockOnly: true, changes: 3}

	o, err := a.rehearsed(newImpatient(100), r, f)
	require.NoError(t, err)
	assert.Positive(t, o.Runs)
	assert.Less(t, o.Runs, 1000)
	assert.False(t, o.Sought)
	b, err := sheets.Rehearsal(r, o)
	require.NoError(t, err)
	played, _ := b.Sheets[0].Table(sheets.PlayedTable)
	assert.Equal(t, "1000; interrupted", played.Text(1, "value"))

	_, err = a.rehearsal(newImpatient(100), r, f, true)
	assert.ErrorIs(t, err, context.Canceled)
	_, err = a.rehearsal(newImpatient(0), r, f, true)
	assert.EqualError(t, err, "interrupted before one playing was done")
	none, err := a.rehearsal(newImpatient(0), r, f, false)
	assert.NoError(t, err)
	assert.Nil(t, none)
}
