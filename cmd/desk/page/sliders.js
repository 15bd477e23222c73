// A number with a range: a slider for the hand, and a box for the same number.

import { el } from "./dom.js";
import { typed } from "./boxes.js";

export function slider({ id, desc, store, send }) {
  const ranged = isRanged(desc);
  const step = ranged ? stepOf(desc.max - desc.min) : 0;
  const number = typed({ id, inputmode: "decimal", class: "figure" }, store, (text) => send(asNumber(text), { typing: true }));
  const range = ranged ? rangeOf(desc, step, id) : null;
  range?.addEventListener("input", () => {
    number.value = tidy(range.valueAsNumber, step);
    send(Number(number.value), { typing: true });
  });
  range?.addEventListener("change", () => store.rest());
  return {
    node: el("div", { class: "slider" }, range, number, desc.sort === "degrees" ? el("span", { class: "unit", "aria-hidden": "true" }, "°") : null),
    inputs: range ? [number, range] : [number],
    needed: desc.needed,
    show(entry, table, state) {
      const text = entry.text ?? String(desc.default ?? "");
      number.put(text, state);
      const value = Number.parseFloat(text);
      if (range) range.hidden = !Number.isFinite(value);
      if (range && Number.isFinite(value) && range.valueAsNumber !== value) range.value = String(value);
    },
  };
}

function rangeOf(desc, step, id) {
  return el("input", { type: "range", min: desc.min, max: desc.max, step, "aria-labelledby": id + "-name" });
}

/** isRanged is whether a key has a least and a most. */
export const isRanged = ({ min, max }) => max > min;

/** stepOf is about a hundredth of a range: 1, 2 or 5 times a power of ten. */
function stepOf(width) {
  const rough = width / 100;
  const power = 10 ** Math.floor(Math.log10(rough));
  const times = [1, 2, 5, 10].find((t) => t * power >= rough * 0.999);
  return Number((times * power).toPrecision(1));
}

function tidy(value, step) {
  const places = Math.max(0, -Math.floor(Math.log10(step)));
  return String(Number(value.toFixed(places)));
}

/** asNumber is a plain number where one was typed; else the text, for the engine to judge. */
export function asNumber(text) {
  const t = text.trim();
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(t) ? Number(t) : t;
}
