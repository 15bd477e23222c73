// Boxes to type in. What a person types stays as typed while they are in the
// box; the engine's own writing of it is shown when they leave.

import { el } from "./dom.js";

/** box is a control for anything that is written: a text, a length, a weight. */
export function box({ id, desc, store, send }) {
  const input = typed({ id, inputmode: "text" }, store, (text) => send(text.trim(), { typing: true }));
  const unit = el("span", { class: "unit", "aria-hidden": "true" });
  return {
    node: el("div", { class: "boxed" }, input, desc.sort === "length" ? unit : null),
    inputs: [input],
    needed: desc.needed,
    show(entry, table, state) {
      input.put(entry.text ?? desc.default ?? "", state);
      unit.textContent = state.unit || "";
    },
  };
}

/** lengths is a box for one reading or, where glass is out of round, several. */
export function lengths({ id, desc, store, send }) {
  const input = typed({ id, inputmode: "text" }, store, (text) => send(several(text), { typing: true }));
  return {
    node: el("div", { class: "boxed" }, input),
    inputs: [input],
    needed: desc.needed,
    show(entry, table, state) {
      input.put(entry.list?.length ? entry.list.join("; ") : entry.text ?? "", state);
    },
  };
}

/** several reads "3 1/8; 3 5/32" as two readings. A bare comma may be a decimal one. */
function several(text) {
  const readings = text.split(/;|,\s|\band\b/).map((t) => t.trim()).filter((t) => t !== "");
  return readings.length > 1 ? readings : text.trim();
}

/**
 * typed makes an input that hands on what is typed at once. Its put(text)
 * leaves the box alone while a person is typing in it.
 */
export function typed(attrs, store, said, tag = "input") {
  const input = el(tag, { type: tag === "input" ? "text" : null, autocomplete: "off", spellcheck: "false", autocapitalize: "off", ...attrs });
  let epoch = -1; // that of the newest letter typed
  input.addEventListener("input", () => {
    epoch = store.state.epoch;
    said(input.value);
  });
  input.addEventListener("blur", () => {
    epoch = -1;
    if (input.shown !== undefined && input.value !== input.shown) input.value = input.shown;
  });
  input.put = (text, state) => {
    input.shown = text;
    const typing = document.activeElement === input && epoch === state.epoch;
    if (!typing && input.value !== text) input.value = text;
  };
  return input;
}
