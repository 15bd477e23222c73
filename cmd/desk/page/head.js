// The head line: what is open, whether it is clear, undo and redo, the file.

import { el, say } from "./dom.js";
import { isAt, wrongWords } from "./field.js";
import { onOpened, open } from "./headings.js";
import { jobText } from "./jobtext.js";
import { file } from "./disk.js";
import { begin, openAnother } from "./newjob.js";
import { showHints } from "./welcome.js";

export function mount(root, store, about) {
  const name = el("h1", {});
  const saved = el("span", { class: "faint small", id: "saved" });
  const verdict = el("p", { id: "verdict", role: "status" });
  const wrong = el("div", { id: "mistake", role: "status" });
  const undo = el("button", { type: "button", id: "undo", onclick: () => store.undo() }, "Undo");
  const redo = el("button", { type: "button", id: "redo", onclick: () => store.redo() }, "Redo");
  const save = el("button", { type: "button", id: "save", onclick: () => file.save() }, "Save");
  root.append(el("div", { class: "title" }, name, saved), verdict,
    el("div", { class: "buttons" }, undo, redo, save, menu(store, about)), wrong);
  keys(store);
  store.subscribe((state) => {
    say(name, state.answer?.title || "roundlay");
    undo.disabled = !store.canUndo;
    redo.disabled = !store.canRedo;
    judge(verdict, state);
    tell(wrong, state, store);
  });
  const look = () => tell(wrong, store.state, store);
  onOpened(look);
  document.addEventListener("toggle", look, true);
  file.follow(() => {
    say(saved, file.words());
    save.disabled = !file.dirty() && file.of.name !== "";
    save.hidden = !file.present;
    document.title = (file.dirty() ? "• " : "") + (store.state.answer?.title || "roundlay");
  });
}

/** menu holds what is wanted seldom. */
function menu(store, about) {
  const items = [
    ["new-job", "New, from my calipers or the starter", () => begin(store, about)],
    ["open-job", "Open another", () => openAnother()],
    ["save-as", "Save under another name", () => file.saveAs()],
    ["job-text", "The text of the job", () => jobText(store)],
    ["hints-again", "Show the hints again", () => showHints()],
  ];
  const node = el("details", { class: "menu" }, el("summary", { class: "button" }, "The job"));
  const list = el("div", { class: "list" }, items.map(([id, words, act]) =>
    el("button", { type: "button", id, onclick: () => { node.open = false; act(); } }, words)));
  node.append(list);
  node.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || !node.open) return;
    node.open = false;
    node.firstChild.focus();
  });
  document.addEventListener("pointerdown", (event) => {
    if (node.open && !node.contains(event.target)) node.open = false;
  });
  return node;
}

function keys(store) {
  document.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const act = { z: () => (event.shiftKey ? store.redo() : store.undo()), y: () => store.redo(), s: () => file.save() }[key];
    if (!act || document.querySelector("dialog[open] input")) return;
    event.preventDefault();
    act();
  });
}

/** judge says whether the job is clear; of an older text it says so. */
function judge(node, state) {
  const stale = !state.fresh;
  const words = state.trouble || (state.waiting ? "Counting how many clear…" : state.answer?.verdict) || "";
  node.classList.toggle("stale", stale);
  node.classList.toggle("clear", !stale && Boolean(state.answer?.clear));
  node.classList.toggle("found", !stale && state.answer?.clear === false);
  say(node, words);
}

/** tell says what is wrong with the text where no field that is seen says it. */
function tell(node, state, store) {
  const at = state.mistake ? fieldOf(state.mistake.path) : null;
  const seen = at !== null && at.offsetParent !== null;
  const words = state.trouble ? "" : state.refused || (!state.mistake || seen ? "" : headWords(state.mistake));
  const key = words + (state.trouble ? "!" + state.trouble : "") + (at !== null);
  if (node.dataset.key === key) return;
  node.dataset.key = key;
  node.replaceChildren();
  if (words) node.append(el("span", {}, words), " ", state.mistake ? where(at, state.mistake, store) : "");
  if (state.trouble) node.append(el("button", { type: "button", onclick: () => store.again() }, "Ask again"));
}

function headWords(mistake) {
  const line = mistake.line ? `Line ${mistake.line}` : "The job";
  return `${line}${mistake.path ? ", " + mistake.path : ""}: ${wrongWords(mistake)} The drawings show the job before that.`;
}

function where(at, mistake, store) {
  const show = at ? () => reveal(at) : () => jobText(store, mistake.line);
  return el("button", { type: "button", onclick: show }, at ? "Go there" : "Show the text");
}

/** fieldOf is the field that a mistake's path names, or null. */
function fieldOf(path) {
  for (const node of document.querySelectorAll("[data-path].field")) if (isAt(path, node.dataset.path)) return node;
  return null;
}

/** reveal opens what a field is behind, and goes to it. */
function reveal(node) {
  const panel = node.closest("[role=tabpanel]");
  if (panel) open(panel.id.slice("panel-".length));
  for (let up = node.closest("details"); up; up = up.parentElement.closest("details")) up.open = true;
  node.querySelector("input, select, textarea")?.focus();
}
