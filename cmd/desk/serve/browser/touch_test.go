package browser

import (
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// fingers has the tab felt by fingers.
func (p *tab) fingers() {
	p.t.Helper()
	if _, err := chromedp.Call(p.ctx, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{Enabled: true}); err != nil {
		p.t.Fatal(err)
	}
}

// swipe lays a finger on a place and carries it by pixels, in steps; none of them is a tap.
func (p *tab) swipe(from place, dx, dy float64, steps int) {
	p.t.Helper()
	p.touch(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: from.X, Y: from.Y})
	for i := 1; i <= steps; i++ {
		share := float64(i) / float64(steps)
		p.touch(input.DispatchTouchEventTypeTouchMove, &input.TouchPoint{X: from.X + share*dx, Y: from.Y + share*dy})
	}
	p.touch(input.DispatchTouchEventTypeTouchEnd)
}

func (p *tab) touch(what input.DispatchTouchEventType, points ...*input.TouchPoint) {
	p.t.Helper()
	if points == nil {
		points = []*input.TouchPoint{}
	}
	if _, err := chromedp.Call(p.ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: what, TouchPoints: points}); err != nil {
		p.t.Fatal(err)
	}
}

// wrapAt is where the top of the wrap is on the page.
const wrapAt = `document.querySelector("#wrap svg").getBoundingClientRect().top + scrollY`

// rests says that the glass is seen as the engine draws it.
const rests = `document.querySelector(".vessel").classList.contains("rests")`

// A finger drags a motif on the wrap only once it has tapped it; before, and on the glass, it
// scrolls. When it has let go the wrap lies where it lay, and the engine's picture comes back.
func TestFingers(t *testing.T) {
	p := open(t, "", 390, 800)
	p.fingers()
	p.until(rests)
	lay, first := eval[float64](p, wrapAt), p.text()

	// Chosen by something else than a tap.
	eval[bool](p, `(async () => { `+store+`.choose(1); return true })()`)
	const leaf = `#wrap [data-handle="middle"]`
	for _, dy := range []float64{-60, -120} {
		at := p.middle(leaf)
		p.swipe(place{at.X, at.Y + 30}, 0, dy, 8) // beside the handle in the middle
		if text := p.text(); text != first {
			t.Fatalf("a swipe over the wrap changes the job to\n%s", text)
		}
	}

	p.swipe(p.middle(".vessel"), 0, -60, 8)
	p.until(rests)
	if text := p.text(); text != first {
		t.Errorf("a swipe over the glass changes the job to\n%s", text)
	}

	at := p.middle(leaf)
	at.Y += 30
	p.swipe(at, 0, 0, 0)
	p.swipe(at, 20, -16, 8)
	if text := p.text(); text == first {
		t.Error("a motif that was tapped can't be dragged")
	}
	p.quiet()
	p.until(rests)
	if now := eval[float64](p, wrapAt); now != lay {
		t.Errorf("after the drag the wrap lies at %g; before at %g", now, lay)
	}
}
