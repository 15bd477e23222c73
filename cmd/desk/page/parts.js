// What the parts of a motif have for themselves: a stem that is cut deeper than its fronds.

import { arrange, el, say } from "./dom.js";
import { fieldsOf } from "./card.js";
import { numberOf, tables } from "./choices.js";
import { title } from "./field.js";

/** parts shows each part of one motif, folded away behind its name. */
export function parts(store, about, describe) {
  const list = el("div", {});
  const node = el("section", { class: "its-parts", hidden: true }, el("h4", {}, "Its parts"),
    el("p", { class: "about" }, "Each as the motif, but for what is given here. A cut that is tapped on the wrap opens its part."), list);
  const made = new Map(); // name → part
  const known = describe({ table: "part", fields: [] });
  const keys = about.tables.find((t) => t.name === "part")?.keys ?? [];
  return {
    node,
    show(table, view) {
      const all = partsOf(table, view);
      node.hidden = all.length < 1 || keys.length === 0;
      arrange(list, all.map((part) => {
        if (!made.has(part.name)) made.set(part.name, onePart(part.name, store, about));
        const one = made.get(part.name);
        one.show(filled(part, keys, table, view), known, view);
        return one.node;
      }));
      for (const name of [...made.keys()]) if (!all.some((part) => part.name === name)) made.delete(name);
    },
    /** open shows one part, and no other where one was tapped. */
    open(name) {
      for (const [own, one] of made) if (name) one.node.open = own === name;
    },
  };
}

function onePart(name, store, about) {
  const words = el("span", {}), own = el("span", { class: "faint small" });
  const fields = el("div", { class: "fields" });
  const node = el("details", { class: "item part", "data-part": name }, el("summary", {}, words, " ", own), fields);
  const made = fieldsOf(store, about);
  say(words, name);
  return {
    node,
    show(table, describe, view) {
      const shown = made(table, describe, view);
      arrange(fields, shown.map((one) => one.node));
      const given = table.fields.filter((field) => field.given).map((field) => `${title(field.key).toLowerCase()} ${field.text}`);
      say(own, given.join(", ") || "as the motif");
    },
  };
}

/** partsOf lists the parts of a motif as it was last drawn, or those that the job names. */
function partsOf(table, view) {
  const drawn = view.answer?.wrap?.motifs.find(({ motif }) => motif === numberOf(table.path));
  const said = tables(view, "part").filter(({ path }) => path.startsWith(table.path + ".parts."));
  const missing = said.filter(({ path }) => !drawn?.parts.some((part) => part.path === path));
  return [...(drawn?.parts ?? []), ...missing.map(({ title: name, path }) => ({ name, path }))];
}

/** filled is a part as a table of the form, whether the job has it or not. */
function filled({ path }, keys, motif, view) {
  const said = tables(view, "part").find((table) => table.path === path);
  const fields = keys.map(({ name: key }) => {
    const field = said?.fields.find((one) => one.key === key) ?? { key, path: `${path}.${key}`, text: "", given: false, understood: "" };
    const of = motif.fields.find((one) => one.key === key);
    return field.given || !of?.text ? field : { ...field, understood: `as the motif: ${of.text}` };
  });
  return { table: "part", path, fields };
}
