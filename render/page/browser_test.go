package page

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
)

// browser opens a headless Chromium, or skips the test where there is none.
func browser(tb testing.TB) context.Context {
	tb.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if p, err := exec.LookPath(name); err == nil {
			path = p
			break
		}
	}
	if path == "" {
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

// patience is how long a test waits for what has to come at last: on a machine that
// is busy with other things that may be long, and how long is not what is tested.
const patience = 2 * time.Minute

// opened is a page in a tab of its own.
type opened struct {
	testing.TB
	ctx context.Context
	url string

	mu     sync.Mutex
	spoken []string // errors and warnings on its console
}

// open shows a take's page at a size, at an address like "#f=12".
func open(tb testing.TB, browser context.Context, r *compile.Result, width, height int64, hash string) *opened {
	tb.Helper()
	return openWith(tb, browser, r, Options{}, width, height, hash)
}

func openWith(tb testing.TB, browser context.Context, r *compile.Result, options Options, width, height int64, hash string) *opened {
	tb.Helper()
	data, err := Write(context.Background(), r, options)
	require.NoError(tb, err)
	file := filepath.Join(tb.TempDir(), "take.html")
	require.NoError(tb, os.WriteFile(file, data, 0o600))
	ctx, stop := chromedp.NewContext(browser)
	tb.Cleanup(stop)
	ctx, cancel := context.WithTimeout(ctx, 2*patience)
	tb.Cleanup(cancel)
	p := &opened{TB: tb, ctx: ctx, url: (&url.URL{Scheme: "file", Path: file}).String()}
	p.do(chromedp.EmulateViewport(width, height))
	console := chromedp.Console(ctx)
	go func() {
		for m, err := range console {
			if err != nil {
				return
			}
			switch m.Type {
			case "error", "warning", "exception", "assert":
				p.mu.Lock()
				p.spoken = append(p.spoken, fmt.Sprintf("%s: %s", m.Type, m.Text))
				p.mu.Unlock()
			}
		}
	}()
	p.do(chromedp.Navigate(p.url + hash))
	p.until("document.body.dataset.frame !== undefined")
	return p
}

func (p *opened) complaints() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return append([]string(nil), p.spoken...)
}

func (p *opened) do(steps ...chromedp.Action[chromedp.Void]) {
	p.Helper()
	require.NoError(p, chromedp.Do(p.ctx, steps...))
}

// until waits for something to be so.
func (p *opened) until(expression string) {
	p.Helper()
	_, err := chromedp.Run(p.ctx, chromedp.Poll[bool](expression, chromedp.WithPollingInterval(10*time.Millisecond), chromedp.WithPollingTimeout(patience)))
	require.NoError(p, err, expression)
}

// key presses a key and waits until the page has drawn.
func (p *opened) key(keys string, options ...chromedp.KeyOption) {
	p.Helper()
	p.do(chromedp.KeyEvent(keys, options...))
	p.drawn()
}

// drawn waits for two frames of the screen.
func (p *opened) drawn() {
	p.Helper()
	_, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](`new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(() => r(true))))`, chromedp.EvalAwaitPromise))
	require.NoError(p, err)
}

func value[T any](p *opened, expression string) T {
	p.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](expression))
	require.NoError(p, err, expression)
	return v
}

func (p *opened) frame() int { p.Helper(); return value[int](p, "Number(document.body.dataset.frame)") }
