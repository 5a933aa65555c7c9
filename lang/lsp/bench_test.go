package lsp

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
)

// longPlan is the shipped take with comments up to 300 lines.
func longPlan(tb testing.TB) string {
	text := example(tb, "last-collection")
	for n := strings.Count(text, "\n"); n < 300; n++ {
		text += "# a note\n"
	}
	return text
}

// percentiles reports how long each of many took.
func percentiles(b *testing.B, took []time.Duration) {
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "ms-median")
	b.ReportMetric(float64(took[len(took)*95/100].Microseconds())/1000, "ms-p95")
}

// BenchmarkKeystrokeToTextErrors types and takes back a letter that makes a line
// unreadable, over the protocol, and waits for what is said of it. Its reference
// is BenchmarkTextAlone.
func BenchmarkKeystrokeToTextErrors(b *testing.B) {
	e := edit(b, []string{"utf-16"})
	e.server.options.Pause = time.Hour // the check is the other benchmark's
	const name = "/plans/a.take"
	e.open(name, longPlan(b))
	e.wait(name)
	at := strings.Index(e.texts[name].Text, "walks curved")
	var took []time.Duration
	typed := false
	for b.Loop() {
		begun := time.Now()
		if typed = !typed; typed {
			e.change(name, at, at, "x")
		} else {
			e.change(name, at, at+1, "")
		}
		e.wait(name)
		took = append(took, time.Since(begun))
	}
	percentiles(b, took)
}

// BenchmarkKeystrokeToSight moves a mark to and fro and waits until everything
// is checked, without the pause for the next letter. Its reference is
// BenchmarkWholeCheck.
func BenchmarkKeystrokeToSight(b *testing.B) {
	e := edit(b, []string{"utf-16"})
	const name = "/plans/a.take"
	e.open(name, longPlan(b))
	e.settle()
	at := strings.Index(e.texts[name].Text, "mark L1 (22.2, 8)") + len("mark L1 (22.")
	var took []time.Duration
	n := 0
	for b.Loop() {
		n++
		begun := time.Now()
		e.change(name, at, at+1, string(rune('2'+n%2)))
		e.settle()
		took = append(took, time.Since(begun))
	}
	percentiles(b, took)
}

// BenchmarkCompletion asks what may come next after each change.
func BenchmarkCompletion(b *testing.B) {
	e := edit(b, []string{"utf-16"})
	const name = "/plans/a.take"
	e.open(name, longPlan(b))
	e.settle()
	where := e.at(name, "walks to |R1")
	for b.Loop() {
		var list CompletionList
		e.call("textDocument/completion", where, &list)
		require.NotEmpty(b, list.Items)
	}
}

// BenchmarkTextAlone is the text of the same plan read and bound, without a
// protocol.
func BenchmarkTextAlone(b *testing.B) {
	text := longPlan(b)
	read := func(string) (string, error) { return text, nil }
	for b.Loop() {
		_, err := textOnly(read, "a.take", true, nil)
		require.NoError(b, err)
	}
}

// BenchmarkWholeCheck is everything computed for the same plan from nothing.
func BenchmarkWholeCheck(b *testing.B) {
	text := longPlan(b)
	for b.Loop() {
		_, err := compile.Text(context.Background(), "a.take", text, compile.Options{})
		require.NoError(b, err)
	}
}
