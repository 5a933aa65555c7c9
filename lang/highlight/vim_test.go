package highlight

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
	"longhand/lang/format"
	"longhand/lang/source"
	"longhand/lang/syntax"
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

// laidOut are the plans as the formatter sets them.
func laidOut(t *testing.T) []plan {
	t.Helper()
	var all []plan
	for _, p := range plans(t) {
		if strings.HasSuffix(p.path, "table.take") || strings.HasSuffix(p.path, "tricky.take") {
			continue // lines that cannot be read stay as they are
		}
		p.text = format.Text(p.text)
		p.path = filepath.Join(t.TempDir(), filepath.Base(p.path))
		all = append(all, p)
	}
	goesOn := plan{path: filepath.Join(t.TempDir(), "goes-on.take"), text: format.Text(continued)}
	all = append(all, goesOn)
	for _, p := range all {
		require.NoError(t, os.WriteFile(p.path, []byte(p.text), 0o644))
	}
	return all
}

// continued has lines that go on, and comments everywhere.
const continued = `# before all
use "hall.take"
take "Going on, # and on"
  # in the section
  rate 24 fps   # after a statement,
  # still in it

# before the next one
# twice
people
  performer mina
  performer otto
beat "One"
  A sees mina, # the first
    otto
  mina walks via (1, 2),
    (3, 4),
    (5, 6) to (7, 8)
  mina says "one, two,"
  mina stands
# the end
`

// Vim sets lines in as the formatter does.
func TestVimIndents(t *testing.T) {
	all := laidOut(t)
	for i, file := range inVim(t, "vim", "../../testdata/highlight/indent.vim", all) {
		require.Equal(t, all[i].text, strings.Join(file, "\n")+"\n", all[i].path)
	}
}

// Vim's quickfix list takes findings apart as they are printed.
func TestVimReadsFindings(t *testing.T) {
	_, bag := syntax.Parse(source.NewFile("a b/plan.take", "take \"x\"\n  rate 24 fsp\n  wall\n"))
	list := bag.Sorted()
	require.Len(t, list, 2)
	list[1].Severity = diag.Warning
	var text strings.Builder
	require.NoError(t, diag.WriteShort(&text, list))
	text.WriteString("1 error, 1 warning\n")
	path := filepath.Join(t.TempDir(), "findings")
	require.NoError(t, os.WriteFile(path, []byte(text.String()), 0o644))
	got := inVim(t, "vim", "../../testdata/highlight/quickfix.vim", []plan{{path: path}})[0]
	require.Len(t, got, 3, "%q from %s", got, text.String())
	require.Equal(t, "longhand check --as short %:S", got[0])
	for i, d := range list {
		at := d.Span.StartPos()
		require.True(t, strings.HasPrefix(got[i+1], fmt.Sprintf("a b/plan.take|%d|%d|%c|", at.Line, at.Column, d.Severity.String()[0])), got[i+1])
		require.Contains(t, got[i+1], d.Message)
	}
}
