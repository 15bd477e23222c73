// Forms for everything a job can say, made wholly from the descriptions of
// tables and keys: which table stands under which heading is all that is
// decided here.

import { arrange, el } from "./dom.js";
import { card } from "./card.js";
import { numberOf, tables } from "./choices.js";
import { motifCard } from "./motifcard.js";
import { stations } from "./stations.js";
import { describer } from "./describe.js";
import { title } from "./field.js";

const places = {
  "": "glass", blank: "glass", station: "glass", base: "glass",
  wheel: "wheels", shop: "wheels", limits: "check",
}; // all else is design

const names = { "": "The job", limits: "Limits", shop: "The shop", layout: "Round the glass" };

export function mount(root, store, about) {
  const describe = describer(about);
  const form = { store, about, describe, cards: new Map() };
  const roots = ["glass", "wheels", "design", "check"].map((place) => [place, root.querySelector("#forms-" + place)]);
  let shown = null;
  store.subscribe((state) => {
    if (!state.form) return;
    const now = [state.form, state.mistake, state.epoch, state.answer?.unit];
    if (shown && now.every((x, i) => x === shown[i])) return;
    shown = now;
    const view = { ...state, unit: state.answer?.unit };
    for (const [place, at] of roots) arrange(at, nodesAt(place, form, view));
  });
  motifCard.follow(store, form.cards);
}

function nodesAt(place, form, view) {
  const nodes = [];
  for (const table of view.form.tables) {
    if ((places[table.table] || "design") !== place || table.table === "station") continue;
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
  const one = card(store, about);
  const extra = table.table === "blank" ? blankTable(one, form) : () => {};
  const many = about.tables.find((t) => t.name === table.table)?.many;
  const drop = many ? dropButton(one, store) : null;
  return {
    node: one.node,
    show(now, view) {
      one.show(now, describe(now), view, nameOf(now, view));
      extra(now, view);
      if (drop) drop(now, view);
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
  const button = el("button", { type: "button", onclick: () => store.change([{ op: "drop", path }]) }, "Take out");
  one.buttons.append(button);
  return (now, view) => {
    path = now.path;
    button.hidden = tables(view, now.table).length < 2;
    button.setAttribute("aria-label", `Take out ${nameOf(now, view)}`);
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
    cards.set("add wheels", { node: el("section", { class: "card" }, el("h3", {}, "Add a wheel to the rack"), el("div", { class: "buttons" }, buttons)) });
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
