// Boot: what there is to know, the job, and the parts of the page.

import { ask, disk } from "./ask.js";
import { near } from "./engine.js";
import { el } from "./dom.js";
import { Store } from "./store.js";
import * as headings from "./headings.js";
import * as head from "./head.js";
import * as forms from "./forms.js";
import * as findings from "./findings.js";
import * as numbers from "./numbers.js";
import * as paper from "./paper.js";
import * as welcome from "./welcome.js";
import * as fileOnDisk from "./disk.js";
import * as wrap from "./wrap.js";
import * as glass from "./glass.js";
import * as profile from "./profile.js";
import * as blanks from "./blanks.js";
import * as swatches from "./swatches.js";
import * as compare from "./compare.js";
import * as bring from "./bring.js";
import { visit } from "./visit.js";

/** Where each part goes: a part fills its root and follows the store. */
const parts = [
  [head, "#head"],
  [wrap, "#wrap .fill"],
  [glass, "#glass .fill"],
  [profile, "#profile"],
  [blanks, "#blanks .fill"],
  [compare, "#compare .fill"],
  [swatches, "#swatches"],
  [forms, "#numbers"],
  [findings, "#findings"],
  [numbers, "#figures"],
  [paper, "#paper"],
  [fileOnDisk, "#notice"],
  [bring, "#hovering"],
  [welcome, "#over"],
];

async function boot() {
  const about = await ask("describe", {});
  const file = await opened();
  const store = new Store(file?.text ?? about.demo);
  about.file = { name: "", text: about.demo, stamp: "", demo: true, ...file, present: near || file !== null };
  headings.mount(document.querySelector("#headings"));
  for (const [part, root] of parts) part.mount(document.querySelector(root), store, about);
  store.subscribe(standing);
  store.lay();
  if (!near) visit();
}

/** opened is the job's file: that of the address, where one was saved under another name. */
async function opened() {
  const name = decodeURIComponent(location.hash.slice(1));
  const named = name ? await disk("file?" + new URLSearchParams({ name })).catch(() => null) : null;
  return named || (await disk("file").catch(() => null));
}

/** standing says on the document how the text stands with the engine: asking, laid, mistaken or silent. */
function standing({ settled, mistake, trouble }) {
  const now = trouble ? "silent" : !settled ? "asking" : mistake ? "mistaken" : "laid";
  document.documentElement.dataset.job = now;
}

boot().catch((err) => {
  const again = el("button", { type: "button", onclick: () => location.reload() }, "Try again");
  document.querySelector("#notice").append(el("p", {}, "The engine does not answer. " + (err.message || ""), " ", again));
});
