package highlight

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Emacs gives every piece the face of the role the parser gives it.
func TestEmacs(t *testing.T) {
	all := plans(t)
	for i, file := range inEmacs(t, "../../testdata/highlight/faces.el", all) {
		p := all[i]
		var got []Role
		var faces []string
		for n, line := range strings.Split(strings.TrimSuffix(p.text, "\n"), "\n") {
			if n > 0 {
				faces = append(faces, "-")
			}
			of := strings.Fields(file[n])
			require.Len(t, of, len([]rune(line)), "%s: %s", line, file[n])
			for at, r := range []rune(line) {
				for range len(string(r)) {
					faces = append(faces, of[at])
				}
			}
		}
		faces = append(faces, "-")
		for at, face := range faces {
			got = append(got, emacsRole(t, p.roles[at], face))
		}
		p.compare(t, "emacs", got, Role.String)
	}
}

// emacsRole is the role that a face stands for: the one that is wanted, if it is
// one of those that have the face.
func emacsRole(t *testing.T, want Role, face string) Role {
	t.Helper()
	faceOf := map[Role]string{Comment: "font-lock-comment-face", Text: "font-lock-string-face", Escape: "font-lock-string-face"}
	for _, r := range append([]Role{Plain}, roles()...) {
		if faceOf[r] == "" {
			faceOf[r] = emacsFaces[r]
		}
		if faceOf[r] == "" {
			faceOf[r] = "-"
		}
	}
	switch face {
	case "font-lock-comment-delimiter-face":
		face = "font-lock-comment-face"
	case "default":
		face = "-"
	}
	if want != unsaid && faceOf[want] == face {
		return want
	}
	for _, r := range append([]Role{Plain}, roles()...) {
		if faceOf[r] == face {
			return r
		}
	}
	require.Fail(t, "unknown face", face)
	return Plain
}

func inEmacs(t *testing.T, script string, all []plan) [][]string {
	t.Helper()
	program, err := exec.LookPath("emacs")
	if err != nil {
		t.Skip("emacs is not installed")
	}
	out := filepath.Join(t.TempDir(), "out")
	var paths []string
	for _, p := range all {
		paths = append(paths, p.path)
	}
	cmd := exec.Command(program, "-Q", "--batch", "-L", "../../editors/emacs", "-l", script)
	cmd.Env = append(os.Environ(), "LC_ALL=C.UTF-8", "OUT="+out, "PLANS="+strings.Join(paths, "\n"))
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	return byFile(t, out, len(all))
}

// The mode compiles without a warning.
func TestEmacsCompiles(t *testing.T) {
	program, err := exec.LookPath("emacs")
	if err != nil {
		t.Skip("emacs is not installed")
	}
	text, err := os.ReadFile("../../editors/emacs/longhand-mode.el")
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "longhand-mode.el")
	require.NoError(t, os.WriteFile(path, text, 0o644))
	said, err := exec.Command(program, "-Q", "--batch", "--eval", "(setq byte-compile-error-on-warn t)", "-f", "batch-byte-compile", path).CombinedOutput()
	require.NoError(t, err, "%s", said)
}

// Emacs sets lines in as the formatter does.
func TestEmacsIndents(t *testing.T) {
	all := laidOut(t)
	for i, file := range inEmacs(t, "../../testdata/highlight/indent.el", all) {
		require.Equal(t, all[i].text, strings.Join(file, "\n")+"\n", all[i].path)
	}
}
