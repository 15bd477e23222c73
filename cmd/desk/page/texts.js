// Several texts, one to a line: the strokes of a drawing as path data.

import { el } from "./dom.js";
import { typed } from "./boxes.js";

export function texts({ id, desc, store, send }) {
  const box = typed({ id, rows: 4, class: "lines" }, store, (text) => {
    const lines = text.split("\n").map((line) => line.trim()).filter((line) => line !== "");
    send(lines.length ? lines : "", { typing: true });
  }, "textarea");
  return {
    node: el("div", { class: "boxed" }, box),
    inputs: [box],
    needed: desc.needed,
    show(entry, table, state) {
      box.put((entry.list ?? []).join("\n"), state);
    },
  };
}
