// The numbers one works by: dividers, what the glass holds, what the set is.

import { arrange, el, say } from "./dom.js";
import { follow } from "./slow.js";

export function mount(root, store) {
  const groups = el("div", {});
  const ground = el("div", {});
  const set = el("div", { class: "figures" });
  root.append(groups, ground, set);
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
  followGround(store, ground);
  followSet(store, set);
}

/** followGround shows what the cuts take, which is worked out when the text rests. */
function followGround(store, root) {
  const body = (state) => ({ job: state.text, blank: state.blank });
  follow(store, "ground", body, (answer) => {
    arrange(root, ((answer && answer.numbers) || []).map((g) => {
      const shown = group(g.title);
      shown.show(g.rows);
      return shown.node;
    }));
  });
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
    if (!waiting && !trouble && !answer) return arrange(root, []);
    const list = answer
      ? el("ul", { class: "set", "aria-labelledby": "set-title" }, answer.blanks.map((b) => ofSet(b, store)))
      : el("p", { class: "faint", role: "status" }, trouble || "Laying out the set…");
    arrange(root, [el("h3", { id: "set-title" }, "Blank by blank"), list]);
  });
}

function ofSet(b, store) {
  const name = el("button", { type: "button", class: "words", onclick: () => store.setBlank(b.name) }, b.name);
  const found = (b.findings || []).map((f) => el("li", {}, `${f.letter}  ${f.words}`));
  return el("li", {}, name, " ", el("span", { class: b.clear ? "faint" : "warn" }, b.clear ? "clears" : "does not clear"),
    b.why ? el("p", { class: "small" }, b.why) : null, found.length ? el("ul", { class: "notes" }, found) : null);
}
