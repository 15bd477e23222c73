// Rings round what the check found, with the letters of the list.

import { say } from "./dom.js";
import { shape, put, keep } from "./shapes.js";

/** showRings draws rings where they are, and keeps their size on the screen. */
export function showRings(group, rings, state, perMillimetre) {
  const known = thinned(rings.filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)), state.letter, 26 / perMillimetre);
  keep(group, known, ring, (mark, { letter, x, y }) => {
    const finding = state.answer.findings.find((f) => f.letter === letter);
    put(mark, "data-letter", letter);
    put(mark, "aria-label", `Finding ${letter}${finding ? ": " + finding.words : ""}`);
    put(mark, "aria-pressed", String(state.letter === letter));
    put(mark, "class", state.letter === letter ? "ring chosen" : "ring");
    put(mark, "transform", `translate(${x} ${y}) scale(${1 / perMillimetre} ${-1 / perMillimetre})`);
    say(mark.lastElementChild, letter);
  });
}

/** thinned leaves out rings of one letter that would lie on each other, but none of the chosen finding. */
function thinned(rings, chosen, least) {
  const kept = [];
  for (const ring of rings) {
    const met = kept.some(({ letter, x, y }) => letter === ring.letter && Math.hypot(x - ring.x, y - ring.y) < least);
    if (!met || ring.letter === chosen) kept.push(ring);
  }
  return kept;
}

/** toggleFinding chooses a finding and its first motif, or lets go of it. */
export function toggleFinding(store, letter) {
  const again = store.state.letter === letter;
  store.chooseFinding(again ? "" : letter);
  const motif = store.state.answer?.findings.find((f) => f.letter === letter)?.motifs?.[0];
  if (!again && motif) store.choose(motif);
}

/** ringKeys lets Enter and the space bar press a ring. */
export function ringKeys(group, store) {
  group.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    toggleFinding(store, event.target.closest("[data-letter]").dataset.letter);
  });
}

function ring() {
  return shape("g", { class: "ring", role: "button", tabindex: 0 },
    shape("circle", { class: "reach", r: 22 }),
    shape("circle", { class: "round", r: 10 }),
    shape("circle", { class: "tag", cx: 13, cy: -13, r: 8.5 }),
    shape("text", { x: 13, y: -9, "text-anchor": "middle" }));
}
