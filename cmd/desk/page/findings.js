// Findings in words, each with its cures as buttons; and what there is room
// for where there is none.

import { arrange, el, say } from "./dom.js";
import { follow } from "./slow.js";
import { isOpen, onOpened } from "./headings.js";

const atOnce = 3; // offers shown before the rest are folded away

export function mount(root, store) {
  const status = el("p", { class: "faint", role: "status" });
  const list = el("ol", { class: "findings", "aria-labelledby": "findings-title" });
  const notes = el("ul", { class: "notes" });
  const fits = el("div", { class: "fit" });
  const room = el("div", { class: "room" });
  root.append(el("h3", { id: "findings-title" }, "What was found"), status, list, fits, notes, room);
  const items = new Map(); // letter → item
  const tab = el("span", { class: "count" });
  document.querySelector("#tab-check").append(tab);
  let laid = null;
  store.subscribe((state) => {
    root.classList.toggle("stale", !state.fresh);
    if (state.answer && state.answer !== laid) {
      laid = state.answer;
      put(list, notes, items, laid, store);
      say(status, laid.findings.length ? "" : "Nothing. " + laid.verdict);
    }
    for (const one of items.values()) one.chosen(state);
    count(tab, state);
  });
  const known = { cures: null, fit: null }; // the slow answers, to show a change once
  const followed = [followCures(store, items, known), followFit(store, fits, room, items, known)];
  onOpened(() => followed.forEach((one) => one.look()));
}

/** count says beside the heading how many findings there are. */
function count(node, { answer }) {
  const n = answer?.findings.length || 0;
  say(node, n ? " " + n : "");
}

function put(list, notes, items, answer, store) {
  const seen = new Set(answer.findings.map((f) => f.letter));
  for (const letter of [...items.keys()]) if (!seen.has(letter)) items.delete(letter);
  arrange(list, answer.findings.map((f) => {
    if (!items.has(f.letter)) items.set(f.letter, finding(store));
    const one = items.get(f.letter);
    one.show(f);
    return one.node;
  }));
  arrange(notes, (answer.notes || []).map((words) => el("li", {}, words)));
}

/** finding is one of the list: its letter, a sentence, where it is, its cures. */
function finding(store) {
  const letter = el("span", { class: "letter", "aria-hidden": "true" });
  const kind = el("strong", {});
  const rest = el("span", {});
  const words = el("span", { class: "sentence" }, kind, " ", rest);
  const where = el("p", { class: "faint small" });
  const ways = el("div", { class: "ways", role: "status" });
  let now = null;
  const look = el("button", { type: "button", class: "finding-head", onclick: () => seek(store, now) }, letter, words);
  const node = el("li", {}, look, where, ways);
  return {
    node, ways,
    show(f) {
      now = f;
      node.dataset.letter = f.letter;
      say(letter, f.letter);
      say(kind, f.kind);
      say(rest, f.words);
      say(where, [f.where, f.means && `${f.kind}: ${f.means}`].filter(Boolean).join(" · "));
    },
    chosen(state) {
      node.classList.toggle("chosen", state.letter === now?.letter);
      look.setAttribute("aria-pressed", String(state.letter === now?.letter));
    },
  };
}

function seek(store, { letter, motifs }) {
  store.chooseFinding(store.state.letter === letter ? "" : letter);
  if (motifs?.length && store.state.letter) store.choose(motifs[0]);
}

/** followCures puts the cures of each finding beneath it while they are true. */
function followCures(store, items, known) {
  const body = (state) => (isOpen("check") && state.answer.findings.length ? { job: state.text, blank: state.blank } : null);
  return follow(store, "cures", body, (answer, state, { waiting, trouble }) => {
    known.cures = answer;
    putCures(items, known, store, trouble || (waiting ? "Looking for cures…" : ""));
    known.putFit?.();
  });
}

function putCures(items, { cures, fit }, store, words) {
  const found = new Map((cures?.findings || []).map((f) => [f.letter, f]));
  const whole = new Set((fit?.clear === false ? fit.offers : []).map(change));
  for (const [letter, one] of items) {
    const its = found.get(letter);
    if (its) arrange(one.ways, curesOf(its, whole, store));
    else arrange(one.ways, words ? [el("p", { class: "faint small" }, words)] : []);
  }
}

/** change tells whether two offers are the same. */
function change({ edits }) {
  return JSON.stringify(edits);
}

function curesOf({ cure, ways }, whole, store) {
  const list = (ways || []).map((way) => {
    const beside = [way.brings && `Then ${way.brings}.`, whole.has(change(way)) && "This clears all of it."].filter(Boolean).join(" ");
    return way.edits.length ? offerButton(way.words, way.edits, beside, store) : el("p", { class: "small" }, `${way.words}.`);
  });
  const words = list.length ? null : el("p", { class: "small" }, cure || "No cure was found that changes one thing alone.");
  return [words, ...list].filter(Boolean);
}

/** offerButton takes a change that the engine has tried. */
function offerButton(words, edits, beside, store) {
  const button = el("button", { type: "button", class: "way", onclick: () => store.change(edits) }, words);
  return el("div", {}, button, beside ? el("span", { class: "faint small" }, " " + beside) : null);
}

/** folded shows the first few, and the rest behind "more". */
function folded(offers) {
  if (offers.length <= atOnce + 1) return offers;
  const rest = offers.slice(atOnce);
  return [...offers.slice(0, atOnce),
    el("details", { class: "more" }, el("summary", {}, `${rest.length} more`), el("div", { class: "ways" }, rest))];
}

/** followFit says what else would clear a job, or what a clear one has room for. */
function followFit(store, fits, room, items, known) {
  const body = (state) => (isOpen("check") ? { job: state.text } : null);
  return follow(store, "fit", body, (answer, state, { waiting, trouble }) => {
    known.fit = answer;
    known.putFit = () => putFit(fits, room, known, store, trouble || (waiting ? "Looking…" : ""));
    known.putFit();
    if (known.cures) putCures(items, known, store, "");
  });
}

/** putFit shows the offers, but for those that stand under a finding already. */
function putFit(fits, room, { cures, fit }, store, words) {
  const clear = fit ? fit.clear : store.state.answer?.clear;
  const shown = new Set((cures?.findings || []).flatMap((f) => f.ways.map(change)));
  const all = fit?.offers || [];
  const others = clear ? all : all.filter((offer) => !shown.has(change(offer)));
  const offers = folded(others.map((o) => offerButton(o.words, o.edits, o.cost, store)));
  const wheels = (fit?.wheels || []).map((w) => el("p", {}, w));
  const title = clear ? "What there is room for" : others.length < all.length ? "Other changes that clear all of it" : "Changes that clear all of it";
  const said = fit ? fit.words : words;
  const nothing = (all.length > 0 && others.length === 0) || !(said || offers.length);
  arrange(clear ? fits : room, []);
  arrange(clear ? room : fits, nothing ? []
    : [el("h3", {}, title), said ? el("p", { class: fit ? "small" : "faint small", role: "status" }, said) : null, ...offers, ...wheels].filter(Boolean));
}
