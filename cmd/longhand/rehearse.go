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
	"strings"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/rehearse"
	"longhand/lang/units"
	"longhand/render/sheets"
)

type rehearseFlags struct {
	rehearsalFlags
	template, out, stdinAs string
	forms                  []string
	asJSON                 bool
}

func (a *app) rehearseCommand() *cobra.Command {
	var f rehearseFlags
	cmd := &cobra.Command{
		Use:   "rehearse FILE",
		Short: "the take played many times with human timing",
		Long: `Plays the take over and over, everybody's timing varied as people's varies, and
says how often it holds, what breaks it first, what each cue has to spare, and
how likely one of the tries in the light is to work. Every playing is worked out
anew at every frame: clock, tracks, sight, findings.

Spreads come from the plan (spread on a person), from measured rehearsal times
(--times), else from what is usual (longhand kit spread). --template writes the
table to fill in at rehearsal. The same seed gives the same report. Interrupted,
it reports the playings done so far.

It prints what tells most, or everything as JSON with --json. --as writes the
whole of it as a sheet, into a folder: html (prints, and reads on a phone), md,
csv (with a table of what the columns say), json, xlsx. The same rehearsal is in
the book, on the page and among what build makes, if they are asked for it with
--rehearse.`,
		Example: `  longhand rehearse plan.take
  longhand rehearse plan.take --runs 200 --seed 7 --json
  longhand rehearse plan.take --changes 5 --as html,csv -o rehearsal
  longhand rehearse plan.take --as md -o -
  longhand rehearse plan.take --template times.csv
  longhand rehearse plan.take --times times.csv`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error { return a.rehearse(cmd, args[0], f) },
	}
	f.addTo(cmd)
	cmd.Flags().StringVar(&f.template, "template", "", "write the table for rehearsal times to this file, and stop")
	cmd.Flags().BoolVar(&f.asJSON, "json", false, "print JSON")
	cmd.Flags().StringSliceVar(&f.forms, "as", nil, "write the sheet, in these forms: "+strings.Join(sheets.Forms(), ", ")+"; all of them with -o alone")
	cmd.Flags().StringVarP(&f.out, "output", "o", "out", "the folder to write the sheet into; - for standard output, of one form but csv")
	cmd.Flags().StringVar(&f.stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	complete(cmd, "as", sheets.Forms()...)
	return cmd
}

func (a *app) rehearse(cmd *cobra.Command, name string, f rehearseFlags) error {
	if _, err := f.asked(cmd); err != nil {
		return err
	}
	if err := knownForms(f.forms); err != nil {
		return err
	}
	given := cmd.Flags().Changed
	filed := given("as") || given("output")
	switch {
	case filed && f.asJSON:
		return errors.New("--json prints, --as and -o write the sheet; leave out one of them")
	case f.out == stdinName && (len(f.forms) != 1 || f.forms[0] == sheets.CSV):
		return errors.New("standard output takes one form that is one file: --as html, md, json or xlsx")
	}
	r, err := a.compileOne(cmd.Context(), name, f.stdinAs)
	if err != nil {
		return err
	}
	if f.template != "" {
		return a.timesTemplate(r, f.template)
	}
	o, err := a.rehearsed(cmd.Context(), r, &f.rehearsalFlags)
	if err != nil {
		return err
	}
	if o.Runs < f.runs {
		fmt.Fprintf(a.err, "interrupted after %d of %d playings\n", o.Runs, f.runs)
	}
	if f.asJSON {
		return writeRehearsalJSON(a.out, r, o)
	}
	sheet, err := sheets.Rehearsal(r, o)
	if err != nil {
		return err
	}
	if !filed {
		return sheet.RehearsalText(a.out, shown)
	}
	files, err := sheetFiles(sheet, "", f.forms...)
	if err != nil {
		return err
	}
	if f.out == stdinName {
		return a.makeFile(f.out, files[0].data, r)
	}
	return a.make(cmd.Name(), f.out, files, r)
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

// shown is how many rows of a table are printed; JSON and the sheet have all.
const shown = 8

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

func writeRehearsalJSON(w io.Writer, r *compile.Result, o *rehearse.Outcome) error {
	type odds struct {
		Chance float64 `json:"chance"`
		Low    float64 `json:"low"`
		High   float64 `json:"high"`
	}
	chance := func(o rehearse.Odds) odds { return odds{o.Chance, o.Low, o.High} }
	type cause struct {
		What  string        `json:"what"`
		First int           `json:"first"`
		Runs  int           `json:"runs"`
		By    float64       `json:"by"`
		At    jsonQuantiles `json:"at"` // on the plan's clock
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
		Schema: 1, Take: r.Plan.Take.Title, Seed: o.Seed, Asked: o.Asked, Runs: o.Runs,
		Holds: chance(o.Odds), Tries: o.Tries, Once: chance(o.Odds.Once(o.Tries)),
		Length: quantiles(o.Length), Planned: thousandth(o.Planned),
		Causes: []cause{}, Margins: []margin{}, Changes: []change{},
	}
	for _, c := range o.Causes {
		out.Causes = append(out.Causes, cause{c.What, c.First, c.Runs, thousandth(c.By), quantiles(c.At)})
	}
	for _, m := range o.Margins {
		out.Margins = append(out.Margins, margin{m.Action.Span.Text(), m.Cue, thousandth(m.Planned), quantiles(m.Slack), quantiles(m.Start), m.Broken})
	}
	for _, c := range o.Changes {
		out.Changes = append(out.Changes, change{c.What, chance(c.Odds), c.Gain})
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(out)
}
