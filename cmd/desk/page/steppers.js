// Whole numbers, one up and one down; and "most" where the engine may count.

import { el, say } from "./dom.js";
import { asNumber, isRanged } from "./sliders.js";
import { title } from "./field.js";
import { typed } from "./boxes.js";

export function stepper({ id, desc, store, send }) {
  const name = title(desc.name);
  const input = typed({ id, inputmode: "numeric", class: "figure" }, store, (text) => send(asNumber(text), { typing: true }));
  const now = { value: 0 };
  const by = (n) => {
    store.rest();
    send(within(now.value + n, desc));
  };
  const fewer = el("button", { type: "button", "aria-label": name + ": one fewer", onclick: () => by(-1) }, "−");
  const more = el("button", { type: "button", "aria-label": name + ": one more", onclick: () => by(1) }, "+");
  const most = desc.sort === "count" ? mostSwitch(now, send) : null;
  return {
    node: el("div", { class: "stepper" }, fewer, input, more, most?.node),
    inputs: [input],
    needed: desc.needed,
    show(entry, table, state) {
      const text = entry.text ?? String(desc.default ?? "");
      const found = text === "most" ? state.most?.get(entry.path) : { count: Number.parseInt(text, 10) };
      if (Number.isFinite(found?.count)) now.value = found.count;
      if (most) say(most.words, text === "most" ? mostWords(found) : "");
      input.put(text, state);
      fewer.disabled = isRanged(desc) && now.value <= desc.min;
      more.disabled = isRanged(desc) && now.value >= desc.max;
      if (most) most.box.checked = text === "most";
    },
  };
}

function mostSwitch(now, send) {
  const box = el("input", { type: "checkbox", onchange: () => send(box.checked ? "most" : now.value || 1) });
  const words = el("span", { class: "said" });
  return { box, words, node: el("div", {}, el("label", { class: "tick" }, box, "as many as clear"), words) };
}

function mostWords(found) {
  if (!found) return "Looking how many…";
  return found.clears ? `${found.count} clear` : `not even ${found.count} clear`;
}

function within(value, desc) {
  return isRanged(desc) ? Math.min(desc.max, Math.max(desc.min, value)) : value;
}
