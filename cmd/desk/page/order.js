// Wheels in an order: each in turn, moved up and down by one, and a place for the next.

import { arrange, el } from "./dom.js";
import { rack } from "./choices.js";

export function order({ id, desc, send }) {
  const node = el("div", { class: "order" });
  const now = { list: [], shown: "" };
  const take = (i) => send(orNone(now.list.filter((_, at) => at !== i)));
  const put = (i, name) => send(orNone([...now.list.slice(0, i), name, ...now.list.slice(i + 1)].filter((w) => w !== "")));
  const swap = (i, by) => {
    const list = [...now.list];
    [list[i], list[i + by]] = [list[i + by], list[i]];
    now.follow = { at: i + by, way: by < 0 ? "earlier" : "later" };
    send(list);
  };
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
      const free = names.filter((name) => !now.list.includes(name));
      const rows = [...now.list, ...(free.length ? [""] : [])].map((name, i) =>
        row(i, name, { names: name === "" ? free : [name, ...free], last: now.list.length - 1, put, take, swap }));
      arrange(node, rows);
      follow(node, now);
    },
  };
}

/** follow keeps focus on the wheel that was moved. */
function follow(node, now) {
  const { at, way } = now.follow ?? {};
  delete now.follow;
  const buttons = [...(node.children[at]?.querySelectorAll("button") ?? [])];
  (buttons.find((b) => b.textContent === way && !b.disabled) ?? buttons.find((b) => !b.disabled))?.focus();
}

function row(i, name, { names, last, put, take, swap }) {
  const select = el("select", { "aria-label": `wheel ${i + 1}`, onchange: () => put(i, select.value) },
    name === "" ? el("option", { value: "" }, i ? "then none in particular" : "none in particular") : null,
    names.map((n) => el("option", { value: n }, n)));
  select.value = name;
  if (name === "") return el("div", { class: "one-wheel" }, select);
  const button = (words, act, disabled = false) =>
    el("button", { type: "button", class: "words", disabled, "aria-label": `${name}: ${words}`, onclick: act }, words);
  return el("div", { class: "one-wheel" }, select, el("span", { class: "its-place" },
    button("earlier", () => swap(i, -1), i === 0), button("later", () => swap(i, 1), i === last), button("take out", () => take(i))));
}

function orNone(list) {
  return list.length ? list : "";
}
