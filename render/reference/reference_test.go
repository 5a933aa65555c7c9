package reference

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"text/template"

	"github.com/aymanbagabas/go-udiff"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/format"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

const reference = "../../lang/README.md"

var update = flag.Bool("update", false, "write the reference and its drawings anew")

// updating is whether to write what is made.
func updating(t *testing.T) bool {
	if *update {
		require.Empty(t, os.Getenv("CI"), "the reference is not written in CI")
	}
	return *update
}

// about says each section in a few words, and what its chapter begins with.
var about = []struct{ word, about, intro string }{
	{"take", "what is being shot", "What holds for the whole take. All of it is optional but the first line."},
	{"set", "what stands still", "Walls, openings, furniture, marks, hanging points and power. HIGH is a height from the floor, or a range: `high 0.9 m to 2.1 m`."},
	{"kit", "what shoots and lights", "Cameras, lenses, what carries them, vehicles and lamps. What is not said of a thing is taken from its class; `longhand kit` lists every such value."},
	{"people", "who is there", "Performers may be seen; crew must not."},
	{"look", "what this production does and never does", "Rules of the production, which every frame is held to."},
	{"beat", "what happens", "A beat is a stretch of the take. After its header come lines that say who does what, first of performers, crew, vehicles and rigs, then of cameras, then of lights, doors and departments."},
	{"pickup", "coverage after the take", "Its lines are those of a beat."},
}

type section struct {
	Word, About, Title, Anchor, Intro, Found string
	Kinds                                    []kind
}

type kind struct{ Heading, Usage, Means, Doc, Example, Picture, Alt, Found string }

type finding struct{ Code, Severity, Title, At string }

type pair struct{ Name, Shape string }

type dimension struct{ Name, Units, Example string }

func makeReference(t *testing.T) string {
	var data struct {
		Sections                                                        []section
		Dimensions                                                      []dimension
		Notation                                                        []pair
		Findings                                                        []finding
		SectionList, Keywords, Reserved, Verbs, Sizes, Classes, Windows string
	}
	drawn := map[string]*example{}
	for _, e := range examples(t) {
		drawn[e.name] = e
	}
	for _, a := range about {
		s := section{Word: a.word, About: a.about, Title: strings.ToUpper(a.word[:1]) + a.word[1:] + ": " + a.about, Intro: a.intro}
		s.Anchor = anchor(s.Title)
		s.Found = found("What can be found at any of its lines", func(e diag.Entry) bool { return slices.Contains(e.At, a.word) })
		for _, k := range syntax.Statements {
			if k.Section == a.word || k.Section == "" && a.word == "take" {
				s.Kinds = append(s.Kinds, kindOf(k, drawn[fileOf(k)]))
			}
		}
		data.Sections = append(data.Sections, s)
	}
	data.Dimensions, data.Findings = dimensions(), findings()
	for _, name := range []string{"NAME", "STRING", "NUMBER", "INT", "POINT", "LENGTH", "MASS", "SPEED", "ANGLE", "DURATION", "TARGET", "HIGH", "PLACE", "PATH", "TIMING", "TIME", "EVENT", "SIZE", "CLASS", "WINDOW", "T", "GAUGE", "OFFSET", "CARRIER", "CODE"} {
		shape := syntax.Notation[name]
		require.NotEmpty(t, shape, name)
		data.Notation = append(data.Notation, pair{name, cell(shape)})
	}
	data.SectionList = codes(syntax.SectionWords)
	data.Keywords = codes(syntax.Keywords)
	data.Reserved = codes(slices.DeleteFunc(syntax.ReservedWords(), func(w string) bool {
		return syntax.IsKeyword(w) || syntax.IsSectionWord(w)
	}))
	data.Verbs, data.Sizes = codes(syntax.Verbs()), codes(syntax.Sizes)
	data.Classes, data.Windows = codes(syntax.Classes), codes(syntax.Windows)
	text, err := os.ReadFile("reference.tmpl")
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, template.Must(template.New("").Parse(string(text))).Execute(&out, data))
	return out.String()
}

