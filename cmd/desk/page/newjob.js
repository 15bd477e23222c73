// A job begun anew: from the starter, or from a file chosen on this machine. It
// has no file of its own until it is saved under a name.

import { el } from "./dom.js";
import { dialog } from "./dialog.js";
import { file } from "./disk.js";
import { guide } from "./guide.js";

const largest = 1 << 20; // bytes of a file that is read; no job comes near it

/** begin asks what a new job begins from. */
export function begin(store, about) {
  const begins = (act) => () => { node.close(); act(); };
  const starter = (unit) => begins(() => file.begin(about.starters[unit]));
  const node = dialog("New job",
    el("p", {}, "It has no file until you save it. The file that is open stays as it is."),
    el("div", { class: "buttons" },
      el("button", { type: "button", class: "main", id: "new-guide", onclick: begins(() => guide(store, about)) }, "From my calipers"),
      el("button", { type: "button", id: "new-in", onclick: starter("in") }, "A plain tumbler, in inches"),
      el("button", { type: "button", id: "new-mm", onclick: starter("mm") }, "A plain tumbler, in mm"),
      el("button", { type: "button", class: "words", onclick: () => node.close() }, "Leave it")));
}

/** openAnother shows a job file that is chosen here; it is a copy until it is saved. */
export function openAnother() {
  document.querySelector("#chosen-file")?.remove(); // of a choice that was left
  const input = el("input", { type: "file", accept: ".toml", id: "chosen-file", hidden: true });
  input.addEventListener("change", async () => {
    if (input.files.length) await show(input.files[0]);
  });
  document.body.append(input);
  input.click();
}

/** takeDropped shows a job file that is dropped anywhere on the page. */
export function takeDropped() {
  addEventListener("dragover", (event) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  addEventListener("drop", (event) => {
    const [dropped] = event.dataTransfer?.files || [];
    if (!dropped || !/\.toml$/i.test(dropped.name)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    show(dropped);
  }, true);
}

async function show(chosen) {
  try {
    file.begin(await textOf(chosen), chosen.name);
  } catch (err) {
    file.said = `${chosen.name}: ${err.message}`;
    file.tell();
  }
}

async function textOf(chosen) {
  if (chosen.size > largest) throw new Error("too large for a job.");
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(await chosen.arrayBuffer());
  } catch {
    throw new Error("this is no text, so no job.");
  }
}
