package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"path"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/render/page"
)

func (a *app) watchCommand() *cobra.Command {
	var port int
	var rehearsal rehearsalFlags
	cmd := &cobra.Command{
		Use:   "watch FILE",
		Short: "the page on this machine, live as the plan is saved",
		Long: `Shows the page of a plan to this machine only, and keeps it up to date: whenever
a file of the plan is saved, the page shows the new take at the moment and in the
view it was in. While the text has mistakes the page keeps the last plan without
and says what is wrong. Findings are printed here as well. It writes no file, and
goes on until it is interrupted.

With --rehearse N each state that is saved is shown at once and rehearsed while it
is shown; what comes of it is added to the page, unless a newer state was saved
meanwhile.`,
		Example: `  longhand watch plan.take
  longhand watch plan.take --port 8031
  longhand watch plan.take --rehearse 200`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			if args[0] == stdinName {
				return errors.New("watch needs a file that can be saved again; standard input can't")
			}
			rehearsed, err := rehearsal.asked(cmd)
			if err != nil {
				return err
			}
			files, err := takeFiles(args)
			if err != nil {
				return err
			}
			if len(files) != 1 {
				return fmt.Errorf("%s holds %d plans; name one of them", args[0], len(files))
			}
			if port < 0 || port > 65535 {
				return fmt.Errorf("--port takes 0 to 65535, not %d", port)
			}
			if !rehearsed {
				return a.watch(cmd.Context(), files[0], port, nil)
			}
			return a.watch(cmd.Context(), files[0], port, &rehearsal)
		},
	}
	cmd.Flags().IntVar(&port, "port", 0, "the port to serve on; 0 for any that is free")
	rehearsal.offerTo(cmd, "add what comes of it to the page")
	return cmd
}

// watch serves a plan until the context ends, which is no failure. It is rehearsed
// as told; nil for not at all.
func (a *app) watch(ctx context.Context, name string, port int, rehearsal *rehearsalFlags) error {
	listener, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
	if err != nil {
		return fmt.Errorf("port %d can't be served on: %w", port, errors.Unwrap(err))
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	board := newBoard(path.Base(name))
	server := &http.Server{
		Handler:           board.handler(listener.Addr().(*net.TCPAddr).Port),
		BaseContext:       func(net.Listener) context.Context { return ctx },
		ReadHeaderTimeout: 5 * time.Second,
	}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	defer server.Close()
	fmt.Fprintf(a.out, "http://%s/\n", listener.Addr())
	fmt.Fprintf(a.err, "showing %s at the address above; interrupt to stop\n", name)

	aside := &aside{}
	defer aside.end()
	w := &watcher{files: newWatched(), build: a.builder(name, board, aside, rehearsal)}
	if err := w.run(ctx, failed); err != nil && !errors.Is(err, context.Canceled) {
		return err
	}
	return nil
}

// builder compiles the plan, prints what was found and puts the page on the
// board.
func (a *app) builder(name string, board *board, aside *aside, rehearsal *rehearsalFlags) func(ctx context.Context, files *watched) error {
	var before *compile.Result
	return func(ctx context.Context, files *watched) error {
		aside.end()
		begun := time.Now()
		r, err := compile.Compile(ctx, files.reading(), name, compile.Options{Before: before})
		if err != nil {
			if ctx.Err() != nil {
				return ctx.Err()
			}
			board.broken(err.Error())
			fmt.Fprintf(a.err, "longhand: %s\n", err)
			return nil
		}
		if err := a.printFindings(r.Findings); err != nil {
			return err
		}
		if r.Stopped || r.Sight == nil {
			board.broken(plainFindings(r.Findings))
			fmt.Fprintf(a.err, "%s; the page keeps the plan before, %s\n", diag.Summary(r.Findings), took(begun))
			return nil
		}
		data, err := page.Data(ctx, r, page.Options{})
		if err != nil {
			return err
		}
		before = r
		board.show(data)
		fmt.Fprintf(a.err, "%s, %s\n", diag.Summary(r.Findings), took(begun))
		if rehearsal != nil {
			aside.begin(ctx, func(ctx context.Context) { a.rehearseAside(ctx, r, rehearsal, board) })
		}
		return nil
	}
}

// rehearseAside rehearses a plan that is shown, and adds what comes of it.
func (a *app) rehearseAside(ctx context.Context, r *compile.Result, f *rehearsalFlags, board *board) {
	begun := time.Now()
	played, err := a.rehearsal(ctx, r, f, true)
	var data []byte
	if err == nil {
		data, err = page.Data(ctx, r, page.Options{Rehearsal: played})
	}
	switch {
	case ctx.Err() != nil: // a newer state was saved, or the watch is over
	case err != nil:
		fmt.Fprintf(a.err, "longhand: not rehearsed: %s\n", err)
	default:
		board.show(data)
		fmt.Fprintf(a.err, "rehearsed in %s: %s\n", took(begun), strings.Join(played.Sheets[0].Says, "; "))
	}
}

// aside is one piece of work that goes on beside the watching.
type aside struct {
	stop func()
	done chan struct{}
}

// begin starts a piece of work, once the last one has ended.
func (s *aside) begin(ctx context.Context, work func(context.Context)) {
	s.end()
	ctx, s.stop = context.WithCancel(ctx)
	s.done = make(chan struct{})
	go func() {
		defer close(s.done)
		work(ctx)
	}()
}

// end stops what goes on and waits for it.
func (s *aside) end() {
	if s.done == nil {
		return
	}
	s.stop()
	<-s.done
	s.done = nil
}

// plainFindings is errors of a text as the terminal has them, without colour.
func plainFindings(list []diag.Diagnostic) string {
	var errs []diag.Diagnostic
	for _, d := range list {
		if d.Severity == diag.Error {
			errs = append(errs, d)
		}
	}
	var b strings.Builder
	if err := diag.WriteText(&b, errs, diag.Paint{}); err != nil {
		return err.Error()
	}
	return b.String()
}
