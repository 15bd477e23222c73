// The job's file: saved, saved under another name, and watched, so that what
// another program writes to it is seen and neither version is lost.

import { disk } from "./ask.js";
import { namesIn } from "./beside.js";
import { near } from "./engine.js";
import { handOver } from "./handover.js";
import { el } from "./dom.js";
import { asked } from "./dialog.js";
import { saveBeside } from "./savebeside.js";

const again = 3000; // ms to wait after the watch failed

/**
 * The file that is open. There is one in a page; of is what is known of it: its
 * name ("" for a job that has no file yet), the stamp and text that it has on
 * disk, and a name to propose.
 */
export const file = {
  store: null, of: unsaved(""), present: false, saving: false, said: "",
  listeners: new Set(),

  follow(fn) {
    this.listeners.add(fn);
    fn();
  },

  tell() {
    for (const fn of this.listeners) fn();
  },

  get demo() {
    return Boolean(this.of.demo);
  },

  /** dirty is whether the text differs from that on disk. */
  dirty() {
    if (!this.store || !this.present) return false;
    return this.store.state.text !== this.of.text || !this.store.state.settled;
  },

  words() {
    const { name, demo, text } = this.of;
    if (!this.present) return "";
    if (this.saving) return "Saving…";
    if (this.said) return this.said;
    if (demo && this.store.state.text === text) return "The demo: change it as you like";
    if (!name) return "Not in a file yet: Save asks for its name";
    return this.dirty() ? `${name}, not saved` : `${name}, saved`;
  },

  /** begin shows a job that has no file: the file that was open stays as it is. */
  begin(text, propose = "", words = "") {
    const { name } = this.of;
    const left = name && this.dirty() ? `What you changed in ${name} is not saved. Undo brings it back.` : "";
    belong();
    this.of = unsaved(propose);
    this.store.choose(0);
    this.store.setText(text);
    turned();
    notice([words, left].filter(Boolean).join(" ") || null, [["Understood", () => notice(null)]]);
  },

  /** save writes the text to its file; a job without one is asked a name. */
  async save() {
    if (!this.present || this.saving) return;
    if (!this.of.name) return this.saveAs();
    if (near) return this.keep(this.of.name);
    await this.writing(async (text, of) => {
      const reply = await disk("file", { text, stamp: of.stamp, name: of.name });
      if (reply.status === 409) return await changed(reply, of);
      this.saved(of, text, reply);
    });
  },

  async saveAs() {
    const given = await asked({
      title: "Save under a name", label: near ? "Name of the file" : "Name of the file, beside the job", value: proposed(this.of, this.store.state), button: "Save",
    });
    if (!given) return;
    if (near) return this.keep(/\.toml$/i.test(given) ? given : given + ".toml");
    await this.writing(async (text, of) => {
      const reply = await disk("file-as", { name: given, text });
      Object.assign(of, { name: reply.name, demo: false });
      this.saved(of, text, reply);
      if (of === this.of) turned();
    });
  },

  /** keep hands the text over as a file, where the page has no disk of its own. */
  async keep(name) {
    await this.writing(async (text, of) => {
      handOver({ name, blob: new Blob([text], { type: "application/toml" }) });
      Object.assign(of, { name, demo: false });
      this.saved(of, text, { stamp: "" });
    });
  },

  async writing(write) {
    const { of } = this;
    this.saving = true;
    this.said = "";
    this.tell();
    try {
      const text = await saveBeside(this.store);
      if (of !== this.of) throw new Error("another job was opened meanwhile.");
      await write(text, of);
    } catch (err) {
      this.said = "Not saved: " + err.message;
    }
    this.saving = false;
    this.tell();
  },

  saved(of, text, { stamp }) {
    Object.assign(of, { text, stamp });
    this.said = "";
    if (of === this.of) notice(null);
  },
};

function unsaved(propose) {
  return { name: "", stamp: "", text: null, demo: false, propose };
}