func kindOf(k *syntax.Kind, e *example) kind {
	heading := strings.Join(k.Words, ", ")
	if k.Head {
		heading = "The header"
	}
	out := kind{Heading: heading, Usage: "    " + strings.ReplaceAll(k.Usage, " | ", "\n    "), Means: k.Means, Doc: k.Doc, Example: k.Example}
	out.Found = found("What can be found here", func(e diag.Entry) bool { return slices.Contains(e.At, k.Name()) })
	if e != nil {
		out.Picture = e.name
		out.Alt = e.result.Plan.Take.Title + ", " + e.view()
	}
	return out
}

// many is from how many findings on a list of them is folded away.
const many = 6

// found lists findings with what they say, under a heading; "" where there are none.
func found(heading string, about func(diag.Entry) bool) string {
	var out []string
	for _, e := range compile.Catalog() {
		if about(e) {
			out = append(out, "- [`"+string(e.Code)+"`](#all-the-findings): "+e.Title)
		}
	}
	list := strings.Join(out, "\n")
	switch {
	case len(out) == 0:
		return ""
	case len(out) < many:
		return heading + ":\n\n" + list
	}
	return fmt.Sprintf("<details><summary>%s: %d findings</summary>\n\n%s\n\n</details>", heading, len(out), list)
}

// findings is every finding with the statements that it can stand at.
func findings() []finding {
	var out []finding
	for _, e := range compile.Catalog() {
		out = append(out, finding{string(e.Code), e.Severity.String(), e.Title, compile.Where(e)})
	}
	return out
}

func dimensions() []dimension {
	var out []dimension
	var last units.Dimension
	for _, u := range units.Table {
		if u.Dimension != last {
			last = u.Dimension
			name := strings.TrimPrefix(strings.TrimPrefix(last.String(), "an "), "a ")
			out = append(out, dimension{Name: name, Example: cell(last.Example())})
		}
		d := &out[len(out)-1]
		if d.Units != "" {
			d.Units += " "
		}
		d.Units += "`" + u.Text + "`"
	}
	return out
}

func cell(s string) string { return "`" + strings.ReplaceAll(s, "|", `\|`) + "`" }

func codes(words []string) string { return "`" + strings.Join(words, "`, `") + "`" }

func anchor(title string) string {
	title = strings.ToLower(title)
	return strings.ReplaceAll(regexp.MustCompile(`[^a-z0-9 -]`).ReplaceAllString(title, ""), " ", "-")
}

// The reference says what the table says.
func TestReferenceIsFresh(t *testing.T) {
	got := makeReference(t)
	if updating(t) {
		require.NoError(t, os.WriteFile(reference, []byte(got), 0o644))
	}
	want, err := os.ReadFile(reference)
	require.NoError(t, err)
	if string(want) != got {
		t.Errorf("make it anew: go generate ./render/reference\n%s", udiff.Unified("README.md", "from the table", string(want), got))
	}
}

// The plans in the reference are good and laid out.
func TestReferencePlans(t *testing.T) {
	text, err := os.ReadFile("reference.tmpl")
	require.NoError(t, err)
	plans := regexp.MustCompile("(?s)```take\n(take .*?)```").FindAllStringSubmatch(string(text), -1)
	require.NotEmpty(t, plans)
	for _, p := range plans {
		_, bag := syntax.Parse(source.NewFile("README.md", p[1]))
		for _, d := range bag.Sorted() {
			t.Errorf("%v: %s", d.Span.StartPos(), d.Message)
		}
		assert.Equal(t, p[1], format.Text(p[1]))
	}
}

// Links inside the reference lead somewhere.
func TestReferenceLinks(t *testing.T) {
	text, err := os.ReadFile(reference)
	require.NoError(t, err)
	var anchors []string
	for _, h := range regexp.MustCompile(`(?m)^##+ (.*)$`).FindAllStringSubmatch(string(text), -1) {
		anchors = append(anchors, anchor(h[1]))
	}
	for _, l := range regexp.MustCompile(`\]\(#([^)]*)\)`).FindAllStringSubmatch(string(text), -1) {
		assert.Contains(t, anchors, l[1])
	}
}
