package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/source"
)

func TestEncodings(t *testing.T) {
	// \xe5 is å in Latin-1, \x92 a quote of the code page 1252.
	const latin = "take \"x\"\npeople\n  performer \xe5sa\n  performer otto # \xe5\nbeat \"b\"\n  otto says \"It\x92s late, \xe5sa.\"\n"
	_, found := Parse(source.NewFile("plan.take", latin))
	all := found.Sorted()
	require.Len(t, all, 2, "one a line, none for a comment")
	assert.Contains(t, all[0].Message, "the byte E5 is not UTF-8")
	assert.Contains(t, all[1].Message, "the byte 92 is not UTF-8")
	assert.Equal(t, 16, all[1].Span.StartPos().Column, "where the byte stands")

	_, found = Parse(source.NewFile("plan.take", "\ufeff\ttake \"\u00e5\"\r\npeople\r\n\tperformer \u00e5sa\r\n"))
	assert.Empty(t, found.Sorted(), "a mark at the start, tabs and CRLF are no mistakes")

	for _, text := range []string{"\xff\xfet\x00a\x00k\x00e\x00\n\x00b\x00\n\x00", "\xfe\xff\x00t\x00a\x00k\x00e\x00\n\x00b"} {
		file, found := Parse(source.NewFile("plan.take", text))
		all := found.Sorted()
		require.Len(t, all, 1)
		assert.Contains(t, all[0].Message, "UTF-16")
		var back string
		for _, l := range file.Lines {
			for _, tok := range l.Tokens {
				back += tok.Value
			}
		}
		assert.Equal(t, text, back, "nothing is lost")
	}
}
