package diag

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
)

// Fingerprints name each finding so that it keeps its name when lines are added
// above it: code, file, what it is about, the statement's text, and a number
// among equals.
func Fingerprints(list []Diagnostic) []string {
	out := make([]string, len(list))
	count := map[string]int{}
	for i := range list {
		d := &list[i]
		text := ""
		if d.Span.Valid() {
			text = strings.Join(strings.Fields(d.Span.File.Line(d.Span.StartPos().Line)), " ")
		}
		key := strings.Join([]string{string(d.Code), fileName(d.Span), d.Subject, d.Camera, d.Beat, text}, "\x00")
		sum := sha256.Sum256([]byte(fmt.Sprintf("%s\x00%d", key, count[key])))
		count[key]++
		out[i] = hex.EncodeToString(sum[:16])
	}
	return out
}
