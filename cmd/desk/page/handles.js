// The frame round the chosen motif, and its handles: middle, corners and a knob to turn it by.

import { shape, put, apart, between, matrix, placed, polygon } from "./shapes.js";

const room = 46; // pixels between two handles, so that a wet finger meets one
const arm = 36; // pixels from the frame to its knob

/** Frame is drawn above a sheet. Its handles keep their size on the screen. */
export class Frame {
  constructor() {
    this.outline = shape("path", { class: "outline" });
    this.arm = shape("path", { class: "arm" });
    this.middle = handle("middle", "M-5 0H5M0 -5V5");
    this.turn = handle("turn", "M-4 -2A4.5 4.5 0 1 1 -2 4");
    this.corners = [0, 1, 2, 3].map((i) => handle("corner", null, i));
    this.group = shape("g", { class: "frame", "aria-hidden": "true" },
      this.outline, this.arm, this.middle, ...this.corners, this.turn);
    this.hide();
  }

  hide() {
    this.motif = null;
    put(this.group, "display", "none");
  }

  /** show draws the frame of a motif in one of the wrap's copies. sees says whether a place of the wrap is in sight. */
  show(motif, copy, perMillimetre, sees) {
    if (!motif?.box?.length) return this.hide();
    Object.assign(this, { motif, copy, perMillimetre, sees });
    put(this.group, "display", null);
    put(this.group, "transform", matrix(copy));
    put(this.outline, "d", polygon(motif.box));
    const knob = this.place("turn");
    put(this.arm, "d", polygon([this.#armFrom(knob), knob]));
    this.#at(this.middle, motif.middle);
    this.#at(this.turn, knob);
    const one = this.#narrow();
    this.corners.forEach((corner, i) => {
      put(corner, "display", one && i !== 1 ? "none" : null);
      this.#at(corner, this.place("corner", i));
    });
  }

  /** place returns where a handle lies, in repeat 1. A handle with no room on its frame lies farther out. */
  place(grab, corner = 2) {
    const { box, middle } = this.motif;
    if (grab === "middle") return middle;
    if (grab === "corner") return farther(middle, box[corner], room / this.perMillimetre);
    const { foot, top, tall, up } = this.#axis(), least = room / this.perMillimetre, out = arm / this.perMillimetre;
    const along = (from, by) => [from[0] + by * up[0], from[1] + by * up[1]];
    const ways = [
      along(top, Math.max(out, least - apart(top, middle))), // above the frame,
      along(foot, -Math.max(out, least - apart(foot, middle))), // below it,
      along(middle, Math.max(least, tall / 2 - out)), // or in its upper half
    ];
    return ways.find((way) => this.sees(placed(way, this.copy))) ?? ways[0];
  }

  /** axis is the frame's middle line. */
  #axis() {
    const { box } = this.motif, foot = between(box[0], box[1]), top = between(box[2], box[3]), tall = apart(foot, top) || 1;
    return { foot, top, tall, up: [(top[0] - foot[0]) / tall, (top[1] - foot[1]) / tall] };
  }

  #armFrom(knob) {
    const { box } = this.motif, ends = [between(box[2], box[3]), between(box[0], box[1])];
    return apart(ends[0], knob) < apart(ends[1], knob) ? ends[0] : ends[1];
  }

  #narrow() {
    const { box } = this.motif;
    return Math.min(apart(box[0], box[1]), apart(box[1], box[2])) * this.perMillimetre < 1.6 * room;
  }

  #at(mark, [x, y]) {
    put(mark, "transform", `translate(${x} ${y}) scale(${1 / this.perMillimetre} ${-1 / this.perMillimetre})`);
  }
}

function handle(grab, sign, corner) {
  return shape("g", { class: "handle", "data-handle": grab, "data-corner": corner },
    shape("circle", { class: "reach", r: 22 }),
    shape("circle", { class: "knob", r: sign ? 9 : 7 }),
    ...(sign ? [shape("path", { class: "sign", d: sign })] : []));
}

function farther(from, to, least) {
  const far = apart(from, to);
  if (far >= least) return to;
  return far ? between(from, to, least / far) : [from[0] + least * Math.SQRT1_2, from[1] - least * Math.SQRT1_2];
}
