package bind

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func readTestdata(t testing.TB, name string) string {
	text, err := os.ReadFile(filepath.Join(testdata, name))
	require.NoError(t, err)
	return string(text)
}

func TestWhole(t *testing.T) {
	p, found := bindText("whole.take", readTestdata(t, "whole.take"))
	for _, d := range found {
		t.Errorf("%d: %s: %s %v", d.Span.StartPos().Line, d.Code, d.Message, d.Notes)
	}
	var got []string
	for _, a := range p.Actions {
		got = append(got, fmt.Sprintf("%s %s %s", a.Who(), a.Verb, strings.TrimPrefix(fmt.Sprintf("%T", a.Deed), "*plan.")))
	}
	t.Log(strings.Join(got, "\n"))
}
