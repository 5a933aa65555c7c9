package reference

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/format"
	"longhand/lang/syntax"
	"longhand/render/frames"
	"longhand/render/label"
	"longhand/render/overhead"
	"longhand/render/scene"
	"longhand/render/svg"
	"longhand/render/timeline"
)

// plans is where the plans of the examples lie and the drawings made of them.
const plans = "../../lang/reference/"

// undrawn begins the names of plans that hold examples of which there is nothing to
// see.
const undrawn = "undrawn"

// shared are the files that plans use; they are no plans of their own.
var shared = map[string]bool{"hall.take": true, "people.take": true, "sorting-hall.take": true}

// example is a plan of lang/reference.
type example struct {
	name   string // of the file, without its ending
	text   string
	result *compile.Result
}

func read(name string) (string, error) {
	text, err := os.ReadFile(plans + name)
	return string(text), err
}

// examples compiles all plans.
func examples(t *testing.T) []*example {
	paths, err := filepath.Glob(plans + "*.take")
	require.NoError(t, err)
	var out []*example
	for _, p := range paths {
		name := filepath.Base(p)
		if shared[name] {
			continue
		}
		text, err := read(name)
		require.NoError(t, err)
		r, err := compile.Compile(context.Background(), read, name, compile.Options{})
		require.NoError(t, err)
		out = append(out, &example{strings.TrimSuffix(name, ".take"), text, r})
	}
	return out
}

// fileOf is the name of the plan that a statement is drawn from.
func fileOf(k *syntax.Kind) string { return strings.ReplaceAll(k.Name(), " ", "-") }

// has is whether a plan's own text has a line of a kind that says what the table's
// example says.
func (e *example) has(k *syntax.Kind) bool {
	for _, f := range e.result.Files {
		if f.Source.Name != e.name+".take" {
			continue
		}
		for _, s := range f.Sections {
			for _, l := range append([]*syntax.Line{s.Head}, s.Lines...) {
				if l != nil && l.Kind == k && strings.TrimSpace(l.Span(f.Source).Text()) == k.Example {
					return true
				}
			}
		}
	}
	return false
}

// Every example of the table is true: it stands in a whole plan of which nothing
// above a note is found, and of which there is a drawing if there is anything to see.
func TestEveryExampleStandsInAPlan(t *testing.T) {
	all := examples(t)
	byName := map[string]*example{}
	known := map[string]bool{}
	for _, k := range syntax.Statements {
		known[fileOf(k)] = true
	}
	for _, e := range all {
		byName[e.name] = e
		for _, d := range e.result.Findings {
			assert.LessOrEqual(t, d.Severity, diag.Note, "lang/reference/%s.take:%d: %s: %s %v", e.name, d.Span.StartPos().Line, d.Code, d.Message, d.Notes)
		}
		assert.Equal(t, e.text, format.Text(e.text), "lang/reference/%s.take: run longhand fmt", e.name)
		assert.True(t, known[e.name] || strings.HasPrefix(e.name, undrawn), "lang/reference/%s.take is named after no statement", e.name)
	}
	for _, k := range syntax.Statements {
		if e := byName[fileOf(k)]; e != nil {
			assert.True(t, e.has(k), "lang/reference/%s.take has to have the line that the table gives for an example:\n%s", e.name, k.Example)
			continue
		}
		found := false
		for _, e := range all {
			found = found || strings.HasPrefix(e.name, undrawn) && e.has(k)
		}
		assert.True(t, found, "no plan has the example of %q:\n%s\nWrite lang/reference/%s.take, a small whole plan with this line, of which the drawing is made; or, if there is nothing to see, put the line into lang/reference/%s.take. Then run: go generate ./render/reference",
			k.Name(), k.Example, fileOf(k), undrawn)
	}
}

// Drawings are what the tool draws of the plans: go generate ./render/reference.
func TestDrawingsAreFresh(t *testing.T) {
	made := map[string]bool{}
	total := 0
	for _, e := range examples(t) {
		if strings.HasPrefix(e.name, undrawn) || e.result.Tracks == nil {
			continue
		}
		sheet, err := draw(e)
		if !assert.NoError(t, err, e.name) {
			continue
		}
		for _, problem := range sheet.Check() {
			t.Errorf("%s: %v", e.name, problem)
		}
		texts := sheet.Texts()
		for _, pair := range label.Overlaps(label.Quads(texts)) {
			t.Errorf("%s: %q lies on %q", e.name, texts[pair[0]].Text, texts[pair[1]].Text)
		}
		data := svg.Write(sheet, svg.Options{})
		total += len(data)
		path := plans + e.name + ".svg"
		made[filepath.Base(path)] = true
		if updating(t) {
			require.NoError(t, os.WriteFile(path, data, 0o644))
		}
		got, err := os.ReadFile(path)
		if assert.NoError(t, err, "make it: go generate ./render/reference") {
			assert.True(t, bytes.Equal(got, data), "lang/reference/%s.svg: run `go generate ./render/reference`, and look at it", e.name)
		}
	}
	assert.Less(t, total, 1_500_000, "bytes of all drawings of the reference")
	there, err := filepath.Glob(plans + "*.svg")
	require.NoError(t, err)
	for _, p := range there {
		name := filepath.Base(p)
		assert.True(t, made[name] || name == "hall.svg", "lang/reference/%s has no plan any more", name)
	}
}

// how is the first line of a plan that is not drawn as an overhead of its last beat.
var how = regexp.MustCompile(`\A# Drawn as (a timeline|what (\S+) sees( in the pickup)?)\.\n`)

// draw draws what the first line of a plan says: a timeline, what a camera sees, or
// else its last beat from above.
func draw(e *example) (*scene.Sheet, error) {
	r := e.result
	if len(r.Plan.Beats) == 0 {
		return nil, fmt.Errorf("lang/reference/%s.take has no beat to draw", e.name)
	}
	last := r.Plan.Beats[len(r.Plan.Beats)-1]
	m := how.FindStringSubmatch(e.text)
	switch {
	case m == nil:
		if s := overhead.Small(r, last, overhead.Options{Colour: true}); s != nil {
			return s, nil
		}
	case m[1] == "a timeline":
		if sheets := timeline.Sheets(r, timeline.Options{Strip: true, Bare: true, Paper: scene.Paper{Width: 20, Height: 160}, Scale: 113 / float64(r.Tracks.Length())}); len(sheets) > 0 {
			return sheets[0].Spare(), nil
		}
	default:
		if m[3] != "" && len(r.Pickups) > 0 {
			shot := r.Pickups[0]
			r, last = &compile.Result{Plan: shot.Plan, Played: shot.Played}, nil
		}
		for _, c := range r.Plan.Kit.Cameras {
			if c.Name == m[2] {
				if s := frames.Strip(r, last, c); s != nil {
					return s, nil
				}
			}
		}
	}
	return nil, fmt.Errorf("lang/reference/%s.take: there is nothing to draw", e.name)
}

// view says in words what the drawing is of.
func (e *example) view() string {
	switch m := how.FindStringSubmatch(e.text); {
	case m == nil:
		return "from above"
	case m[2] != "":
		return "what " + m[2] + " sees" + m[3]
	default:
		return "as a timeline"
	}
}
