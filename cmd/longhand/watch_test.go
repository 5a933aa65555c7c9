package main

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const watchedPlan = `take "One"
  rate 24 fps
use "room.take"
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1 m/s
  A on legs with ida at (3, -9)
  A takes w35 T8
  A sees mina
`

const watchedRoom = `set "Room"
  mark M1 (0, 0)
  mark M2 (6, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
`

// watching is a plan in a folder and the command that watches it.
type watching struct {
	testing.TB
	dir, url string
	said     *lockedText // what the terminal shows
	stop     func() int
}

func watch(tb testing.TB, flags ...string) *watching {
	tb.Helper()
	w := &watching{TB: tb, dir: tb.TempDir(), said: &lockedText{}}
	w.save("room.take", watchedRoom)
	w.save("plan.take", watchedPlan)
	ctx, cancel := context.WithCancel(context.Background())
	out, in := io.Pipe()
	code := make(chan int, 1)
	go func() {
		code <- run(ctx, append([]string{"watch", filepath.Join(w.dir, "plan.take")}, flags...), strings.NewReader(""), in, w.said, func(string) string { return "" })
		in.Close()
	}()
	line, err := bufio.NewReader(out).ReadString('\n')
	require.NoError(tb, err, w.said.String())
	w.url = strings.TrimSuffix(strings.TrimSpace(line), "/")
	stopped := false
	w.stop = func() int {
		if stopped {
			return exitClean
		}
		stopped = true
		cancel()
		return <-code
	}
	tb.Cleanup(func() { w.stop() })
	w.until(func() bool { return w.title() == "One" })
	return w
}

func (w *watching) save(name, text string) {
	w.Helper()
	require.NoError(w, os.WriteFile(filepath.Join(w.dir, name), []byte(text), 0o600))
}

// patience is how long a test waits for what has to come at last: on a machine that
// is busy with other things that may be long, and how long is not what is tested.
const patience = 2 * time.Minute

func (w *watching) until(so func() bool) {
	w.Helper()
	require.Eventually(w, so, patience, 5*time.Millisecond, "%s", w.said)
}

// plan is what the page is told of the plan; nil where there is none yet.
func (w *watching) plan() map[string]any {
	resp, err := http.Get(w.url + "/plan.json")
	if err != nil {
		return nil
	}
	defer resp.Body.Close()
	var doc map[string]any
	if resp.StatusCode != http.StatusOK || json.NewDecoder(resp.Body).Decode(&doc) != nil {
		return nil
	}
	return doc
}

func (w *watching) title() string {
	title, _ := w.plan()["title"].(string)
	return title
}

func TestWatchRefusesWhatCannotBeSavedAgain(t *testing.T) {
	var said strings.Builder
	code := run(context.Background(), []string{"watch", "-"}, strings.NewReader(watchedPlan), io.Discard, &said, func(string) string { return "" })
	assert.Equal(t, exitBroken, code)
	assert.Contains(t, said.String(), "standard input")
}

func TestWatchAnswersItsOwnPageOnly(t *testing.T) {
	w := watch(t)
	host := strings.TrimPrefix(w.url, "http://")
	port := host[strings.LastIndexByte(host, ':'):]
	ask := func(method, path, host, origin string) *http.Response {
		req, err := http.NewRequest(method, w.url+path, nil)
		require.NoError(t, err)
		req.Host = host
		if origin != "" {
			req.Header.Set("Origin", origin)
		}
		resp, err := http.DefaultClient.Do(req)
		require.NoError(t, err)
		resp.Body.Close()
		return resp
	}
	for _, row := range []struct {
		method, path, host, origin string
		want                       int
	}{
		{"GET", "/", host, "", 200},
		{"GET", "/", "localhost" + port, "", 200},
		{"GET", "/plan.json", host, w.url, 200},
		{"GET", "/plan.json", "somewhere.example" + port, "", 403},
		{"GET", "/plan.json", "somewhere.example", "", 403},
		{"GET", "/plan.json", "127.0.0.1:1", "", 403},
		{"GET", "/plan.json", host, "http://somewhere.example", 403},
		{"GET", "/plan.json", host, "https://" + host, 403},
		{"GET", "/news", host, "null", 403},
		{"GET", "/plan.take", host, "", 404},
		{"GET", "/../plan.take", host, "", 404},
		{"POST", "/", host, "", 405},
	} {
		resp := ask(row.method, row.path, row.host, row.origin)
		assert.Equal(t, row.want, resp.StatusCode, "%+v", row)
	}
	resp := ask("GET", "/", host, "")
	assert.Equal(t, "same-origin", resp.Header.Get("Cross-Origin-Resource-Policy"))
	assert.Contains(t, resp.Header.Get("Content-Security-Policy"), "frame-ancestors 'none'")
}

