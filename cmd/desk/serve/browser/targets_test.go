package browser

import (
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// On a narrow screen under a finger everything to press is at least 44 pixels wide and high.
// But for the motifs on the drawing, which are as large as they are: each can be come to by
// its card too. And no view is wider than the screen.
func TestTargets(t *testing.T) {
	for _, w := range walks() {
		p := open(t, w.job, 360, 780)
		p.do(chromedp.EmulateViewport(360, 780, chromedp.EmulateMobile, chromedp.EmulateTouch))
		if _, err := chromedp.Call(p.ctx, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{Enabled: true}); err != nil {
			t.Fatal(err)
		}
		if !eval[bool](p, `matchMedia("(pointer: coarse)").matches`) {
			t.Fatal("the pointer is no finger")
		}
		measured := 0
		for _, v := range w.views {
			v.show(p)
			if width := eval[float64](p, "document.documentElement.scrollWidth"); width > 360 {
				t.Errorf("%s-%s is %.0f pixels wide in a window of 360", w.name, v.name, width)
			}
			found := eval[struct {
				N     int
				Small []string
			}](p, `(() => {
				const small = [];
				let n = 0;
				const within = document.querySelector("dialog[open]") ?? document;
				for (const node of within.querySelectorAll("button, select, summary, textarea, input, [role=button], [role=tab], [role=slider], .handle")) {
					if (!node.checkVisibility() || node.closest(".unseen")) continue;
					const bare = node.matches("[type=checkbox], [type=radio]"), target = bare ? node.closest("label") ?? node.labels?.[0] ?? node : node;
					const box = (target.querySelector?.(".reach") ?? target).getBoundingClientRect();
					if (node.matches(".motif[role=button]") || !box.width) continue;
					n++;
					if (box.width < 43.9 || box.height < 43.9) small.push(Math.round(box.width) + " by " + Math.round(box.height) + ": " + target.outerHTML.slice(0, 120));
				}
				return { n, small };
			})()`)
			measured += found.N
			for _, what := range found.Small {
				t.Errorf("%s-%s: %s", w.name, v.name, what)
			}
		}
		t.Logf("%s: %d targets", w.name, measured)
	}
}
