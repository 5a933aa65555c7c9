package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/source"
)

// badLines are the numbers of the lines a text's errors are on.
func badLines(text string) []int {
	_, bag := Parse(source.NewFile("x.take", text))
	lines := []int{}
	for _, d := range bag.Sorted() {
		lines = append(lines, d.Span.StartPos().Line)
	}
	return lines
}

// A mistake costs its own line and no other.
func TestMistakesDoNotSpread(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		bad  []int
	}{
		"a bracket left open":        {"set \"x\"\nmark M1 (1, 2\nmark M2 (3, 4)\n", []int{2}},
		"and a comment after it":     {"set \"x\"\nmark M1 (1, 2 # here\n# there\nmark M2 (3, 4)\n", []int{2}},
		"a comma left over":          {"beat \"x\"\nA sees mina,\notto walks to M1\n", []int{2}},
		"two commas left over":       {"beat \"x\"\nA sees mina,\notto walks via M1,\nida sits\n", []int{2, 3}},
		"a comma before a header":    {"beat \"x\"\nA sees mina,\nbeat \"y\"\notto sits\n", []int{2}},
		"a comma at the end":         {"beat \"x\"\nA sees mina,", []int{2}},
		"a slip in a header":         {"kitt\ncamera A\n", []int{1}},
		"a slip in a titled header":  {"take \"x\"\nrate 24 fps\nbeet \"x\"\nmina sits\n", []int{3}},
		"a header without its title": {"set\nmark M1 (1, 2)\n", []int{1}},
		"a header in curly quotes":   {"set “x”\nmark M1 (1, 2)\n", []int{1}},
		"a header left open":         {"beat \"x\nmina sits\n", []int{1}},
		"a verb left out":            {"beat \"x\"\nJake \"Good evening.\"\nmina sits\n", []int{2}},
		"a short name alone":         {"beat \"x\"\nkim\nmina sits\n", []int{2}},
		"a name of a section":        {"beat \"x\"\nset walks to M1\nmina sits\n", []int{2}},
		"bytes that are no text":     {"set \"x\"\nmark M1 (1, 2) \xff\xfe\nmark M2 (1, 2)\n", []int{2}},
		"no section yet":             {"mark M1 (1, 2)\nset \"x\"\nmark M2 (1, 2)\n", []int{1}},
		"a line broken rightly":      {"beat \"x\"\nA sees mina, # both\n  otto\nmina walks to (1,\n2)\n", []int{}},
		"line ends of two bytes":     {"beat \"x\"\r\nA sees mina,\r\n  otto\r\nmina sits\r\n", []int{}},
	} {
		assert.Equal(t, c.bad, badLines(c.text), name)
	}
}

func TestSections(t *testing.T) {
	file, bag := Parse(source.NewFile("x.take", "# about\nuse \"a.take\"\n\nset \"x\"\n  mark M1 (1, 2)\n\nkit\nkit\n  camera A\n"))
	assert.Zero(t, bag.Len())
	words := []string{}
	for _, s := range file.Sections {
		words = append(words, s.Word)
		if s.Word != "" {
			assert.Equal(t, s.Word, s.Head.Tokens[0].Value)
			assert.Same(t, s, s.Head.Section)
		}
		for _, l := range s.Lines {
			assert.Same(t, s, l.Section)
		}
	}
	assert.Equal(t, []string{"", "set", "kit", "kit"}, words)
	assert.Len(t, file.Uses, 1)
	assert.Len(t, file.Sections[0].Lines, 3)
	assert.Len(t, file.Sections[1].Lines, 2)
}

// Nobody's machine is stopped by a long line.
func TestLongLines(t *testing.T) {
	text := []byte("beat \"x\"\nA sees ")
	for range 20000 {
		text = append(text, "mina, "...)
	}
	text = append(text, "otto\nA sees a"...)
	for range 3000 {
		text = append(text, ",\nmina"...)
	}
	assert.Empty(t, badLines(string(text)))
	deep := []byte("set \"x\"\nmark M1 ")
	for range 20000 {
		deep = append(deep, '(')
	}
	assert.Equal(t, []int{2}, badLines(string(deep)))
	commas := []byte("beat \"x\"\n")
	for range 10000 {
		commas = append(commas, "mina sits,\n"...)
	}
	assert.Len(t, badLines(string(commas)), 10000)
}
