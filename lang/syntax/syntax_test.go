package syntax

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/source"
)

// parseAs parses one line in a section.
func parseAs(t *testing.T, section, text string) (*Line, []string) {
	t.Helper()
	header := ""
	if k := head(section); k != nil {
		header = k.Example + "\n"
	}
	file, bag := Parse(source.NewFile("x.take", header+text))
	var messages []string
	for _, d := range bag.Sorted() {
		messages = append(messages, d.Message)
	}
	require.NotEmpty(t, file.Lines)
	return file.Lines[len(file.Lines)-1], messages
}

func TestExamplesParse(t *testing.T) {
	for _, k := range Statements {
		t.Run(k.Example, func(t *testing.T) {
			section := k.Section
			if k.Head {
				section = ""
			}
			line, messages := parseAs(t, section, k.Example)
			assert.Empty(t, messages)
			assert.Same(t, k, line.Kind)
			assert.NotNil(t, line.Stmt)
		})
	}
}

func TestAWholePlan(t *testing.T) {
	text, err := os.ReadFile("../../testdata/syntax/page.take")
	require.NoError(t, err)
	_, bag := Parse(source.NewFile("page.take", string(text)))
	for _, d := range bag.Sorted() {
		t.Errorf("%v %s: %s", d.Span.StartPos(), d.Code, d.Message)
	}
}
