// The page's state, and the one way it changes.
//
// state.text      the job's text, as last known (exact once state.settled)
// state.answer    the last good answer to lay: what the drawings show
// state.form      the text as fields, of the last text that could be read
// state.mistake   what is wrong with the text, or null
// state.fresh     whether state.answer is of the text as it is now
// state.settled   whether the engine has answered for the text as it is now
// state.refused   words where the newest change could not be made, else ""
// state.waiting   whether the layout waits for counts that are to be "most"
// state.side      what is drawn flat: "outside", or "base" where the job has one
// state.blank, state.chosen (a motif's number, or 0), state.part (of that motif, by its name, or "")
// state.trouble   words when the engine can't be reached, else ""
// state.dragging  between begin() and end()
// state.epoch     grows when the text changes otherwise than by typing or
//                 dragging: then boxes show the engine's text, not what was typed
// state.letter    of the finding that is chosen, in the list or by its ring, or ""
// state.look      {turn, tilt} in degrees: how the glass is looked at

import { ask, giveUp } from "./ask.js";
import { faceOf } from "./faces.js";
import { History } from "./history.js";

const want = ["wrap", "glass", "profile", "numbers", "form", "hands"];
const patience = 1000; // ms after which a newer text gives up an older question

export class Store {
  constructor(text) {
    this.history = new History(text);
    this.listeners = new Set();
    this.asking = null; // {moment, version, since} of the question that is out
    this.waiters = [];
    this.drags = 0;
    this.state = {
      text, answer: null, form: null, mistake: null, fresh: false, settled: false,
      blank: "", side: "outside", chosen: 0, part: "", trouble: "", dragging: false, epoch: 0,
      refused: "", waiting: false, letter: "", look: { turn: 0, tilt: 7 },
    };
  }

  /** subscribe calls fn(state) after every change; it returns the way out. */
  subscribe(fn) {
    this.listeners.add(fn);
    if (this.state.answer || this.state.mistake) fn(this.state);
    return () => this.listeners.delete(fn);
  }

  /**
   * change makes edits one step. key joins it to the step before that has the
   * same key. live is for a drag: the edits are of the text at begin().
   */
  change(edits, { key = null, live = false } = {}) {
    this.history.edit(edits, live ? this.dragKey() : key);
    this.moved();
  }

  /** rest ends the step that typing has begun. */
  rest() {
    this.history.rest();
  }

  begin() {
    this.history.rest();
    this.drags++;
    this.set({ dragging: true });
  }

  /** end ends a drag: what it reached is one step, or none if it is given up. */
  end({ giveUp = false } = {}) {
    const back = giveUp && this.history.giveUp(this.dragKey());
    this.history.rest();
    this.set({ dragging: false });
    if (back) this.moved();
  }

  dragKey() {
    return "drag " + this.drags;
  }

  undo() {
    if (!this.history.canUndo) return;
    this.history.undo();
    this.jumped();
  }

  redo() {
    if (!this.history.canRedo) return;
    this.history.redo();
    this.jumped();
  }

  setText(text, { key = null } = {}) {
    this.history.write(text, key);
    this.jumped();
  }

  choose(number, part = "") {
    if (number !== this.state.chosen || part !== this.state.part) this.set({ chosen: number, part });
    if (number) this.face(faceOf(this.state.form, number));
  }

  /** say tells why something that was tried has changed nothing. */
  say(words) {
    this.set({ refused: words });
  }

  chooseFinding(letter) {
    if (letter !== this.state.letter) this.set({ letter });
    const found = this.state.answer?.findings.find((f) => f.letter === letter);
    if (found) this.face(found.face);
  }

  /** face has a face of the glass drawn, if another one is. */
  face(face) {
    if (this.state.answer && face !== this.state.answer.face) this.setSide(face === "base" ? "base" : "outside");
  }

  lookFrom(turn, tilt) {
    this.set({ look: { turn, tilt } });
  }

  setBlank(name) {
    if (name === this.state.blank) return;
    this.state.blank = name;
    this.restart();
  }

  setSide(side) {
    if (side === this.state.side) return;
    this.state.side = side;
    this.restart();
  }

