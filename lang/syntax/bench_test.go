package syntax

import (
	"os"
	"strings"
	"testing"

	"longhand/lang/source"
)

func planText(b testing.TB) string {
	text, err := os.ReadFile("../../testdata/syntax/page.take")
	if err != nil {
		b.Fatal(err)
	}
	return string(text)
}

// BenchmarkLex cuts a plan of about 100 KB into tokens.
func BenchmarkLex(b *testing.B) {
	text := strings.Repeat(planText(b), 40)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		Lex("", text)
	}
}

// BenchmarkParse parses a plan of about 100 KB, the parsers being built.
func BenchmarkParse(b *testing.B) {
	src := source.NewFile("x.take", strings.Repeat(planText(b), 40))
	b.SetBytes(int64(len(src.Text)))
	b.ReportAllocs()
	for b.Loop() {
		Parse(src)
	}
}

// BenchmarkParsePage parses one page, as after a keystroke.
func BenchmarkParsePage(b *testing.B) {
	src := source.NewFile("x.take", planText(b))
	b.SetBytes(int64(len(src.Text)))
	for b.Loop() {
		Parse(src)
	}
}
