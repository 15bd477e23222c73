// Keys move, size and turn the chosen motif. A run of keys is one undo step.

import { calipers, Drag } from "./drag.js";
import { between } from "./shapes.js";

const pause = 700; // ms without a key after which a run is over

const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
// With the shift key a keyboard sends other signs; + itself may need it.
const sizes = { "+": 1, "=": 1, "-": -1, "_": -10, "*": 10 };
// Letters, for every keyboard has them without a third level: to the left is anticlockwise.
const turns = { l: 1, r: -1 };

/** Nudge turns keys into drags. */
export class Nudge {
  /** @param rested is called with the motif's number when a run is over */
  constructor(store, rested = () => {}) {
    this.store = store;
    this.rested = rested;
  }

  /** key heeds a key for a motif, and reports whether it did. */
  key(event, motif) {
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    const { key } = event, times = event.shiftKey ? 10 : 1;
    if (key === "Escape") return this.giveUp();
    if (key in arrows) this.#go("move", motif, arrows[key].map((n) => n * times));
    else if (key in sizes) this.#go("size", motif, [sizes[key], 0]);
    else if (key.toLowerCase() in turns) this.#go("turn", motif, [turns[key.toLowerCase()] * times, 0]);
    else return false;
    event.preventDefault();
    return true;
  }

  giveUp() {
    if (!this.run) return false;
    clearTimeout(this.timer);
    this.run.drag.giveUp();
    this.run = null;
    return true;
  }

  /** rest ends the run. */
  rest() {
    clearTimeout(this.timer);
    const { run } = this;
    this.run = null;
    run?.drag.done();
    if (run) this.rested(run.motif);
  }

  #go(sort, motif, by) {
    if (this.run?.sort !== sort || this.run.motif !== motif.motif) {
      this.rest();
      this.run = { sort, motif: motif.motif, steps: [0, 0], from: motif, drag: new Drag(this.store, `motif[${motif.motif}]`) };
    }
    this.run.steps = this.run.steps.map((n, i) => n + by[i]);
    this.run.drag.to(this.#value());
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.rest(), pause);
  }

  #value() {
    const { sort, steps: [a, b], from: { box, middle } } = this.run;
    const step = calipers[this.store.state.answer.unit] ?? calipers.mm;
    if (sort === "move") return { grab: "middle", from: middle, to: [middle[0] + a * step, middle[1] + b * step], fine: true };
    if (sort === "size") return { grab: "corner", from: box[2], to: grown(middle, box[2], (a * step) / 2), fine: true };
    const top = between(box[2], box[3]);
    return { grab: "turn", from: top, to: turned(top, middle, a), fine: true };
  }
}

/** grown returns a corner farther out, by as much across as up. */
function grown([mx, my], [x, y], by) {
  const out = (from, to) => to + Math.sign(to - from) * Math.max(by, -Math.abs(to - from) * 0.9);
  return [out(mx, x), out(my, y)];
}

function turned([x, y], [mx, my], degrees) {
  const a = (degrees * Math.PI) / 180, dx = x - mx, dy = y - my;
  return [mx + dx * Math.cos(a) - dy * Math.sin(a), my + dx * Math.sin(a) + dy * Math.cos(a)];
}
