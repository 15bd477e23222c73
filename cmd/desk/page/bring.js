// Files from outside: drawings, jobs and what a job names, dropped on the page or chosen by a button.

import { ask } from "./ask.js";
import { bring, holding, leave, namesIn, numbered, plainName } from "./beside.js";
import { onFace } from "./faces.js";
import { el } from "./dom.js";
import { addAndChoose } from "./added.js";
import { show as showJob } from "./newjob.js";
import { textOf } from "./reading.js";

const unread = {
  tooLarge: "it has more than 1 MiB. Put it beside the job's file and give its name there.",
  noText: "this is no text in UTF-8, so no drawing that can be read.",
};

/** mount fills root with the words that are shown while a file is held over the page. */
export function mount(root, store) {
  const words = el("p", { class: "hovering", hidden: true }, "Let go: a drawing becomes a motif, a job file is shown.");
  root.append(words);
  const isFile = (event) => [...(event.dataTransfer?.types ?? [])].includes("Files");
  let over = 0;
  const show = (by) => {
    over = Math.max(0, over + by);
    words.hidden = over === 0;
  };
  addEventListener("dragenter", (event) => isFile(event) && show(1));
  addEventListener("dragleave", (event) => isFile(event) && show(-1));
  addEventListener("dragover", (event) => isFile(event) && event.preventDefault());
  addEventListener("drop", (event) => {
    if (!isFile(event)) return;
    event.preventDefault();
    show(-over);
    bringAll([...event.dataTransfer.files], store, event.place);
  });
}

/** choose asks for a drawing on this machine. */
export function choose(store) {
  document.querySelector("#chosen-drawing")?.remove(); // of a choice that was left
  const input = el("input", { type: "file", accept: ".svg,image/svg+xml", multiple: true, id: "chosen-drawing", hidden: true });
  input.addEventListener("change", () => bringAll([...input.files], store));
  document.body.append(input);
  input.click();
}

/** bringAll brings some files; a motif of the first may have a place on the wrap. */
async function bringAll(files, store, place) {
  for (const file of files) {
    try {
      await bringOne(file, store, place);
    } catch (err) {
      if (!err.cancelled) store.say(`${file.name}: ${err.message}`);
    }
    place = undefined;
  }
}

/** bringOne brings what the job names and can't find, shows a job, or makes a motif of a drawing. */
async function bringOne(file, store, place) {
  const name = plainName(file.name);
  if (/\.toml$/.test(name) && !isMissing(name, store.state)) return showJob(file);
  const text = await textOf(file, unread);
  const { form } = await store.settled();
  if (isMissing(name, store.state)) {
    bring(name, text);
    return store.restart();
  }
  if (!/\.svg$/.test(name)) throw new Error("a drawing is an SVG file, whose name ends in .svg.");
  if (store.state.mistake) throw new Error("mend what is wrong in the job first, then bring the drawing.");
  const free = freeName(name, text, form);
  bring(free, text);
  try {
    await add(free, store, place);
  } catch (err) {
    leave(free);
    throw err;
  }
}

/** add tries what becomes of the drawing, and makes it a motif if it can be cut. */
async function add(file, store, place) {
  const edit = { op: "add", path: "motif", value: { kind: "drawing", file, ...onFace(store.state) } };
  const { text: job, blank, side } = store.state;
  const answer = await ask("lay", { job, edits: [edit], blank, side, want: ["wrap"] }, { slot: "bring" });
  const { mistake, wrap } = answer;
  if (mistake) throw new Error(mistake.words.replace(mistake.path + ": ", ""));
  const made = wrap?.motifs.at(-1);
  const move = place && made && { op: "drag", path: `motif[${made.motif}]`, value: { grab: "middle", from: made.middle, to: place } };
  await addAndChoose(store, move ? [edit, move] : [edit]);
}

/** isMissing is whether a job names a file that it can't find. */
function isMissing(name, { form, mistake }) {
  return Boolean(mistake) && namesIn(form).includes(name) && /(^|\.)(file|include)(\[\d+\])?$/.test(mistake.path);
}

/** freeName is a name that no other drawing of this job has. */
function freeName(name, text, form) {
  const taken = new Set(namesIn(form));
  for (let n = 1; ; n++) {
    const next = numbered(name, n);
    if (holding(next) === text || (holding(next) === undefined && !taken.has(next))) return next;
  }
}
