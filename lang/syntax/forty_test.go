package syntax

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/source"
)

var update = flag.Bool("update", false, "write the golden files anew")

const forty = "../../testdata/syntax/forty"

// Each line marked #! has one error, no other line has any, and what is said of
// each is kept in forty.want.
func TestFortyMistakes(t *testing.T) {
	text, err := os.ReadFile(forty + ".take")
	require.NoError(t, err)
	src := source.NewFile("forty.take", string(text))
	_, bag := Parse(src)
	errors := map[int]int{}
	var said strings.Builder
	for _, d := range bag.Sorted() {
		at := d.Span.StartPos()
		errors[at.Line]++
		fmt.Fprintf(&said, "%d:%d %s: %s\n", at.Line, at.Column, d.Code, d.Message)
		for _, n := range d.Notes {
			fmt.Fprintf(&said, "  %s\n", n)
		}
		for _, f := range d.Fixes {
			fmt.Fprintf(&said, "  > %s\n", f.Title)
		}
	}
	marked := 0
	for n := 1; n <= src.Lines(); n++ {
		want := 0
		if strings.Contains(src.Line(n), "#!") {
			want = 1
			marked++
		}
		assert.Equal(t, want, errors[n], "line %d: %s", n, src.Line(n))
	}
	assert.Equal(t, 40, marked)
	golden(t, forty+".want", said.String())
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	if *update {
		require.Empty(t, os.Getenv("CI"), "golden files are not written in CI")
		require.NoError(t, os.WriteFile(name, []byte(got), 0o644))
	}
	want, err := os.ReadFile(name)
	require.NoError(t, err)
	assert.Equal(t, string(want), got)
}