  /** settled resolves when the engine has answered for the text as it is, and rejects if it can't be reached. */
  settled() {
    if (this.state.settled) return Promise.resolve(this.state);
    if (this.state.trouble) return Promise.reject(new Error(this.state.trouble));
    return new Promise((done, fail) => this.waiters.push({ done, fail }));
  }

  get canUndo() {
    return this.history.canUndo;
  }

  get canRedo() {
    return this.history.canRedo;
  }

  jumped() {
    this.state.epoch++;
    this.moved();
  }

  moved() {
    const known = this.history.now.text;
    giveUp("most");
    this.set({ fresh: false, settled: false, refused: "", text: known ?? this.state.text });
    this.lay();
  }

  restart() {
    this.history.now.version++;
    this.set({ fresh: false, settled: false });
    this.lay();
  }

  /** lay asks about the text as it is now, one question at a time. */
  lay() {
    if (this.asking && performance.now() - this.asking.since < patience) return;
    const moment = this.history.now;
    const asked = { moment, version: moment.version, since: performance.now() };
    this.asking = asked;
    const question = { ...this.history.question(), ...this.oneOfSet(), side: this.state.side, want };
    ask("lay", question, { slot: "lay" })
      .then((answer) => this.answered(asked, answer))
      .catch((err) => this.failed(asked, err));
  }

  /** oneOfSet is the blank to lay out: by its name, and by its number where that is being changed. */
  oneOfSet() {
    const blanks = this.state.answer?.blanks ?? [], { blank } = this.state;
    const at = blanks.findIndex(({ name }) => name === blank);
    return blanks.length > 1 ? { blank, number: at + 1 } : { blank: "" };
  }

  answered(asked, answer) {
    if (this.asking !== asked) return;
    this.asking = null;
    const { moment, version } = asked;
    if (answer.mistake && this.history.refuse(moment, version, answer.job)) return this.refused(answer.mistake);
    this.history.learn(moment, version, answer.job);
    const current = moment === this.history.now;
    const exact = current && moment.version === version;
    if (current) this.set(shown(answer, exact));
    if (!exact) this.lay();
    else if (answer.waiting) this.wait(answer);
    else this.free();
  }

  /** refused says why a change could not be made; the text is as it was. */
  refused({ words, path, line }) {
    const at = words.startsWith("read ") && line ? `Line ${line}: ` : "";
    this.set({ refused: at + words.replace(path + ": ", "") });
    this.lay();
  }

  /** wait asks first for what a layout waits for: counts found by trying. */
  async wait({ waiting, job }) {
    try {
      await ask(waiting, { job }, { slot: "most" });
      this.lay();
    } catch (err) {
      if (!err.cancelled) this.stuck(err);
    }
  }

  failed(asked, err) {
    if (err.cancelled || this.asking !== asked) return;
    this.asking = null;
    const { moment, version } = asked;
    if (moment !== this.history.now || moment.version !== version) return this.lay();
    if (this.oneOfSet().blank !== "" && err.understood) {
      this.state.answer = { ...this.state.answer, blanks: [] }; // that blank may be gone: the first, then
      return this.lay();
    }
    this.stuck(err);
  }

  /** stuck says that the engine can't be reached; who waits for it is told. */
  stuck(err) {
    this.set({ trouble: String(err.message || err) });
    for (const one of this.waiters.splice(0)) one.fail(err);
  }

  /** again asks once more, after trouble. */
  again() {
    this.asking = null;
    this.lay();
  }

  free() {
    for (const one of this.waiters.splice(0)) one.done(this.state);
  }

  set(changes) {
    Object.assign(this.state, changes);
    for (const fn of [...this.listeners]) fn(this.state);
  }
}

/** shown is what an answer changes in the state. */
function shown(answer, exact) {
  const waiting = Boolean(answer.waiting);
  const changes = { trouble: "", waiting, settled: exact && !waiting, mistake: answer.mistake || null };
  if (exact) changes.text = answer.job;
  if (answer.form) changes.form = answer.form;
  if (!answer.mistake && !waiting) {
    changes.answer = answer;
    changes.fresh = exact;
    changes.blank = answer.blank;
  }
  return changes;
}
