// Package browser drives the page in headless Chromium, as a person would: with a mouse,
// with keys, by what is written on buttons. What the page computes is tested elsewhere.
// Here it is shown that the page, its server and the engine agree, that all of it can be
// reached and read, how fast it answers, and that it asks nothing of any other machine.
//
// A test opens a tab of its own on a server of its own; all tabs are in one browser.
package browser

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"roundlay/cmd/desk"
	"roundlay/cmd/desk/page"
	"roundlay/cmd/desk/serve"
	"roundlay/cmd/disk"
	"roundlay/pattern/job"
)

// engine answers all tests: it describes itself once.
var engine = desk.New()

// patience is how long a test waits for what should come at once: the machine may be busy.
const patience = 60 * time.Second

// tab is the page in a tab, with the server that is asked.
type tab struct {
	t       testing.TB
	ctx     context.Context
	address string
	folder  string // of the job file and those beside it
	brought string // the job to open in a page that has no disk; "" where it has one
	noDisk  bool
	watched *watched
}

// jobFile is the name of the job's file in a tab's folder.
const jobFile = "job.toml"

// open shows a job in a window of a size, or the demo where the job is empty. When the test
// ends, whatever the page did wrong meanwhile fails it.
func open(t testing.TB, text string, width, height int) *tab {
	t.Helper()
	return openFor(t, text, width, height, engine)
}

// openFor is open with an engine of one's own.
func openFor(t testing.TB, text string, width, height int, asked serve.Engine) *tab {
	t.Helper()
	return openIn(t, t.TempDir(), text, width, height, asked)
}

// openBeside is open with files beside the job, by their names, and an engine that reads them. The
// page as a folder has files only once a person has brought them.
func openBeside(t testing.TB, text string, width, height int, files map[string]string) *tab {
	t.Helper()
	if os.Getenv("ROUNDLAY_PAGE") != "" {
		if len(files) > 0 {
			t.Skip(hasNoDisk)
		}
		return open(t, text, width, height)
	}
	folder := t.TempDir()
	for name, content := range files {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(content), 0o640); err != nil {
			t.Fatal(err)
		}
	}
	d := desk.New()
	d.Beside = disk.Beside(folder, job.MaxBeside)
	return openIn(t, folder, text, width, height, d)
}

func openIn(t testing.TB, folder, text string, width, height int, asked serve.Engine) *tab {
	t.Helper()
	parent := started.get(t)
	p := &tab{t: t, folder: folder}
	if built := os.Getenv("ROUNDLAY_PAGE"); built != "" {
		p.static(built, text, asked)
	} else {
		p.serve(text, asked)
	}
	ctx, closed := chromedp.NewContext(parent)
	t.Cleanup(closed)
	p.ctx = ctx
	p.size(width, height)
	p.watch()
	_, err := chromedp.Call(ctx, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
	if err != nil {
		t.Fatal(err)
	}
	p.load()
	return p
}

// serve starts a server of the job.
func (p *tab) serve(text string, asked serve.Engine) {
	p.t.Helper()
	_, demo := job.Demo()
	c := serve.Config{Listen: "127.0.0.1:0", Page: page.Files, Engine: asked, Demo: demo, Folder: p.folder, Disk: disk.Real{}}
	if text != "" {
		c.Job = filepath.Join(p.folder, jobFile)
		p.write(jobFile, text)
	}
	server, err := serve.Open(c)
	if err != nil {
		p.t.Fatal(err)
	}
	p.address = server.Address()
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- server.Run(ctx) }()
	p.t.Cleanup(func() {
		cancel()
		if err := <-ended; err != nil {
			p.t.Errorf("the server ends with %v", err)
		}
	})
}

// load goes to the page and waits until it stands.
func (p *tab) load() {
	p.t.Helper()
	p.do(chromedp.Navigate(p.address))
	p.until(`document.documentElement.dataset.job === "laid"`)
	p.bring()
}

// size makes the window as wide and high as so many pixels.
func (p *tab) size(width, height int) {
	p.t.Helper()
	p.do(chromedp.EmulateViewport(int64(width), int64(height)))
}

// media sets what a style can ask for, in pairs of a feature and its value.
func (p *tab) media(features ...string) {
	p.t.Helper()
	var params emulation.SetEmulatedMediaParams
	for i := 0; i < len(features); i += 2 {
		params.Features = append(params.Features, &emulation.MediaFeature{Name: features[i], Value: features[i+1]})
	}
	if _, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, params); err != nil {
		p.t.Fatal(err)
	}
}

// do takes steps one after the other.
func (p *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	run(p, chromedp.Steps(steps...))
}

// run takes one step and returns what it results in.
func run[T any](p *tab, step chromedp.Action[T]) T {
	p.t.Helper()
	// The tab is opened by a context that lasts.
	if err := chromedp.Do(p.ctx); err != nil {
		p.t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	result, err := chromedp.Run(ctx, step)
	if err != nil {
		p.t.Fatal(err)
	}
	return result
}

// eval returns what an expression is in the page; a promise is waited for.
func eval[T any](p *tab, expression string) T {
	p.t.Helper()
	return run(p, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
}

// until waits until an expression holds in the page.
func (p *tab) until(expression string) {
	p.t.Helper()
	for deadline := time.Now().Add(patience); ; time.Sleep(15 * time.Millisecond) {
		if eval[bool](p, "Boolean("+expression+")") {
			return
		}
		if time.Now().After(deadline) {
			p.t.Fatalf("it does not come that %s; the page says:\n%s", expression, eval[string](p, `document.querySelector("#head").innerText + "\n" + (document.querySelector("dialog, #compare").innerText + document.querySelector("[role=tabpanel]:not([hidden])")?.innerText ?? "")`))
		}
	}
}

// settled waits until the engine has answered for the text as it is.
func (p *tab) settled() {
	p.t.Helper()
	p.until(`["laid", "mistaken"].includes(document.documentElement.dataset.job)`)
}

// quiet waits until slow answers have come too.
func (p *tab) quiet() {
	p.t.Helper()
	p.settled()
	p.until(`!/Looking|Laying out|Comparing the set|Being drawn/.test(document.body.innerText)`)
}

// store is the page's state; only tests look at it from outside.
const store = `(await import("/disk.js")).file.store`

// text returns the job's text as the page has it.
func (p *tab) text() string {
	p.t.Helper()
	p.settled()
	return eval[string](p, `(async () => `+store+`.state.text)()`)
}

func (p *tab) write(name, text string) {
	p.t.Helper()
	p.needsDisk()
	if err := os.WriteFile(filepath.Join(p.folder, name), []byte(text), 0o640); err != nil {
		p.t.Fatal(err)
	}
}

func (p *tab) read(name string) string {
	p.t.Helper()
	p.needsDisk()
	data, err := os.ReadFile(filepath.Join(p.folder, name))
	if err != nil {
		p.t.Fatal(err)
	}
	return string(data)
}

// gallery returns the text of a job of the gallery.
func gallery(t testing.TB, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "..", "..", "testdata", "gallery", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// quoted is a text as JavaScript writes it.
func quoted(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`).Replace(text) + `"`
}
