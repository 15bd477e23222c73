package browser

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// The session of TestSession without a mouse: a blank and a leaf by the guide, a cure by its
// button, a motif moved by arrow keys, undone, saved, and the PDF taken.
func TestKeyboardAlone(t *testing.T) {
	p := open(t, "", 1440, 1000)
	p.tabTo("#own")
	p.keys(kb.Enter)
	p.tabTo("dialog input[type=radio]")
	p.keys(" ", kb.Enter)
	for _, a := range answers {
		if a[0] == "" {
			p.enter()
			continue
		}
		p.tabTo(a[0])
		p.keys(a[1])
		switch a[0] {
		case "#guide-wallFoot":
			p.tabTo("#guide-wallRim")
			p.keys("3/32")
		case "#guide-wheel":
			p.tabTo("#guide-angle")
			p.control("a")
			p.keys("90")
		}
		p.enter()
	}
	p.tabTo("dialog input[type=radio]")
	p.keys(" ", kb.Enter) // the first kind: a leaf
	p.until(`!document.querySelector("dialog")`)
	p.settled()

	p.tabTo("#wrap .motifs .motif")
	p.keys(kb.Enter)
	before := p.text()
	p.keys(kb.ArrowRight, kb.ArrowRight, kb.ArrowUp)
	p.settled()
	moved := p.text()
	if moved == before {
		t.Error("arrow keys move nothing")
	}
	p.control("z")
	if back := p.text(); back != before {
		t.Errorf("undone by Ctrl and Z it is\n%s\nwant\n%s", back, before)
	}
	p.tabTo("#wrap .motifs .motif")
	p.keys("l", "l", "l", "r") // three degrees to the left, anticlockwise, and one back
	p.settled()
	_, given, _ := strings.Cut(p.text(), "\nturn = ")
	var turn float64
	// A key turns the frame, which narrows with the glass: its degree is a little less in the job.
	if fmt.Sscan(given, &turn); turn < 1.5 || turn > 2.5 {
		t.Errorf("turned by L and R by %v degrees", turn)
	}
	p.control("z")

	p.tabTo("#headings [role=tab]")
	for !eval[bool](p, `document.activeElement.id === "tab-design"`) {
		p.keys(kb.ArrowRight)
	}
	p.tabTo("#panel-design details.motif > summary")
	if !eval[bool](p, `document.activeElement.parentNode.open`) {
		p.keys(kb.Enter)
	}
	p.tabTo(`[data-path="motif[1].fronds"] input.figure`)
	p.control("a")
	p.keys("30")
	p.until(`/crowded/.test(document.querySelector("#findings").textContent)`)
	p.backTo("#headings [role=tab]")
	p.keys(kb.ArrowRight)
	p.until(`document.querySelector("#findings .findings .way")`)
	crowded := p.text()
	p.tabTo("#findings .findings .way")
	p.keys(kb.Enter)
	if p.text() == crowded {
		t.Error("the cure changes nothing")
	}

	p.control("s")
	p.until(`document.activeElement?.id === "asked"`)
	p.control("a")
	p.keys("by-keys", kb.Enter)
	p.until(`/by-keys\.toml, saved/.test(document.querySelector("#saved").innerText)`)
	if !strings.Contains(p.read("by-keys.toml"), "Three leaves") {
		t.Error("what is saved is another job")
	}
	p.tabTo("#headings [role=tab]")
	p.keys(kb.End)
	p.quiet()
	p.tabTo(`[data-what="wrap"][data-ending="pdf"]`)
	if name, pdf := p.download(func() { p.keys(kb.Enter) }); !strings.HasPrefix(string(pdf), "%PDF") {
		t.Errorf("%s is no PDF", name)
	}
}

// enter answers a question of the guide by the Enter key.
func (p *tab) enter() {
	p.t.Helper()
	before := eval[string](p, `document.querySelector("#guide-count").innerText`)
	p.keys(kb.Enter)
	p.until(`document.querySelector("#guide-count").innerText !== ` + quoted(before))
}

// backTo presses Shift and Tab until what a selector finds has the focus.
func (p *tab) backTo(selector string) {
	p.t.Helper()
	for range 300 {
		if eval[bool](p, fmt.Sprintf(`document.activeElement?.matches(%s) ?? false`, quoted(selector))) {
			return
		}
		p.do(chromedp.KeyEvent(kb.Tab, chromedp.KeyModifiers(chromedp.ModifierShift)))
	}
	p.t.Fatalf("Shift and Tab never come to %s", selector)
}

// Wherever Tab leads, it is seen: an outline of two pixels or more, or a stroke on a drawing
// that is not there otherwise.
func TestFocusSeen(t *testing.T) {
	p := open(t, crowded(), 1440, 1000)
	p.quiet()
	stops := 0
	for _, tab := range []string{"glass", "wheels", "design", "check", "paper"} {
		p.click("#tab-" + tab)
		p.quiet()
		eval[chromedp.Void](p, `(() => {
			window.been = new Set();
			window.markOf = (node) => { const s = getComputedStyle(node); return [s.stroke, s.strokeWidth, s.strokeDasharray, s.filter].join(" "); };
			document.querySelector("#tab-`+tab+`").focus();
		})()`)
		for range 300 {
			p.keys(kb.Tab)
			at := eval[struct {
				Done, Seen bool
				What       string
			}](p, `(() => {
				const node = document.activeElement;
				if (!node || node === document.body || been.has(node)) return { done: true };
				been.add(node);
				// That of a choice among words is round its word.
				const style = getComputedStyle(node.matches("[type=radio]") ? node.closest("label") : node);
				let seen = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 && !/, 0\)$/.test(style.outlineColor);
				if (node instanceof SVGElement) {
					const parts = [node, ...node.querySelectorAll("*")], now = parts.map(markOf).join("|");
					node.blur();
					seen ||= parts.map(markOf).join("|") !== now;
					node.focus();
				}
				return { done: false, seen, what: node.outerHTML.slice(0, 160) };
			})()`)
			if at.Done {
				break
			}
			stops++
			if !at.Seen {
				t.Errorf("%s: the focus is not seen on %s", tab, at.What)
			}
		}
	}
	t.Logf("%d stops", stops)
	if stops < 100 {
		t.Errorf("Tab comes to %d places only", stops)
	}
}
