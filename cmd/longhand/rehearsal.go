package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/rehearse"
	"longhand/render/sheets"
)

// rehearsalFlags are how a take is to be rehearsed, for every command that plays
// it over and over.
type rehearsalFlags struct {
	word                 string // the flag that tells how often: "runs", "rehearse"
	runs, tries, changes int
	seed                 uint64
	times                string
	clockOnly            bool
}

// mostRuns is how often a take is played at most.
const mostRuns = 1_000_000

// addTo gives the flags to a command whose business rehearsing is.
func (f *rehearsalFlags) addTo(cmd *cobra.Command) {
	f.word = "runs"
	cmd.Flags().IntVar(&f.runs, f.word, rehearse.DefaultRuns, "how often to play it")
	f.others(cmd, "")
}

// offerTo gives them to a command that rehearses if asked.
func (f *rehearsalFlags) offerTo(cmd *cobra.Command, adds string) {
	f.word = "rehearse"
	cmd.Flags().IntVar(&f.runs, f.word, 0, "rehearse the take, so many playings, and "+adds+"; 1000 tell a chance to about 3 in 100")
	f.others(cmd, "with --rehearse: ")
}

func (f *rehearsalFlags) others(cmd *cobra.Command, with string) {
	cmd.Flags().Uint64Var(&f.seed, "seed", 1, with+"the same seed, the same report")
	cmd.Flags().IntVar(&f.tries, "tries", 0, with+"tries on the day; as many as the light allows unless given")
	cmd.Flags().IntVar(&f.changes, "changes", 0, with+"find the changes that would help most, so many; takes many times as long")
	cmd.Flags().StringVar(&f.times, "times", "", with+"measured rehearsal times, a table as longhand rehearse --template writes it")
	cmd.Flags().BoolVar(&f.clockOnly, "clock-only", false, with+"only the clock, not what the lenses see: much faster")
}

// asked says whether a rehearsal is wanted, or what is wrong with the way it is
// asked for.
func (f *rehearsalFlags) asked(cmd *cobra.Command) (bool, error) {
	given := cmd.Flags().Changed
	if f.word == "rehearse" && !given(f.word) {
		for _, name := range []string{"seed", "tries", "changes", "times", "clock-only"} {
			if given(name) {
				return false, fmt.Errorf("--%s needs --rehearse, how often to play the take", name)
			}
		}
		return false, nil
	}
	for _, n := range []struct {
		name        string
		value, from int
	}{{f.word, f.runs, 1}, {"tries", f.tries, 1}, {"changes", f.changes, 1}} {
		if given(n.name) && (n.value < n.from || n.value > mostRuns) {
			return false, fmt.Errorf("--%s takes %d to %d, not %d", n.name, n.from, mostRuns, n.value)
		}
	}
	return true, nil
}

// rehearsed plays a take as the flags say. Interrupted, it is what was played
// until then, unless that is nothing.
func (a *app) rehearsed(ctx context.Context, r *compile.Result, f *rehearsalFlags) (*rehearse.Outcome, error) {
	o := rehearse.Options{Runs: f.runs, Seed: f.seed}
	measured := 0
	if f.times != "" {
		file, err := os.Open(filepath.FromSlash(f.times))
		if err != nil {
			return nil, plainFileError(f.times, err)
		}
		defer file.Close()
		if o.Times, err = rehearse.ReadTimes(file, r.Tracks.Clock); err != nil {
			return nil, fmt.Errorf("%s: %w", f.times, err)
		}
		measured = o.Times.Len()
	}
	player := compile.Player(r.Plan)
	if f.clockOnly {
		player = rehearse.ByClock(r.Plan, r.Tracks.Lengths())
	}
	say := a.progress("rehearsing")
	o.Progress = func(done int) { say(done, f.runs) }
	o.Trying = a.progress("trying changes")
	out := &rehearse.Outcome{ClockOnly: f.clockOnly, Measured: measured, Tries: f.tries}
	out.Report = rehearse.Run(ctx, player, o)
	say(f.runs, f.runs) // which wipes it away, where it was interrupted too
	if out.Runs == 0 {
		return nil, errors.New("interrupted before one playing was done")
	}
	if f.changes > 0 {
		if out.Sought = ctx.Err() == nil; out.Sought {
			out.Changes = rehearse.Help(ctx, player, o, out.Report, f.changes)
			o.Trying(1, 1) // wipes it away, too
		}
		out.Partly = ctx.Err() != nil
	}
	if day, ok := compile.Daylight(r); ok && f.tries == 0 {
		out.Tries, out.Light = day.Tries.Count(), day.Window.Text(day.Day)
	}
	return out, nil
}

// rehearsal is the sheet of a whole rehearsal for what is made of it; an
// interrupted one makes nothing. Nil where none is asked for.
func (a *app) rehearsal(ctx context.Context, r *compile.Result, f *rehearsalFlags, wanted bool) (*sheets.Book, error) {
	if !wanted {
		return nil, nil
	}
	o, err := a.rehearsed(ctx, r, f)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return sheets.Rehearsal(r, o)
}
