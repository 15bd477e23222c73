package browser

import (
	"context"
	"encoding/json"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"

	"roundlay/pattern/job"
)

// editor is put into the page: it edits through the form as fast as it can, by what a person
// would touch. Its choices come from numbers that the test draws.
const editor = `window.editor = {
	seen: (selector) => [...document.querySelectorAll(selector)].filter((n) => !n.disabled && n.checkVisibility()),
	pick: (list, n) => list[n % list.length],
	put(input, value) {
		input.focus();
		input.value = value;
		input.dispatchEvent(new Event("input", { bubbles: true }));
	},
	write(n, m) {
		const input = this.pick(this.seen("[role=tabpanel] input:not([type=checkbox], [type=radio], [type=range])"), n);
		if (!input) return;
		const number = parseFloat(input.value), near = Number.isFinite(number) ? String(Math.round(number * (0.9 + 0.05 * (m % 5)) * 1000) / 1000) : input.value + " 1";
		this.put(input, m % 11 === 0 ? "" : m % 13 === 0 ? "3/23" : near);
	},
	slide(n, m) {
		const range = this.pick(this.seen("[role=tabpanel] input[type=range]"), n);
		if (!range) return;
		const { min, max } = range;
		this.put(range, String(Number(min) + ((m % 100) / 100) * (Number(max) - Number(min))));
		if (m % 2) range.dispatchEvent(new Event("change", { bubbles: true }));
	},
	step(n) { this.pick(this.seen(".stepper button"), n)?.click(); },
	tick(n) { this.pick(this.seen("[role=tabpanel]:not(#panel-paper) :is(.stepper, .field) :is([type=checkbox], [type=radio])"), n)?.click(); },
	list(n, m) {
		const list = this.pick(this.seen("[role=tabpanel]:not(#panel-paper) .field select"), n);
		if (!list?.options.length) return;
		list.value = this.pick([...list.options], m).value;
		list.dispatchEvent(new Event("change", { bubbles: true }));
	},
	usual(n) { this.pick(this.seen(".usual-button"), n)?.click(); },
	open(n) { this.pick(this.seen("#headings button").slice(0, 4), n).click(); },
	unfold(n) { const all = this.seen("[role=tabpanel] details.motif > summary"); if (all.length) this.pick(all, n).click(); },
	undo() { document.querySelector("#undo").click(); },
	redo() { document.querySelector("#redo").click(); },
	key(n) {
		const motifs = this.seen("#wrap .motifs .motif");
		if (!motifs.length) return;
		const motif = this.pick(motifs, n), key = this.pick(["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "+", "-", "l", "r", "Escape"], n >> 3);
		motif.focus();
		motif.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
	},
	add(n) { this.pick(this.seen(".swatch"), n)?.click(); },
	act(kind, n, m) {
		const ways = ["write", "write", "write", "slide", "slide", "step", "step", "step", "tick", "list", "usual", "open", "unfold", "undo", "undo", "undo", "redo", "redo", "key", "key", "add"];
		this[this.pick(ways, kind)](n, m);
	},
}; 0`

// Five hundred rapid edits leave the page in step with its job: the text, the form and the
// drawings are those that the desk gives for that text.
func TestManyEdits(t *testing.T) {
	_, demo := job.Demo()
	p := open(t, string(demo), 1440, 1000)
	eval[chromedp.Void](p, editor)
	r := rand.New(rand.NewPCG(11, 12))
	const edits, drags = 500, 10
	for i := range edits {
		if i%(edits/drags) == edits/drags-1 {
			p.shove(r)
		} else {
			acts, err := json.Marshal([]int{r.IntN(1 << 20), r.IntN(1 << 20), r.IntN(1 << 20)})
			if err != nil {
				t.Fatal(err)
			}
			eval[chromedp.Void](p, `(() => { editor.act(...`+string(acts)+`); })()`)
		}
		if i%100 == 99 {
			p.inStep()
		}
		if i%20 == 19 {
			p.backToGood() // else most edits would be of a text with a mistake
		}
	}
	p.inStep()
	last := p.text()
	steps := eval[int](p, `(async () => { let n = 0; const s = `+store+`; while (s.canUndo) { s.undo(); n++; } return n })()`)
	if p.inStep(); p.text() != string(demo) {
		t.Errorf("with everything undone the text is\n%s", p.text())
	}
	eval[chromedp.Void](p, `(async () => { const s = `+store+`; for (let i = 0; i < `+strconv.Itoa(steps)+`; i++) s.redo(); })()`)
	if p.inStep(); p.text() != last {
		t.Errorf("done again, the text is\n%s\nwant\n%s", p.text(), last)
	}
	t.Logf("%d edits left %d steps to undo", edits, steps)
	if steps < edits/10 {
		t.Errorf("of %d edits only %d are left", edits, steps)
	}
}

// backToGood undoes until the text has no mistake.
func (p *tab) backToGood() {
	p.t.Helper()
	for p.settled(); eval[bool](p, `document.documentElement.dataset.job === "mistaken"`); p.settled() {
		eval[chromedp.Void](p, `editor.undo()`)
	}
}

// shove drags a motif by the mouse, and doesn't wait for what comes of it.
func (p *tab) shove(r *rand.Rand) {
	p.t.Helper()
	at := eval[place](p, `(() => {
		const all = [...document.querySelectorAll("#wrap .motifs .motif")];
		const box = all[`+strconv.Itoa(r.IntN(1<<20))+` % all.length].getBoundingClientRect();
		return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
	})()`)
	p.drag(at, float64(r.IntN(60)-30), float64(r.IntN(30)-15), 5)
}

