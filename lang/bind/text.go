package bind

import "strings"

// tidy is a text with single blanks.
func tidy(text string) string { return strings.Join(strings.Fields(text), " ") }
