// The first visit: three hints, each gone when it is read or done, and the way
// to a first job of one's own.

import { el } from "./dom.js";
import { guide } from "./guide.js";
import { onOpened } from "./headings.js";
import { keep, kept } from "./memory.js";

const hints = [
  ["drag", "Push the design about", "Take hold of a leaf on the wrap and drag it. Every change can be undone."],
  ["check", "See whether it can be cut", "Check says in words what crowds or cuts too deep, and offers what would cure it."],
  ["paper", "Print it true to size", "Paper has the wrap, the bench sheet and the cut list, to keep or to print."],
];

const shown = { root: null, store: null, about: null };

export function mount(root, store, about) {
  Object.assign(shown, { root, store, about });
  if (about.file.demo) show();
  let dragged = false; // the hint goes when the hand has let go, not under it
  store.subscribe(({ dragging }) => {
    if (dragged && !dragging) leave("drag");
    dragged = dragging;
  });
  onOpened(leave);
}

/** showHints brings the hints back. */
export function showHints() {
  keep("hints", []);
  show();
}

function show() {
  const gone = kept("hints", []);
  const left = hints.filter(([name]) => !gone.includes(name));
  shown.root.replaceChildren();
  if (left.length === 0) return;
  const own = el("button", { type: "button", class: "main", id: "own", onclick: () => guide(shown.store, shown.about) }, "Start from my calipers");
  shown.root.append(el("section", { id: "hints", "aria-label": "First hints" },
    el("ul", {}, left.map(hint)),
    el("div", { class: "buttons" }, own, el("button", { type: "button", onclick: allDone }, "No more hints"))));
}

function hint([name, heading, words]) {
  return el("li", { "data-hint": name }, el("h2", {}, heading), el("p", {}, words),
    el("button", { type: "button", class: "words", "aria-label": "Understood: " + heading, onclick: () => done(name) }, "Understood"));
}

/** done takes a hint away that was read. */
function done(name) {
  if (learn(name) && shown.root.childElementCount) show();
}

/** leave takes a hint out of sight that was followed, and leaves its room: the hand is elsewhere. */
function leave(name) {
  if (learn(name)) shown.root.querySelector(`[data-hint="${name}"]`)?.classList.add("gone");
}

function learn(name) {
  const gone = kept("hints", []);
  if (gone.includes(name) || !hints.some(([known]) => known === name)) return false;
  keep("hints", [...gone, name]);
  return true;
}

function allDone() {
  keep("hints", hints.map(([name]) => name));
  show();
}
