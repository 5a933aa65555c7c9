package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"sort"
	"strings"

	"github.com/agnivade/levenshtein"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// The exit codes, a promise to scripts: nothing wrong, something found, could
// not run.
const (
	exitClean    = 0
	exitFindings = 1
	exitBroken   = 2
)

// errFound says that what was asked for was done and that it found something;
// the findings have been printed.
var errFound = errors.New("findings")

// app is what every command needs of the world.
type app struct {
	in     io.Reader
	out    io.Writer // for machines, and for what was asked for
	err    io.Writer // for people
	getenv func(string) string
	colour string
}

func run(ctx context.Context, args []string, in io.Reader, out, errw io.Writer, getenv func(string) string) int {
	a := &app{in: in, out: out, err: errw, getenv: getenv}
	root := a.root()
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	switch {
	case err == nil:
		return exitClean
	case errors.Is(err, errFound):
		return exitFindings
	case ctx.Err() != nil:
		fmt.Fprintln(errw, "longhand: interrupted")
		return exitBroken
	}
	fmt.Fprintf(errw, "longhand: %s\n", err)
	return exitBroken
}

const welcome = `longhand compiles plans of long, uncut takes.

  longhand new my-take                start: a small plan that compiles
  longhand check my-take/plan.take    what would spoil it, and by how much
  longhand build my-take/plan.take    drawings and sheets into a folder

  longhand explain                    every finding there is, explained
  longhand kit                        what is taken for granted, with sources
  longhand help                       all commands
`

func (a *app) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "longhand",
		Short: "compiles plans of long, uncut takes",
		Long: `Compiles plain-text plans of long, uncut takes, checks them and prints them for
every department.

A folder, a pattern or - (standard input) may stand for FILE. Findings for people
go to standard error, for machines to standard output.

Exit code 0: nothing wrong; 1: something found; 2: could not run. NO_COLOR is
honoured.`,
		Version:       version(),
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownCommand(cmd, args[0])
			}
			_, err := io.WriteString(a.out, welcome)
			return err
		},
	}
	root.SetIn(a.in)
	root.SetOut(a.out)
	root.SetErr(a.err)
	root.SetVersionTemplate("longhand {{.Version}}\n")
	root.PersistentFlags().StringVar(&a.colour, "color", "auto", "colour on the terminal: auto, always or never")
	root.SetFlagErrorFunc(flagError)
	root.AddCommand(a.commands()...)
	return root
}

func unknownCommand(cmd *cobra.Command, name string) error {
	var names []string
	for _, c := range cmd.Commands() {
		if !c.Hidden {
			names = append(names, c.Name())
		}
	}
	return fmt.Errorf("there is no command %q%s; `longhand help` lists them", name, suggestion(name, names))
}

func flagError(cmd *cobra.Command, err error) error {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
	if _, flag, ok := strings.Cut(err.Error(), "unknown flag: "); ok {
		return fmt.Errorf("%s has no flag %s%s; `longhand help %s` lists them", cmd.CommandPath(), flag, suggestion(flag, names), cmd.Name())
	}
	var bad *pflag.InvalidValueError
	if errors.As(err, &bad) {
		if takes, ok := map[string]string{"int": "a whole number", "uint64": "a whole number from 0", "float64": "a number", "bool": "true or false"}[bad.GetFlag().Value.Type()]; ok {
			return fmt.Errorf("--%s takes %s, not %q", bad.GetFlag().Name, takes, bad.GetValue())
		}
	}
	return fmt.Errorf("%s: %s", cmd.CommandPath(), err)
}

// suggestion is ", did you mean X?" where one of the names is a near miss.
func suggestion(word string, names []string) string {
	sort.Strings(names)
	best, bestAt := "", 3
	for _, n := range names {
		if d := levenshtein.ComputeDistance(strings.ToLower(word), strings.ToLower(n)); d < bestAt {
			best, bestAt = n, d
		}
	}
	if best == "" {
		return ""
	}
	return fmt.Sprintf(", did you mean %q?", best)
}
