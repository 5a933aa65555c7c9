package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func files(names ...string) []artifact {
	var out []artifact
	for _, n := range names {
		out = append(out, artifact{n, []byte("text of " + n)})
	}
	return out
}

func TestAFolderComesWhole(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "deep", "out")
	done, err := writeFolder(dir, "draw", files("b/two.svg", "one.txt"))
	require.NoError(t, err)
	assert.Equal(t, []made{{filepath.Join(dir, "b", "two.svg"), false}, {filepath.Join(dir, "one.txt"), false}}, done)
	left, err := os.ReadDir(filepath.Dir(dir))
	require.NoError(t, err)
	assert.Len(t, left, 1, "nothing temporary stays")
}

func TestWhatDoesNotChangeIsLeftAlone(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	_, err := writeFolder(dir, "draw", files("one.txt", "two.txt"))
	require.NoError(t, err)
	old := time.Now().Add(-time.Hour)
	require.NoError(t, os.Chtimes(filepath.Join(dir, "one.txt"), old, old))
	done, err := writeFolder(dir, "draw", append(files("one.txt"), artifact{"two.txt", []byte("new")}))
	require.NoError(t, err)
	assert.True(t, done[0].unchanged)
	assert.False(t, done[1].unchanged)
	info, err := os.Stat(filepath.Join(dir, "one.txt"))
	require.NoError(t, err)
	assert.WithinDuration(t, old, info.ModTime(), time.Second)
}

func TestOnlyItsOwnFilesAreTakenAway(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	_, err := writeFolder(dir, "draw", files("one.txt", "gone.txt"))
	require.NoError(t, err)
	_, err = writeFolder(dir, "sheets", files("other.txt"))
	require.NoError(t, err)
	mine := filepath.Join(dir, "mine.txt")
	require.NoError(t, os.WriteFile(mine, []byte("x"), 0o644))
	_, err = writeFolder(dir, "draw", files("one.txt"))
	require.NoError(t, err)
	assert.FileExists(t, mine)
	assert.FileExists(t, filepath.Join(dir, "other.txt"), "another command's")
	assert.NoFileExists(t, filepath.Join(dir, "gone.txt"))
}

func TestAManifestReachesNowhereElse(t *testing.T) {
	root := t.TempDir()
	dir := filepath.Join(root, "out")
	outside := filepath.Join(root, "precious.txt")
	require.NoError(t, os.Mkdir(dir, 0o755))
	require.NoError(t, os.WriteFile(outside, []byte("x"), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(dir, manifestFor("draw")), []byte("../precious.txt\n"+outside+"\n"), 0o644))
	_, err := writeFolder(dir, "draw", files("one.txt"))
	require.NoError(t, err)
	assert.FileExists(t, outside)
}

func TestAFileInTheWayIsNotOverwritten(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out")
	require.NoError(t, os.WriteFile(path, []byte("precious"), 0o644))
	_, err := writeFolder(path, "draw", files("one.txt"))
	assert.ErrorContains(t, err, "is a file")
	data, _ := os.ReadFile(path)
	assert.Equal(t, "precious", string(data))
}

func TestAFolderThatCannotBeWrittenLeavesNothing(t *testing.T) {
	parent := t.TempDir()
	bad := append(files("a.txt"), artifact{"a.txt/b.txt", []byte("x")}) // a file where a folder has to be
	_, err := writeFolder(filepath.Join(parent, "out"), "draw", bad)
	assert.Error(t, err)
	left, _ := os.ReadDir(parent)
	assert.Empty(t, left)
}
