// One table of the job as a group of fields: a blank, a wheel, a motif, the
// limits. What is given stands first, the rest behind "more".

import { arrange, el, say } from "./dom.js";
import { field, title } from "./field.js";
import { isTable } from "./controls.js";

const few = 7; // so many fields need no "more"

/**
 * fields keeps the fields of one table: made when they are first needed, shown
 * anew at each answer. It returns {nodes(entryTable, state)}.
 */
export function fieldsOf(store, about, options = {}) {
  const made = new Map(); // key → field
  return (table, describe, state) => {
    const shown = [];
    for (const entry of table.fields) {
      const desc = describe(entry.key);
      if (!desc || isTable(desc.sort)) continue;
      if (made.get(entry.key)?.desc !== desc) made.set(entry.key, field(desc, store, about, options));
      const one = made.get(entry.key);
      one.show(entry, table, state);
      shown.push({ ...one, entry });
    }
    return shown;
  };
}

/** card is a group of fields under a heading. Its buttons are given by the caller. */
export function card(store, about, { level = "h3" } = {}) {
  const heading = el(level, {});
  const first = el("div", { class: "fields" });
  const rest = el("div", { class: "fields" });
  const more = el("details", { class: "more" }, el("summary", {}, el("span", {})), rest);
  const extra = el("div", {});
  const buttons = el("div", { class: "buttons" });
  const node = el("section", { class: "card" }, heading, first, extra, more, buttons);
  const fields = fieldsOf(store, about);
  const places = new Map(); // key → whether it stands first: settled when it is first seen
  return {
    node, heading, extra, buttons,
    show(table, describe, state, name) {
      node.dataset.path = table.path;
      say(heading, name);
      const shown = fields(table, describe, state);
      for (const one of shown) if (!places.has(one.entry.key)) places.set(one.entry.key, standsFirst(one, shown.length));
      const ahead = shown.filter((one) => places.get(one.entry.key));
      const behind = shown.filter((one) => !places.get(one.entry.key));
      arrange(first, ahead.map((one) => one.node));
      arrange(rest, behind.map((one) => one.node));
      more.hidden = behind.length === 0;
      say(more.querySelector("summary span"), moreWords(behind));
    },
  };
}

function standsFirst({ entry, desc }, n) {
  return n <= few || entry.given || desc.needed || desc.own;
}

function moreWords(behind) {
  const names = behind.map((one) => title(one.entry.key).toLowerCase());
  const some = names.slice(0, 3).join(", ");
  return names.length > 3 ? `More: ${some} and ${names.length - 3} others` : `More: ${some}`;
}
