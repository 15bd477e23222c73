package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"roundlay/pattern/job"
)

// bladeSVG is a blade as a drawing program saves it, in two parts.
const bladeSVG = `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="60mm" viewBox="0 0 20 60"><g stroke="black" fill="none">
<g id="stem"><path d="M10 60C9 40 11 20 10 0"/></g><g id="left wing"><path d="M10 40C6 36 4 30 2 20"/><path d="M10 50C7 46 4 42 2 34"/></g></g></svg>`

// letGo lets a file go over a place of the page, as a person who dragged it there.
func (p *tab) letGo(name, text string, at place) {
	p.t.Helper()
	eval[chromedp.Void](p, `(() => {
		const held = new DataTransfer();
		held.items.add(new File([`+quoted(text)+`], `+quoted(name)+`, { type: "image/svg+xml" }));
		const target = document.elementFromPoint(`+number(at.X)+`, `+number(at.Y)+`);
		for (const sort of ["dragenter", "dragover", "drop"])
			target.dispatchEvent(new DragEvent(sort, { dataTransfer: held, bubbles: true, cancelable: true, clientX: `+number(at.X)+`, clientY: `+number(at.Y)+` }));
	})()`)
}

// drawn is how many motifs the wrap shows, and chosen which of them is chosen.
const (
	drawn  = `document.querySelectorAll("#wrap [data-drawn]").length`
	chosen = `Number(document.querySelector('#wrap .motif[aria-pressed="true"]')?.dataset.motif ?? 0)`
)

// A drawing that is let go over the wrap becomes a motif there; a part of it gets a depth of its
// own; saved, it lies beside the job, and what another program does to it is seen.
func TestDropDrawing(t *testing.T) {
	p := openBeside(t, "", 1440, 1000, nil)
	before := eval[int](p, drawn)
	at := p.middle("#wrap svg.sheet")
	p.letGo("My blade (2).svg", bladeSVG, place{at.X, at.Y - 40})
	p.until(drawn + ` === ` + number(float64(before+1)) + ` && ` + chosen + ` === ` + number(float64(before+1)))
	text := p.text()
	if !strings.Contains(text, `file = "My blade -2.svg"`) {
		t.Fatalf("the job is\n%s", text)
	}
	// Where it was let go, its frame's middle lies.
	middle := eval[place](p, `(() => { const box = document.querySelector("#wrap .frame [data-handle=middle] .knob").getBoundingClientRect(); return { x: box.x + box.width / 2, y: box.y + box.height / 2 }; })()`)
	if dx, dy := middle.X-at.X, middle.Y-(at.Y-40); dx*dx+dy*dy > 9 {
		t.Errorf("it was let go at %v and lies at %v", place{at.X, at.Y - 40}, middle)
	}
	wing := `details.motif[open] [data-part="left wing"]`
	p.click(wing + " > summary")
	p.fill(wing+` [data-key="depth"] input`, "1/128 in")
	p.settled()
	if text = p.text(); !strings.Contains(text, `[motif.parts."left wing"]`) || !strings.Contains(text, `depth = "1/128 in"`) {
		t.Errorf("a part's depth makes the job\n%s", text)
	}
	p.click("#save")
	p.fill("#asked", "with-blade")
	p.press("dialog", "Save")
	p.until(`/with-blade\.toml, saved/.test(document.querySelector("#saved").innerText)`)
	if p.read("with-blade.toml") != p.text() || p.read("My blade -2.svg") != bladeSVG {
		t.Error("the files hold something else than the page")
	}
	line := `document.querySelector('#wrap [data-drawn="` + number(float64(before+1)) + `"] .drawn-lines path').getAttribute("d")`
	was := eval[string](p, line)
	p.write("My blade -2.svg", strings.Replace(bladeSVG, "C9 40 11 20", "C0 40 19 20", 1))
	p.until(line + ` !== ` + quoted(was))
}

// A file that can't be cut says why, and changes nothing; neither does one that is no drawing.
func TestDropRefused(t *testing.T) {
	p := openBeside(t, "", 1440, 1000, nil)
	before := p.text()
	at := p.middle("#wrap svg.sheet")
	for name, c := range map[string]struct{ text, want string }{
		"filled.svg":  {`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><rect width="9" height="9"/></svg>`, "without a stroke"},
		"broken.svg":  {`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path stroke="red" d="M0 0L1"/></svg>`, "path d"},
		"hostile.svg": {`<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]><svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><script>alert(2)</script>&a;</svg>`, "hostile.svg"},
		"notes.txt":   {"not a drawing", "SVG file"},
		"large.svg":   {strings.Repeat("<g>", 400000), "1 MiB"},
	} {
		p.letGo(name, c.text, at)
		p.until(`document.querySelector("#mistake").innerText.includes(` + quoted(name) + `) && document.querySelector("#mistake").innerText.includes(` + quoted(c.want) + `)`)
		if text := p.text(); text != before {
			t.Errorf("%s: the job is\n%s", name, text)
		}
		if said := eval[string](p, `document.querySelector("#mistake").innerText`); strings.Contains(said, "root:") {
			t.Errorf("%s: it says %s", name, said)
		}
	}
}

