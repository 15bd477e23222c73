package browser

import (
	"fmt"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// place is a point of the window, in pixels.
type place struct{ X, Y float64 }

// middle returns where the middle of what a selector finds is seen. It is brought into the
// window first, and must lie on top there, or a person could not press it.
func (p *tab) middle(selector string) place {
	p.t.Helper()
	return p.placeOf(fmt.Sprintf(`document.querySelector(%s)`, quoted(selector)), selector)
}

// named returns where the middle of the button is that has some words on it, in a part of
// the page.
func (p *tab) named(part, words string) place {
	p.t.Helper()
	return p.placeOf(fmt.Sprintf(
		`[...document.querySelectorAll(%s + " :is(button, summary, label)")].find((b) => b.innerText.trim() === %s && b.checkVisibility())`,
		quoted(part), quoted(words)), part+": "+words)
}

func (p *tab) placeOf(node, what string) place {
	p.t.Helper()
	p.until(`(() => { const node = ` + node + `; return node && node.checkVisibility() && !node.disabled })()`)
	at := eval[struct {
		place
		Covered string
	}](p, `(async () => {
		const node = `+node+`;
		const seen = (box) => box.top >= 60 && box.bottom <= innerHeight - 60;
		if (!seen(node.getBoundingClientRect())) node.scrollIntoView({ block: "center", behavior: "instant" });
		await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
		const box = node.getBoundingClientRect(), x = box.x + box.width / 2, y = box.y + box.height / 2;
		const top = document.elementFromPoint(x, y);
		const own = top && (node.contains(top) || top.contains(node) || node.labels && [...node.labels].some((l) => l.contains(top)));
		return { x, y, covered: own ? "" : top ? top.outerHTML.slice(0, 200) : "nothing there" };
	})()`)
	if at.Covered != "" {
		p.t.Fatalf("%s is covered by %s", what, at.Covered)
	}
	return at.place
}

// click presses what a selector finds with the mouse.
func (p *tab) click(selector string) {
	p.t.Helper()
	at := p.middle(selector)
	p.do(chromedp.MouseClickXY(at.X, at.Y))
}

// press presses the button with some words on it.
func (p *tab) press(part, words string) {
	p.t.Helper()
	at := p.named(part, words)
	p.do(chromedp.MouseClickXY(at.X, at.Y))
}

// fill types a text into a box in place of what is in it.
func (p *tab) fill(selector, text string) {
	p.t.Helper()
	p.click(selector)
	p.do(chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)), chromedp.KeyEvent(kb.Backspace))
	p.do(chromedp.KeyEvent(text))
}

// keys presses keys one after the other.
func (p *tab) keys(keys ...string) {
	p.t.Helper()
	for _, key := range keys {
		p.do(chromedp.KeyEvent(key))
	}
}

// control presses a key with the control key.
func (p *tab) control(key string) {
	p.t.Helper()
	p.do(chromedp.KeyEvent(key, chromedp.KeyModifiers(chromedp.ModifierCtrl)))
}

// drag takes hold of a place with the mouse and carries it by pixels, in steps.
func (p *tab) drag(from place, dx, dy float64, steps int) {
	p.t.Helper()
	p.do(chromedp.MouseEvent(chromedp.MouseMoved, from.X, from.Y), chromedp.MouseEvent(chromedp.MousePressed, from.X, from.Y, chromedp.ButtonLeft, oneClick))
	for i := 1; i <= steps; i++ {
		share := float64(i) / float64(steps)
		p.do(chromedp.MouseEvent(chromedp.MouseMoved, from.X+share*dx, from.Y+share*dy, chromedp.ButtonLeft))
	}
	p.do(chromedp.MouseEvent(chromedp.MouseReleased, from.X+dx, from.Y+dy, chromedp.ButtonLeft, oneClick))
}

// tabTo presses Tab until what a selector finds has the focus, and no more often than there
// can be things to reach.
func (p *tab) tabTo(selector string) {
	p.t.Helper()
	at := fmt.Sprintf(`document.activeElement?.matches(%s) ?? false`, quoted(selector))
	for range 300 {
		if eval[bool](p, at) {
			return
		}
		p.keys(kb.Tab)
	}
	p.t.Fatalf("Tab never comes to %s", selector)
}

// oneClick says that a press is the first of a click.
func oneClick(p *input.DispatchMouseEventParams) { p.ClickCount = 1 }
