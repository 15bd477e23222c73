// A motif as a card that opens: the one that is chosen on the drawing is the
// one that is open.

import { el, say } from "./dom.js";
import { card } from "./card.js";
import { numberOf } from "./choices.js";
import { open } from "./headings.js";
import { parts } from "./parts.js";

/** motifCard is the card of one motif. */
export function motifCard(store, about, describe) {
  const one = card(store, about, { level: "h4" });
  const now = { path: "", number: 0 };
  const words = el("span", {});
  const copy = el("button", { type: "button", onclick: () => copied(store, now) }, "Copy");
  const drop = el("button", { type: "button", onclick: () => dropped(store, now) }, "Remove");
  one.heading.classList.add("unseen");
  one.buttons.append(copy, drop);
  const its = parts(store, about, describe);
  one.extra.append(its.node);
  let shown = null; // the table and the state to show, of a card that is folded away
  const showParts = () => shown && node.open && its.show(...shown);
  const node = el("details", { class: "motif" }, el("summary", {}, el("h3", {}, words)), one.node);
  node.addEventListener("toggle", () => {
    showParts();
    if (node.open) {
      if (store.state.chosen !== now.number) store.choose(now.number);
      // where all is in one column it has moved up, under the buttons for it
      if (matchMedia("(max-width: 599px)").matches && node.contains(document.activeElement)) node.scrollIntoView({ block: "start" });
    }
    if (!node.open && store.state.chosen === now.number) store.choose(0);
  });
  return {
    node,
    show(table, view) {
      Object.assign(now, { path: table.path, number: numberOf(table.path) });
      node.dataset.motif = now.number;
      say(words, nameOf(table, now.number));
      one.show(table, describe(table), view, nameOf(table, now.number));
      shown = [table, view];
      showParts();
      copy.setAttribute("aria-label", `Copy motif ${now.number}`);
      drop.setAttribute("aria-label", `Remove motif ${now.number}`);
    },
    choose(number, part) {
      const on = number === now.number;
      if (node.open !== on) node.open = on;
      if (on) showParts();
      if (on) its.open(part);
      if (on && !store.state.dragging && !node.contains(document.activeElement)) near(node);
    },
  };
}

/** follow opens the card of the motif that is chosen, and closes the others. */
motifCard.follow = (store, cards) => {
  let { chosen, part } = store.state;
  store.subscribe((state) => {
    if (state.chosen === chosen && state.part === part) return;
    ({ chosen, part } = state);
    if (chosen && !document.querySelector("#panel-design").contains(document.activeElement)) open("design");
    for (const [key, one] of cards) if (key.startsWith("motif ")) one.choose(chosen, part);
  });
};

/** near brings a card into view where the numbers stand beside the drawing, and moves no drawing. */
function near(node) {
  const column = document.querySelector("#numbers");
  if (!matchMedia("(min-width: 1200px)").matches) return;
  const head = column.querySelector("#headings").offsetHeight;
  column.scrollTop += node.getBoundingClientRect().top - column.getBoundingClientRect().top - head;
}

function nameOf(table, number) {
  const text = (key) => table.fields.find((f) => f.key === key)?.text || "";
  const inside = text("inside");
  return `${number} ${text("name") || text("kind")}, ${text("wheel")}` + (inside ? `, inside ${inside}` : "");
}

function copied(store, { path }) {
  store.change([{ op: "copy", path }]);
  const last = (state) => state.form?.tables.filter((t) => t.table === "motif").length || 0;
  store.settled().then((state) => store.choose(last(state)), () => {});
}

function dropped(store, { path }) {
  store.choose(0);
  store.change([{ op: "drop", path }]);
}
