// The numbers one works by: dividers, what the glass holds, what the set is.

import { arrange, el, say } from "./dom.js";
import { follow } from "./slow.js";

export function mount(root, store) {
  const groups = el("div", {});
  const set = el("div", { class: "scroll" });
  root.append(groups, set);
  const made = new Map(); // title → group
  let shown = null;
  store.subscribe((state) => {
    root.classList.toggle("stale", !state.fresh);
    if (!state.answer || state.answer === shown) return;
    shown = state.answer;
    arrange(groups, (shown.numbers || []).map((g) => {
      if (!made.has(g.title)) made.set(g.title, group(g.title));
      made.get(g.title).show(g.rows);
      return made.get(g.title).node;
    }));
  });
  followSet(store, set);
}

function group(title) {
  const body = el("dl", {});
  const rows = [];
  return {
    node: el("section", { class: "figures" }, el("h3", {}, title), body),
    show(list) {
      while (rows.length < list.length) rows.push(row());
      rows.length = list.length;
      list.forEach((r, i) => rows[i].show(r));
      arrange(body, rows.map((r) => r.node));
    },
  };
}

function row() {
  const name = el("dt", {});
  const value = el("dd", {});
  const hint = el("dd", { class: "faint small" });
  return {
    node: el("div", {}, name, value, hint),
    show(r) {
      say(name, r.name);
      say(value, r.value);
      say(hint, r.hint || "");
    },
  };
}

/** followSet lists the blanks of a set: whether each clears, and what it is held by. */
function followSet(store, root) {
  const body = (state) => (state.answer.blanks.length > 1 ? { job: state.text } : null);
  follow(store, "set", body, (answer, state, { waiting, trouble }) => {
    if (!answer) return arrange(root, waiting || trouble ? [el("h3", {}, "The set"), el("p", { class: "faint", role: "status" }, trouble || "Laying out the set…")] : []);
    const head = ["Blank", "Clear", "Found", "Why"].map((w) => el("th", { scope: "col" }, w));
    const rows = answer.blanks.map((b) => setRow(b, store));
    arrange(root, [
      el("h3", {}, "The set"),
      el("table", { class: "set" }, el("thead", {}, el("tr", {}, head)), el("tbody", {}, rows)),
      ...(answer.words || []).map((w) => el("p", { class: "small" }, w)),
    ]);
  });
}

function setRow(b, store) {
  const name = el("button", { type: "button", class: "words", onclick: () => store.setBlank(b.name) }, b.name);
  const found = (b.findings || []).map((f) => `${f.letter} ${f.words}`).join(" ");
  return el("tr", {}, el("th", { scope: "row" }, name), el("td", {}, b.clear ? "yes" : "no"), el("td", {}, found), el("td", {}, b.why || ""));
}
