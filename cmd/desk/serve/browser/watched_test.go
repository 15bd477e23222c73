package browser

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// watched is what a page did that no page here may do: a request to another address, an
// error or a warning in the console, something that its policy forbids.
type watched struct {
	mu       sync.Mutex
	own      string // the page's address
	faults   []string
	requests int
	pardoned []string // parts of what a test brings about by intent
}

// watch notes what the page does wrong, and fails the test for it when it ends.
func (p *tab) watch() {
	p.t.Helper()
	w := &watched{own: p.address}
	p.watched = w
	if err := chromedp.Listen(p.ctx, w.heed); err != nil {
		p.t.Fatal(err)
	}
	p.t.Cleanup(func() {
		for _, fault := range w.found() {
			p.t.Error(fault)
		}
	})
}

func (w *watched) heed(event any) {
	w.mu.Lock()
	defer w.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		w.requests++
		if !w.isOwn(e.Request.URL) {
			w.fault("a request leaves the page: %s", e.Request.URL)
		}
	case *network.EventWebSocketCreated:
		w.fault("a web socket is opened: %s", e.URL)
	case *runtime.EventExceptionThrown:
		w.fault("an exception: %s", said(e.ExceptionDetails))
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError || e.Type == runtime.ConsoleAPICalledTypeWarning || e.Type == runtime.ConsoleAPICalledTypeAssert {
			var words []string
			for _, arg := range e.Args {
				words = append(words, string(arg.Value)+arg.Description)
			}
			w.fault("the console has: %s", strings.Join(words, " "))
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError || e.Entry.Level == log.EntryLevelWarning {
			w.fault("the log has: %s: %s (%s)", e.Entry.Source, e.Entry.Text, e.Entry.URL)
		}
	}
}

// isOwn reports whether an address is the page's own, or of what the page itself has made.
func (w *watched) isOwn(address string) bool {
	return strings.HasPrefix(address, w.own) || strings.HasPrefix(address, "data:") || strings.HasPrefix(address, "blob:"+w.own)
}

func (w *watched) fault(format string, of ...any) {
	w.faults = append(w.faults, fmt.Sprintf(format, of...))
}

// pardon lets pass what has some words in it: what the test brings about by intent.
func (w *watched) pardon(words string) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.pardoned = append(w.pardoned, words)
}

// all returns the faults, pardoned ones too.
func (w *watched) all() []string {
	w.mu.Lock()
	defer w.mu.Unlock()
	return slices.Clone(w.faults)
}

// found returns the faults that are not pardoned.
func (w *watched) found() []string {
	w.mu.Lock()
	defer w.mu.Unlock()
	var left []string
next:
	for _, fault := range w.faults {
		for _, words := range w.pardoned {
			if strings.Contains(fault, words) {
				continue next
			}
		}
		left = append(left, fault)
	}
	return left
}

func said(e *runtime.ExceptionDetails) string {
	if e.Exception != nil {
		return e.Text + " " + e.Exception.Description
	}
	return e.Text
}

// The watch sees what it is for: each of these is what no page here may do.
func TestWatch(t *testing.T) {
	p := open(t, "", 820, 900)
	p.watched.pardon("") // all of it
	for want, script := range map[string]string{
		"Connecting to 'http://127.0.0.1:9/'": `fetch("http://127.0.0.1:9/").catch(() => {})`,
		"inline style violates the following": `document.body.insertAdjacentHTML("beforeend", "<p style='color: red'>a</p>")`,
		"thrown here":                         `setTimeout(() => { throw new Error("thrown here") })`,
		"rejected here":                       `Promise.reject(new Error("rejected here"))`,
		"said here":                           `console.error("said here")`,
		"404":                                 `fetch("/nothing").catch(() => {})`,
	} {
		eval[chromedp.Void](p, `(() => { `+script+` })()`)
		deadline := time.Now().Add(patience)
		for !strings.Contains(strings.Join(p.watched.all(), "\n"), want) {
			if time.Now().After(deadline) {
				t.Fatalf("%s is not noticed: %q", script, p.watched.all())
			}
			time.Sleep(10 * time.Millisecond)
		}
	}
	// What the policy lets through can't be had in this page, so that is only told.
	p.watched.heed(&network.EventRequestWillBeSent{Request: &network.Request{URL: "http://127.0.0.1:9/"}})
	if all := p.watched.all(); !strings.Contains(all[len(all)-1], "leaves the page: http://127.0.0.1:9/") {
		t.Errorf("a request elsewhere is not noticed: %q", all)
	}
	if left := p.watched.found(); len(left) > 0 {
		t.Errorf("%q is not pardoned", left)
	}
}
