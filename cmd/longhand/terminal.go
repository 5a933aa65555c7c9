package main

import (
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"golang.org/x/term"

	"longhand/lang/diag"
)

// paint decides on colour: the flag first, then NO_COLOR, then FORCE_COLOR and
// CLICOLOR_FORCE, then whether people are looking.
func (a *app) paint(w io.Writer) (diag.Paint, error) {
	switch a.colour {
	case "always":
		return diag.Paint{On: true}, nil
	case "never":
		return diag.Paint{}, nil
	case "auto":
	default:
		return diag.Paint{}, fmt.Errorf("--color takes auto, always or never, not %q", a.colour)
	}
	if a.getenv("NO_COLOR") != "" {
		return diag.Paint{}, nil
	}
	for _, name := range []string{"FORCE_COLOR", "CLICOLOR_FORCE"} {
		if v := a.getenv(name); v != "" && v != "0" {
			return diag.Paint{On: true}, nil
		}
	}
	return diag.Paint{On: isTerminal(w) && a.getenv("TERM") != "dumb"}, nil
}

func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// progress shows how far long work is, on one line of a terminal; elsewhere it
// says nothing.
func (a *app) progress(what string) func(done, all int) {
	if !isTerminal(a.err) {
		return func(int, int) {}
	}
	last, lastDone, lastAll := -1, 0, 0
	return func(done, all int) {
		// Workers side by side may tell of less after they told of more.
		if all == 0 || all == lastAll && done <= lastDone {
			return
		}
		lastDone, lastAll = done, all
		per := 100 * done / all
		if per == last {
			return
		}
		last = per
		fmt.Fprintf(a.err, "\r%s %3d %%", what, per)
		if done == all {
			fmt.Fprintf(a.err, "\r%*s\r", len(what)+6, "")
		}
	}
}

// version is the module's, or the revision it was built from.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	v := info.Main.Version
	if v == "" || v == "(devel)" {
		v = "development"
		for _, s := range info.Settings {
			if s.Key == "vcs.revision" && len(s.Value) >= 12 {
				v += " " + s.Value[:12]
			}
		}
	}
	return v
}
