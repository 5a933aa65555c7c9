package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/aymanbagabas/go-udiff"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const lessons = "../../examples/lessons/"

// The plan of every lesson has nothing above a note.
func TestLessonsAreGood(t *testing.T) {
	plans, err := filepath.Glob(lessons + "*.take")
	require.NoError(t, err)
	require.Len(t, plans, 5)
	for _, p := range plans {
		_, errs, code := cli(t, "", "check", "--color", "never", p)
		assert.Equal(t, exitClean, code, errs)
		assert.NotRegexp(t, `(?m)^\S+:\d+:\d+: (error|warning) `, errs)
		_, errs, code = cli(t, "", "fmt", "--check", p)
		assert.Equal(t, exitClean, code, errs)
	}
}

var (
	lesson  = regexp.MustCompile(`(?m)^## (\d)\. `)
	mistake = regexp.MustCompile("(?s)Change\n\n```take\n(.*?)\n```\n\nto\n\n```take\n(.*?)\n```\n\nand `longhand check` says:\n\n```text\n(.*?)```")
	excerpt = regexp.MustCompile("(?s)```take\n(.*?)```")
)

// What the lessons quote is in their plans, and what their mistakes are said to
// lead to is what the check says.
func TestLessonsTellTheTruth(t *testing.T) {
	text, err := os.ReadFile(lessons + "README.md")
	require.NoError(t, err)
	heads := lesson.FindAllSubmatchIndex(text, -1)
	require.Len(t, heads, 5)
	var made strings.Builder
	made.Write(text[:heads[0][0]])
	for i, h := range heads {
		end := len(text)
		if i+1 < len(heads) {
			end = heads[i+1][0]
		}
		name := "lesson-" + string(text[h[2]:h[3]]) + ".take"
		made.WriteString(retold(t, name, string(text[h[0]:end])))
	}
	if *update && os.Getenv("CI") == "" {
		require.NoError(t, os.WriteFile(lessons+"README.md", []byte(made.String()), 0o644))
		return
	}
	if made.String() != string(text) {
		t.Errorf("make it anew: go test ./cmd/longhand -run TestLessonsTellTheTruth -update\n%s",
			udiff.Unified("README.md", "from the check", string(text), made.String()))
	}
}

// retold is the chapter of a lesson with what the check says of its mistake.
func retold(t *testing.T, name, chapter string) string {
	t.Helper()
	plan, err := os.ReadFile(lessons + name)
	require.NoError(t, err)
	m := mistake.FindStringSubmatchIndex(chapter)
	require.NotNil(t, m, name)
	for _, quoted := range excerpt.FindAllStringSubmatch(chapter[:m[0]], -1) {
		assert.Contains(t, string(plan), quoted[1], name)
	}
	right, wrong := chapter[m[2]:m[3]], chapter[m[4]:m[5]]
	require.Equal(t, 1, strings.Count(string(plan), right+"\n"), "%s: %s", name, right)
	bad := strings.Replace(string(plan), right, wrong, 1)
	_, errs, code := cli(t, bad, "check", "--color", "never", "--stdin-filename", name, "-")
	assert.Equal(t, exitFindings, code, "%s: the mistake is none", name)
	return chapter[:m[6]] + errs + chapter[m[7]:]
}
