package lsp

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/format"
)

// asServer makes this test's own program a server on its standard input and
// output, for editors to start.
const asServer = "LONGHAND_TEST_SERVER"

func TestMain(m *testing.M) {
	if os.Getenv(asServer) != "" {
		if err := Serve(context.Background(), os.Stdin, os.Stdout, Options{Log: os.Stderr}); err != nil {
			os.Stderr.WriteString(err.Error() + "\n")
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// TestNeovim has an editor with a client of its own type a plan, mend it, rename
// a mark in three files and format them.
func TestNeovim(t *testing.T) {
	nvim, err := exec.LookPath("nvim")
	if err != nil {
		t.Skip("Neovim is not installed")
	}
	dir := t.TempDir()
	for name, text := range map[string]string{
		"hall.take":   "set \"Hall\"\n  mark M1 (0, 0)\n  mark M2 (6, 0)\n",
		"people.take": "use \"hall.take\"\nset \"More\"\n  mark M3 (1, 1)\n  block b M1 (1, 0) (1, 1)\npeople\n  performer mina\n",
		"main.take":   "",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	script, err := filepath.Abs("../../testdata/lsp/session.lua")
	require.NoError(t, err)
	exe, err := os.Executable()
	require.NoError(t, err)
	ctx, cancel := context.WithTimeout(t.Context(), 5*time.Minute) // more than the session itself waits
	defer cancel()
	cmd := exec.CommandContext(ctx, nvim, "--headless", "-n", "-i", "NONE", "-u", "NONE", "-S", script)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), asServer+"=1", "SERVER="+exe, "XDG_STATE_HOME="+dir, "XDG_CACHE_HOME="+dir, "XDG_DATA_HOME="+dir)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", out)
	read := func(name string) string {
		text, err := os.ReadFile(filepath.Join(dir, name))
		require.NoError(t, err)
		return string(text)
	}
	assert.Contains(t, read("main.take"), "mina walks from sill to M2 at 1.2 m/s")
	assert.Contains(t, read("hall.take"), "mark sill (0, 0)")
	assert.Contains(t, read("people.take"), "block b sill (1, 0)")
	assert.Equal(t, format.Text(read("main.take")), read("main.take"))
	said := read("said.txt")
	assert.Contains(t, said, "unknown-word", "of a line that was mistyped")
	assert.Contains(t, said, "mended: 0")
	assert.Contains(t, said, "hover: at 6 m, 0 m")
	assert.Contains(t, said, "walks", "offered after a name")
}
