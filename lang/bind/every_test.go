package bind

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/source"
	"longhand/lang/syntax"
)

// TestEveryStatement binds a plan that has every kind of statement: none is
// dropped in silence.
func TestEveryStatement(t *testing.T) {
	files, bag := Load(func(path string) (string, error) { return readTestdata(t, path), nil }, "every.take")
	p, found := Bind(files)
	bag.Merge(found)
	for _, d := range bag.Sorted() {
		t.Errorf("line %d: %s: %s %v", d.Span.StartPos().Line, d.Code, d.Message, d.Notes)
	}
	fit(t, p)

	used := map[*syntax.Kind]bool{}
	lines := 0
	for _, s := range files[0].Sections {
		if s.Head != nil {
			used[s.Head.Kind] = true
		}
		for _, ln := range s.Lines {
			if ln.Kind == nil {
				continue
			}
			used[ln.Kind] = true
			if inBeat(s) {
				lines++
			}
		}
	}
	for _, k := range syntax.Statements {
		if k.Words[0] == "record" { // either it or film
			continue
		}
		assert.True(t, used[k], "%s is not in every.take", k.Usage)
	}
	got := len(p.Actions) + len(p.Notes) + len(p.PaintOuts) + len(p.Allows)
	for _, pick := range p.Pickups {
		got += len(pick.Actions)
	}
	assert.Equal(t, lines, got, "a line of a beat came to nothing")

	deeds := map[string]bool{}
	for _, a := range p.Actions {
		deeds[strings.TrimPrefix(fmt.Sprintf("%T", a.Deed), "*plan.")] = true
	}
	for _, name := range []string{"Move", "Stand", "Turn", "Spin", "Ride", "Leave", "Board", "Spot", "Pose", "Operate", "Say", "Mount", "Fit",
		"See", "Keep", "Beside", "Circle", "Travel", "Lift", "Swing", "Rack", "Hide", "Roll", "Handoff", "Cut", "Cue"} {
		assert.True(t, deeds[name], "no line comes to %s", name)
	}
	// Every list of the set, the kit and the look has something in it.
	for _, part := range []any{p.Set, p.Kit, p.Look, p.Take} {
		v := reflect.ValueOf(part)
		for i := range v.NumField() {
			assert.False(t, v.Field(i).IsZero(), "%T.%s is empty", part, v.Type().Field(i).Name)
		}
	}
}

// TestExamplesAreUnderstood binds the example of each kind of statement where it
// belongs: no finding may say more than that a name or a line is missing.
func TestExamplesAreUnderstood(t *testing.T) {
	for _, k := range syntax.Statements {
		text := k.Example + "\n"
		if !k.Head && k.Section != "" {
			head := map[string]string{"take": `take "T"`, "set": `set "S"`, "beat": `beat "B"`, "pickup": `pickup "P" after "B"`}[k.Section]
			if head == "" {
				head = k.Section
			}
			text = head + "\n  " + text
		}
		f, bag := syntax.Parse(source.NewFile("example.take", text))
		require.Zero(t, bag.Len(), "%s: %v", k.Example, bag.Sorted())
		_, found := Bind([]*syntax.File{f})
		for _, d := range found.Sorted() {
			assert.Contains(t, []string{"unknown-name", "no-default", "no-such-line"}, string(d.Code), "%s: %s", k.Example, d.Message)
		}
	}
}