func TestWatchSeesAFileThatThePlanUses(t *testing.T) {
	w := watch(t)
	marks := func() string { return fmt.Sprint(w.plan()["plan"]) }
	before := marks()
	w.save("room.take", strings.Replace(watchedRoom, "(6, 0)", "(5, 0)", 1))
	w.until(func() bool { return marks() != before })
	// Taken away and put back, as editors do.
	require.NoError(t, os.Rename(filepath.Join(w.dir, "room.take"), filepath.Join(w.dir, "room.old")))
	w.until(func() bool { return strings.Contains(w.said.String(), "no-file") })
	assert.Equal(t, "One", w.title(), "the plan before stays")
	w.save("room.take", watchedRoom)
	w.until(func() bool { return marks() == before })
}

// What is saved is shown at once and rehearsed aside; a newer state is not kept
// waiting by the rehearsal of an older one.
func TestWatchRehearses(t *testing.T) {
	played := func(w *watching) string {
		doc, _ := w.plan()["rehearsal"].(map[string]any)
		return fmt.Sprint(doc["says"])
	}
	w := watch(t, "--rehearse", "10")
	w.until(func() bool { return strings.Contains(played(w), "it holds 100 % of the time") })
	w.save("plan.take", strings.Replace(watchedPlan, "at 1 m/s", "at 1 m/s by +6 s", 1))
	w.until(func() bool { return strings.Contains(played(w), "it holds 0 % of the time") })
	w.until(func() bool {
		return strings.Contains(w.said.String(), "s: as planned, with nobody late, it breaks already")
	})
	assert.Equal(t, exitClean, w.stop())

	long := watch(t, "--rehearse", "1000000")
	long.save("plan.take", strings.Replace(watchedPlan, "One", "Two", 1))
	long.until(func() bool { return long.title() == "Two" })
	assert.Equal(t, "<nil>", played(long))
	assert.Equal(t, exitClean, long.stop())
	assert.NotContains(t, long.said.String(), "not rehearsed")
}

func TestWatchRefusesWrongRehearsals(t *testing.T) {
	for flag, want := range map[string]string{"--rehearse=0": "not 0", "--seed=4": "needs --rehearse"} {
		var said strings.Builder
		code := run(context.Background(), []string{"watch", "plan.take", flag}, strings.NewReader(""), io.Discard, &said, func(string) string { return "" })
		assert.Equal(t, exitBroken, code)
		assert.Contains(t, said.String(), want)
	}
}

// It stops when it is told to, as a success, and leaves nothing running.
func TestWatchStops(t *testing.T) {
	before := runtime.NumGoroutine()
	w := watch(t)
	news, err := http.Get(w.url + "/news")
	require.NoError(t, err)
	defer news.Body.Close()
	assert.Equal(t, exitClean, w.stop())
	_, _ = io.Copy(io.Discard, news.Body) // it ends, one way or another
	_, err = net.Dial("tcp", strings.TrimPrefix(w.url, "http://"))
	assert.Error(t, err, "nobody listens any more")
	http.DefaultClient.CloseIdleConnections()
	require.Eventually(t, func() bool { return runtime.NumGoroutine() <= before+2 }, patience, 10*time.Millisecond)
}

