package highlight

import (
	"fmt"
	"strings"
)

// sublime is the syntax for Sublime Text: the TextMate rules in YAML.
func sublime() []byte {
	var b strings.Builder
	fmt.Fprintf(&b, `%%YAML 1.2
---
# %s
name: Longhand
file_extensions: [take]
scope: source.longhand
version: 2

contexts:
  main:
    - match: '#.*$'
      scope: %s
    - match: '"'
      push: text
`, madeBy, scope(Comment))
	for _, r := range rules() {
		match, caught := flat(r, onig, false)
		fmt.Fprintf(&b, "    - match: %s\n      captures:\n", quoteYAML(match))
		for i, role := range caught {
			fmt.Fprintf(&b, "        %d: %s\n", i+1, scope(role))
		}
	}
	fmt.Fprintf(&b, `  text:
    - meta_scope: %s
    - match: '\\.'
      scope: %s
    - match: '"|$'
      pop: true
`, scope(Text), scope(Escape))
	return []byte(b.String())
}

func quoteYAML(text string) string { return "'" + strings.ReplaceAll(text, "'", "''") + "'" }
