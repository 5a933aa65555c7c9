package sheets

import (
	"context"
	"html"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/lang/safety"
)

// every plan that the tests look at as a whole.
var plans = []string{"testdata/hatch.take", "testdata/stage.take", "../../examples/last-collection.take"}

func TestEveryLineOfThePlanIsOnSomeSheet(t *testing.T) {
	for _, name := range plans {
		r, b := planOf(t, name)
		on := map[*plan.Action][]string{}
		for _, s := range b.Sheets {
			for _, tab := range s.Tables {
				for _, row := range tab.Rows {
					if row.Action != nil {
						on[row.Action] = append(on[row.Action], string(s.Department)+"/"+tab.Key)
					}
				}
			}
		}
		all := append([]*plan.Action(nil), r.Plan.Actions...)
		for _, p := range r.Plan.Pickups {
			all = append(all, p.Actions...)
		}
		require.NotEmpty(t, all)
		for _, a := range all {
			assert.NotEmpty(t, on[a], "%s: %s is on no sheet", name, a.Span.Text())
		}
	}
}

// A department's own lines are on its own sheet, not only on the running order.
func TestLinesReachTheirDepartment(t *testing.T) {
	home := func(a *plan.Action) departments.Name {
		switch a.Deed.(type) {
		case *plan.Cue:
			return departments.Electric
		case *plan.Say:
			return departments.Sound
		case *plan.Operate:
			return departments.Art
		case *plan.Cut:
			return departments.Script
		case *plan.Handoff:
			return departments.Grip
		}
		switch a.Subject.(type) {
		case *plan.Camera:
			return departments.Camera
		case *plan.Vehicle:
			return departments.Vehicles
		case *plan.Person:
			return departments.Movement
		}
		return departments.Ads
	}
	for _, name := range plans {
		r, b := planOf(t, name)
		for _, a := range r.Plan.Actions {
			s, ok := b.For(home(a))
			require.True(t, ok)
			found := false
			for _, tab := range s.Tables {
				for _, row := range tab.Rows {
					found = found || row.Action == a
				}
			}
			assert.True(t, found, "%s: %s is not on the sheet of %s", name, a.Span.Text(), s.Title)
		}
	}
}

func TestTablesAreWhole(t *testing.T) {
	for _, name := range plans {
		_, b := planOf(t, name)
		require.Len(t, b.Sheets, 10)
		for i, d := range departments.All() {
			s := b.Sheets[i]
			assert.Equal(t, d, s.Department)
			keys := map[string]bool{}
			for _, tab := range s.Tables {
				where := name + ": " + string(d) + "/" + tab.Key
				assert.False(t, keys[tab.Key], "%s is there twice", where)
				keys[tab.Key] = true
				assert.NotEmpty(t, tab.Title, where)
				if len(tab.Rows) == 0 {
					assert.Regexp(t, `^\p{L}.*\.$`, tab.Empty, "%s says nothing where it is empty", where)
				}
				columns := map[string]bool{}
				for _, c := range tab.Columns {
					assert.False(t, columns[c.Key], "%s has %s twice", where, c.Key)
					columns[c.Key] = true
					assert.NotEmpty(t, c.About, "%s: %s", where, c.Key)
					assert.Regexp(t, `^[a-z][a-z0-9_]*$`, c.Key, where)
				}
				for _, row := range tab.Rows {
					require.Len(t, row.Cells, len(tab.Columns), where)
				}
			}
		}
	}
}

// What can hurt someone is said on the sheet that asks for it, and each caution
// defers to the people in charge.
func TestCautions(t *testing.T) {
	_, b := planOf(t, "../../examples/last-collection.take")
	for d, topic := range map[departments.Name]safety.Topic{
		departments.Electric: safety.Electricity, departments.Vehicles: safety.Vehicles, departments.Grip: safety.Cranes, departments.Movement: safety.Height, departments.Camera: safety.Worn, departments.Art: safety.Holes, departments.Ads: safety.Daylight,
	} {
		s, _ := b.For(d)
		assert.Contains(t, s.Cautions, topic.Caution(), d)
	}
	page := string(b.HTML())
	for _, s := range b.Sheets {
		for _, c := range s.Cautions {
			assert.True(t, strings.HasSuffix(c, safety.Defer), c)
			assert.Contains(t, page, html.EscapeString(sentence(c)))
		}
	}
	assert.Equal(t, len(b.Sheets), strings.Count(page, html.EscapeString(safety.General)))
}

func TestSmallestPlans(t *testing.T) {
	for name, text := range map[string]string{
		"a title":      "take \"Nothing\"\n",
		"a set":        "take \"Walls\"\nset \"Room\"\n  wall a (0, 0) (4, 0) high 3 m\n",
		"no camera":    "take \"Walk\"\nset \"Room\"\n  mark M1 (0, 0)\n  mark M2 (3, 0)\npeople\n  performer mo\nbeat \"On\"\n  mo walks from M1 to M2\n",
		"no people":    "take \"Cam\"\nset \"Room\"\n  mark M1 (0, 0)\nkit\n  camera A sensor 24 mm x 14 mm\n  lens w35 35 mm\n  rig legs sticks\nbeat \"On\" for 4 s\n  legs stands at M1\n  A on legs\n  A takes w35\n",
		"clock window": "take \"Hours\"\n  roll in 19:40 to 20:25\n",
		"polar night":  "take \"North\"\n  place 78.2 N 15.6 E\n  date 2026-12-20 zone +01:00\n  roll in civil-dusk\n",
		"a supply":     "take \"Power\"\nset \"Room\"\n  supply mains 230 V 16 A\n",
	} {
		t.Run(name, func(t *testing.T) {
			_, b := breakdown(t, "small.take", text)
			files, err := b.Files()
			require.NoError(t, err)
			for _, f := range files {
				assert.NotEmpty(t, f.Data, f.Name)
				if !strings.HasSuffix(f.Name, ".xlsx") {
					assert.NotRegexp(t, `NaN|[+-]Inf|%!|<nil>|-0(\.0)? `, string(f.Data), f.Name)
				}
			}
		})
	}
}

func TestNothingOfABrokenPlan(t *testing.T) {
	r, err := compile.Text(context.Background(), "broken.take", "take \"X\"\nbeat \"B\"\n  mina walks to M1\n", compile.Options{})
	require.NoError(t, err)
	_, err = Breakdown(context.Background(), r)
	assert.EqualError(t, err, "the plan has mistakes in its text, so there is nothing to make sheets of")
}

// A typing slip can put a mark in the next country; its sheets still come.
func TestAMarkFarAway(t *testing.T) {
	_, b := breakdown(t, "far.take", "take \"Far\"\nset \"Hall\"\n  wall w (0, 0) (4, 0) high 3 m\n  mark M1 (2, 2)\n  mark M2 (9000, 2)\nkit\n  camera A sensor 24 mm x 14 mm\n  lens w35 35 mm\n  rig legs sticks\nbeat \"On\" for 1 s\n  legs stands at M1\n  A on legs\n  A takes w35\n")
	s, _ := b.For(departments.Grip)
	tab, ok := s.Table("unseen")
	require.True(t, ok)
	assert.NotEmpty(t, tab.Rows)
}
