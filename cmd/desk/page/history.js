// The job's text through time: undo and redo without end.
//
// A moment is a text, or edits of the moment before it whose text is not yet
// known, because the engine hasn't answered. So a person may type, undo and
// redo as fast as they like: nothing waits, and the end is the same.

export class History {
  constructor(text) {
    this.moments = [{ text, edits: [], key: null, version: 0 }];
    this.at = 0;
  }

  get now() {
    return this.moments[this.at];
  }

  get canUndo() {
    return this.at > 0;
  }

  get canRedo() {
    return this.at < this.moments.length - 1;
  }

  /**
   * edit adds a moment. Edits with the key of the newest moment take its
   * place: the letters typed into one field are one step, and so is a drag.
   */
  edit(edits, key = null) {
    this.step({ text: null, edits }, key);
  }

  /** write adds a moment whose text is given whole. */
  write(text, key = null) {
    this.step({ text, edits: [] }, key);
  }

  step(what, key) {
    const now = this.now;
    if (key !== null && now.key === key && !this.canRedo) {
      Object.assign(now, what, { version: now.version + 1 });
      return;
    }
    this.moments.length = this.at + 1;
    this.moments.push({ ...what, key, version: 0 });
    this.at++;
  }

  /** rest ends a step: the next edit is a new one, whatever its key. */
  rest() {
    this.now.key = null;
  }

  /** giveUp forgets the newest moment, if it is the step of that key. */
  giveUp(key) {
    if (this.now.key !== key || this.canRedo || this.at === 0) return false;
    this.moments.length = this.at--;
    return true;
  }

  /**
   * refuse forgets the newest moment where its edits could not be made: the
   * text that came back is that of the moment before.
   */
  refuse(moment, version, text) {
    const before = this.moments[this.at - 1];
    const own = moment === this.now && moment.version === version && !this.canRedo;
    if (!own || moment.edits.length === 0 || before?.text !== text) return false;
    this.moments.length = this.at--;
    this.rest();
    return true;
  }

  undo() {
    if (this.canUndo) this.move(-1);
  }

  redo() {
    if (this.canRedo) this.move(1);
  }

  move(by) {
    this.rest();
    this.at += by;
    this.rest();
  }

  /** question is the text and edits that lead to a moment, this one if none is named. */
  question(at = this.at) {
    const edits = [];
    let i = at;
    for (; this.moments[i].text === null; i--) edits.unshift(...this.moments[i].edits);
    return { job: this.moments[i].text, edits };
  }

  /** learn keeps the text of a moment, if it still is what was asked about. */
  learn(moment, version, text) {
    if (moment.version === version) moment.text = text;
  }
}
