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
	cmd := &cobra.Command{
		Use:   "watch FILE",
		Short: "the page on this machine, live as the plan is saved",
		Long: `Shows the page of a plan to this machine only, and keeps it up to date: whenever
a file of the plan is saved, the page shows the new take at the moment and in the
view it was in. While the text has mistakes the page keeps the last plan without
and says what is wrong. Findings are printed here as well. It writes no file, and
goes on until it is interrupted.`,
		Example: `  longhand watch plan.take
  longhand watch plan.take --port 8031`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			if args[0] == stdinName {
				return errors.New("watch needs a file that can be saved again; standard input can't")
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
			return a.watch(cmd.Context(), files[0], port)
		},
	}
	cmd.Flags().IntVar(&port, "port", 0, "the port to serve on; 0 for any that is free")
	return cmd
}

// watch serves a plan until the context ends, which is no failure.
func (a *app) watch(ctx context.Context, name string, port int) error {
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

	w := &watcher{files: newWatched(), build: a.builder(name, board)}
	if err := w.run(ctx, failed); err != nil && !errors.Is(err, context.Canceled) {
		return err
	}
	return nil
}

// builder compiles the plan, prints what was found and puts the page on the
// board.
func (a *app) builder(name string, board *board) func(ctx context.Context, files *watched) error {
	var before *compile.Result
	return func(ctx context.Context, files *watched) error {
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
		return nil
	}
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
