package browser

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"

	"roundlay/cmd/desk/serve"
	"roundlay/pattern/job"
)

// static serves the page as a folder of files, which .ci/page has built, as any file server
// does. ROUNDLAY_PAGE names the folder; all tests here then look at that page.
func (p *tab) static(built, text string, asked serve.Engine) {
	p.t.Helper()
	if asked != serve.Engine(engine) {
		p.t.Skip("the page as a folder brings its own engine")
	}
	server := httptest.NewServer(http.FileServer(http.Dir(built)))
	p.t.Cleanup(server.Close)
	p.address, p.brought, p.noDisk = server.URL+"/", text, true
}

// bring opens the tab's job in a page that has no disk.
func (p *tab) bring() {
	p.t.Helper()
	if p.brought == "" {
		return
	}
	eval[chromedp.Void](p, `import("/disk.js").then(({ file }) => file.begin(`+quoted(p.brought)+`, "`+jobFile+`"))`)
	p.settled()
	// As where the server has the job: no words about a file, no hints of a first visit.
	eval[chromedp.Void](p, `(() => { for (const part of ["#notice", "#over"]) document.querySelector(part).replaceChildren() })()`)
}

const hasNoDisk = "the page as a folder has no disk"

// needsDisk skips a test of files on a disk where the page has none.
func (p *tab) needsDisk() {
	if p.noDisk {
		p.t.Helper()
		p.t.Skip(hasNoDisk)
	}
}

// onlyStatic opens the page as a folder, or skips the test.
func onlyStatic(t *testing.T) *tab {
	t.Helper()
	if os.Getenv("ROUNDLAY_PAGE") == "" {
		t.Skip("ROUNDLAY_PAGE names no folder: .ci/page FOLDER builds one")
	}
	return open(t, "", 1440, 1000)
}

// A job is edited, kept as a file, and opened again by dropping that file on the page.
func TestKeepAndDrop(t *testing.T) {
	p := onlyStatic(t)
	kept := t.TempDir()
	_, err := chromedp.CallBrowser(p.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: kept,
	})
	if err != nil {
		t.Fatal(err)
	}
	p.click("#tab-design")
	p.click(`[aria-label="Repeats: one fewer"]`)
	mine := p.text()
	if _, demo := job.Demo(); mine == string(demo) {
		t.Fatal("nothing is edited")
	}
	p.control("s")
	p.until(`document.querySelector("dialog #asked")`)
	p.press("dialog", "Save")
	p.until(`/, saved/.test(document.querySelector("#saved").innerText)`)
	var file string
	p.waitFor("the file is kept", func() bool {
		found, _ := filepath.Glob(filepath.Join(kept, "*.toml"))
		if len(found) == 1 {
			file = found[0]
		}
		return file != ""
	})
	data, err := os.ReadFile(file)
	if err != nil || string(data) != mine {
		t.Errorf("%v: kept is\n%.300s", err, data)
	}

	p.load() // as new: what was there is gone
	if p.text() == mine {
		t.Fatal("a page that is loaded again has the edit")
	}
	eval[chromedp.Void](p, `(() => {
		const all = new DataTransfer();
		all.items.add(new File([`+quoted(mine)+`], "`+filepath.Base(file)+`"));
		document.body.dispatchEvent(new DragEvent("drop", { dataTransfer: all, bubbles: true, cancelable: true }));
	})()`)
	p.waitFor("the dropped job is shown", func() bool { return p.text() == mine })
}

// What the page as a folder holds is what the server serves, and what it may do is as little.
func TestFolderIsThePage(t *testing.T) {
	p := onlyStatic(t)
	policy := eval[string](p, `document.querySelector("meta[http-equiv]").content`)
	for _, want := range []string{"default-src 'none'", "script-src 'self' 'wasm-unsafe-eval';", "connect-src 'self'"} {
		if !strings.Contains(policy, want) {
			t.Errorf("the policy %q lacks %q", policy, want)
		}
	}
	if about := eval[string](p, `document.documentElement.dataset.engine`); about != "engine.wasm" {
		t.Errorf("the engine is %q", about)
	}
}

// waitFor waits until something holds outside the page.
func (p *tab) waitFor(what string, holds func() bool) {
	p.t.Helper()
	for deadline := time.Now().Add(patience); !holds(); time.Sleep(30 * time.Millisecond) {
		if time.Now().After(deadline) {
			p.t.Fatalf("it does not come that %s", what)
		}
	}
}
