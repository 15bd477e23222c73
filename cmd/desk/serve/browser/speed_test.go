package browser

import (
	"context"
	"fmt"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"roundlay/cmd/desk"
	"roundlay/pattern/job"
)

// clocked is the engine with a clock for what is asked at every key.
type clocked struct {
	mu   sync.Mutex
	took []time.Duration
}

func (c *clocked) Answer(ctx context.Context, name string, body []byte) (*desk.Reply, error) {
	begun := time.Now()
	reply, err := engine.Answer(ctx, name, body)
	if name == "lay" {
		c.mu.Lock()
		c.took = append(c.took, time.Since(begun))
		c.mu.Unlock()
	}
	return reply, err
}

// taken returns what the answers took since the last call, in milliseconds.
func (c *clocked) taken() []float64 {
	c.mu.Lock()
	defer c.mu.Unlock()
	var all []float64
	for _, d := range c.took {
		all = append(all, float64(d)/float64(time.Millisecond))
	}
	c.took = nil
	return all
}

// meter is put into the page. From a key it takes the time until the wrap's drawing changed,
// until the frame with it was painted, and until the frame after that began. While something
// is dragged it counts frames, and those that had a new wrap.
const meter = `window.meter = {
	keys: [], frames: [], drawn: 0, fresh: false, running: false,
	begin(node) {
		addEventListener("input", (event) => { this.at ??= event.timeStamp; }, true);
		new MutationObserver(() => {
			this.fresh = true;
			if (this.at === undefined) return;
			const from = this.at, changed = performance.now() - from;
			this.at = undefined;
			requestAnimationFrame(() => {
				const painted = new MessageChannel();
				let paint = 0;
				painted.port1.onmessage = () => { paint = performance.now() - from; };
				painted.port2.postMessage(0);
				requestAnimationFrame(() => this.keys.push([changed, paint || performance.now() - from, performance.now() - from]));
			});
		}).observe(node, { subtree: true, childList: true, attributes: true, attributeFilter: ["d"] });
	},
	run() {
		Object.assign(this, { frames: [], drawn: 0, fresh: false, running: true });
		let last = 0;
		const frame = (now) => {
			if (last) this.frames.push(now - last);
			if (this.fresh) this.drawn++;
			this.fresh = false;
			last = now;
			if (this.running) requestAnimationFrame(frame);
		};
		requestAnimationFrame(frame);
	},
	stop() { this.running = false; return { Frames: this.frames, Drawn: this.drawn }; },
}; 0`

// BenchmarkPage prints what a person waits for: from a key to the paint of its new wrap, how
// much of that is the engine's, and how often the wrap is drawn while a motif is dragged;
// beside them an edit of the same page that the engine isn't asked about, which is what the
// browser takes for itself.
//
//	go test ./cmd/desk/serve/browser -run xx -bench Page -benchtime 40x
func BenchmarkPage(b *testing.B) {
	_, demo := job.Demo()
	for _, of := range []struct{ name, text string }{
		{"demo", string(demo)}, {"twelve", twelve()}, {"trellis", gallery(b, "trellis-beaker")}, {"quilted", gallery(b, "quilted-highball")},
	} {
		clock := new(clocked)
		p := openFor(b, of.text, 1440, 1000, clock)
		eval[chromedp.Void](p, meter)
		p.click("#tab-design")
		p.quiet()
		b.Run(of.name+"/empty", func(b *testing.B) { p.benchEmpty(b) })
		b.Run(of.name+"/key", func(b *testing.B) { p.benchKey(b, clock) })
		b.Run(of.name+"/drag", func(b *testing.B) { p.benchDrag(b, clock) })
	}
}

// benchEmpty types into a box whose text the page only copies onto the wrap's drawing.
func (p *tab) benchEmpty(b *testing.B) {
	eval[chromedp.Void](p, `(() => {
		document.querySelector("#empty")?.remove();
		const box = Object.assign(document.createElement("input"), { id: "empty" });
		const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
		document.querySelector("#head").append(box);
		document.querySelector("#wrap svg").append(path);
		box.addEventListener("input", () => path.setAttribute("d", "M0 0h" + box.value.length));
		box.focus();
		meter.keys = [];
		if (!meter.begun) meter.begin(document.querySelector("#wrap svg"));
		meter.begun = true;
	})()`)
	for n := 0; b.Loop(); n++ {
		p.do(chromedp.KeyEvent("1"))
		p.until(fmt.Sprintf("meter.keys.length >= %d", n+1))
		time.Sleep(20 * time.Millisecond)
	}
	p.reportKeys(b, nil)
	eval[chromedp.Void](p, `document.querySelector("#empty").remove()`)
}

