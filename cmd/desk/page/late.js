// Marks a drawing that is not of the job as it is now.

import { say } from "./dom.js";

const patience = 350; // ms; an answer that comes sooner needs no mark

/** Late keeps a drawing's root and its note in step with whether the drawing is of the present text. */
export class Late {
  constructor(root, note) {
    this.root = root;
    this.note = note;
    root.classList.add("has-late");
  }

  follow(state) {
    const words = lateWords(state);
    if (words === this.words) return;
    this.words = words;
    clearTimeout(this.timer);
    if (words && !state.mistake && !state.trouble) this.timer = setTimeout(() => this.#mark(words), patience);
    else this.#mark(words);
  }

  #mark(words) {
    this.root.classList.toggle("late", words !== "");
    this.note.hidden = words === "";
    say(this.note, words);
  }
}

function lateWords(state) {
  if (!state.answer || state.fresh) return "";
  if (state.mistake) return "Drawn before the mistake in the job.";
  if (state.waiting) return "Drawn before: the most that clears is being counted.";
  if (state.trouble) return "Drawn before the last change.";
  return "Being drawn again.";
}
