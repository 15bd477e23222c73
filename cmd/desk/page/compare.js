// The design beside another: on another blank, on a glass of another size, as it was, or another job.

import { ask } from "./ask.js";
import { el, say } from "./dom.js";
import { otherQuestion } from "./other.js";
import { Seen } from "./seen.js";
import { follow } from "./slow.js";

/** mount fills root and follows the store. */
export function mount(root, store) {
  new Beside(root, store);
}

class Beside {
  constructor(root, store) {
    this.store = store;
    this.other = null; // the answer about the other design
    this.#fill(root);
    store.subscribe((state) => this.#show(state));
    this.laying = follow(store, "lay", (state) => this.#question(state), (answer, state, how) => this.#tell(answer, how));
    const picture = (seen, of) => follow(store, "picture", (state) => this.#pictureOf(of(state), state), (answer) => {
      seen.picture(answer);
      this.#scale();
    });
    this.pictures = [picture(this.left, (state) => ({ job: state.text, blank: state.blank })), picture(this.right, () => this.other)];
  }

  #fill(root) {
    const changed = () => this.#changed();
    const number = (label) => el("input", { type: "number", min: 30, max: 300, step: 1, value: 100, "aria-label": label, onchange: changed });
    this.what = el("select", { id: "beside-what", onchange: changed });
    this.wide = number("Its width, in per cent of this glass's");
    this.high = number("Its height, in per cent of this glass's");
    this.size = el("span", { class: "drawn-row" }, this.wide, "% as wide, ", this.high, "% as high");
    this.back = el("select", { "aria-label": "How many changes ago", onchange: changed });
    this.text = el("textarea", { rows: 8, spellcheck: "false", "aria-label": "The text of the other job", onchange: changed });
    this.textBox = el("div", { class: "other-job" }, this.text, el("button", { type: "button", onclick: changed }, "Show it"));
    this.words = el("p", { role: "status", class: "small" });
    this.left = new Seen("This design");
    this.right = new Seen("The other");
    this.pair = el("div", { class: "two-designs" }, this.left.root, this.right.root);
    root.append(
      el("div", { class: "drawn-row" }, el("label", { for: "beside-what" }, "This design beside"), this.what, this.size, this.back),
      this.textBox, this.words, this.pair);
  }

  get choice() {
    const [sort, name = ""] = this.what.value.split(/:(.*)/s);
    return { sort, name, wide: Number(this.wide.value) / 100, high: Number(this.high.value) / 100, back: Number(this.back.value), text: this.text.value };
  }

  #changed() {
    this.other = null;
    this.#show(this.store.state);
    this.laying.look();
    for (const picture of this.pictures) picture.look();
  }

  #show(state) {
    if (!state.answer?.wrap) return;
    this.#offer(state);
    const { sort } = this.choice;
    this.size.hidden = sort !== "size";
    this.back.hidden = sort !== "earlier";
    this.textBox.hidden = sort !== "job";
    this.pair.hidden = !sort || !this.other;
    if (this.pair.hidden) return;
    this.left.show(state.answer, state.fresh);
    this.#scale();
  }

  /** offer keeps the choices in step with the job: its blanks, and the steps that led to it. */
  #offer(state) {
    const blanks = state.answer.blanks.map(({ name }) => name).filter((name) => name !== state.answer.blank), steps = this.store.history.at;
    const choices = [["", "nothing"], ...blanks.map((name) => [`blank:${name}`, `itself on the blank ${name}`]),
      ["size", "itself on a glass of another size"], ...(steps ? [["earlier", "itself as it was"]] : []), ["job", "another job"]];
    options(this.what, choices);
    options(this.back, Array.from({ length: Math.min(steps, 100) }, (_, i) => [String(i + 1), i ? `${i + 1} changes ago` : "1 change ago"]));
  }

  #question(state) {
    return this.choice.sort ? otherQuestion(this.choice, state, this.store.history) : null;
  }

  #tell(answer, { waiting, trouble }) {
    const token = (this.token = {});
    const good = answer && !answer.mistake && answer.wrap, counts = answer?.waiting;
    if (counts) this.#count(answer, token);
    say(this.words, mistakeWords(answer) || trouble || (counts ? "The most that clears is being counted." : waiting ? "Being drawn." : ""));
    if (good) this.other = answer;
    else if (!waiting && !counts) this.other = null;
    if (good) this.right.show(answer, true);
    else this.right.stale();
    this.#show(this.store.state);
    for (const picture of this.pictures ?? []) picture.look();
  }

  /** count has a job's counts found that are asked as "most", and lays it out with them. */
  async #count(answer, token) {
    try {
      await ask("most", { job: answer.job }, { slot: "beside" });
      const { state } = this.store, question = { ...this.#question(state), job: answer.job, edits: [] };
      const laid = token === this.token && (await ask("lay", question, { slot: "beside" }));
      if (token === this.token) this.#tell(laid, { waiting: false });
    } catch (failure) {
      if (token === this.token && !failure.cancelled) this.#tell(null, { waiting: false, trouble: failure.message });
    }
  }

  #pictureOf(what, { look }) {
    if (!this.choice.sort || !this.other || !what) return null;
    return { job: what.job, blank: what.blank, turn: look.turn, tilt: look.tilt, findings: false };
  }

  /** scale gives both sides one scale. */
  #scale() {
    const sides = [this.left, this.right];
    const wrap = Math.max(...sides.map((side) => side.wrapWidth)), glass = Math.max(...sides.map((side) => side.glassWidth));
    for (const side of sides) side.scale(wrap, glass);
  }
}

function options(select, choices) {
  const { value } = select, words = JSON.stringify(choices);
  if (select.dataset.choices === words) return;
  select.dataset.choices = words;
  select.replaceChildren(...choices.map(([key, label]) => el("option", { value: key }, label)));
  if (choices.some(([key]) => key === value)) select.value = value;
}

function mistakeWords(answer) {
  if (!answer?.mistake) return "";
  const { words, line } = answer.mistake;
  return `It can't be drawn. ${line ? `Line ${line}: ` : ""}${words}`;
}
