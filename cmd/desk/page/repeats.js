// Repeats of the design: words for the usual ones, and a button for each by its number.

import { arrange, el } from "./dom.js";
import { typed } from "./boxes.js";
import { tables } from "./choices.js";

const most = 48; // so many have buttons; of more a list is typed

export function repeats({ id, desc, store, send }) {
  const now = { on: new Set(), known: 0 };
  const words = (desc.words ?? []).map((word, i) =>
    el("input", { type: "radio", name: id, id: i ? `${id}-${i}` : id, value: word, onchange: () => send(word) }));
  const named = words.length ? el("div", { class: "radios" }, words.map((input) => el("label", {}, input, input.value))) : null;
  const row = el("div", { class: "numbered" });
  const list = typed({ id: id + "-list", inputmode: "text", hidden: true, "aria-labelledby": id + "-name" }, store, (text) => send(asList(text), { typing: true }));
  const press = (n) => {
    const next = new Set(now.on);
    if (!next.delete(n)) next.add(n);
    if (next.size === 0 && words.length) return; // it has to stand somewhere
    send(next.size ? [...next].sort((a, b) => a - b) : "");
  };
  const buttons = [];
  const button = (n) => (buttons[n] ??= el("button", { type: "button", onclick: () => press(n) }, String(n)));
  return {
    node: el("div", { class: "repeats" }, named, row, list),
    inputs: words,
    group: "group",
    needed: desc.needed,
    show(entry, table, state) {
      const n = count(state), bare = new Set(numbers(fieldOf(state, "layout", "bare")));
      now.on = new Set(standing(entry, n, desc.words ?? [], bare));
      for (const input of words) input.checked = !entry.list && entry.text === input.value;
      list.hidden = n <= most;
      list.put(entry.list ? entry.list.join(", ") : "", state);
      arrange(row, n > most ? [] : Array.from({ length: n }, (_, i) => button(i + 1)));
      for (let i = 1; i <= Math.min(n, most); i++) mark(button(i), i, now.on.has(i), words.length > 0);
    },
  };
}

function mark(button, n, on, carries) {
  const label = carries ? `On repeat ${n}` : `Repeat ${n} left free`;
  if (button.getAttribute("aria-label") !== label) button.setAttribute("aria-label", label);
  if (button.getAttribute("aria-pressed") !== String(on)) button.setAttribute("aria-pressed", String(on));
}

/** standing lists the repeats that a value means. */
function standing(entry, n, words, bare) {
  if (entry.list) return numbers(entry);
  if (!words.length) return [];
  const every = Array.from({ length: n }, (_, i) => i + 1).filter((i) => !bare.has(i));
  const [, odd, even] = words;
  return every.filter((i) => (entry.text === odd ? i % 2 === 1 : entry.text === even ? i % 2 === 0 : true));
}

function numbers(entry) {
  return (entry?.list ?? []).map(Number).filter(Number.isInteger);
}

function fieldOf(state, table, key) {
  return tables(state, table)[0]?.fields.find((field) => field.key === key);
}

/** count is how many repeats the job has; none while that is no number. */
function count(state) {
  const n = Number(fieldOf(state, "layout", "repeats")?.text);
  return Number.isInteger(n) && n > 0 ? n : 0;
}

function asList(text) {
  const items = text.split(/[\s,;[\]]+/).filter((item) => item !== "");
  return items.length ? items.map((item) => (/^\d+$/.test(item) ? Number(item) : item)) : "";
}
