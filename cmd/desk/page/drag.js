// A drag: begun on a place, followed, and done or given up. It is one undo step.

/** calipers is the least step that calipers show, in millimetres. */
export const calipers = { in: 25.4 / 64, mm: 0.1 };

/** Drag sends edits of the text with which it began. The store puts the newest of them to the engine. */
export class Drag {
  constructor(store, path, op = "drag") {
    this.store = store;
    this.path = path;
    this.op = op;
    this.begun = false;
    this.over = false;
  }

  to(value) {
    if (this.over) return;
    if (!this.begun) this.store.begin();
    this.begun = true;
    this.store.change([{ op: this.op, path: this.path, value }], { live: true });
  }

  done() {
    this.#end({});
  }

  giveUp() {
    this.#end({ giveUp: true });
  }

  #end(how) {
    if (this.begun && !this.over) this.store.end(how);
    this.over = true;
  }
}
