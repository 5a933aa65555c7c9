package highlight

import (
	"os/exec"
	"testing"

	"github.com/stretchr/testify/require"
)

// The extension starts the program of the settings over standard input and
// output, says so when it is not there, and starts anew when the setting changes.
func TestExtension(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("node is not installed")
	}
	said, err := exec.Command(node, "../../testdata/highlight/extension.js", "../../editors/vscode/src/extension.js").CombinedOutput()
	require.NoError(t, err, "%s", said)
}
