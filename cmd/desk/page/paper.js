// Paper: what to print and keep, on which paper, and how it will look.

import { askFile } from "./ask.js";
import { arrange, el, say } from "./dom.js";
import { isOpen, onOpened } from "./headings.js";
import { follow } from "./slow.js";
import { options } from "./paperoptions.js";
import { sheets } from "./sheets.js";
import { handOver } from "./handover.js";

/** What can be kept as a file, and as which kinds of file. */
const files = [
  ["wrap", "The wrap", "the paper to tape to the glass", ["pdf", "svg", "png"]],
  ["sheet", "The bench sheet", "settings and cuts in order, with boxes to tick", ["pdf"]],
  ["cuts", "The cut list", "for a spreadsheet", ["csv"]],
  ["view", "The picture", "the glass as it will look", ["svg", "png", "pdf"]],
  ["base-view", "The picture of the base", "as it is seen from below", ["svg", "png", "pdf"]],
  ["plan", "The plan", "every cut in words, or as data", ["txt", "json"]],
  ["test-page", "The test page", "bars to measure your printer by", ["pdf"]],
];

export function mount(root, store, about) {
  const chosen = options(about, () => pages.look());
  const preview = el("div", { class: "preview" });
  const remarks = el("ul", { class: "notes" });
  const ways = el("div", { class: "buttons" }); // options that the remarks name
  const print = el("button", { type: "button", class: "main", id: "print", disabled: true, onclick: () => window.print() }, "Print from this page");
  const where = el("p", { class: "faint small", id: "pages-said", role: "status" });
  root.append(
    el("h3", {}, "How"), chosen.node,
    el("h3", {}, "Print"), el("p", { class: "about" }, "In the print window choose no margins and 100\u00a0%. Lay a ruler on both check bars before you cut."),
    el("div", { class: "buttons" }, print), where, remarks, ways, preview,
    el("h3", {}, "Keep as files"), downloads(store, chosen));
  const body = (state) => (!isOpen("paper") ? null : { job: state.text, blank: state.blank, ...chosen.values() });
  const pages = follow(store, "pages", body, (answer, state, { waiting, trouble }) => {
    print.disabled = !answer;
    chosen.wrong(trouble || "");
    sheets.put(answer);
    say(where, trouble || (waiting ? "Laying out the pages…" : answer ? counted(answer) : ""));
    arrange(remarks, (answer?.remarks || []).map((words) => el("li", {}, words)));
    arrange(ways, (answer?.ways || []).map(({ name, value, words }) =>
      el("button", { type: "button", onclick: () => chosen.set(name, value) }, words)));
    arrange(preview, answer ? sheets.small(answer) : []);
  });
  onOpened(() => pages.look());
  store.subscribe(({ answer }) => answer && offerBase(root, answer.faces.includes("base")));
}

/** offerBase offers what there is of a base alone where the job has one. */
function offerBase(root, has) {
  const side = root.querySelector('[name="paper-side"][value="base"]');
  if (side.checked && !has) root.querySelector('[name="paper-side"][value="outside"]').click();
  side.closest("label").hidden = !has;
  root.querySelector('[data-what="base-view"]').closest("li").hidden = !has;
}

function counted({ pages, title }) {
  return `${title ? title + ": " : ""}${pages.length === 1 ? "one page" : pages.length + " pages"}`;
}

function downloads(store, chosen) {
  return el("ul", { class: "downloads" }, files.map(([what, name, about, endings]) => {
    const status = el("p", { class: "said", role: "status" }); // beside the button that was pressed
    return el("li", {}, el("div", {}, el("span", { class: "name" }, name), " ", el("span", { class: "faint small" }, about)),
      el("div", { class: "buttons" }, endings.map((ending) => button(store, chosen, status, what, name, ending))), status);
  }));
}

function button(store, chosen, status, what, name, ending) {
  const get = async () => {
    say(status, `Making ${ending.toUpperCase()}…`);
    try {
      const { text, blank, mistake } = await store.settled();
      if (mistake) throw new Error("The job has a mistake: mend that first.");
      const { turn, tilt } = store.state.look || {};
      const file = await askFile("download", { job: text, blank, what, ending, ...chosen.values(), turn, tilt }, { slot: "download" });
      handOver(file);
      say(status, `${file.name} is in your downloads.`);
    } catch (err) {
      if (!err.cancelled) say(status, err.message);
    }
  };
  return el("button", { type: "button", "data-what": what, "data-ending": ending, "aria-label": `${name} as ${ending.toUpperCase()}`, onclick: get }, ending.toUpperCase());
}
