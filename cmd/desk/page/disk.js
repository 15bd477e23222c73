// The job's file: saved, saved under another name, and watched, so that what
// another program writes to it is seen and neither version is lost.

import { disk } from "./ask.js";
import { el } from "./dom.js";
import { asked } from "./dialog.js";

const again = 3000; // ms to wait after the watch failed

/** The file that is open. There is one in a page. */
export const file = {
  store: null, name: "", stamp: "", text: "", demo: true, present: false, saving: false, said: "",
  listeners: new Set(),

  follow(fn) {
    this.listeners.add(fn);
    fn();
  },

  tell() {
    for (const fn of this.listeners) fn();
  },

  /** dirty is whether the text differs from that on disk. */
  dirty() {
    if (!this.store || !this.present) return false;
    return this.store.state.text !== this.text || !this.store.state.settled;
  },

  words() {
    if (!this.present) return "";
    if (this.saving) return "Saving…";
    if (this.said) return this.said;
    if (this.demo) return "The demo: save it under a name of your own";
    return this.dirty() ? `${this.name}, not saved` : `${this.name}, saved`;
  },

  /** save writes the text to its file; the demo is asked a name. */
  async save() {
    if (!this.present || this.saving) return;
    if (this.demo || !this.name) return this.saveAs();
    await this.writing(async (text) => {
      const reply = await disk("file", { text, stamp: this.stamp, name: this.name });
      if (reply.status === 409) return await changed(reply);
      this.saved(text, reply);
    });
  },

  async saveAs() {
    const given = await asked({
      title: "Save under a name", label: "Name of the file, beside the job", value: suggestion(this.name), button: "Save",
    });
    if (!given) return;
    await this.writing(async (text) => {
      const reply = await disk("file-as", { name: given, text });
      location.hash = encodeURIComponent(reply.name); // a reload shows this file again
      this.name = reply.name;
      this.demo = false;
      this.saved(text, reply);
      watch();
    });
  },

  async writing(write) {
    this.saving = true;
    this.said = "";
    this.tell();
    try {
      const { text } = await this.store.settled();
      await write(text);
    } catch (err) {
      this.said = "Not saved: " + err.message;
    }
    this.saving = false;
    this.tell();
  },

  saved(text, { stamp }) {
    this.text = text;
    this.stamp = stamp;
    this.said = "";
    notice(null);
  },
};

export function mount(root, store, about) {
  Object.assign(file, about.file, { store });
  file.root = root;
  store.subscribe(() => {
    if (!file.saving) file.said = "";
    file.tell();
  });
  addEventListener("beforeunload", (event) => {
    if (file.dirty() && store.canUndo) event.preventDefault();
  });
  document.addEventListener("visibilitychange", watch);
  watch();
}

let watching = null; // AbortController of the watch

/** watch waits for the file to be another on disk than the page knows. */
async function watch() {
  watching?.abort();
  if (!file.present || !file.name || file.demo || document.hidden) return;
  const own = (watching = new AbortController());
  while (!own.signal.aborted) {
    try {
      const asked = new URLSearchParams({ name: file.name, stamp: file.stamp });
      const seen = await disk("file/changes?" + asked, undefined, own.signal);
      if (own.signal.aborted || seen === null) return;
      if (seen.stamp !== file.stamp && !file.saving) await changed(seen);
    } catch {
      if (own.signal.aborted) return;
      await new Promise((done) => setTimeout(done, again));
    }
  }
}

/** changed meets a file that another has written, or taken away. */
async function changed({ text, stamp, gone }) {
  if (gone) {
    file.stamp = "";
    file.text = null;
    return notice("The file is gone from the disk. What you see is still here: Save writes it anew.", [["Understood", () => notice(null)]]);
  }
  await atRest(file.store);
  const mine = file.store.state.text;
  const was = file.text;
  file.stamp = stamp;
  file.text = text;
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

function suggestion(name) {
  return name ? name.replace(/(\.toml)?$/, "-2.toml") : "my-glass.toml";
}
