// Two values that belong together: the heights of a band, a motif's place.

import { el } from "./dom.js";
import { typed } from "./boxes.js";

const names = { heights: ["from", "to"], place: ["across", "up"], wear: ["lost", "in"] };

export function pair({ id, desc, store, send }) {
  const both = () => inputs.map((input) => input.value.trim());
  const said = () => {
    const values = both();
    if (values.every((v) => v === "")) send("", { typing: true });
    else if (values.every((v) => v !== "")) send(values, { typing: true });
  };
  const inputs = names[desc.sort].map((_, i) => typed({ id: i ? id + "-2" : id, inputmode: "text" }, store, said));
  const labelled = inputs.map((input, i) => el("label", {}, el("span", { class: "part" }, names[desc.sort][i]), input));
  return {
    node: el("div", { class: "two" }, labelled),
    inputs,
    group: "group",
    needed: desc.needed,
    show(entry, table, state) {
      const list = entry.list || [];
      inputs.forEach((input, i) => input.put(list[i] ?? "", state));
    },
  };
}
