// Mouse, pen and fingers on the wrap.

import { Drag } from "./drag.js";
import { next, still, under } from "./hit.js";
import { apart, between, unplaced } from "./shapes.js";

/**
 * Pointers follows what is pressed on a wrap.
 * A press on a handle drags, a mouse also drags a motif at once. A finger drags only the motif
 * that was tapped here before, where its frame is: all else is left to the page to scroll.
 * Two fingers, or a press on bare paper, carry a magnified drawing along.
 */
export class Pointers {
  /** @param on {wrap(), active(), frame, pen, choose(motif, copy, place), finding(letter), ghost(motif, copy, by)} */
  constructor(svg, sight, store, on) {
    Object.assign(this, { svg, sight, store, on, down: new Map(), act: null });
    svg.addEventListener("pointerdown", (event) => this.#press(event));
    svg.addEventListener("pointermove", (event) => this.#move(event));
    svg.addEventListener("pointerup", (event) => this.#lift(event));
    svg.addEventListener("pointercancel", (event) => this.#lost(event));
    // What is dragged must not scroll the page; anything else may.
    svg.addEventListener("touchstart", (event) => this.#hold(event), { passive: false });
    svg.addEventListener("wheel", (event) => this.#roll(event), { passive: false });
    window.addEventListener("keydown", (event) => event.key === "Escape" && this.giveUp());
  }

  giveUp() {
    this.act?.drag?.giveUp();
    this.act = null;
    this.on.pen.giveUp();
    this.on.ghost(null);
  }

  #press(event) {
    if (event.button > 0 || !this.on.wrap()) return;
    this.down.set(event.pointerId, [event.clientX, event.clientY]);
    this.svg.setPointerCapture(event.pointerId);
    if (this.down.size === 2) {
      this.giveUp();
      this.act = { sort: "pinch", ...this.#pair() };
    } else if (this.down.size === 1) {
      this.act = this.on.pen.active ? { sort: "pen" } : this.#meant(event);
      if (this.on.pen.active) this.on.pen.press(event);
    }
  }

  /** meant returns what a press may become. */
  #meant(event) {
    const place = this.sight.at(event.clientX, event.clientY), screen = [event.clientX, event.clientY];
    const act = { sort: "press", place, screen, still: still[event.pointerType] ?? still.mouse };
    const handle = event.target.closest("[data-handle]");
    if (handle) {
      const { frame } = this.on;
      return { ...act, grab: handle.dataset.handle, motif: frame.motif, copy: frame.copy, handle: true,
        from: frame.place(handle.dataset.handle, Number(handle.dataset.corner)) };
    }
    act.letter = event.target.closest("[data-letter]")?.dataset.letter;
    act.found = under(this.on.wrap(), place);
    const { chosen } = this.store.state, touch = event.pointerType === "touch";
    const mine = act.found.filter(({ motif }) => motif.motif === chosen && (!touch || motif.motif === this.tapped));
    const meant = mine.find(({ copy }) => copy === this.on.active()) ?? (touch ? null : mine[0] ?? act.found[0]);
    if (meant) Object.assign(act, { grab: "middle", motif: meant.motif, index: meant.copy, copy: meant.motif.copies[meant.copy], from: meant.motif.middle });
    return act;
  }

  #move(event) {
    const { act } = this;
    if (!this.down.has(event.pointerId) || !act) return;
    const before = this.down.get(event.pointerId), now = [event.clientX, event.clientY];
    this.down.set(event.pointerId, now);
    if (act.sort === "pinch") return this.#pinch();
    if (act.sort === "pen") return this.on.pen.to(event);
    if (act.sort === "press" && apart(act.screen, now) > act.still) this.#start(act);
    if (act.sort === "pan") this.sight.move(now[0] - before[0], now[1] - before[1]);
    if (act.sort === "drag") this.#drag(act, event);
  }

  #start(act) {
    if (act.grab) {
      act.sort = "drag";
      act.drag = new Drag(this.store, `motif[${act.motif.motif}]`);
      if (!act.handle) this.on.choose(act.motif.motif, act.index);
    } else if (this.sight.closer) {
      act.sort = "pan";
    } else {
      act.sort = "nothing";
    }
  }

  // Pixels are counted, so that a page that moves under the pointer moves no motif.
  #drag(act, event) {
    const per = this.sight.perMillimetre, [x, y] = act.screen;
    const by = turnedBack([(event.clientX - x) / per, (y - event.clientY) / per], act.copy);
    const to = [act.from[0] + by[0], act.from[1] + by[1]];
    act.drag.to({ grab: act.grab, from: act.from, to, fine: event.shiftKey || this.sight.scale > 3 });
    if (act.grab === "middle") this.on.ghost(act.motif, act.copy, by);
  }

  #pinch() {
    const { act } = this, pair = this.#pair();
    if (!pair) return;
    this.sight.move(pair.middle[0] - act.middle[0], pair.middle[1] - act.middle[1]);
    this.sight.magnify(pair.apart / act.apart, this.sight.at(...pair.middle));
    Object.assign(act, pair);
  }

  #pair() {
    const [a, b] = [...this.down.values()];
    return b && { middle: between(a, b), apart: Math.max(apart(a, b), 1) };
  }

  #lift(event) {
    const { act } = this;
    if (!this.down.delete(event.pointerId) || !act) return;
    if (this.down.size) return;
    this.act = null;
    this.on.ghost(null);
    act.drag?.done();
    if (act.sort === "pen") return this.on.pen.lift();
    if (act.sort !== "press" || act.handle) return;
    if (act.letter) return this.on.finding(act.letter);
    const tapped = next(act.found, this.store.state.chosen);
    this.tapped = tapped?.motif.motif ?? 0;
    this.on.choose(this.tapped, tapped?.copy ?? 0, act.place);
  }

  #lost(event) {
    this.down.delete(event.pointerId);
    this.giveUp();
  }

  #hold(event) {
    const drags = this.on.pen.active || this.act?.grab || this.sight.closer || event.touches.length > 1;
    if (drags && event.cancelable) event.preventDefault();
  }

  #roll(event) {
    if (!event.ctrlKey) return;
    event.preventDefault();
    this.sight.magnify(Math.exp(-event.deltaY / 120), this.sight.at(event.clientX, event.clientY));
  }
}

/** turnedBack returns a way of a copy as it runs in repeat 1. */
function turnedBack(way, [cos, sin]) {
  return unplaced(way, [cos, sin, 0, 0]);
}
