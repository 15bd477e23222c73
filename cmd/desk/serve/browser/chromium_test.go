package browser

import (
	"context"
	"os"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"

	"roundlay/render/printtest"
)

// chromium is the one browser of all tests here: it takes a second to start. It is started
// by the first test that opens a tab, and ended after the last.
type chromium struct {
	once    sync.Once
	ctx     context.Context
	end     func()
	profile string
	err     error
}

var started chromium

func TestMain(m *testing.M) {
	code := m.Run()
	started.stop()
	os.Exit(code)
}

// get returns the context of the browser, or skips the test where there is no browser.
func (c *chromium) get(t testing.TB) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes seconds to start")
	}
	program := printtest.Program(t, "chromium", "chromium-browser", "google-chrome")
	c.once.Do(func() { c.start(program) })
	if c.err != nil {
		t.Fatalf("%s: %v", program, c.err)
	}
	return c.ctx
}

func (c *chromium) start(program string) {
	if c.profile, c.err = os.MkdirTemp("", "browser"); c.err != nil {
		return
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(program), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(c.profile),
		chromedp.WSURLReadTimeout(time.Minute), chromedp.WindowSize(1440, 1000),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
	)
	ctx, endAll := chromedp.NewExecAllocator(context.Background(), options...)
	c.ctx, c.end = chromedp.NewContext(ctx)
	end := c.end
	c.end = func() { end(); endAll() }
	if c.err = chromedp.Do(c.ctx); c.err != nil {
		return
	}
	// No file is kept unless a test says where.
	_, c.err = chromedp.CallBrowser(c.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{Behavior: browser.SetDownloadBehaviorBehaviorDeny})
}

func (c *chromium) stop() {
	if c.end != nil {
		c.end()
	}
	if c.profile != "" {
		os.RemoveAll(c.profile)
	}
}
