package bind

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

const testdata = "../../testdata/bind"

// bindText compiles one text alone.
func bindText(name, text string, opts ...Option) (*plan.Plan, []diag.Diagnostic) {
	f, bag := syntax.Parse(source.NewFile(name, text))
	p, found := Bind([]*syntax.File{f}, opts...)
	bag.Merge(found)
	return p, bag.Sorted()
}

// want is a finding that a comment in the text asks for on its own line:
// # want CODE "regexp"
type want struct {
	line int
	code string
	text *regexp.Regexp
	met  bool
}

var wantComment = regexp.MustCompile(`# want (.*)$`)
var wantOne = regexp.MustCompile(`([a-z-]+) "((?:[^"\\]|\\.)*)"`)

func wants(t testing.TB, text string) []*want {
	var out []*want
	for i, line := range strings.Split(text, "\n") {
		m := wantComment.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		each := wantOne.FindAllStringSubmatch(m[1], -1)
		require.NotEmpty(t, each, "line %d: no finding in %q", i+1, line)
		for _, w := range each {
			out = append(out, &want{line: i + 1, code: w[1], text: regexp.MustCompile(strings.ReplaceAll(w[2], `\"`, `"`))})
		}
	}
	return out
}

// meet holds the findings of a file against what its comments ask for: none
// missing, none that is not asked for.
func meet(t testing.TB, name, text string, found []diag.Diagnostic) {
	list := wants(t, text)
next:
	for _, d := range found {
		if d.Span.File == nil || d.Span.File.Name != name {
			continue
		}
		at := d.Span.StartPos()
		said := d.Message + "\n" + strings.Join(d.Notes, "\n")
		for _, w := range list {
			if !w.met && w.line == at.Line && w.code == string(d.Code) && w.text.MatchString(said) {
				w.met = true
				continue next
			}
		}
		t.Errorf("%s:%d:%d: not asked for: %s: %s\n\tunderlines %q\n\t%s", name, at.Line, at.Column, d.Code, d.Message, d.Span.Text(), strings.Join(d.Notes, "\n\t"))
	}
	for _, w := range list {
		if !w.met {
			t.Errorf("%s:%d: missing: %s %q", name, w.line, w.code, w.text)
		}
	}
}

// TestArchives binds every archive under testdata/bind; its first file is the
// main one. Comments beside the wrong lines say what has to be found.
func TestArchives(t *testing.T) {
	paths, err := filepath.Glob(filepath.Join(testdata, "*.txtar"))
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txtar"), func(t *testing.T) {
			ar, err := txtar.ParseFile(path)
			require.NoError(t, err)
			require.NotEmpty(t, ar.Files)
			texts := map[string]string{}
			for _, f := range ar.Files {
				texts[f.Name] = string(f.Data)
			}
			read := func(path string) (string, error) {
				if text, ok := texts[path]; ok {
					return text, nil
				}
				return "", fmt.Errorf("open %s: %w", path, os.ErrNotExist)
			}
			files, bag := Load(read, ar.Files[0].Name)
			_, found := Bind(files, KnownCodes("crew-in-shot", "two-moves", "hide-seen"))
			bag.Merge(found)
			list := bag.Sorted()
			for _, f := range ar.Files {
				meet(t, f.Name, texts[f.Name], list)
			}
		})
	}
}
