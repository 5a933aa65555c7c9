package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/rehearse"
	"longhand/lang/units"
)

type rehearseFlags struct {
	runs, tries, changes int
	seed                 uint64
	times, template      string
	clockOnly, asJSON    bool
	stdinAs              string
}

func (a *app) rehearseCommand() *cobra.Command {
	var f rehearseFlags
	cmd := &cobra.Command{
		Use:   "rehearse FILE",
		Short: "play the take many times with human timing",
		Long: `Plays the take over and over, everybody's timing varied as people's varies, and
says how often it holds, what breaks it first, what each cue has to spare, and
how likely one of the tries in the light is to work. Every playing is worked out
anew at every frame: clock, tracks, sight, findings.

Spreads come from the plan (spread on a person), from measured rehearsal times
(--times), else from what is usual (longhand kit spread). --template writes the
table to fill in at rehearsal. The same seed gives the same report. Interrupted,
it reports the playings done so far.`,
		Example: `  longhand rehearse plan.take
  longhand rehearse plan.take --runs 200 --seed 7 --json
  longhand rehearse plan.take --template times.csv
  longhand rehearse plan.take --times times.csv`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error { return a.rehearse(cmd, args[0], f) },
	}
	cmd.Flags().IntVar(&f.runs, "runs", rehearse.DefaultRuns, "how often to play it")
	cmd.Flags().Uint64Var(&f.seed, "seed", 1, "the same seed, the same report")
	cmd.Flags().IntVar(&f.tries, "tries", 0, "tries on the day; as many as the light allows unless given")
	cmd.Flags().IntVar(&f.changes, "changes", 0, "find the changes that would help most, so many; takes many times as long")
	cmd.Flags().StringVar(&f.times, "times", "", "measured rehearsal times, a table as --template writes it")
	cmd.Flags().StringVar(&f.template, "template", "", "write the table for rehearsal times to this file, and stop")
	cmd.Flags().BoolVar(&f.clockOnly, "clock-only", false, "only the clock, not what the lenses see: much faster")
	cmd.Flags().BoolVar(&f.asJSON, "json", false, "print JSON")
	cmd.Flags().StringVar(&f.stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	return cmd
}

func (a *app) rehearse(cmd *cobra.Command, name string, f rehearseFlags) error {
	if f.runs < 1 || f.runs > 1_000_000 {
		return fmt.Errorf("--runs takes 1 to 1000000, not %d", f.runs)
	}
	r, err := a.compileOne(cmd.Context(), name, f.stdinAs)
	if err != nil {
		return err
	}
	if f.template != "" {
		return a.timesTemplate(r, f.template)
	}
	o := rehearse.Options{Runs: f.runs, Seed: f.seed}
	if f.times != "" {
		file, err := os.Open(filepath.FromSlash(f.times))
		if err != nil {
			return plainFileError(f.times, err)
		}
		defer file.Close()
		if o.Times, err = rehearse.ReadTimes(file, r.Tracks.Clock); err != nil {
			return fmt.Errorf("%s: %w", f.times, err)
		}
	}
	player := compile.Player(r.Plan)
	if f.clockOnly {
		player = rehearse.ByClock(r.Plan, r.Tracks.Lengths())
	}
	say := a.progress("rehearsing")
	o.Progress = func(done int) { say(done, f.runs) }
	ctx := cmd.Context()
	report := rehearse.Run(ctx, player, o)
	var changes []rehearse.Change
	if f.changes > 0 && ctx.Err() == nil {
		changes = rehearse.Help(ctx, player, o, report, f.changes)
	}
	if report.Runs == 0 {
		return errors.New("interrupted before one playing was done")
	}
	tries := f.tries
	light := ""
	if day, ok := compile.Daylight(r); ok && tries == 0 {
		tries, light = day.Tries.Count(), day.Window.Text(day.Day)
	}
	if f.asJSON {
		return writeRehearsalJSON(a.out, r, report, changes, tries)
	}
	return writeRehearsal(a.out, r, report, changes, tries, light)
}

func (a *app) timesTemplate(r *compile.Result, path string) error {
	if _, err := os.Lstat(filepath.FromSlash(path)); err == nil {
		return fmt.Errorf("%s is there already; times may have been filled in, so name another file", path)
	}
	var b bytes.Buffer
	const tries = 5
	if err := rehearse.WriteTemplate(&b, r.Tracks.Clock, tries); err != nil {
		return err
	}
	if _, err := writeFile(filepath.FromSlash(path), b.Bytes()); err != nil {
		return err
	}
	_, err := fmt.Fprintf(a.out, "made %s\n", path)
	return err
}

// shown is how many rows of a table are printed for people; JSON has all.
const shown = 8

func writeRehearsal(w io.Writer, r *compile.Result, rep *rehearse.Report, changes []rehearse.Change, tries int, light string) error {
	var b bytes.Buffer
	p := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	p("%s, played %d times (seed %d)", r.Plan.Take.Title, rep.Runs, rep.Seed)
	if rep.Runs < rep.Asked {
		p(", of %d: interrupted", rep.Asked)
	}
	p("\n\n")
	if len(rep.AsPlanned) > 0 {
		p("as planned, with nobody late, it breaks already:\n")
		for _, x := range rep.AsPlanned {
			p("  %s at %s\n", x.What, x.At.Clock())
		}
		p("\n")
	}
	p("it holds %s of the time (%s to %s, 95 times in 100)\n", perCent(rep.Odds.Chance), perCent(rep.Odds.Low), perCent(rep.Odds.High))
	p("length %s planned; %s, %s, %s at 5, 50 and 95 %%\n", rep.Planned.Clock(), rep.Length.P5.Clock(), rep.Length.P50.Clock(), rep.Length.P95.Clock())
	if tries > 0 {
		once := rep.Odds.Once(tries)
		p("%d tries", tries)
		if light != "" {
			p(" fit in the light, %s", light)
		}
		p(": one of them works with %s (%s to %s)\n", perCent(once.Chance), perCent(once.Low), perCent(once.High))
	}
	if len(rep.Causes) > 0 {
		p("\nwhat breaks it\n  %7s %7s  %s\n", "first", "at all", "what, and by how much when it does")
		for i, c := range rep.Causes {
			if i == shown {
				p("  and %d more\n", len(rep.Causes)-shown)
				break
			}
			by := ""
			if c.By > 0 {
				by = ", by " + c.By.String()
			}
			p("  %7s %7s  %s%s\n", share(rep.Share(c.First)), share(rep.Share(c.Runs)), c.What, by)
		}
	}
	if tight := rep.Tightest(shown); len(tight) > 0 {
		p("\nwhat has least to spare, in seconds\n  %7s %7s %7s %7s  %s\n", "planned", "5 %", "50 %", "95 %", "line")
		for _, m := range tight {
			p("  %7s %7s %7s %7s  %s (%s)\n", spare(m.Planned), spare(m.Slack.P5), spare(m.Slack.P50), spare(m.Slack.P95), m.Action.Span.Text(), m.Cue)
		}
	}
	if len(changes) > 0 {
		p("\nwhat would help most\n")
		for _, c := range changes {
			p("  %+.0f points, to %s: %s\n", 100*c.Gain, perCent(c.Odds.Chance), c.What)
		}
	}
	p("\npeople are not dice: this is arithmetic on paper, and no try is worth a safety margin\n")
	_, err := w.Write(b.Bytes())
	return err
}

func perCent(x float64) string { return units.Number(100*x, 0) + " %" }

func share(p units.Percent) string { return units.Number(float64(p), 0) + " %" }

func spare(s units.Seconds) string { return units.Number(float64(s), 1) }

type jsonQuantiles struct {
	P5  float64 `json:"p5"`
	P50 float64 `json:"p50"`
	P95 float64 `json:"p95"`
}

func quantiles(q rehearse.Quantiles) jsonQuantiles {
	return jsonQuantiles{thousandth(q.P5), thousandth(q.P50), thousandth(q.P95)}
}

// thousandth rounds seconds for printing; what is no number is as much as any.
func thousandth(s units.Seconds) float64 {
	const most = 1e9
	v := float64(s)
	if v > most || v != v {
		return most
	}
	return math.Round(v*1000)/1000 + 0 // which makes a -0 a 0
}

func writeRehearsalJSON(w io.Writer, r *compile.Result, rep *rehearse.Report, changes []rehearse.Change, tries int) error {
	type odds struct {
		Chance float64 `json:"chance"`
		Low    float64 `json:"low"`
		High   float64 `json:"high"`
	}
	chance := func(o rehearse.Odds) odds { return odds{o.Chance, o.Low, o.High} }
	type cause struct {
		What  string  `json:"what"`
		First int     `json:"first"`
		Runs  int     `json:"runs"`
		By    float64 `json:"by"`
	}
	type margin struct {
		Line    string        `json:"line"`
		Cue     string        `json:"cue"`
		Planned float64       `json:"planned"`
		Slack   jsonQuantiles `json:"slack"`
		Start   jsonQuantiles `json:"start"`
		Broken  int           `json:"broken"`
	}
	type change struct {
		What string  `json:"what"`
		Odds odds    `json:"odds"`
		Gain float64 `json:"gain"`
	}
	out := struct {
		Schema  int           `json:"schema"`
		Take    string        `json:"take"`
		Seed    uint64        `json:"seed"`
		Asked   int           `json:"asked"`
		Runs    int           `json:"runs"`
		Holds   odds          `json:"holds"`
		Tries   int           `json:"tries"`
		Once    odds          `json:"once"`
		Length  jsonQuantiles `json:"length"`
		Planned float64       `json:"planned"`
		Causes  []cause       `json:"causes"`
		Margins []margin      `json:"margins"`
		Changes []change      `json:"changes"`
	}{
		Schema: 1, Take: r.Plan.Take.Title, Seed: rep.Seed, Asked: rep.Asked, Runs: rep.Runs,
		Holds: chance(rep.Odds), Tries: tries, Once: chance(rep.Odds.Once(tries)),
		Length: quantiles(rep.Length), Planned: thousandth(rep.Planned),
		Causes: []cause{}, Margins: []margin{}, Changes: []change{},
	}
	for _, c := range rep.Causes {
		out.Causes = append(out.Causes, cause{c.What, c.First, c.Runs, thousandth(c.By)})
	}
	for _, m := range rep.Margins {
		out.Margins = append(out.Margins, margin{m.Action.Span.Text(), m.Cue, thousandth(m.Planned), quantiles(m.Slack), quantiles(m.Start), m.Broken})
	}
	for _, c := range changes {
		out.Changes = append(out.Changes, change{c.What, chance(c.Odds), c.Gain})
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(out)
}
