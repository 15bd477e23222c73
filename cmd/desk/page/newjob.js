// A job begun anew: from the starter, or from a file of this machine. It
// has no file of its own until it is saved under a name.

import { el } from "./dom.js";
import { dialog } from "./dialog.js";
import { file } from "./disk.js";
import { guide } from "./guide.js";
import { textOf } from "./reading.js";

const unread = { tooLarge: "too large for a job.", noText: "this is no text, so no job." };

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

/** show begins with a job file of this machine. */
export async function show(chosen) {
  try {
    file.begin(await textOf(chosen, unread), chosen.name);
  } catch (err) {
    file.said = `${chosen.name}: ${err.message}`;
    file.tell();
  }
}
