package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A beat's frame is the first that shows it, so that the frames of the beats add up,
// at a rate at which no beat begins on a frame too. At 29.97 frames a second 4 s are
// 119.88 frames: the first at or after them is number 120.
func TestFramesOfBeatsAddUp(t *testing.T) {
	r, b := planOf(t, "testdata/stage.take")
	var beats *Table
	for i := range b.Sheets {
		for k := range b.Sheets[i].Tables {
			if b.Sheets[i].Tables[k].Key == "beats" {
				beats = &b.Sheets[i].Tables[k]
			}
		}
	}
	require.NotNil(t, beats)
	require.Len(t, beats.Rows, len(r.Plan.Beats))
	at := 0.0
	for _, row := range beats.Rows {
		assert.Equal(t, at, *row.Cells[beats.Column("frame")].Value)
		at += *row.Cells[beats.Column("frames")].Value
	}
	assert.Equal(t, 120.0, *beats.Rows[1].Cells[beats.Column("frame")].Value)
	assert.Equal(t, "00:00:04:00", beats.Rows[1].Cells[beats.Column("timecode")].Text)
}
