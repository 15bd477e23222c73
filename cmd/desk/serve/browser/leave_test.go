package browser

import (
	"context"
	"os"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"roundlay/cmd/desk/page"
	"roundlay/cmd/desk/serve"
	"roundlay/cmd/disk"
	"roundlay/pattern/job"
)

// Whoever leaves the page is asked first where work is not saved, and only there.
func TestLeavingUnsavedWork(t *testing.T) {
	_, demo := job.Demo()
	p := open(t, string(demo), 1440, 1000)
	p.needsDisk()
	isAsked := func(when string, want bool) {
		t.Helper()
		if got := eval[bool](p, `!dispatchEvent(new Event("beforeunload", { cancelable: true }))`); got != want {
			t.Errorf("%s: asked %v", when, got)
		}
	}
	isAsked("as opened", false)
	p.click("#tab-design")
	p.click(`[aria-label="Repeats: one fewer"]`)
	p.text()
	isAsked("after a change", true)
	p.control("s")
	p.until(`/saved/.test(document.querySelector("#saved").innerText) && !/not saved/.test(document.querySelector("#saved").innerText)`)
	isAsked("once saved", false)
	p.click("#undo")
	p.text()
	isAsked("undone past what is saved", true)
}

// A server that is to end with its page does so when the tab is closed, or shows something else, and
// not when it is loaded again.
func TestClosedPageEndsServer(t *testing.T) {
	if os.Getenv("ROUNDLAY_PAGE") != "" {
		t.Skip("the page as a folder has no server to end")
	}
	parent := started.get(t)
	for what, leave := range map[string]func(p *tab, closed func()){
		"closed":         func(_ *tab, closed func()) { closed() },
		"something else": func(p *tab, _ func()) { p.do(chromedp.Navigate("about:blank")) },
	} {
		const linger = time.Second
		_, demo := job.Demo()
		server, err := serve.Open(serve.Config{
			Listen: "127.0.0.1:0", Page: page.Files, Engine: engine, Demo: demo, Folder: t.TempDir(), Disk: disk.Real{},
			UntilLeft: true, Bounds: serve.Bounds{Linger: linger},
		})
		if err != nil {
			t.Fatal(err)
		}
		stop, end := context.WithCancel(context.Background())
		ended := make(chan error, 1)
		go func() { ended <- server.Run(stop) }()
		ctx, closed := chromedp.NewContext(parent)
		p := &tab{t: t, ctx: ctx, address: server.Address()}
		p.load()
		p.load()
		select {
		case <-ended:
			t.Errorf("%s: it ends when the page is loaded again", what)
		case <-time.After(2 * linger):
		}
		leave(p, closed)
		select {
		case err := <-ended:
			if err != nil {
				t.Errorf("%s: it ends with %v", what, err)
			}
		case <-time.After(patience):
			t.Errorf("%s: it goes on", what)
		}
		closed()
		end()
	}
}

// Nothing moves by itself for a person who asks for less motion.
func TestReducedMotion(t *testing.T) {
	p := open(t, "", 1440, 1000)
	p.media("prefers-reduced-motion", "reduce")
	p.click("#tab-check")
	const moving = `[...document.querySelectorAll("*")].filter((e) => {
		const style = getComputedStyle(e);
		return parseFloat(style.transitionDuration) > 0 || style.animationName !== "none" || style.scrollBehavior === "smooth";
	}).length + document.getAnimations().length`
	if n := eval[int](p, moving); n > 0 {
		t.Errorf("%d things move", n)
	}
}
