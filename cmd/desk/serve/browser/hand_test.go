package browser

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// shots takes pictures at three widths where someone wants to look at them.
func (p *tab) shots(name string) {
	p.t.Helper()
	folder := os.Getenv("ROUNDLAY_SCREENSHOTS")
	if folder == "" {
		return
	}
	for _, width := range []int{1440, 820, 360} {
		p.size(width, 1000)
		eval[chromedp.Void](p, `(async () => { await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))); document.activeElement?.scrollIntoView({ block: "center", behavior: "instant" }); })()`)
		data := run(p, chromedp.CaptureScreenshot())
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%s-%d.png", name, width)), data, 0o666); err != nil {
			p.t.Fatal(err)
		}
	}
	p.size(1440, 1000)
}

// drawn returns the footprint of the first motif on the wrap.
func (p *tab) drawn() string {
	p.t.Helper()
	p.settled()
	return eval[string](p, `[...document.querySelectorAll("#wrap .drawn-footprints path")].map((n) => n.getAttribute("d")).join("")`)
}

// The depth along a cut is a curve to drag: the job has the shares, and the wrap follows.
func TestSwellDragged(t *testing.T) {
	p := open(t, "", 1440, 1000)
	p.choose1(1)
	const swell = `details.motif[open] > .card > details.more [data-key="swell"] `
	eval[chromedp.Void](p, `(() => { for (const more of document.querySelectorAll("details.motif[open] details.more")) more.open = true; })()`)
	if strings.Contains(p.text(), "swell") {
		t.Fatal("the demo has a swell already")
	}
	before := p.drawn()
	at := p.middle(swell + ".grasp:first-child")
	p.drag(at, 0, -30, 6)
	text := p.text()
	if !strings.Contains(text, "swell = [0.") || !strings.Contains(text, ", 1, 1]") {
		t.Errorf("dragged at its root, the job is\n%s", text)
	}
	if p.drawn() == before {
		t.Error("the wrap is as before")
	}
	p.click(swell + ".grasp:nth-child(2)")
	p.keys(kb.ArrowUp, kb.ArrowUp, kb.ArrowUp)
	if text := p.text(); !strings.Contains(text, ", 0.97, 1]") {
		t.Errorf("three keys up, the job is\n%s", text)
	}
	p.press(swell, "One point more")
	if text := p.text(); strings.Count(line(text, "swell"), ",") != 3 {
		t.Errorf("with one point more: %s", line(text, "swell"))
	}
	p.shots("swell")
	p.press(swell, "Even")
	if text := p.text(); strings.Contains(text, "swell") || p.drawn() != before {
		t.Errorf("even again, the job has %q", line(text, "swell"))
	}
	p.control("z")
	if !strings.Contains(p.text(), "swell") {
		t.Error("what was made even can't be undone")
	}
}

// line returns the line of a text that a key is in.
func line(text, key string) string {
	for _, one := range strings.Split(text, "\n") {
		if strings.HasPrefix(strings.TrimSpace(one), key) {
			return one
		}
	}
	return ""
}

// The wheel is rolled by keys on its handles, and by the numbers beside them, in a part too.
func TestRockByKeys(t *testing.T) {
	p := open(t, "", 1440, 1000)
	p.choose1(1)
	p.click(`details.motif[open] [data-part="frond"] > summary`)
	const rock = `[data-part="frond"] [data-key="rock"] `
	before := p.drawn()
	p.click(rock + `.grasp[aria-label="Roll to the right"]`)
	p.keys(kb.ArrowRight, kb.ArrowRight, kb.ArrowRight, kb.ArrowLeft)
	if got := line(p.text(), "rock"); got != "rock = [0, 2]" {
		t.Errorf("rolled by keys: %q", got)
	}
	p.until(`document.querySelector(` + quoted(rock+`.grasp[aria-label="Roll to the right"]`) + `).getAttribute("aria-valuetext") === "2° to the right"`)
	p.fill(rock+"input", "12")
	if got := line(p.text(), "rock"); got != "rock = [12, 2]" {
		t.Errorf("typed: %q", got)
	}
	if p.drawn() == before {
		t.Error("the wrap is as before")
	}
	at := p.middle(rock + `.grasp[aria-label="Roll to the left"]`)
	p.drag(at, 0, 25, 5)
	if got := line(p.text(), "rock"); got == "rock = [12, 2]" || !strings.HasSuffix(got, ", 2]") {
		t.Errorf("dragged: %q", got)
	}
	p.shots("rock")
	p.press(rock, "Upright")
	if text := p.text(); strings.Contains(text, "rock") || p.drawn() != before {
		t.Errorf("upright again: %q", line(text, "rock"))
	}
}
