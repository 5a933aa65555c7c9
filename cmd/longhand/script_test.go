package main

import (
	"bytes"
	"context"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite what the scripts expect")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"longhand": main})
}

// Each script of testdata/script is a session at the command line: what is typed,
// what comes out, the exit code.
func TestScripts(t *testing.T) {
	examples, err := filepath.Abs("../../examples")
	require.NoError(t, err)
	testscript.Run(t, testscript.Params{
		Dir:           "../../testdata/script",
		UpdateScripts: *update && os.Getenv("CI") == "",
		Setup: func(e *testscript.Env) error {
			e.Setenv("EXAMPLES", examples)
			e.Setenv("NO_COLOR", "1")
			return nil
		},
	})
}

// cli runs a command without leaving the test.
func cli(t *testing.T, in string, args ...string) (out, errs string, code int) {
	t.Helper()
	var o, e bytes.Buffer
	code = run(context.Background(), args, strings.NewReader(in), &o, &e, func(string) string { return "" })
	return o.String(), e.String(), code
}

func TestEveryCommandHasAnExampleAndHelp(t *testing.T) {
	a := &app{}
	for _, c := range a.commands() {
		assert.NotEmpty(t, c.Short, c.Name())
		if c.Name() != "lsp" {
			assert.NotEmpty(t, c.Example, c.Name())
		}
		_, _, code := cli(t, "", "help", c.Name())
		assert.Equal(t, exitClean, code, c.Name())
	}
}

// What the help shows is to work as it stands.
func TestExamplesAreUnderstood(t *testing.T) {
	word := regexp.MustCompile(`"[^"]*"|[^\s"]+`)
	for i := range (&app{}).commands() {
		for _, line := range strings.Split((&app{}).commands()[i].Example, "\n") {
			line, _, _ = strings.Cut(strings.TrimSpace(line), " > ")
			line, _, _ = strings.Cut(line, " < ")
			rest, ours := strings.CutPrefix(line, "longhand ")
			if !ours {
				continue
			}
			var args []string
			for _, w := range word.FindAllString(rest, -1) {
				args = append(args, strings.Trim(w, `"`))
			}
			cmd := (&app{}).commands()[i] // whose flags are as they were made
			require.Equal(t, cmd.Name(), args[0], line)
			require.NoError(t, cmd.ParseFlags(args[1:]), line)
			if cmd.Args != nil {
				assert.NoError(t, cmd.Args(cmd, cmd.Flags().Args()), line)
			}
			if cmd.Name() == "compare" {
				_, _, err := sides(cmd.Flags().Args(), cmd.Flags().ArgsLenAtDash())
				assert.NoError(t, err, line)
			}
		}
	}
}

func TestAnInterruptIsSaid(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	var o, e bytes.Buffer
	plan := filepath.Join(t.TempDir(), "plan.take")
	require.NoError(t, os.WriteFile(plan, firstPlan, 0o644))
	code := run(ctx, []string{"check", plan}, strings.NewReader(""), &o, &e, func(string) string { return "" })
	assert.Equal(t, exitBroken, code)
	assert.Contains(t, e.String(), "interrupted")
}

func TestColour(t *testing.T) {
	for name, c := range map[string]struct {
		flag string
		env  map[string]string
		want bool
	}{
		"no terminal":             {"auto", nil, false},
		"forced":                  {"auto", map[string]string{"FORCE_COLOR": "1"}, true},
		"forced the other way":    {"auto", map[string]string{"CLICOLOR_FORCE": "1"}, true},
		"forced to nothing":       {"auto", map[string]string{"FORCE_COLOR": "0"}, false},
		"NO_COLOR beats force":    {"auto", map[string]string{"NO_COLOR": "1", "FORCE_COLOR": "1"}, false},
		"the flag beats NO_COLOR": {"always", map[string]string{"NO_COLOR": "1"}, true},
		"never":                   {"never", map[string]string{"FORCE_COLOR": "1"}, false},
	} {
		a := &app{colour: c.flag, getenv: func(k string) string { return c.env[k] }}
		p, err := a.paint(&bytes.Buffer{})
		require.NoError(t, err, name)
		assert.Equal(t, c.want, p.On, name)
	}
	_, err := (&app{colour: "sometimes"}).paint(&bytes.Buffer{})
	assert.Error(t, err)
}