export function mount(root, store, about) {
  const { name, stamp, text, demo, present } = about.file;
  Object.assign(file, { store, root, present, of: { name, stamp, text, demo, propose: "" } });
  store.subscribe(() => {
    belong();
    if (!file.saving) file.said = "";
    if (namesIn(store.state.form).join("\n") !== beside.join("\n")) watch();
    file.tell();
  });
  addEventListener("beforeunload", (event) => {
    if (file.dirty() && (store.canUndo || store.canRedo)) event.preventDefault(); // a job nobody has touched is no loss
  });
  document.addEventListener("visibilitychange", watch);
  watch();
}

const files = new WeakMap(); // moment of the history → what is known of its file

/** belong makes the file of the moment that is shown the one that Save writes. */
function belong() {
  const { now } = file.store.history;
  if (!files.has(now)) files.set(now, file.of);
  if (files.get(now) === file.of) return;
  file.of = files.get(now);
  notice(null);
  turned();
}

/** turned follows another file: a reload shows it again, and it is watched. */
function turned() {
  if (near) return file.tell(); // nothing is there to show again
  history.replaceState(null, "", file.of.name ? "#" + encodeURIComponent(file.of.name) : location.pathname + location.search);
  watch();
  file.tell();
}

let watching = null; // AbortController of the watch
let beside = []; // the names of the files beside the job that are watched with it

/** watch waits for the file to be another on disk than the page knows. */
async function watch() {
  watching?.abort();
  beside = namesIn(file.store.state.form);
  if (near || !file.present || !file.of.name || document.hidden) return;
  const own = (watching = new AbortController());
  const { of } = file, names = beside;
  let told = ""; // the stamp of what those held
  while (!own.signal.aborted) {
    try {
      const asked = new URLSearchParams([["name", of.name], ["stamp", of.stamp], ["seen", told], ...names.map((name) => ["beside", name])]);
      const seen = await disk("file/changes?" + asked, undefined, own.signal);
      if (own.signal.aborted || seen === null) return;
      if (told && seen.seen !== told) file.store.restart();
      told = seen.seen ?? "";
      if (seen.stamp !== of.stamp && !file.saving) await changed(seen, of);
    } catch {
      if (own.signal.aborted) return;
      await new Promise((done) => setTimeout(done, again));
    }
  }
}

/** changed meets a file that another has written, or taken away. */
async function changed({ text, stamp, gone }, of) {
  if (gone) {
    Object.assign(of, { stamp: "", text: null });
    return notice("The file is gone from the disk. What you see is still here: Save writes it anew.", [["Understood", () => notice(null)]]);
  }
  await atRest(file.store);
  if (of !== file.of) return; // it is seen when this file is shown again
  const mine = file.store.state.text;
  const was = of.text;
  Object.assign(of, { stamp, text });
  if (text === mine) return notice(null);
  file.store.setText(text);
  if (mine === was) {
    return notice("The file was changed on disk, and is shown as it is now. Undo brings back what was here.", [["Understood", () => notice(null)]]);
  }
  // Theirs is one undo away from now on: mine may be saved over it at any moment.
  file.store.setText(mine);
  notice("The file was changed on disk while you changed it here. Neither is lost: Undo brings back the other.", [
    ["Keep mine", () => notice(null)],
    ["Take the disk's", () => take(text)],
  ]);
}

/** atRest waits until no edit is on its way and nothing is held. */
function atRest(store) {
  return new Promise((done) => {
    const still = ({ settled, dragging }) => settled && !dragging;
    if (still(store.state)) return done();
    const end = store.subscribe((state) => {
      if (!still(state)) return;
      queueMicrotask(() => end());
      done();
    });
  });
}

function take(theirs) {
  file.store.setText(theirs);
  notice(null);
}

function notice(words, choices = []) {
  file.root.replaceChildren();
  if (words === null) return file.tell();
  const buttons = choices.map(([label, act]) => el("button", { type: "button", onclick: act }, label));
  file.root.append(el("p", {}, words), el("div", { class: "buttons" }, buttons));
  file.tell();
}

/** proposed is a name for the file: after the one it has, or what the job is called. */
function proposed({ name, propose }, { answer }) {
  if (name) return name.replace(/(\.toml)?$/, "-2.toml");
  const words = (answer?.title || "").normalize("NFKC").toLowerCase().replace(/['’]/g, "");
  return propose || (words.match(/[\p{L}\p{N}]+/gu)?.join("-").slice(0, 60) || "my-glass") + ".toml";
}