// A file whose name the folder has already for another drawing is given a name of its own.
func TestDropTaken(t *testing.T) {
	p := openBeside(t, "", 1440, 1000, map[string]string{"blade.svg": "<svg>another's</svg>"})
	p.watched.pardon("409")
	p.letGo("blade.svg", bladeSVG, p.middle("#wrap svg.sheet"))
	p.until(chosen + ` > 0`)
	p.click("#save")
	p.fill("#asked", "mine")
	p.press("dialog", "Save")
	p.until(`/mine\.toml, saved/.test(document.querySelector("#saved").innerText)`)
	if p.read("blade.svg") != "<svg>another's</svg>" || p.read("blade-2.svg") != bladeSVG || !strings.Contains(p.read("mine.toml"), `file = "blade-2.svg"`) {
		t.Errorf("blade.svg holds %q, and the job is\n%s", p.read("blade.svg"), p.read("mine.toml"))
	}
}

// A drawing beside the opened job is read. One that is missing is a mistake in words, which
// dropping the file mends.
func TestOpenedDrawing(t *testing.T) {
	_, demo := job.Demo()
	text := string(demo) + "\n[[motif]]\nkind = \"drawing\"\nwheel = \"small mitre\"\ndepth = \"1/64\"\nheight = 0.2\nat = [0, 0.9]\nfile = \"blade.svg\"\n"
	p := openBeside(t, text, 1440, 1000, map[string]string{"blade.svg": bladeSVG})
	before := eval[int](p, drawn)
	if before != 4 {
		t.Fatalf("%d motifs are drawn", before)
	}
	p.click("#tab-design")
	p.press("#panel-design", "4 drawing, small mitre")
	file := `[data-path="motif[4].file"]`
	p.fill(file+" input", "wing.svg")
	p.until(`/no such file; drop the file on the page/.test(document.querySelector('` + file + ` .wrong').innerText)`)
	p.letGo("wing.svg", bladeSVG, p.middle("#wrap svg.sheet"))
	p.until(`document.documentElement.dataset.job === "laid"`)
	if n := eval[int](p, drawn); n != before || !strings.Contains(p.text(), `file = "wing.svg"`) {
		t.Errorf("%d motifs are drawn of\n%s", n, p.text())
	}
}

// A file that the job includes and can't find is brought by dropping it; any other job file that is
// dropped is shown. Words that say so stand while a file is held over the page, and no longer.
func TestDropIncluded(t *testing.T) {
	p := openBeside(t, "", 1440, 1000, nil)
	at := p.middle("#wrap svg.sheet")
	first := p.text()
	text := strings.Replace(first, `length = "in"`, "length = \"in\"\ninclude = [\"shop.toml\"]", 1)
	eval[chromedp.Void](p, `(async () => `+store+`.setText(`+quoted(text)+`))()`)
	p.until(`document.documentElement.dataset.job === "mistaken"`)
	p.letGo("shop.toml", "[shop]\nspoil = 0.05\n", at)
	p.until(`document.documentElement.dataset.job === "laid"`)
	if got := p.text(); got != text {
		t.Errorf("the job is\n%s", got)
	}
	other := gallery(t, "fern-and-beam")
	p.letGo("other.TOML", other, at)
	p.until(`/^Not in a file yet/.test(document.querySelector("#saved").innerText)`)
	if got := p.text(); got != other {
		t.Errorf("the job is\n%s", got)
	}
	if eval[bool](p, `document.querySelector(".hovering").checkVisibility()`) {
		t.Error("the words for a file that is held over the page stay up")
	}
}

// Buttons with numbers say which repeats are left free, and on which a motif stands.
func TestRepeatButtons(t *testing.T) {
	p := open(t, "", 1440, 1000)
	p.click("#tab-design")
	free := `[data-path="layout.bare"]`
	p.press(free, "2")
	p.settled()
	if text := p.text(); !strings.Contains(text, "bare = [2]") {
		t.Fatalf("the job is\n%s", text)
	}
	p.until(`document.querySelector('` + free + ` [aria-label="Repeat 2 left free"]').getAttribute("aria-pressed") === "true"`)
	p.choose1(1)
	p.settled()
	on := `details.motif[open] [data-key="on"]`
	p.unfold(on)
	if got := eval[string](p, `[...document.querySelectorAll('`+on+` .numbered [aria-pressed="true"]')].map((b) => b.innerText).join(" ")`); got != "1 3 4 5" {
		t.Errorf("with 2 bare it stands on %s", got)
	}
	p.press(on, "3")
	p.settled()
	if text := p.text(); !strings.Contains(text, "\non = [1, 4, 5]") {
		t.Errorf("the job is\n%s", text)
	}
	p.press(on, "each")
	p.press(free, "2")
	p.settled()
	if text := p.text(); strings.Contains(text, "bare") || strings.Contains(text, "\non = [") {
		t.Errorf("taken back, the job is\n%s", text)
	}
}

