package lsp

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log"
	"runtime/debug"
	"sync"
	"time"

	"github.com/sourcegraph/jsonrpc2"
)

// Options is how the server goes about it; the zero value is usual.
type Options struct {
	Version string    // of the program
	Log     io.Writer // for what goes wrong; nil for nowhere
	// Pause is how long a text must rest before everything is checked; 0 for the
	// usual, below 0 for none.
	Pause time.Duration
}

// usualPause is long enough for the next letter of a fast hand to come first.
const usualPause = 40 * time.Millisecond

// ErrNoShutdown says that the editor left without saying so first.
var ErrNoShutdown = errors.New("the editor closed the connection without shutting the server down")

// Serve speaks the protocol until the editor says exit or is gone. The error is
// of an end that the editor did not announce.
func Serve(ctx context.Context, in io.Reader, out io.Writer, o Options) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	return newServer(ctx, o).serve(ctx, in, out)
}

func (s *server) serve(ctx context.Context, in io.Reader, out io.Writer) error {
	stream := jsonrpc2.NewBufferedStream(pipes{in, out}, codec{func(err error) { s.log.Print(err) }})
	s.conn = jsonrpc2.NewConn(ctx, stream, s, jsonrpc2.SetLogger(s.log))
	go s.send()
	select {
	case <-s.conn.DisconnectNotify():
	case <-s.left:
		s.conn.Close()
	case <-ctx.Done():
		s.conn.Close()
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, p := range s.work.plans {
		p.stop()
	}
	if !s.down {
		return ErrNoShutdown
	}
	return nil
}

// pipes is a connection made of two pipes.
type pipes struct {
	io.Reader
	io.Writer
}

// Close closes what can be closed.
func (p pipes) Close() error {
	for _, end := range []any{p.Reader, p.Writer} {
		if c, ok := end.(io.Closer); ok {
			if err := c.Close(); err != nil {
				return err
			}
		}
	}
	return nil
}

// server is one connection.
type server struct {
	ctx     context.Context
	options Options
	log     *log.Logger
	conn    *jsonrpc2.Conn
	left    chan struct{}  // closed by exit
	busy    sync.WaitGroup // requests that are not answered

	mu        sync.Mutex // of all below
	work      *workspace
	client    client
	begun     bool // initialize was answered
	down      bool // shutdown was asked for
	running   map[jsonrpc2.ID]context.CancelFunc
	published map[string]string // what was last published of a document

	outbox  []message
	mail    *sync.Cond
	checks  chan struct{} // one check at a time
	handler map[string]handler
}

// client is what the editor can do.
type client struct {
	encoding Encoding
	snippets bool
	related  bool
	versions bool
	refresh  bool // of inlay hints
	watches  bool // files, if asked to
}

// message is a notification to send, or a request whose answer does not matter.
type message struct {
	method  string
	params  any
	request bool
}

func newServer(ctx context.Context, o Options) *server {
	if o.Log == nil {
		o.Log = io.Discard
	}
	if o.Pause == 0 {
		o.Pause = usualPause
	}
	s := &server{
		ctx: ctx, options: o, log: log.New(o.Log, "longhand lsp: ", 0), left: make(chan struct{}),
		work: newWorkspace(), client: client{encoding: UTF16}, running: map[jsonrpc2.ID]context.CancelFunc{},
		published: map[string]string{}, checks: make(chan struct{}, 1), handler: handlers(),
	}
	s.mail = sync.NewCond(&s.mu)
	context.AfterFunc(ctx, s.mail.Broadcast)
	return s
}

// Handle takes a message. Notifications are dealt with at once, in the order in
// which they come; a request sees the texts as they are now and is answered when
// its answer is ready.
func (s *server) Handle(ctx context.Context, conn *jsonrpc2.Conn, req *jsonrpc2.Request) {
	if req.Notif {
		err := s.guard(req.Method, func() error { return s.notified(req) })
		if err != nil {
			s.log.Printf("%s: %s", req.Method, err)
		}
		return
	}
	var work func(context.Context) (any, error)
	err := s.guard(req.Method, func() (err error) {
		work, err = s.prepare(req)
		return err
	})
	if err != nil {
		s.answer(ctx, conn, req, nil, err)
		return
	}
	ctx, cancel := context.WithCancel(ctx)
	s.mu.Lock()
	s.running[req.ID] = cancel
	s.mu.Unlock()
	s.busy.Add(1)
	go func() {
		defer s.busy.Done()
		var result any
		err := s.guard(req.Method, func() (err error) {
			result, err = work(ctx)
			return err
		})
		gone := ctx.Err() != nil
		s.mu.Lock()
		delete(s.running, req.ID)
		s.mu.Unlock()
		cancel()
		if gone {
			err = &jsonrpc2.Error{Code: codeCancelled, Message: "cancelled"}
		}
		s.answer(s.ctx, conn, req, result, err)
	}()
}

// lastAnswers is how long an editor that has said exit is waited for to take the
// answers it has asked for.
const lastAnswers = 2 * time.Second

// leave ends the connection once everything asked before is answered.
func (s *server) leave() {
	answered := make(chan struct{})
	go func() {
		s.busy.Wait()
		close(answered)
	}()
	select {
	case <-answered:
	case <-time.After(lastAnswers):
	case <-s.ctx.Done():
	}
	close(s.left)
}

// Codes of errors, of the protocol.
const (
	codeNotBegun  = -32002
	codeCancelled = -32800
	codeFailed    = -32803 // a request that is right and cannot be done
)

// failed is the error of a request that cannot be done, in words for people.
func failed(format string, args ...any) error {
	return &jsonrpc2.Error{Code: codeFailed, Message: fmt.Sprintf(format, args...)}
}

// guard runs a handler and makes an error of its panic.
func (s *server) guard(method string, f func() error) (err error) {
	defer func() {
		if v := recover(); v != nil {
			s.log.Printf("%s failed: %v\n%s", method, v, debug.Stack())
			err = &jsonrpc2.Error{Code: jsonrpc2.CodeInternalError, Message: fmt.Sprintf("longhand itself failed over %s: %v", method, v)}
		}
	}()
	return f()
}

func (s *server) answer(ctx context.Context, conn *jsonrpc2.Conn, req *jsonrpc2.Request, result any, err error) {
	resp := &jsonrpc2.Response{ID: req.ID}
	if err == nil {
		err = resp.SetResult(result)
	}
	if err != nil {
		var e *jsonrpc2.Error
		if !errors.As(err, &e) {
			e = &jsonrpc2.Error{Code: jsonrpc2.CodeInternalError, Message: err.Error()}
		}
		resp.Error = e
	}
	if err := conn.SendResponse(ctx, resp); err != nil && !errors.Is(err, jsonrpc2.ErrClosed) {
		s.log.Printf("%s: the answer cannot be sent: %s", req.Method, err)
	}
}

// post has a message sent after those before it; the server is locked.
func (s *server) post(m message) {
	s.outbox = append(s.outbox, m)
	s.mail.Signal()
}

// send sends what is posted, so that nobody who holds the lock waits for the
// editor to read.
func (s *server) send() {
	for {
		s.mu.Lock()
		for len(s.outbox) == 0 && s.ctx.Err() == nil {
			s.mail.Wait()
		}
		batch := s.outbox
		s.outbox = nil
		s.mu.Unlock()
		if s.ctx.Err() != nil {
			return
		}
		for _, m := range batch {
			var err error
			if m.request {
				_, err = s.conn.DispatchCall(s.ctx, m.method, m.params)
			} else {
				err = s.conn.Notify(s.ctx, m.method, m.params)
			}
			if err != nil && !errors.Is(err, jsonrpc2.ErrClosed) {
				s.log.Printf("%s cannot be sent: %s", m.method, err)
			}
		}
	}
}

// decode reads a message's parameters.
func decode[P any](req *jsonrpc2.Request) (P, error) {
	var p P
	if req.Params == nil {
		return p, nil
	}
	if err := json.Unmarshal(*req.Params, &p); err != nil {
		return p, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: err.Error()}
	}
	return p, nil
}
