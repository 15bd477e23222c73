package browser

import (
	"bytes"
	"compress/gzip"
	_ "embed"
	"io"
	"testing"

	"github.com/chromedp/chromedp"
)

// packed is axe-core as its registry has it, its licence beside it.
//
//go:embed testdata/axe/axe.min.js.gz
var packed []byte

// loadAxe gives the page axe-core.
func (p *tab) loadAxe() {
	p.t.Helper()
	unpacked, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		p.t.Fatal(err)
	}
	script, err := io.ReadAll(unpacked)
	if err != nil {
		p.t.Fatal(err)
	}
	eval[chromedp.Void](p, string(script))
}

// looks are the windows and schemes in which every view is looked at.
var looks = []struct {
	name          string
	width, height int
	scheme        string
	rules         string // what a scheme can change is its colours alone
}{
	{"narrow, light", 360, 780, "light", everyRule},
	{"narrow, dark", 360, 780, "dark", `["color-contrast"]`},
	{"wide, dark", 1440, 1000, "dark", everyRule},
	{"wide, light", 1440, 1000, "light", `["color-contrast"]`},
}

const everyRule = `["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]`

// axe-core finds nothing wrong with any view.
func TestAxe(t *testing.T) {
	for _, w := range walks() {
		t.Run(w.name, func(t *testing.T) {
			p := open(t, w.job, 1440, 1000)
			p.loadAxe()
			for _, v := range w.views {
				v.show(p)
				for _, l := range looks {
					p.size(l.width, l.height)
					p.media("prefers-color-scheme", l.scheme)
					for _, found := range p.axe(l.rules) {
						t.Errorf("%s, %s: %s", v.name, l.name, found)
					}
				}
				p.size(1440, 1000)
			}
		})
	}
}

// axe returns what axe-core finds wrong with what is seen now.
func (p *tab) axe(rules string) []string {
	p.t.Helper()
	return eval[[]string](p, `(async () => {
		await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
		const { violations } = await axe.run(document, {
			runOnly: `+rules+`,
			resultTypes: ["violations"], preload: false,
		});
		return violations.flatMap(({ id, help, nodes }) => nodes.map((n) =>
			id + ": " + help + ": " + n.html.slice(0, 160) + " (" + n.any.concat(n.all, n.none).map((c) => c.message).join("; ") + ")"));
	})()`)
}

// axe-core finds what it is for: without this a run that looks at nothing would pass.
func TestAxeFinds(t *testing.T) {
	p := open(t, "", 820, 900)
	p.loadAxe()
	eval[chromedp.Void](p, `document.querySelector("#head").append(Object.assign(document.createElement("button"), { type: "button" }))`)
	if found := p.axe(everyRule); len(found) == 0 {
		t.Error("a button without a name is not found")
	}
}
