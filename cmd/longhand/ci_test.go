package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var ciCommand = regexp.MustCompile(`(?m)(?:^\s*(?:- |run: |entry: )?)(longhand [a-z]+[^\n>|]*)`)

// Every longhand line of the files for continuous integration is one that can be
// typed: the command is there, with these flags, and does what it should in a
// folder of plans.
func TestTheFilesForContinuousIntegrationRun(t *testing.T) {
	repository, err := filepath.Abs("../..")
	require.NoError(t, err)
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(dir+"/plan.take", firstPlan, 0o644))
	t.Chdir(dir)
	for name, least := range map[string]int{
		"examples/ci/workflow.yml": 5, "examples/ci/pipeline.yml": 5, "examples/ci/README.md": 3, ".pre-commit-hooks.yaml": 4,
	} {
		data, err := os.ReadFile(filepath.Join(repository, name))
		require.NoError(t, err)
		n := 0
		for _, m := range ciCommand.FindAllStringSubmatch(string(data), -1) {
			args := strings.Fields(m[1])[1:]
			if args[0] == "fmt" && len(args) == 1 {
				args = append(args, "plan.take") // the file that was changed
			}
			_, errs, code := cli(t, "", args...)
			assert.Equal(t, exitClean, code, "%s: %s\n%s", name, m[1], errs)
			n++
		}
		assert.Equal(t, least, n, name)
	}
	for _, made := range []string{"made", "made/plans"} {
		_, err := os.Stat(made)
		assert.NoError(t, err)
	}
}
