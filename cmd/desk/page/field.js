// One key of the job as a field: its name, what it is, its control, what was
// understood, what is wrong, and the way back to the usual value.

import { el, say } from "./dom.js";
import { controlFor } from "./controls.js";

let count = 0;

/**
 * field makes a field for a described key. With compact it stands in a table:
 * its name is for screen readers only.
 */
export function field(desc, store, about, { compact = false } = {}) {
  const id = "f" + count++;
  const now = { path: "", given: false };
  const control = controlFor(desc)({ id, desc, store, about, ...senders(desc, store, now) });
  const parts = around(id, desc, control, compact);
  parts.usual.addEventListener("click", () => {
    control.inputs[0]?.focus();
    store.change([{ op: "remove", path: now.path }]);
  });
  quietly(parts.node, parts.said, store);
  return {
    node: parts.node,
    desc,
    show: (entry, table, state) => show(parts, control, now, entry, table, state),
  };
}

function senders(desc, store, now) {
  const send = (value, { typing = false } = {}) => {
    const empty = value === "" && !desc.needed;
    const edit = empty ? { op: "remove", path: now.path } : { op: "set", path: now.path, value };
    if (empty && !now.given) return;
    store.change([edit], { key: typing ? "type " + now.path : null });
  };
  return { send, path: () => now.path };
}

function around(id, desc, control, compact) {
  const name = el(control.group ? "span" : "label", { class: compact ? "unseen" : "name", id: id + "-name" }, title(desc.name));
  if (!control.group) name.htmlFor = id;
  const about = el("p", { class: compact ? "unseen" : "about", id: id + "-about" }, desc.about || "");
  const said = el("span", { class: "said", id: id + "-said" });
  const wrong = el("p", { class: "wrong", id: id + "-wrong", hidden: true });
  const usual = el("button", { type: "button", class: "words usual-button", hidden: true, "aria-label": `${title(desc.name)}: ${away(desc)}` }, away(desc));
  const node = el("div", { class: "field" + (compact ? " compact" : ""), "data-key": desc.name, "data-sort": desc.sort },
    name, about, el("div", { class: "held" }, control.node, usual), said, wrong);
  for (const input of control.inputs) input.setAttribute("aria-describedby", `${id}-said ${id}-about`);
  if (control.group) {
    control.node.setAttribute("role", control.group);
    control.node.setAttribute("aria-labelledby", id + "-name");
  }
  return { node, name, said, wrong, usual, id };
}

/** away is what taking a value away comes to. */
const away = (desc) => desc.away ?? (desc.default ? "back to usual" : "leave out");

/** quietly lets what was understood be read out, of the field one is in alone. */
function quietly(node, said, store) {
  node.addEventListener("focusin", () => said.setAttribute("aria-live", "polite"));
  node.addEventListener("focusout", () => {
    said.removeAttribute("aria-live");
    store.rest();
  });
}

function show(parts, control, now, entry, table, state) {
  now.path = entry.path;
  now.given = entry.given;
  if (parts.node.dataset.path !== entry.path) parts.node.dataset.path = entry.path;
  parts.node.classList.toggle("usual", !entry.given);
  control.show(entry, table, state);
  parts.usual.hidden = !entry.given || control.needed;
  if (parts.usual.hidden && document.activeElement === parts.usual) control.inputs[0]?.focus();
  const wrong = mistaken(parts, control, state.mistake, entry.path);
  say(parts.said, wrong ? "" : entry.understood || "");
}

function mistaken(parts, control, mistake, path) {
  const here = mistake !== null && isAt(mistake.path, path);
  parts.wrong.hidden = !here;
  say(parts.wrong, here ? wrongWords(mistake) : "");
  for (const input of control.inputs) {
    if (here) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
    const at = `${parts.id}-said ${parts.id}-about` + (here ? ` ${parts.id}-wrong` : "");
    if (input.getAttribute("aria-describedby") !== at) input.setAttribute("aria-describedby", at);
  }
  return here;
}

/** isAt is whether a mistake's path is a field's, or a place in its list. */
export function isAt(mistake, path) {
  return mistake === path || (mistake || "").startsWith(path + "[");
}

/** wrongWords says a mistake in the engine's words, without its place. */
export function wrongWords(mistake) {
  const { read, accepted, hint } = mistake;
  if (!accepted) return (mistake.words || "").replace(mistake.path + ": ", "");
  return `${read ? "Read: " + read.replaceAll('\\"', '"') + ". " : ""}Accepted: ${accepted}.${hint ? " " + sentence(hint) : ""}`;
}

function sentence(words) {
  return words.charAt(0).toUpperCase() + words.slice(1) + (/[.?!]$/.test(words) ? "" : ".");
}

/** title is a key's name as words. */
export function title(name) {
  const words = name.replaceAll("_", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}
