package browser

import (
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Strokes drawn with the mouse become one motif, each an undo step; a finger draws too, and the
// page stays where it is.
func TestDrawCuts(t *testing.T) {
	p := open(t, "", 1440, 1000)
	first := p.text()
	at := p.middle("#wrap svg.sheet")
	p.click("#draw-cuts")
	p.drag(place{at.X - 20, at.Y + 40}, 25, -70, 20)
	p.until(`!document.querySelector("#wrap .pen-stroke")`)
	one := p.text()
	if strings.Count(one, "[[motif]]") != strings.Count(first, "[[motif]]")+1 || !strings.Contains(one, `kind = "drawing"`) || strings.Count(one, `"M `) != 1 {
		t.Fatalf("after a stroke the job is\n%s", one)
	}
	p.drag(place{at.X + 10, at.Y + 30}, 20, -60, 20)
	p.until(`!document.querySelector("#wrap .pen-stroke")`)
	two := p.text()
	if strings.Count(two, "[[motif]]") != strings.Count(one, "[[motif]]") || strings.Count(two, `"M `) != 2 {
		t.Fatalf("after two strokes the job is\n%s", two)
	}
	// Where it was drawn, it is cut: the box of both strokes on the screen.
	box := eval2(p, `(() => {
		const of = document.querySelectorAll("#wrap .motifs .motif"), box = of[of.length - 1].getBoundingClientRect();
		return [box.left, box.right, box.top, box.bottom];
	})()`)
	for i, want := range []float64{at.X - 20, at.X + 30, at.Y - 30, at.Y + 40} {
		if off := box[i] - want; off > 2.5 || off < -2.5 {
			t.Errorf("side %d of its box lies %.1f pixels off", i, off)
		}
	}
	p.click("#undo")
	if back := p.text(); back != one {
		t.Errorf("undone it is\n%s\nwant\n%s", back, one)
	}
	p.click("#redo")
	p.settled()
	p.click("#draw-cuts")
	p.until(chosen + ` === 4`)
	// Drawing is over: the mouse drags again.
	if eval[bool](p, `document.querySelector("#wrap svg.sheet").classList.contains("pen")`) {
		t.Error("it goes on drawing")
	}
	// Again with the drawing chosen: strokes go into it.
	p.click("#draw-cuts")
	p.drag(place{at.X - 40, at.Y + 20}, 10, -30, 10)
	p.until(`!document.querySelector("#wrap .pen-stroke")`)
	if three := p.text(); strings.Count(three, `"M `) != 3 {
		t.Errorf("a third stroke makes the job\n%s", three)
	}
	p.keys(kb.Escape)
	p.until(`document.querySelector("#draw-cuts").innerText === "Draw cuts"`)
}

// eval2 is four numbers of the page.
func eval2(p *tab, expression string) []float64 { return eval[[]float64](p, expression) }

func TestDrawByFinger(t *testing.T) {
	p := open(t, "", 390, 800)
	p.fingers()
	p.until(rests)
	p.click("#draw-cuts")
	first := p.text()
	at := p.middle("#wrap svg.sheet")
	scrolled := eval[float64](p, "scrollY")
	p.swipe(place{at.X, at.Y + 40}, 8, -70, 12)
	p.until(`!document.querySelector("#wrap .pen-stroke")`)
	if text := p.text(); text == first || !strings.Contains(text, `kind = "drawing"`) {
		t.Errorf("the job is\n%s", text)
	}
	if now := eval[float64](p, "scrollY"); now != scrolled {
		t.Errorf("the page went from %g to %g", scrolled, now)
	}
	p.click("#draw-cuts")
	p.until(chosen + ` === 4`)
}
