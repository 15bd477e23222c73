package browser

import (
	"testing"

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