// benchKey types into the depth of the first motif: all of its grooves are cut anew.
func (p *tab) benchKey(b *testing.B, clock *clocked) {
	depth := `[data-path="motif[1].depth"] input`
	eval[chromedp.Void](p, `(() => { const motif = document.querySelector("#panel-design details.motif"); motif.open = true; })()`)
	p.fill(depth, "0.7 mm")
	p.quiet()
	eval[chromedp.Void](p, `meter.keys = []; meter.at = undefined`)
	clock.taken()
	n := 0
	for ; b.Loop(); n++ {
		// Another digit each time, so that no answer is known already.
		p.do(chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)))
		value := fmt.Sprintf("0.%d mm", 600+n%300)
		eval[chromedp.Void](p, `document.querySelector('`+depth+`').value = `+quoted(value[:len(value)-1]))
		p.do(chromedp.KeyEvent("m"))
		p.until(fmt.Sprintf("meter.keys.length >= %d", n+1))
		p.settled()
		time.Sleep(20 * time.Millisecond)
	}
	p.reportKeys(b, clock)
}

func (p *tab) reportKeys(b *testing.B, clock *clocked) {
	keys := eval[[][3]float64](p, "meter.keys")
	for i, unit := range []string{"ms-changed", "ms-painted", "ms-frame-after"} {
		var all []float64
		for _, k := range keys {
			all = append(all, k[i])
		}
		b.ReportMetric(middleOf(all), unit)
		if i == 1 {
			b.ReportMetric(slices.Min(all), "ms-painted-least")
		}
	}
	if clock != nil {
		took := clock.taken()
		b.ReportMetric(middleOf(took), "ms-engine")
		b.ReportMetric(slices.Min(took), "ms-engine-least")
	}
	b.ReportMetric(0, "ns/op")
}

// benchDrag carries the first motif about for a quarter of a second at a time.
func (p *tab) benchDrag(b *testing.B, clock *clocked) {
	var frames, took []float64
	drawn, seconds := 0, 0.0
	p.choose1(1)
	for b.Loop() {
		at := p.middle("#wrap [data-handle=middle]")
		clock.taken()
		p.do(chromedp.MouseEvent(chromedp.MouseMoved, at.X, at.Y), chromedp.MouseEvent(chromedp.MousePressed, at.X, at.Y, chromedp.ButtonLeft, oneClick))
		p.do(chromedp.MouseEvent(chromedp.MouseMoved, at.X+8, at.Y, chromedp.ButtonLeft))
		eval[chromedp.Void](p, "meter.run()")
		begun := time.Now()
		for i := 0; time.Since(begun) < time.Second/4; i++ {
			p.do(chromedp.MouseEvent(chromedp.MouseMoved, at.X+8+float64(i%40), at.Y+float64(i%7), chromedp.ButtonLeft))
			time.Sleep(4 * time.Millisecond)
		}
		ran := eval[struct {
			Frames []float64
			Drawn  int
		}](p, "meter.stop()")
		seconds += time.Since(begun).Seconds()
		p.do(chromedp.MouseEvent(chromedp.MouseReleased, at.X+8, at.Y, chromedp.ButtonLeft, oneClick))
		frames, drawn, took = append(frames, ran.Frames...), drawn+ran.Drawn, append(took, clock.taken()...)
		p.settled()
		p.click("#undo")
		p.quiet()
	}
	slices.Sort(frames)
	b.ReportMetric(float64(len(frames))/seconds, "frames/s")
	b.ReportMetric(float64(drawn)/seconds, "wraps/s")
	b.ReportMetric(frames[len(frames)*95/100], "ms-frame-95%")
	b.ReportMetric(middleOf(took), "ms-engine")
	b.ReportMetric(0, "ns/op")
}

func middleOf(all []float64) float64 {
	sorted := slices.Sorted(slices.Values(all))
	return sorted[len(sorted)/2]
}
