package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// The base is a second face: it is drawn round, a motif is added to it and dragged there, and a
// finding chosen in the list turns the glass to its face.
func TestBaseFace(t *testing.T) {
	p := open(t, gallery(t, "star-footed-tumbler"), 1440, 1000)
	drawn := func() string {
		return eval[string](p, `[...document.querySelectorAll("#wrap [data-drawn]")].map((n) => n.dataset.drawn).sort().join(" ")`)
	}
	if got := drawn(); got != "1" {
		t.Fatalf("the side has motifs %s", got)
	}
	p.press("#wrap", "Base")
	p.settled()
	p.until(`document.querySelector("#wrap-title").textContent === "The base"`)
	if got := drawn(); got != "2 3 4" {
		t.Errorf("the base has motifs %s", got)
	}
	p.until(`document.querySelector("#glass .vessel.from-below.rests img")?.naturalWidth > 0`)
	p.click("#tab-design")
	p.shots("base")

	p.click(`[data-kind="fan"]`)
	p.until(`document.querySelector('#wrap [data-motif="5"]')`)
	if text := p.text(); !strings.Contains(text[strings.LastIndex(text, "[[motif]]"):], `face = "base"`) {
		t.Errorf("added on the base, the job ends with\n%s", text[strings.LastIndex(text, "[[motif]]"):])
	}
	before := line(after(p.text(), 5), "at")
	p.drag(p.middle(`#wrap .handle[data-handle="middle"]`), 12, -25, 6)
	if got := line(after(p.text(), 5), "at"); got == before || got == "" {
		t.Errorf("dragged, it is at %q as before", got)
	}
	was := line(after(p.text(), 5), "at")
	eval[chromedp.Void](p, `document.querySelector('#wrap [data-motif="5"]').focus()`)
	p.keys(kb.ArrowUp, kb.ArrowUp)
	if got := line(after(p.text(), 5), "at"); got == was {
		t.Errorf("moved by keys, it is at %q as before", got)
	}

	p.click("#tab-check")
	p.quiet()
	p.press("#wrap", "Side")
	p.settled()
	if got := drawn(); got != "1" {
		t.Errorf("back on the side there are motifs %s", got)
	}
	p.click(`#findings li[data-letter] .finding-head`)
	p.until(`document.querySelector("#wrap-title").textContent === "The base"`)
	p.settled()
	if n := eval[int](p, `document.querySelectorAll("#wrap .ring.chosen").length`); n == 0 {
		t.Error("the chosen finding has no ring on the base")
	}
	p.shots("base-found")
	if numbers := eval[string](p, `document.querySelector("#figures").innerText`); !strings.Contains(numbers, "base edge") {
		t.Errorf("the numbers have no divider for the base:\n%s", numbers)
	}
}

// after returns the text of a job from a motif on, by its number.
func after(text string, motif int) string {
	all := strings.Split(text, "[[motif]]")
	if motif >= len(all) {
		return ""
	}
	return all[motif]
}

// A job without a base gets one from the page, and loses it by undoing that.
func TestBaseGiven(t *testing.T) {
	p := open(t, "", 1440, 1000)
	p.press("#wrap", "Add a base")
	p.until(`document.querySelector("#wrap-title").textContent === "The base"`)
	if text := p.text(); !strings.Contains(text, "[base]") || !strings.Contains(text, `face = "base"`) {
		t.Errorf("the job is\n%s", p.text())
	}
	p.control("z")
	p.until(`document.querySelector("#wrap-title").textContent === "The wrap"`)
}
