package main

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strconv"
	"sync"

	"longhand/render/page"
)

// board is what a watched plan looks like now, and tells pages when that changes.
type board struct {
	title string

	mu      sync.Mutex
	data    []byte // of the last plan that could be played
	version int    // goes up with each
	wrong   string // what is wrong with the text since; "" where nothing is
	changed chan struct{}
}

func newBoard(title string) *board { return &board{title: title, changed: make(chan struct{})} }

// show puts up a plan.
func (b *board) show(data []byte) {
	b.update(func() { b.data, b.version, b.wrong = data, b.version+1, "" })
}

// broken says that the text is wrong; the plan stays.
func (b *board) broken(text string) {
	b.update(func() { b.wrong = text })
}

func (b *board) update(do func()) {
	b.mu.Lock()
	defer b.mu.Unlock()
	do()
	close(b.changed) // wakes everyone who waits
	b.changed = make(chan struct{})
}

type boardState struct {
	data    []byte
	version int
	wrong   string
	changed <-chan struct{} // closed when there is something newer
}

func (b *board) now() boardState {
	b.mu.Lock()
	defer b.mu.Unlock()
	return boardState{b.data, b.version, b.wrong, b.changed}
}

// handler serves the board to pages of this machine, under the names of this
// machine only: another site must neither read the plan nor pass for it.
func (b *board) handler(port int) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", b.page)
	mux.HandleFunc("GET /plan.json", b.plan)
	mux.HandleFunc("GET /news", b.news)
	hosts := map[string]bool{}
	for _, name := range []string{"127.0.0.1", "localhost"} {
		hosts[fmt.Sprintf("%s:%d", name, port)] = true
		if port == 80 {
			hosts[name] = true
		}
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !hosts[r.Host] {
			http.Error(w, "this page is for the machine it is made on", http.StatusForbidden)
			return
		}
		if o := r.Header.Get("Origin"); o != "" && !hosts[trimHTTP(o)] {
			http.Error(w, "this page answers to itself only", http.StatusForbidden)
			return
		}
		h := w.Header()
		h.Set("Cache-Control", "no-store")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Content-Security-Policy", "frame-ancestors 'none'")
		mux.ServeHTTP(w, r)
	})
}

// trimHTTP is the host of an origin; "" where it isn't plain http.
func trimHTTP(origin string) string {
	const scheme = "http://"
	if len(origin) < len(scheme) || origin[:len(scheme)] != scheme {
		return ""
	}
	return origin[len(scheme):]
}

func (b *board) page(w http.ResponseWriter, _ *http.Request) {
	s := b.now()
	out, err := page.Live(b.title, s.data, s.version)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write(out) // the reader has gone
}

func (b *board) plan(w http.ResponseWriter, _ *http.Request) {
	s := b.now()
	if s.data == nil {
		http.Error(w, "there is no plan yet", http.StatusNotFound)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	_, _ = w.Write(s.data) // the reader has gone
}

// news tells a page which version there is, and what is wrong with the text, now
// and whenever that changes. What changes twice before it is told is told once.
func (b *board) news(w http.ResponseWriter, r *http.Request) {
	flusher, ok := w.(http.Flusher)
	if !ok {
		http.Error(w, "no news over this connection", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/event-stream")
	for {
		s := b.now()
		if s.wrong != "" {
			text, err := json.Marshal(s.wrong)
			if err != nil {
				return
			}
			_, _ = fmt.Fprintf(w, "event: broken\ndata: %s\n\n", text)
		} else if s.version > 0 {
			_, _ = fmt.Fprintf(w, "event: plan\ndata: %s\n\n", strconv.Itoa(s.version))
		}
		flusher.Flush()
		select {
		case <-s.changed:
		case <-r.Context().Done():
			return
		}
	}
}