// inStep compares what the page shows with a fresh answer for its text.
func (p *tab) inStep() {
	p.t.Helper()
	answer := p.laid(p.text())
	eval[chromedp.Void](p, `document.activeElement?.blur()`)
	for _, wrong := range eval[[]string](p, `(`+compare+`)(`+answer+`)`) {
		p.t.Errorf("out of step: %s", wrong)
	}
}

// laid is a fresh answer to lay for a text, by the engine of this process. The page as a folder has
// another, built for a browser: it must answer the same, byte for byte. So tests of that page are
// built as it is, by .ci/flags.
func (p *tab) laid(text string) string {
	p.t.Helper()
	asked := map[string]any{"job": text}
	for {
		answer := p.answered("lay", asked)
		var waits struct{ Waiting string }
		if err := json.Unmarshal([]byte(answer), &waits); err != nil {
			p.t.Fatal(err)
		}
		if waits.Waiting == "" {
			return answer
		}
		p.answered(waits.Waiting, asked) // an engine that wasn't asked yet how many clear
	}
}

// answered is the answer of this process's engine.
func (p *tab) answered(name string, asked map[string]any) string {
	p.t.Helper()
	body, err := json.Marshal(asked)
	if err != nil {
		p.t.Fatal(err)
	}
	answer, err := engine.Answer(context.Background(), name, body)
	if err != nil {
		p.t.Fatal(err)
	}
	return string(answer.Data)
}

// The comparison sees what is not in step.
func TestOutOfStep(t *testing.T) {
	p := open(t, "", 1440, 1000)
	p.inStep()
	_, demo := job.Demo()
	eval[chromedp.Void](p, `(() => {
		document.querySelector("#wrap .drawn-lines path").setAttribute("d", "M0 0L1 1");
		document.querySelector("[data-sort=length] input").value = "another";
		document.querySelector("#verdict").textContent = "fine";
	})()`)
	if wrong := eval[[]string](p, `(`+compare+`)(`+p.laid(string(demo))+`)`); len(wrong) != 3 {
		t.Errorf("found %q, not the three that are wrong", wrong)
	}
}

// compare lists what of the page is not as an answer to lay has it.
const compare = `async (answer) => {
	const wrong = [], { state } = ` + store + `;
	const differ = (what, got, want) => {
		const [is, should] = [got, want].map((value) => JSON.stringify(value) ?? "nothing");
		if (is === should) return;
		const from = Math.max(0, [...is].findIndex((letter, i) => letter !== should[i]) - 60);
		wrong.push(what + ": " + is.slice(from, from + 200) + ", want " + should.slice(from, from + 200));
	};
	differ("the text", state.text, answer.job);
	differ("whether it is mistaken", Boolean(state.mistake), Boolean(answer.mistake));
	differ("the form", state.form, answer.form);
	const fields = new Map(answer.form.tables.flatMap((t) => t.fields).map((f) => [f.path, f]));
	let compared = 0;
	for (const node of document.querySelectorAll("[data-path].field")) {
		const field = fields.get(node.dataset.path);
		if (!field) continue;
		const sort = node.dataset.sort, path = field.path;
		const box = node.querySelector("input:not([type=checkbox], [type=radio], [type=range])"), list = node.querySelector("select");
		const radio = [...node.querySelectorAll("[type=radio]")];
		compared++;
		if (sort === "repeats") differ(path, field.list ? null : radio.find((r) => r.checked)?.value ?? "", field.list ? radio.find((r) => r.checked)?.value ?? null : field.text ?? "");
		else if (radio.length) differ(path, radio.find((r) => r.checked)?.value ?? "", field.text ?? "");
		else if (sort === "switch") differ(path, node.querySelector("[type=checkbox]").checked, ["true", "1"].includes(field.text));
		else if (sort === "rock" && !field.list) continue; // then it shows what its motif or its kind does
		else if (["place", "heights", "rock", "wear"].includes(sort)) differ(path, [...node.querySelectorAll("input")].map((i) => i.value), [0, 1].map((i) => field.list?.[i] ?? ""));
		else if (sort === "lengths" && field.list?.length) differ(path, box.value, field.list.join("; "));
		else if (sort !== "wheels" && (box || list)) differ(path, (box ?? list).value, field.text ?? "");
	}
	if (compared < fields.size / 2) wrong.push("only " + compared + " of " + fields.size + " fields are on the page");
	if (answer.mistake) return wrong;
	differ("the findings", [...document.querySelectorAll("#findings [data-letter]")].map((n) => n.dataset.letter), answer.findings.map((f) => f.letter));
	differ("the verdict", document.querySelector("#verdict").textContent, answer.verdict);
	differ("the drawing's motifs", [...document.querySelectorAll("#wrap [data-drawn]")].map((g) => Number(g.dataset.drawn)).sort((a, b) => a - b), answer.wrap.motifs.map((m) => m.motif));
	for (const m of answer.wrap.motifs) {
		const drawn = (part) => [...document.querySelectorAll('#wrap [data-drawn="' + m.motif + '"] .drawn-' + part + " path")].map((p) => p.getAttribute("d")).join("");
		differ("the footprint of motif " + m.motif, drawn("footprints"), m.footprint);
		differ("the line of motif " + m.motif, drawn("lines"), m.line);
	}
	differ("the glass", state.answer.glass, answer.glass);
	differ("the profile", state.answer.profile, answer.profile);
	return wrong;
}`
