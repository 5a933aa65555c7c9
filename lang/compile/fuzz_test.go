package compile

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// FuzzCompile holds the compiler to two promises for any text: it never fails in
// a way that it calls its own, and the same text gives the same findings.
func FuzzCompile(f *testing.F) {
	for _, pattern := range []string{"../../examples/*.take", "../../testdata/bind/*.take", "../../testdata/syntax/*.take"} {
		names, _ := filepath.Glob(pattern)
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(string(text))
		}
	}
	f.Add(coverage)
	for _, e := range Catalog() {
		f.Add(e.Bad)
		f.Add(e.Good)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 20_000 {
			return
		}
		// A take may honestly be hours long; a fuzzer has no time for that.
		ctx, stop := context.WithTimeout(context.Background(), 2*time.Second)
		defer stop()
		r, err := Text(ctx, "a.take", text, Options{Workers: 1})
		if err != nil {
			return
		}
		for _, d := range r.Findings {
			if d.Code == "internal" {
				t.Fatalf("%s\n%s", d.Message, text)
			}
		}
		again, err := Text(ctx, "a.take", text, Options{Workers: 1})
		if err != nil {
			return
		}
		if len(r.Findings) != len(again.Findings) {
			t.Fatalf("%d findings, then %d", len(r.Findings), len(again.Findings))
		}
		for i := range r.Findings {
			if r.Findings[i].Message != again.Findings[i].Message {
				t.Fatalf("%q, then %q", r.Findings[i].Message, again.Findings[i].Message)
			}
		}
	})
}
