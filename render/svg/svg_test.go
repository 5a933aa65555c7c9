package svg

import (
	"bytes"
	"encoding/xml"
	"flag"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/render/scene"
	"longhand/render/scene/sample"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// wellFormed reads the whole document and returns its elements' attributes.
func wellFormed(t require.TestingT, doc []byte) []xml.StartElement {
	d := xml.NewDecoder(bytes.NewReader(doc))
	var out []xml.StartElement
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return out
		}
		require.NoError(t, err, "not well-formed")
		if s, ok := tok.(xml.StartElement); ok {
			out = append(out, s.Copy())
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func TestSampleGolden(t *testing.T) {
	got := Write(sample.Sheet(), Options{})
	wellFormed(t, got)
	file := filepath.Join("testdata", "sample.svg")
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, got, 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), string(got))
	assert.Equal(t, got, Write(sample.Sheet(), Options{}), "the same sheet twice")
	assert.NotContains(t, string(got), `"-0"`)
	assert.NotContains(t, string(got), "-0.000")
}

// A metre at 1:50 is 20 mm: with a width of 210 mm for 210 units, what spans 20
// units spans 20 mm.
func TestScaleIsTrue(t *testing.T) {
	els := wellFormed(t, Write(sample.Sheet(), Options{}))
	assert.Equal(t, "210.000mm", attribute(els[0], "width"))
	assert.Equal(t, "297.000mm", attribute(els[0], "height"))
	assert.Equal(t, "0 0 210 297", attribute(els[0], "viewBox"))
	bar, inScale := 0.0, false
	for _, e := range els {
		if attribute(e, "id") == "scale" {
			inScale = true
		}
		if inScale && e.Name.Local == "rect" {
			bar, _ = strconv.ParseFloat(attribute(e, "width"), 64)
			break
		}
	}
	assert.Equal(t, 20.0, bar)
}

func TestXMLLint(t *testing.T) {
	tool, err := exec.LookPath("xmllint")
	if err != nil {
		t.Skip("xmllint is not installed")
	}
	for _, o := range []Options{{}, {EmbedFonts: true}, {Scope: "beat-3", Inline: true}} {
		cmd := exec.Command(tool, "--noout", "--huge", "-")
		cmd.Stdin = bytes.NewReader(Write(sample.Sheet(), o))
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, string(out))
		assert.Empty(t, string(out))
	}
}

func TestScopeConfinesEverything(t *testing.T) {
	doc := Write(sample.Sheet(), Options{Scope: "beat-3", Inline: true})
	assert.True(t, bytes.HasPrefix(doc, []byte("<svg")))
	for _, e := range wellFormed(t, doc) {
		if id := attribute(e, "id"); id != "" {
			assert.True(t, id == "beat-3" || strings.HasPrefix(id, "beat-3-"), id)
		}
	}
	css := string(doc[bytes.Index(doc, []byte("CDATA[\n"))+7 : bytes.Index(doc, []byte("]]>"))])
	for _, line := range strings.Split(strings.TrimSpace(css), "\n") {
		assert.True(t, strings.HasPrefix(line, "#beat-3"), line)
	}
}

func TestIDsAreUniqueAndNamed(t *testing.T) {
	s := sample.Sheet()
	s.Add(&scene.Group{ID: "set", Title: "again"}, &scene.Group{ID: "set", Title: "and again"})
	seen := map[string]bool{}
	for _, e := range wellFormed(t, Write(s, Options{})) {
		if id := attribute(e, "id"); id != "" {
			assert.False(t, seen[id], id)
			seen[id] = true
		}
	}
	assert.True(t, seen["set"] && seen["set-2"] && seen["set-3"])
}

// Whatever names a plan holds, the file opens, and no name becomes markup.
func TestAnyTextStaysText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := func(label string) string {
			return rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{
				`"><script>alert(1)</script>`, "]]>", "&amp;", "\x00\x07", "\xff\xfe", "a=b", "' onload='x"})).Draw(t, label)
		}
		s := &scene.Sheet{Width: 100, Height: 100, Title: word("title"), Desc: word("desc"),
			Styles: scene.Styles{{Class: word("rule"), Style: scene.Style{Fill: scene.Black}}}}
		text := word("text")
		s.Add(&scene.Group{ID: word("id"), Class: word("class"), Title: word("group"), Desc: word("more"), Items: []scene.Item{
			&scene.Text{Class: word("text class"), At: scene.Pt(1, 1), Text: text, Size: 8},
			&scene.Circle{Class: word("shape class"), Radius: 3},
		}})
		doc := Write(s, Options{})
		for _, e := range wellFormed(t, doc) {
			switch e.Name.Local {
			case "svg", "title", "desc", "style", "g", "text", "circle":
			default:
				t.Fatalf("an element <%s> came out of a name", e.Name.Local)
			}
			for _, a := range e.Attr {
				if strings.HasPrefix(a.Name.Local, "on") {
					t.Fatalf("an attribute %s came out of a name", a.Name.Local)
				}
			}
		}
	})
}

func TestNumbersThatAreNone(t *testing.T) {
	nan := 0.0
	nan /= nan
	s := &scene.Sheet{Width: 100, Height: 100, Title: "x"}
	s.Add(scene.Line("", scene.Pt(nan, 1), scene.Pt(2, 1/nan)), &scene.Text{At: scene.Pt(nan, 2), Size: 8, Text: "here"})
	doc := string(Write(s, Options{}))
	assert.NotContains(t, doc, "NaN")
	assert.NotContains(t, doc, "Inf")
}

func BenchmarkWrite(b *testing.B) {
	s := sample.Sheet()
	for b.Loop() {
		Write(s, Options{})
	}
}
