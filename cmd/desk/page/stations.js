// The stations of a blank as a table: one row a measured height.

import { arrange, el, say } from "./dom.js";
import { fieldsOf } from "./card.js";
import { title } from "./field.js";

const always = ["height", "across", "wall"]; // the columns a table begins with

/** stations is the table of one blank. */
export function stations(store, about) {
  const rows = new Map(); // path → row
  const columns = new Set(always);
  const head = el("tr", {});
  const body = el("tbody", {});
  const others = el("div", { class: "buttons" });
  const adder = addition(store);
  const table = el("table", { class: "stations" },
    el("caption", {}, "Stations, from the foot up"), el("thead", {}, head), body);
  const show = (list, describe, blankPath, state) => {
    for (const item of list) for (const f of item.fields) if (f.given) columns.add(f.key);
    const keys = (list[0]?.fields || []).map((f) => f.key);
    const shown = keys.filter((key) => columns.has(key));
    heads(head, shown);
    arrange(body, list.map((item, i) => {
      if (!rows.has(item.path)) rows.set(item.path, row(store, about));
      const one = rows.get(item.path);
      one.show(item, describe, state, shown, i + 1, list.length);
      return one.node;
    }));
    adder.show(blankPath);
    offer(others, keys.filter((key) => !columns.has(key)), (key) => {
      columns.add(key);
      show(list, describe, blankPath, state);
    });
  };
  return { node: el("div", { class: "scroll" }, table, adder.node, others), show };
}

function heads(head, keys) {
  if (head.dataset.keys === keys.join(" ")) return;
  head.dataset.keys = keys.join(" ");
  arrange(head, [
    ...keys.map((key) => el("th", { scope: "col" }, title(key))),
    el("td", {}),
  ]);
}

function row(store, about) {
  const fields = fieldsOf(store, about, { compact: true });
  const cells = new Map(); // key → td
  let path = "";
  const drop = el("button", { type: "button", class: "words", onclick: () => store.change([{ op: "drop", path }]) }, "Remove");
  const last = el("td", {}, drop);
  const node = el("tr", {});
  return {
    node,
    show(item, describe, state, keys, number, n) {
      path = item.path;
      node.dataset.path = path;
      const shown = new Map(fields(item, describe, state).map((one) => [one.entry.key, one]));
      const tds = keys.map((key) => {
        if (!cells.has(key)) cells.set(key, el("td", {}, shown.get(key)?.node));
        name(shown.get(key), key, number);
        return cells.get(key);
      });
      arrange(node, [...tds, last]);
      drop.disabled = n <= 2;
      drop.setAttribute("aria-label", `Remove station ${number}`);
    },
  };
}

function name(one, key, number) {
  const label = one?.node.querySelector(".unseen");
  if (label) say(label, `${title(key)} of station ${number}`);
}

/** addition adds a station where its height puts it: the engine fills in the rest. */
function addition(store) {
  let path = "";
  const height = el("input", { type: "text", inputmode: "text", autocomplete: "off", class: "figure" });
  const add = () => {
    const value = height.value.trim() ? { height: height.value.trim() } : {};
    store.change([{ op: "add", path: path + ".station", value }]);
    height.value = "";
  };
  height.addEventListener("keydown", (event) => event.key === "Enter" && add());
  return {
    node: el("div", { class: "adder" }, el("label", {}, "Add a station at height ", height),
      el("button", { type: "button", onclick: add }, "Add")),
    show(blankPath) {
      path = blankPath;
    },
  };
}

function offer(root, keys, take) {
  const key = keys.join(" ");
  if (root.dataset.keys === key) return;
  root.dataset.keys = key;
  arrange(root, keys.map((k) =>
    el("button", { type: "button", class: "words", onclick: () => take(k) }, `Measured ${k} too`)));
}
