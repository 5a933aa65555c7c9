package highlight

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Vim gives every piece the group of the role the parser gives it.
func TestVim(t *testing.T) { coloursInVim(t, "vim") }

// Neovim reads the same files.
func TestNeovim(t *testing.T) { coloursInVim(t, "nvim") }

func coloursInVim(t *testing.T, program string) {
	all := plans(t)
	for i, file := range inVim(t, program, "../../testdata/highlight/groups.vim", all) {
		p := all[i]
		var got []Role
		for n, line := range strings.Split(strings.TrimSuffix(p.text, "\n"), "\n") {
			if n > 0 {
				got = append(got, Plain)
			}
			groups := strings.Fields(file[n])
			require.Len(t, groups, len(line), "%s: %s", line, file[n])
			for _, g := range groups {
				got = append(got, vimRole(t, g))
			}
		}
		p.compare(t, program, append(got, Plain), Role.String)
	}
}

func vimRole(t *testing.T, group string) Role {
	t.Helper()
	name, _, _ := strings.Cut(strings.TrimPrefix(group, "longhand"), "_")
	for _, r := range roles() {
		if r.String() == name {
			return r
		}
	}
	require.Equal(t, "-", group)
	return Plain
}

// inVim runs a script in Vim with the plans, and gives the lines it says of
// each.
func inVim(t *testing.T, program, script string, all []plan) [][]string {
	t.Helper()
	vim, err := exec.LookPath(program)
	if err != nil {
		t.Skip(program + " is not installed")
	}
	if exec.Command(vim, "-es", "-u", "NONE", "-N", "-c", "if has('syntax') | qa! | else | cq! | endif").Run() != nil {
		t.Skip("this vim was built without syntax colours: the package is vim, not vim-tiny")
	}
	plugin, err := filepath.Abs("../../editors/vim")
	require.NoError(t, err)
	out := filepath.Join(t.TempDir(), "out")
	var paths []string
	for _, p := range all {
		paths = append(paths, p.path)
	}
	cmd := exec.Command(vim, "-es", "-u", "NONE", "-i", "NONE", "-n", "-N", "--cmd", "set runtimepath^="+plugin, "-S", script)
	cmd.Env = append(os.Environ(), "HOME="+t.TempDir(), "LC_ALL=C.UTF-8", "OUT="+out, "PLANS="+strings.Join(paths, "\n"))
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	return byFile(t, out, len(all))
}

// byFile cuts what an editor wrote into the lines of each file.
func byFile(t *testing.T, path string, n int) [][]string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	files := [][]string{{}}
	for _, line := range strings.Split(strings.TrimSuffix(string(text), "\n"), "\n") {
		if line == "--" {
			files = append(files, []string{})
			continue
		}
		last := len(files) - 1
		files[last] = append(files[last], line)
	}
	require.Len(t, files, n+1)
	return files[:n]
}
