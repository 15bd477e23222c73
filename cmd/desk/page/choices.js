// One of several: words, wheels, kinds, earlier motifs, yes or no.

import { arrange, el } from "./dom.js";

const side = 4; // so many short words stand side by side; more go into a list

/** word is a choice among the words a key takes. */
export function word(env) {
  const words = env.desc.words || [];
  const short = words.length <= side && words.join("").length <= 26;
  if (!short) return list(env, () => words.map((w) => [w, w]), (value) => value);
  return radios(env, words);
}

/** wheel is a choice among the wheels of the rack. */
export function wheel(env) {
  const none = env.desc.needed ? [] : [["", env.desc.away ?? "none"]];
  return list(env, (state) => [...none, ...rack(state).map((name) => [name, name])], (value) => value);
}

/** kind is a choice among the kinds of motif. */
export function kind(env) {
  return list(env, () => env.about.kinds.map(({ name }) => [name, name]), (value) => value);
}

/** motif is a choice among the motifs before this one. */
export function motif(env) {
  const earlier = (state) => {
    const own = numberOf(env.path());
    const motifs = tables(state, "motif").filter((t) => numberOf(t.path) < own);
    return [["", "none"], ...motifs.map((t) => [String(numberOf(t.path)), `${numberOf(t.path)} ${t.title}`])];
  };
  return list(env, earlier, (value) => (value === "" ? "" : Number(value)));
}

/** onOff is a switch. */
export function onOff({ id, desc, send }) {
  const box = el("input", { type: "checkbox", id, onchange: () => send(box.checked) });
  return {
    node: el("label", { class: "tick", for: id }, box, el("span", { "aria-hidden": "true" }, "yes")),
    inputs: [box],
    needed: desc.needed,
    show(entry) {
      const text = entry.text ?? String(desc.default ?? "");
      box.checked = text === "true" || text === "1";
    },
  };
}

/** rack is the names of the wheels in the job. */
export function rack(state) {
  return tables(state, "wheel").map(nameOf).filter((name) => name !== "");
}

/** tables is the form's tables of one name. */
export function tables(state, name) {
  return (state.form?.tables || []).filter((t) => t.table === name);
}

/** numberOf is the number in a path: 2 of motif[2]. */
export function numberOf(path) {
  return Number(/\[(\d+)\]$/.exec(path)?.[1] || 1);
}

function nameOf(table) {
  return table.fields.find((f) => f.key === "name")?.text || "";
}

function list({ id, desc, send }, options, value) {
  const select = el("select", { id, onchange: () => send(value(select.value)) });
  let shown = "";
  return {
    node: el("div", { class: "boxed" }, select),
    inputs: [select],
    needed: desc.needed,
    show(entry, table, state) {
      const text = entry.text ?? String(desc.default ?? "");
      const all = withOwn(options(state), text);
      if (JSON.stringify(all) !== shown) {
        shown = JSON.stringify(all);
        arrange(select, all.map(([v, words]) => el("option", { value: v }, words)));
      }
      if (select.value !== text) select.value = text;
    },
  };
}

/** withOwn adds what the job says, where it is none of the choices. */
function withOwn(options, text) {
  if (options.some(([value]) => value === text)) return options;
  return [...options, [text, text === "" ? "choose" : text]];
}

function radios({ id, desc, send }, words) {
  const inputs = words.map((w, i) =>
    el("input", { type: "radio", name: id, id: i ? `${id}-${i}` : id, value: w, onchange: () => send(w) }));
  return {
    node: el("div", { class: "radios" }, inputs.map((input, i) => el("label", {}, input, words[i]))),
    inputs,
    group: "radiogroup",
    needed: desc.needed,
    show(entry) {
      const text = entry.text ?? String(desc.default ?? "");
      for (const input of inputs) input.checked = input.value === text;
    },
  };
}
