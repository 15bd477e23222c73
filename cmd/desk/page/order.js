// Wheels in an order: each in turn, and a place for the next.

import { arrange, el } from "./dom.js";
import { rack } from "./choices.js";

export function order({ id, desc, send }) {
  const node = el("div", { class: "order" });
  const now = { list: [], shown: "" };
  const take = (i) => send(orNone(now.list.filter((_, at) => at !== i)));
  const put = (i, name) => send(orNone([...now.list.slice(0, i), name, ...now.list.slice(i + 1)].filter((w) => w !== "")));
  return {
    node,
    inputs: [],
    group: "group",
    needed: desc.needed,
    show(entry, table, state) {
      const names = rack(state);
      const shown = JSON.stringify([entry.list || [], names]);
      if (shown === now.shown) return;
      now.shown = shown;
      now.list = entry.list || [];
      const rows = [...now.list, ""].map((name, i) => row(id, i, name, names, put, take));
      arrange(node, rows);
    },
  };
}

function row(id, i, name, names, put, take) {
  const select = el("select", { "aria-label": `wheel ${i + 1}`, onchange: () => put(i, select.value) },
    el("option", { value: "" }, i ? "then none in particular" : "none in particular"),
    names.map((n) => el("option", { value: n }, n)));
  select.value = name;
  const out = name === "" ? null : el("button", { type: "button", class: "words", onclick: () => take(i) }, "take out");
  return el("div", { class: "one-wheel" }, select, out);
}

function orNone(list) {
  return list.length ? list : "";
}