// Where one repeat is left free, a motif can be taken hold of on each of the others.
func TestHeldOnAnyRepeat(t *testing.T) {
	_, demo := job.Demo()
	p := open(t, strings.Replace(string(demo), "repeats = 5", "repeats = 5\nbare = [2]", 1), 1440, 1000)
	for _, repeat := range []int{1, 3, 4} {
		at := p.onRepeat(repeat)
		p.do(chromedp.MouseClickXY(10, 500)) // beside the wrap
		before := p.text()
		p.drag(at, 12, 0, 6)
		if text := p.text(); text == before {
			t.Errorf("on repeat %d nothing is taken hold of", repeat)
		}
		p.click("#undo")
		if back := p.text(); back != before {
			t.Errorf("undone it is\n%s", back)
		}
	}
	at := p.onRepeat(2)
	before := p.text()
	p.drag(at, 12, 0, 6)
	if text := p.text(); text != before {
		t.Errorf("on the free repeat something was taken hold of:\n%s", text)
	}
}

// onRepeat is a place in the middle of a repeat, a quarter of the wrap below its number.
func (p *tab) onRepeat(repeat int) place {
	p.t.Helper()
	p.middle("#wrap svg.sheet")
	return eval[place](p, `(() => {
		const number = [...document.querySelectorAll("#wrap .part")].find((n) => n.textContent === `+quoted(number(float64(repeat)))+`).getBoundingClientRect();
		return { x: number.x + number.width / 2, y: number.bottom + document.querySelector("#wrap svg.sheet").getBoundingClientRect().height / 3 };
	})()`)
}

// unfold opens what a node is folded away behind.
func (p *tab) unfold(selector string) {
	p.t.Helper()
	eval[chromedp.Void](p, `(() => { for (let up = document.querySelector(`+quoted(selector)+`).closest("details"); up; up = up.parentElement.closest("details")) up.open = true; })()`)
}

// A cut that is tapped on the wrap opens its part.
func TestTapPart(t *testing.T) {
	p := open(t, "", 1440, 1000)
	frond := eval[place](p, `(() => {
		const motif = document.querySelector('#wrap [data-drawn="1"] .drawn-lines path'), use = document.querySelectorAll("#wrap .copies use")[1];
		const pieces = motif.getAttribute("d").slice(1).split("M").map((piece) => piece.split(" ").map(Number)), frond = pieces[3];
		const at = new DOMPoint(frond[2], frond[3]).matrixTransform(use.getCTM ? document.querySelector("#wrap .flat").getScreenCTM().multiply(use.transform.baseVal.consolidate().matrix) : null);
		return { x: at.x, y: at.y };
	})()`)
	p.do(chromedp.MouseClickXY(frond.X, frond.Y))
	p.until(`document.querySelector('details.motif[open] [data-part="frond"]')?.open`)
	if eval[string](p, `document.querySelector("#wrap .drawn-part").getAttribute("d") ?? ""`) == "" {
		t.Error("the part is not marked on the wrap")
	}
}

// Wheels in an order are moved by one, and focus goes with the wheel.
func TestWheelOrder(t *testing.T) {
	_, demo := job.Demo()
	text := strings.Replace(string(demo), "[layout]", "[shop]\norder = [\"small mitre\", \"olive\"]\n\n[layout]", 1)
	p := open(t, text, 1440, 1000)
	p.click("#tab-wheels")
	order := `[data-path="shop.order"]`
	p.unfold(order) // it is behind others where the page has shown another job before
	p.press(order, "later")
	if text := p.text(); !strings.Contains(text, `order = ["olive", "small mitre"]`) {
		t.Errorf("the job is\n%s", text)
	}
	if at := eval[string](p, `document.activeElement.getAttribute("aria-label") ?? ""`); at != "small mitre: earlier" {
		t.Errorf("the focus is on %q", at)
	}
	p.keys(kb.Enter)
	if text := p.text(); !strings.Contains(text, `order = ["small mitre", "olive"]`) {
		t.Errorf("the job is\n%s", text)
	}
	p.press(order, "take out")
	p.settled()
	if text := p.text(); !strings.Contains(text, `order = ["olive"]`) {
		t.Errorf("the job is\n%s", text)
	}
}
