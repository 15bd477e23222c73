// Mouse, pen and fingers on the glass: they turn it, or carry the chosen motif along on it.

import { Drag } from "./drag.js";
import { next, still } from "./hit.js";
import { apart } from "./shapes.js";

/** Turning follows what is pressed on the glass. */
export class Turning {
  /** @param on {look(), turn(by, down), settled(), place(x, y), finding(letter)} */
  constructor(stand, store, vessel, on) {
    Object.assign(this, { stand, store, vessel, on, act: null });
    stand.addEventListener("pointerdown", (event) => this.#press(event));
    stand.addEventListener("pointermove", (event) => this.#move(event));
    stand.addEventListener("pointerup", (event) => this.#lift(event));
    stand.addEventListener("pointercancel", () => this.giveUp());
    // Up and down on the glass scrolls the page, unless a motif is dragged.
    stand.addEventListener("touchstart", (event) => this.act?.mine && event.cancelable && event.preventDefault(), { passive: false });
    window.addEventListener("keydown", (event) => event.key === "Escape" && this.giveUp());
  }

  giveUp() {
    this.act?.drag?.giveUp();
    this.act = null;
  }

  #press(event) {
    if (event.button > 0 || !this.vessel.glass || this.act) return;
    this.stand.setPointerCapture(event.pointerId);
    const screen = [event.clientX, event.clientY], place = this.#under(event);
    const found = place ? this.#found(place) : [];
    // A finger turns the glass or scrolls the page, unless it has tapped the motif here before.
    const { chosen } = this.store.state, held = event.pointerType !== "touch" || chosen === this.tapped;
    const mine = held ? found.find(({ motif }) => motif.motif === chosen) : null;
    this.act = {
      id: event.pointerId, screen, last: screen, place, found, mine, mouse: event.pointerType === "mouse",
      letter: event.target.closest("[data-letter]")?.dataset.letter, still: still[event.pointerType] ?? still.mouse,
    };
  }

  #move(event) {
    const { act } = this;
    if (act?.id !== event.pointerId) return;
    const now = [event.clientX, event.clientY];
    if (!act.moved && apart(act.screen, now) <= act.still) return;
    act.moved = true;
    if (act.mine) this.#carry(act, event);
    else this.#turn(act, now);
    act.last = now;
  }

  /** turn turns the glass so that its near side goes with the finger. */
  #turn(act, now) {
    const [x0] = this.on.place(...act.last), [x1] = this.on.place(...now);
    const widest = Math.max(...this.vessel.glass.profile.map(([r]) => r));
    const down = act.mouse ? (now[1] - act.last[1]) / 8 : 0;
    this.on.turn(-(((x1 - x0) / widest) * 180) / Math.PI, down);
  }

  #carry(act, event) {
    act.drag ??= new Drag(this.store, `motif[${act.mine.motif.motif}]`);
    const { off } = act.mine, there = this.vessel.under(this.on.place(event.clientX, event.clientY), this.on.look());
    const from = [act.place[0] - off, act.place[1]], to = [there[0] - off, there[1]];
    act.drag.to({ grab: "middle", on: "glass", from, to, fine: event.shiftKey });
  }

  #lift(event) {
    const { act } = this;
    if (act?.id !== event.pointerId) return;
    this.act = null;
    act.drag?.done();
    if (act.moved) return this.on.settled();
    if (act.letter) return this.on.finding(act.letter);
    this.tapped = next(act.found, this.store.state.chosen)?.motif.motif ?? 0;
    this.store.choose(this.tapped);
  }

  /** under returns the place of the glass that is pressed, or null beside the glass. */
  #under(event) {
    const [x, y] = this.on.place(event.clientX, event.clientY);
    const { profile } = this.vessel.glass, place = this.vessel.under([x, y], this.on.look());
    const off = Math.abs(x) > this.vessel.radius(place[1]) || place[1] < profile[0][1] || place[1] > profile.at(-1)[1];
    return off ? null : place;
  }

  /** found returns the motifs whose cuts lie round a place, the smallest first, each with the angle to its copy. */
  #found([theta, z]) {
    const every = (this.vessel.every * 180) / Math.PI, found = [];
    for (const motif of this.vessel.motifs) {
      const { left, right, low, high } = motif.span;
      if (z < low || z > high) continue;
      const copies = Math.floor((theta - left) / every), off = copies * every;
      if (theta - off <= right) found.push({ motif, off, copy: copies, size: (right - left) * (high - low) });
    }
    return found.sort((a, b) => a.size - b.size);
  }
}
