package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/render/book"
)

func (a *app) bookCommand() *cobra.Command {
	var out, stdinAs, paper, since string
	var department departmentFlag
	var cards, onlyChanged, colour bool
	var rehearsal rehearsalFlags
	cmd := &cobra.Command{
		Use:   "book FILE",
		Short: "everything as one PDF to print, or one department's booklet, or cards",
		Long: `Binds a take into one PDF: cover, contents, the take from above and along its
time, each beat with what the lenses see and who goes on what cue, what was
found, a section for each department. With --for it is that department's booklet;
with --cards a card of A6 for each person, with their own lines and cues.

With --changed-since OLD, an earlier state of the plan (a file, or a revision that
git knows), pages and rows that differ have a bar in the margin; --only-changed
leaves out all other pages.

With --rehearse N the take is played so many times with human timing, and the book
has a section on what came of it, as longhand rehearse tells it. Interrupted, no
book is made.`,
		Example: `  longhand book plan.take
  longhand book plan.take --for grip --paper letter -o grip.pdf
  longhand book plan.take --changed-since yesterday.take --only-changed
  longhand book plan.take --changed-since HEAD~1
  longhand book plan.take --rehearse 1000 --changes 3
  longhand book plan.take --cards`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			o := book.Options{OnlyChanged: onlyChanged, Colour: colour}
			var ok bool
			if o.Paper, ok = papers[strings.ToLower(paper)]; !ok {
				return fmt.Errorf("--paper takes %s, not %q%s", listed(papers), paper, suggestion(paper, keys(papers)))
			}
			var err error
			if o.For, err = department.department(); err != nil {
				return err
			}
			if onlyChanged && since == "" {
				return errors.New("--only-changed needs --changed-since, the earlier state to compare with")
			}
			rehearsed, err := rehearsal.asked(cmd)
			switch {
			case err != nil:
				return err
			case cards && rehearsed:
				return errors.New("cards have no rehearsal; leave out --rehearse")
			case cards && (o.For != "" || since != ""):
				return errors.New("--cards are for everybody, as they are now; leave out --for and --changed-since")
			}
			r, err := a.compileOne(cmd.Context(), args[0], stdinAs)
			if err != nil {
				return err
			}
			if since != "" {
				if o.Before, err = a.compileOlder(cmd.Context(), r.Files[0].Source.Name, since); err != nil {
					return err
				}
			}
			if o.Rehearsal, err = a.rehearsal(cmd.Context(), r, &rehearsal, rehearsed); err != nil {
				return err
			}
			name := "book.pdf"
			var data []byte
			if cards {
				name = "cards.pdf"
				data, err = book.WriteCards(cmd.Context(), r, o)
			} else {
				if o.For != "" {
					name = "book-" + string(o.For) + ".pdf"
				}
				data, err = book.Write(cmd.Context(), r, o)
			}
			if err != nil {
				return err
			}
			if out == "" {
				out = name
			}
			return a.makeFile(out, data, r)
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "the file to write, - for standard output; book.pdf, book-grip.pdf or cards.pdf unless given")
	cmd.Flags().StringVar(&paper, "paper", "a4", "the paper: a4, a3, letter or tabloid")
	department.add(cmd, "one department's booklet")
	cmd.Flags().BoolVar(&cards, "cards", false, "a card for each person and machine instead of the book")
	cmd.Flags().StringVar(&since, "changed-since", "", "an earlier state of the plan, a file or a git revision: differences are marked")
	cmd.Flags().BoolVar(&onlyChanged, "only-changed", false, "the cover and the pages that changed, no others")
	cmd.Flags().BoolVar(&colour, "in-colour", false, "draw in colour; black and white unless given")
	rehearsal.offerTo(cmd, "put what comes of it into the book")
	cmd.Flags().StringVar(&stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	complete(cmd, "paper", keys(papers)...)
	return cmd
}

// compileOlder compiles an earlier state of a plan, to compare with: another file,
// or the plan's own files at a revision that git knows.
func (a *app) compileOlder(ctx context.Context, plan, since string) (*compile.Result, error) {
	name, read := since, a.reader("")
	if _, err := os.Stat(since); err != nil {
		git, err := openRevision(ctx, since, plan)
		if err != nil {
			return nil, err
		}
		name, read = plan, git.read
	}
	r, err := compile.Compile(ctx, read, name, compile.Options{})
	if err != nil {
		return nil, err
	}
	if r.Stopped || r.Sight == nil {
		return nil, fmt.Errorf("%s cannot be compared with: %s", since, diag.Summary(r.Findings))
	}
	return r, nil
}

// book is the whole book, for build.
func (m *making) book() ([]artifact, error) { return m.bound("book.pdf", book.Write) }

// cards is a card for each person, for build.
func (m *making) cards() ([]artifact, error) { return m.bound("cards.pdf", book.WriteCards) }

func (m *making) bound(name string, write func(context.Context, *compile.Result, book.Options) ([]byte, error)) ([]artifact, error) {
	rows, err := m.rows()
	if err != nil {
		return nil, err
	}
	data, err := write(m.ctx, m.r, book.Options{Paper: m.o.Paper, Colour: m.o.Colour, Sheets: rows, Rehearsal: m.rehearsal})
	if err != nil {
		return nil, err
	}
	return []artifact{{name, data}}, nil
}
