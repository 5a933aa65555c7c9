package syntax

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/source"
)

// What is said of each line of slips.txt, a section and a statement, is kept in
// slips.want: the part of the line in question and the sentence.
func TestSlips(t *testing.T) {
	text, err := os.ReadFile("../../testdata/syntax/slips.txt")
	require.NoError(t, err)
	var out strings.Builder
	for line := range strings.Lines(string(text)) {
		section, stmt, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "|")
		require.True(t, ok, line)
		_, bag := Parse(source.NewFile("slips.take", head(section).Example+"\n"+stmt))
		fmt.Fprintln(&out, stmt)
		assert.LessOrEqual(t, bag.Len(), 1, "one finding a line: %s", stmt)
		for _, d := range bag.Sorted() {
			assert.NotRegexp(t, `\b(token|EOF|parse|grammar|unexpected|Quantity|Place|Goal)\b`, d.Message, "words of parsers")
			assert.NotRegexp(t, `\.$`, d.Message)
			fmt.Fprintf(&out, "    [%s] %s\n", d.Span.Text(), d.Message)
			for _, f := range d.Fixes {
				fmt.Fprintf(&out, "    > %s\n", f.Title)
			}
		}
	}
	golden(t, "../../testdata/syntax/slips.want", out.String())
}
