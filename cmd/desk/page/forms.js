// Forms for everything a job can say, made wholly from the descriptions of
// tables and keys: which table stands under which heading is all that is
// decided here.

import { arrange, el, say } from "./dom.js";
import { card } from "./card.js";
import { numberOf, tables } from "./choices.js";
import { motifCard } from "./motifcard.js";
import { stations } from "./stations.js";
import { describer } from "./describe.js";
import { title } from "./field.js";
import { follow } from "./slow.js";

const places = {
  "": "glass", blank: "glass", station: "glass", base: "glass",
  wheel: "wheels", shop: "wheels", limits: "check",
}; // all else is design

const inOthers = new Set(["station", "part"]); // shown by the card of the table they stand in

const names = { "": "The job", base: "The base", limits: "Limits", shop: "The shop", layout: "Round the glass" };

export function mount(root, store, about) {
  const describe = describer(about);
  const form = { store, about, describe, cards: new Map(), begun: false };
  const roots = ["glass", "wheels", "design", "check"].map((place) => [place, root.querySelector("#forms-" + place)]);
  let shown = null;
  let most = new Map(); // path → the count found for "most"
  const show = (state) => {
    if (!state.form) return;
    const now = [state.form, state.mistake, state.epoch, state.answer?.unit, most];
    if (shown && now.every((x, i) => x === shown[i])) return;
    shown = now;
    const view = { ...state, unit: state.answer?.unit, most };
    for (const [place, at] of roots) keepPlace(at, () => arrange(at, nodesAt(place, form, view)));
    form.begun = true; // cards made from now on are of things just added
  };
  store.subscribe(show);
  follow(store, "most", (state) => (asksMost(state) ? { job: state.text } : null), (answer, state) => {
    most = new Map((answer?.found || []).map((f) => [f.path, f]));
    show(state);
  });
  motifCard.follow(store, form.cards);
}

/** keepPlace leaves focus near where it was when what had it is removed. */
function keepPlace(root, change) {
  const had = document.activeElement;
  change();
  if (had.isConnected || root.contains(document.activeElement)) return;
  root.closest("[role=tabpanel]").focus({ preventScroll: true });
}

function asksMost({ form }) {
  return (form?.tables || []).some((t) => t.fields.some((f) => f.text === "most"));
}

function nodesAt(place, form, view) {
  const nodes = [];
  for (const table of view.form.tables) {
    if ((places[table.table] || "design") !== place || inOthers.has(table.table)) continue;
    if (table.table === "base" && !table.line) continue; // "Add a base" above the wrap makes one that can be laid
    nodes.push(shownCard(form, table, view));
  }
  if (place === "wheels") nodes.splice(lastOf(view, "wheel", nodes), 0, addWheels(form));
  if (place === "glass") nodes.push(addBlank(form));
  return nodes;
}

function shownCard(form, table, view) {
  const key = table.table === "motif" ? "motif " + table.path : table.path || "top";
  if (!form.cards.has(key)) form.cards.set(key, newCard(form, table));
  const one = form.cards.get(key);
  one.show(table, view);
  return one.node;
}

function newCard(form, table) {
  const { store, about, describe } = form;
  if (table.table === "motif") return motifCard(store, about, describe);
  const many = about.tables.find((t) => t.name === table.table)?.many;
  const one = card(store, about, { level: many ? "h4" : "h3" });
  const extra = table.table === "blank" ? blankTable(one, form) : () => {};
  const drop = many ? dropButton(one, store) : null;
  const fold = many ? folding(one, form.begun) : null;
  return {
    node: fold ? fold.node : one.node,
    show(now, view) {
      const name = nameOf(now, view);
      one.show(now, describe(now), view, name);
      extra(now, view);
      if (drop) drop(now, view);
      if (fold) fold.show(name, tables(view, now.table).length === 1 || isShown(now, view));
    },
  };
}

/** isShown is whether a table is of the blank that is drawn. */
function isShown({ table, title: name }, view) {
  return table === "blank" && name === view.blank;
}

/** folding folds one of several away behind its name; one that was just added is open. */
function folding(one, added) {
  const words = el("h3", {});
  const node = el("details", { class: "item", open: added }, el("summary", {}, words), one.node);
  let first = true;
  one.heading.classList.add("unseen");
  return {
    node,
    show(name, wanted) {
      say(words, name);
      if (first && wanted) node.open = true;
      first = false;
    },
  };
}

function blankTable(one, { store, about, describe }) {
  const table = stations(store, about);
  one.extra.append(table.node);
  return (now, view) => {
    const list = tables(view, "station").filter((s) => s.path.startsWith(now.path + ".") || onlyBlank(view));
    table.show(list, describe(list[0] || { table: "station", fields: [] }), now.path, view);
  };
}

function onlyBlank(view) {
  return tables(view, "blank").length === 1;
}

function dropButton(one, store) {
  let path = "";
  const button = el("button", { type: "button", onclick: () => store.change([{ op: "drop", path }]) }, "Remove");
  one.buttons.append(button);
  return (now, view) => {
    path = now.path;
    button.hidden = tables(view, now.table).length < 2;
    button.setAttribute("aria-label", `Remove ${nameOf(now, view)}`);
  };
}

function nameOf(table, view) {
  if (table.table in names) return names[table.table];
  const called = table.fields.find((f) => f.key === "name")?.text || table.title || "";
  const several = tables(view, table.table).length > 1;
  const kind = title(table.table) + (several ? " " + numberOf(table.path) : "");
  return called ? `${kind}: ${called}` : kind;
}

function lastOf(view, name, nodes) {
  return Math.min(nodes.length, tables(view, name).length);
}

function addWheels(form) {
  const { store, about, cards } = form;
  if (!cards.has("add wheels")) {
    const edges = about.tables.find((t) => t.name === "wheel")?.keys.find((k) => k.name === "edge")?.words || [];
    const add = (edge) => store.change([{ op: "add", path: "wheel", value: { edge } }]);
    const buttons = edges.map((edge) => el("button", { type: "button", onclick: () => add(edge) }, edge));
    cards.set("add wheels", { node: el("section", { class: "card" }, el("h3", {}, "Add a wheel to the rack"),
      el("p", { class: "about" }, "mitre: an edge like a V; gang: several Vs side by side on one wheel"), el("div", { class: "buttons" }, buttons)) });
  }
  return cards.get("add wheels").node;
}

function addBlank({ store, cards }) {
  if (!cards.has("add blank")) {
    const add = () => store.change([{ op: "add", path: "blank", value: {} }]);
    const words = "Is the set not alike? Add each blank as you measured it.";
    cards.set("add blank", {
      node: el("section", { class: "card" }, el("h3", {}, "Another blank"), el("p", { class: "about" }, words),
        el("div", { class: "buttons" }, el("button", { type: "button", onclick: add }, "Add a blank"))),
    });
  }
  return cards.get("add blank").node;
}
