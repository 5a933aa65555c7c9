package main

import (
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"longhand/render/page"
)

// pageName is the page in a folder of everything.
const pageName = "take.html"

func (a *app) pageCommand() *cobra.Command {
	var out, stdinAs string
	var rehearsal rehearsalFlags
	cmd := &cobra.Command{
		Use:   "page FILE",
		Short: "one HTML file that plays the take",
		Long: `Writes one HTML file that plays the take: the set from above in time, what each
rolling camera sees beside it, the running order, the findings. The file needs
no network and nothing beside it; send it, put it on a file share, open it on a
phone. A link to it may name a moment: take.html#f=123 is frame 123,
take.html#beat=3 the third beat, take.html#find=2 the second finding.

With --rehearse N the take is played so many times with human timing, and a strip
along its time shows what each cue has to spare and where it breaks. Interrupted,
no page is made.`,
		Example: `  longhand page plan.take
  longhand page plan.take --rehearse 500
  longhand page plan.take -o /tmp/take.html`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			rehearsed, err := rehearsal.asked(cmd)
			if err != nil {
				return err
			}
			r, err := a.compileOne(cmd.Context(), args[0], stdinAs)
			if err != nil {
				return err
			}
			played, err := a.rehearsal(cmd.Context(), r, &rehearsal, rehearsed)
			if err != nil {
				return err
			}
			data, err := page.Write(cmd.Context(), r, page.Options{Rehearsal: played})
			if err != nil {
				return err
			}
			if info, err := os.Stat(out); err == nil && info.IsDir() {
				out = filepath.Join(out, pageName)
			}
			return a.makeFile(out, data, r)
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", pageName, "the file to write, or a folder; - for standard output")
	rehearsal.offerTo(cmd, "show what comes of it along the take's time")
	cmd.Flags().StringVar(&stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	return cmd
}

// page is the page, for build.
func (m *making) page() ([]artifact, error) {
	data, err := page.Write(m.ctx, m.r, page.Options{Rehearsal: m.rehearsal})
	if err != nil {
		return nil, err
	}
	return []artifact{{pageName, data}}, nil
}
