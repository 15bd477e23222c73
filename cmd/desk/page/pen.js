// Strokes drawn on the wrap: each becomes a cut of a drawing in the job.

import { motifsIn } from "./added.js";
import { copyAt } from "./hit.js";
import { apart, line, put, shape, unplaced } from "./shapes.js";

const least = 6; // pixels: what is shorter is a tap
const words = "Draw on the wrap with mouse, pen or finger. Each stroke is a cut, and Undo takes the last one back.";

/** Pen follows a pointer while cuts are drawn. Strokes go to the engine one after the other, each an undo step. */
export class Pen {
  /** @param on {wrap(), changed(), tell(words), drew(motif, place)} */
  constructor(sight, store, on) {
    Object.assign(this, { sight, store, on, active: false, motif: 0, waiting: [], stroke: null });
    this.layer = shape("g", { class: "pen-strokes", "aria-hidden": "true" });
  }

  /** begin starts drawing: in the chosen motif, if that is a drawing with its lines in the job. */
  begin() {
    const { chosen, form } = this.store.state;
    this.active = true;
    this.before = chosen;
    this.motif = drawsIn(form, chosen) ? chosen : 0;
    this.store.choose(0);
    this.on.tell(this.motif ? `${words} They go into motif ${this.motif}.` : words);
    this.on.changed();
  }

  /** done ends drawing, and chooses what was drawn, or else what was chosen before. */
  async done() {
    this.giveUp();
    this.active = false;
    this.on.tell("");
    this.on.changed();
    await this.sent;
    const { state } = this.store;
    this.store.choose(drawsIn(state.form, this.motif) ? this.motif : this.before);
  }

  press(event) {
    const place = this.sight.at(event.clientX, event.clientY);
    this.stroke = {
      places: [place], long: 0,
      last: [event.clientX, event.clientY], path: shape("path", { class: "pen-stroke" }), step: 1 / this.sight.perMillimetre,
    };
    this.layer.append(this.stroke.path);
  }

  to(event) {
    const { stroke } = this;
    if (!stroke) return;
    const all = event.getCoalescedEvents?.() ?? [];
    for (const { clientX, clientY } of all.length ? all : [event]) {
      const now = [clientX, clientY], by = apart(now, stroke.last);
      if (by === 0) continue;
      stroke.long += by;
      stroke.last = now;
      stroke.places.push(this.sight.at(clientX, clientY));
    }
    put(stroke.path, "d", line(stroke.places));
  }

  lift() {
    const { stroke } = this;
    this.stroke = null;
    if (!stroke) return;
    if (stroke.long < least) return stroke.path.remove();
    this.waiting.push(stroke);
    if (this.waiting.length === 1) this.sent = this.#send();
  }

  /** giveUp forgets a stroke that isn't finished, and reports whether there was one. */
  giveUp() {
    const { stroke } = this;
    this.stroke = null;
    stroke?.path.remove();
    return Boolean(stroke);
  }

  async #send() {
    while (this.waiting.length) {
      const [stroke] = this.waiting;
      await this.#put(stroke).catch((err) => this.store.say(err.message));
      stroke.path.remove();
      this.waiting.shift();
    }
  }

  async #put({ places, step }) {
    const state = await this.store.settled();
    if (state.mistake) throw new Error("Mend what is wrong in the job first, then draw.");
    const before = motifsIn(state);
    const into = drawsIn(state.form, this.motif) ? `motif[${this.motif}]` : "motif";
    const copy = copyAt(this.on.wrap(), places[0]);
    const points = places.map((place) => unplaced(place, copy).map((x) => Math.round(x * 1000) / 1000));
    this.store.change([{ op: "stroke", path: into, value: { points, step: Math.min(step, 3) } }]);
    const after = motifsIn(await this.store.settled());
    if (into === "motif" && after > before) this.motif = after;
    this.on.drew(this.motif, places[0]);
  }
}

/** drawsIn is whether a motif is a drawing that has its lines in the job. */
function drawsIn(form, motif) {
  const table = form?.tables.find(({ path }) => path === `motif[${motif}]`);
  return Boolean(table?.fields.some(({ key, given }) => key === "paths" && given));
}
