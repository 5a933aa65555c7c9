package page

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/render/sheets"
)

// The lines chosen for a department are those that its sheet has rows of: none
// that the sheet has may be missing.
func TestADepartmentIsShownAllThatItsSheetRestsOn(t *testing.T) {
	for _, name := range examples {
		r := shipped(t, name)
		book, err := sheets.Breakdown(context.Background(), r)
		require.NoError(t, err)
		taken := map[*plan.Action]bool{}
		for _, a := range r.Tracks.Clock.Lines() {
			taken[a] = true
		}
		for _, s := range book.Sheets {
			for _, table := range s.Tables {
				for _, row := range table.Rows {
					if row.Action != nil && taken[row.Action] {
						assert.True(t, row.Action.ConcernsDepartment(s.Department), "%s: %s, table %s: %s (%T)", name, s.Department, table.Key, clock.Describe(row.Action), row.Action.Deed)
					}
				}
			}
		}
	}
}