func TestWatchInABrowser(t *testing.T) {
	tab := chromium(t)
	w := watch(t)
	p := &livePage{TB: t, ctx: tab, said: w.said}
	p.open(w.url + "/#f=60")
	p.until("document.title === 'One' && document.body.dataset.frame === '60'")
	p.eval("document.getElementById('view').value = 'of:mina'; document.getElementById('view').dispatchEvent(new Event('change')); window.stayed = true")

	w.save("plan.take", strings.Replace(watchedPlan, `"One"`, `"Two"`, 1))
	p.until("document.title === 'Two'")
	p.until("document.body.dataset.frame === '60'")
	p.until("document.getElementById('view').value === 'of:mina'")
	p.until("window.stayed === true") // not loaded again

	w.save("plan.take", strings.Replace(watchedPlan, "A sees mina", "A sees nobody-here", 1))
	p.until("!document.getElementById('broken').hidden")
	p.until("document.querySelector('#broken pre').textContent.includes('nobody-here')")
	p.until("document.title === 'Two' && document.querySelectorAll('g.sign').length === 3")

	w.save("plan.take", strings.Replace(watchedPlan, `"One"`, `"Three"`, 1))
	p.until("document.title === 'Three' && document.getElementById('broken').hidden")

	// A hundred saves in a row, some of them broken: the last one counts.
	for i := range 100 {
		text := strings.Replace(watchedPlan, `"One"`, fmt.Sprintf("%q", fmt.Sprint("Save ", i)), 1)
		if i%7 == 3 {
			text = text[:len(text)/2]
		}
		w.save("plan.take", text)
		time.Sleep(time.Millisecond)
	}
	w.until(func() bool { return w.title() == "Save 99" })
	p.until("document.title === 'Save 99' && document.getElementById('broken').hidden")
	p.until("document.querySelectorAll('g.sign').length === 3 && document.querySelectorAll('figure.view').length === 1")
	p.until("window.stayed === true")
	assert.Contains(t, w.said.String(), "nobody-here", "findings are in the terminal too")
}

// BenchmarkSaveToScreen is how long the shipped take needs from a save to the
// page, in a browser.
func BenchmarkSaveToScreen(b *testing.B) {
	tab := chromium(b)
	w := watch(b)
	text, err := os.ReadFile("../../examples/last-collection.take")
	require.NoError(b, err)
	p := &livePage{TB: b, ctx: tab, said: w.said}
	p.open(w.url)
	n := 0
	for b.Loop() {
		n++
		title := fmt.Sprint("Save ", n)
		w.save("plan.take", strings.Replace(string(text), `take "Last Collection"`, fmt.Sprintf("take %q", title), 1))
		p.until(fmt.Sprintf("document.title === %q", title))
	}
}

// chromium is a tab of a headless browser; the test is skipped where there is none.
func chromium(tb testing.TB) context.Context {
	tb.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		tb.Skip("no Chromium on this machine")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(tb.TempDir()),
		chromedp.Flag("disable-component-update", true))
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	tb.Cleanup(stop)
	ctx, stop = chromedp.NewContext(ctx)
	tb.Cleanup(stop)
	require.NoError(tb, chromedp.Do(ctx))
	return ctx
}

type livePage struct {
	testing.TB
	ctx  context.Context
	said fmt.Stringer
}

func (p *livePage) open(url string) {
	p.Helper()
	require.NoError(p, chromedp.Do(p.ctx, chromedp.Navigate(url)))
}

func (p *livePage) eval(expression string) {
	p.Helper()
	_, err := chromedp.Run(p.ctx, chromedp.Evaluate[any](expression))
	require.NoError(p, err, expression)
}

func (p *livePage) until(expression string) {
	p.Helper()
	_, err := chromedp.Run(p.ctx, chromedp.Poll[bool](expression, chromedp.WithPollingInterval(5*time.Millisecond), chromedp.WithPollingTimeout(patience)))
	require.NoError(p, err, "%s\n%s", expression, p.said)
}

// lockedText is written to and read by two goroutines.
type lockedText struct {
	mu   sync.Mutex
	text strings.Builder
}

func (l *lockedText) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.Write(p)
}

func (l *lockedText) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.String()
}
