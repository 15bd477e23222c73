// The blanks of a set, as a row of small glasses of which one is looked at.

import { el, say } from "./dom.js";
import { follow } from "./slow.js";

/** mount fills root and follows the store. */
export function mount(root, store) {
  new Row(root, store);
}

class Row {
  constructor(root, store) {
    this.store = store;
    this.root = root;
    this.smalls = new Map(); // the set's answer for a blank, by its name
    this.row = el("div", { class: "blanks", role: "radiogroup", "aria-label": "Which blank is looked at" });
    this.words = el("p", { class: "small", role: "status" });
    this.more = el("div", { class: "faint small" });
    this.details = el("details", { hidden: true }, el("summary", {}, "What the set shares, and what limits it"), this.more);
    root.append(this.row, this.words, this.details);
    this.row.addEventListener("keydown", (event) => this.#key(event));
    store.subscribe((state) => this.#show(state));
    follow(store, "set", (state) => (several(state) ? { job: state.text } : null), (answer, state, how) => this.#tell(answer, how));
  }

  #show(state) {
    const section = this.root.closest("section") ?? this.root;
    section.hidden = !several(state);
    if (section.hidden) return;
    const { blanks, blank } = state.answer;
    while (this.row.childElementCount > blanks.length) this.row.lastElementChild.remove();
    blanks.forEach((one, i) => this.#one(this.row.children[i] ?? this.row.appendChild(this.#make()), one, one.name === blank));
  }

  #make() {
    const button = el("button", { type: "button", role: "radio", class: "blank" },
      el("img", { alt: "", draggable: "false" }), el("span", { class: "name" }), el("span", { class: "count small" }));
    button.addEventListener("click", () => this.store.setBlank(button.dataset.blank));
    return button;
  }

  #one(button, { name, findings }, chosen) {
    const [img, label, count] = button.children, known = this.smalls.get(name);
    button.dataset.blank = name;
    button.setAttribute("aria-checked", String(chosen));
    button.tabIndex = chosen ? 0 : -1;
    if (known?.small && img.dataset.of !== known.small) {
      img.src = "data:image/svg+xml," + encodeURIComponent(known.small);
      img.dataset.of = known.small;
    }
    img.classList.toggle("late", !this.answered);
    const found = findings ?? (this.answered ? known?.findings?.length : undefined);
    say(label, name);
    say(count, found === undefined ? "" : countWords(found));
    count.classList.toggle("warn", found > 0);
    button.title = (this.answered && known?.why) || "";
  }

  #tell(answer, { waiting, trouble }) {
    this.answered = answer !== null;
    if (answer) this.smalls = new Map(answer.blanks.map((blank) => [blank.name, blank]));
    const [first = "", ...more] = answer?.words ?? [];
    say(this.words, first || trouble || (waiting ? "Comparing the set." : ""));
    this.details.hidden = more.length === 0;
    this.more.replaceChildren(...more.map((words) => el("p", {}, words)));
    if (this.store.state.answer) this.#show(this.store.state);
  }

  #key(event) {
    const radios = [...this.row.children], at = radios.indexOf(event.target.closest("[role=radio]"));
    const to = { ArrowRight: at + 1, ArrowDown: at + 1, ArrowLeft: at - 1, ArrowUp: at - 1, Home: 0, End: radios.length - 1 }[event.key];
    if (to === undefined || at < 0) return;
    event.preventDefault();
    const radio = radios[(to + radios.length) % radios.length];
    radio.focus();
    this.store.setBlank(radio.dataset.blank);
  }
}

function several({ answer }) {
  return (answer?.blanks?.length ?? 0) > 1;
}

function countWords(n) {
  return n === 0 ? "clear" : n === 1 ? "1 finding" : `${n} findings`;
}
