// The choices for paper. Those that belong to the printer are remembered.

import { el, say } from "./dom.js";
import { keep, kept } from "./memory.js";

const usual = "letter for inches, A4 for mm";
const own = "another size";

/** options makes the controls; changed is called when one of them changes. */
export function options(about, changed) {
  const now = { side: "outside", ...kept("printer", {}) };
  const put = (name, value) => {
    if (value === "" || value === false) delete now[name];
    else now[name] = value;
    const { paper, margin, printed_across, printed_up, thickness } = now;
    keep("printer", { paper, margin, printed_across, printed_up, thickness });
    changed();
  };
  const node = el("div", { class: "fields options" },
    paperChoice(about, now, put),
    radios("side", "Side", "patches: one small paper to a repeat, for the outside; base: a round paper for under the foot", namesOf(about.sides, ["outside", "inside", "patches"]), now, put),
    text("margin", "Margin of the printer", "the strip it leaves white; see the test page", now, put),
    radios("seam", "Seam", "tab: one end laps over the other; butt: the ends meet edge to edge", namesOf(about.seams, ["tab", "butt"]), now, put),
    more(now, put));
  return { node, values: () => ({ ...now }), wrong: (words) => mark(node, words), set: (name, value) => set(node, name, value) };
}

/** set works a control as a person would. */
function set(node, name, value) {
  const radio = node.querySelector(`[name="paper-${name}"][value="${CSS.escape(value)}"]`);
  if (radio) return radio.click();
  const box = node.querySelector(name === "paper" ? "#paper-size" : `#paper-${name}`);
  box.value = value;
  box.dispatchEvent(new Event("change"));
}

/** mark puts what is wrong with an option at its box: the words begin with its name. */
function mark(node, words) {
  const name = /^(\w+): /.exec(words)?.[1];
  for (const input of node.querySelectorAll("input[type=text]")) {
    const here = input.id === "paper-" + name || (name === "paper" && input.id === "paper-own");
    if (here) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
    const said = input.parentNode.querySelector(".wrong");
    if (said) say(said, here ? words.slice(name.length + 2) : "");
    if (here) for (let up = input.closest("details"); up; up = up.parentElement.closest("details")) up.open = true;
  }
}

function more(now, put) {
  return el("details", { class: "more" }, el("summary", {}, el("span", {}, "More: a printer that lies, thick paper, the seam's place")),
    el("div", { class: "fields" },
      text("printed_across", "The 100 mm bar across reads", "on your print of the test page, as 99.2 mm", now, put),
      text("printed_up", "The 100 mm bar up reads", "on the same page, as 100.4 mm", now, put),
      text("thickness", "Thickness of the paper", "0.1 mm if you say nothing", now, put),
      number("seam_at", "Seam at the left edge of repeat", now, put),
      tick("mirror", "Right and left changed, to trace through from the back", now, put),
      tick("no_rings", "Leave off the rings round what was found", now, put)));
}

function paperChoice(about, now, put) {
  const names = namesOf(about.papers, ["a4", "letter", "legal", "a3", "tabloid"]);
  const known = !now.paper || names.includes(now.paper);
  const select = el("select", { id: "paper-size" },
    el("option", { value: "" }, usual), names.map((n) => el("option", { value: n }, n.length < 3 ? n.toUpperCase() : n)),
    el("option", { value: own }, own));
  const size = el("input", { type: "text", id: "paper-own", "aria-label": "Width and height of the paper, as 8.5x13in", value: known ? "" : now.paper, hidden: known });
  select.value = known ? now.paper || "" : own;
  select.addEventListener("change", () => {
    size.hidden = select.value !== own;
    if (select.value === own) size.focus();
    else put("paper", select.value);
  });
  size.addEventListener("change", () => put("paper", size.value.trim()));
  return el("div", { class: "field" }, el("label", { class: "name", for: "paper-size" }, "Paper"), el("div", { class: "boxed" }, select, size, el("p", { class: "wrong" })));
}

function radios(name, label, about, words, now, put) {
  const inputs = words.map((w, i) => el("label", {},
    el("input", { type: "radio", name: "paper-" + name, value: w, checked: now[name] ? now[name] === w : i === 0, onchange: () => put(name, w) }), w));
  return el("fieldset", { class: "field" }, el("legend", { class: "name" }, label), el("p", { class: "about" }, about), el("div", { class: "radios" }, inputs));
}

function text(name, label, about, now, put) {
  const id = "paper-" + name;
  return el("div", { class: "field" }, el("label", { class: "name", for: id }, label),
    el("p", { class: "about", id: id + "-about" }, about),
    el("input", { type: "text", id, value: now[name] || "", autocomplete: "off", "aria-describedby": `${id}-about ${id}-wrong`, onchange: (e) => put(name, e.target.value.trim()) }),
    el("p", { class: "wrong", id: id + "-wrong" }));
}

function number(name, label, now, put) {
  const id = "paper-" + name;
  const read = (value) => (/^\d+$/.test(value.trim()) ? Number(value) : "");
  return el("div", { class: "field" }, el("label", { class: "name", for: id }, label),
    el("input", { type: "text", id, inputmode: "numeric", value: now[name] || "", autocomplete: "off", onchange: (e) => put(name, read(e.target.value)) }),
    el("p", { class: "wrong" }));
}

function tick(name, label, now, put) {
  const box = el("input", { type: "checkbox", id: "paper-" + name, onchange: () => put(name, box.checked) });
  box.checked = Boolean(now[name]);
  return el("label", { class: "tick" }, box, label);
}

/** namesOf reads a list of names, or of things with names. */
function namesOf(list, otherwise) {
  if (!list?.length) return otherwise;
  return list.map((item) => (typeof item === "string" ? item : item.name));
}
