// The job's text as it stands in the file, to read and to write in.

import { el, say } from "./dom.js";
import { dialog } from "./dialog.js";
import { wrongWords } from "./field.js";

/** jobText opens the text, at a line if one is given. */
export function jobText(store, line = 0) {
  const area = el("textarea", {
    id: "job-lines", spellcheck: "false", autocapitalize: "off", autocomplete: "off", wrap: "off",
    "aria-label": "The text of the job", "aria-describedby": "job-wrong", rows: 24,
  });
  const numbers = el("pre", { class: "line-numbers", "aria-hidden": "true" });
  const wrong = el("p", { class: "wrong", id: "job-wrong", role: "status" });
  const close = el("button", { type: "button", class: "main", onclick: () => node.close() }, "Done");
  const undo = el("button", { type: "button", onclick: () => store.undo() }, "Undo");
  const redo = el("button", { type: "button", onclick: () => store.redo() }, "Redo");
  let typed = null; // what was typed here and not yet answered
  area.addEventListener("input", () => {
    typed = area.value;
    store.setText(area.value, { key: "text" });
  });
  area.addEventListener("scroll", () => (numbers.scrollTop = area.scrollTop));
  area.addEventListener("blur", () => store.rest());
  const node = dialog("The text of the job", el("div", { class: "lines" }, numbers, area), wrong,
    el("div", { class: "buttons" }, close, undo, redo));
  node.classList.add("wide");
  const end = store.subscribe((state) => {
    if (state.text !== typed) put(area, state.text);
    typed = state.text;
    const mistake = state.mistake;
    say(wrong, mistake ? `${mistake.line ? `Line ${mistake.line}: ` : ""}${wrongWords(mistake)}` : "");
    area.toggleAttribute("aria-invalid", Boolean(mistake));
    count(numbers, area, mistake?.line || 0);
    undo.disabled = !store.canUndo;
    redo.disabled = !store.canRedo;
  });
  node.addEventListener("close", () => {
    store.rest();
    end();
  });
  go(area, line);
}

function put(area, text) {
  if (area.value === text) return;
  const at = area.selectionStart;
  area.value = text;
  area.setSelectionRange(Math.min(at, text.length), Math.min(at, text.length));
}

/** count numbers the lines; the one that is wrong is marked. */
function count(numbers, area, wrong) {
  const n = area.value.split("\n").length;
  const key = n + " " + wrong;
  if (numbers.dataset.key === key) return;
  numbers.dataset.key = key;
  numbers.replaceChildren();
  for (let i = 1; i <= n; i++) numbers.append(el("span", { class: i === wrong ? "at" : null }, i + "\n"));
}

function go(area, line) {
  const start = area.value.split("\n").slice(0, Math.max(0, line - 1)).join("\n").length + (line > 1 ? 1 : 0);
  area.focus();
  area.setSelectionRange(start, start);
  if (line > 1) area.scrollTop = (area.scrollHeight / area.value.split("\n").length) * (line - 4);
}
