// The sheet: a wrap's shapes as the engine gave them. It has no handles and can't be touched.

import { shape, put, keep, matrix } from "./shapes.js";

let count = 0;

/** Sheet draws wraps into one SVG element, and touches only what differs from the wrap before. */
export class Sheet {
  constructor(attrs = {}) {
    this.id = `period-${++count}`;
    this.paper = {};
    for (const name of ["ends", "band", "edges", "seam"]) this.paper[name] = shape("path", { class: name });
    this.part = shape("path", { class: "drawn-part" });
    this.period = shape("g", { id: this.id }, this.part);
    this.copies = shape("g", { class: "copies" });
    this.cover = shape("path", { class: "cover" });
    this.parts = shape("g", { class: "parts", "aria-hidden": "true" });
    this.above = shape("g", { class: "above" });
    // The engine's y runs up, the screen's down.
    const { ends, ...below } = this.paper;
    this.flat = shape("g", { class: "flat", transform: "scale(1 -1)" },
      ...Object.values(below), shape("defs", {}, this.period), this.copies, this.cover, ends, this.parts, this.above);
    this.svg = shape("svg", { class: "sheet", ...attrs }, this.flat);
    this.motifs = new Map();
  }

  /** show draws a wrap. */
  show(wrap) {
    if (wrap === this.wrap) return;
    this.wrap = wrap;
    for (const [name, path] of Object.entries(this.paper)) put(path, "d", wrap[name] || "");
    this.#showMotifs(wrap.motifs);
    // What hangs over one end comes round the seam at the other, as on the printed paper.
    // It is covered up, not clipped: clipping so many shapes takes a browser several times as long.
    put(this.cover, "d", beyond(wrap.box) + wrap.paper);
    this.#number(wrap.parts);
    keep(this.copies, [wrap.before, ...wrap.copies, wrap.after], () => shape("use", { href: `#${this.id}` }), (use, copy) => put(use, "transform", matrix(copy)));
  }

  /** mark sets the chosen motif apart, in all its copies, and the cuts of its chosen part. */
  mark(number, cuts = "") {
    put(this.part, "d", cuts);
    if (this.marked === number) return;
    this.motifs.get(this.marked)?.group.classList.remove("drawn-chosen");
    this.motifs.get(number)?.group.classList.add("drawn-chosen");
    this.marked = number;
  }

  /** scale keeps the repeats' numbers their size on the screen. */
  scale(perMillimetre) {
    this.perMillimetre = perMillimetre;
    if (this.wrap) this.#number(this.wrap.parts);
  }

  #number(parts) {
    const per = this.perMillimetre;
    keep(this.parts, per ? parts : [], () => shape("text", { class: "part", "text-anchor": "middle", y: 15 }), (text, { repeat, x, y, turn }) => {
      put(text, "transform", `translate(${x} ${y}) rotate(${turn}) scale(${1 / per} ${-1 / per})`);
      if (text.textContent !== String(repeat)) text.textContent = repeat;
    });
  }

  #showMotifs(motifs) {
    const left = new Set(this.motifs.keys());
    for (const motif of motifs) {
      left.delete(motif.motif);
      const { footprints, lines } = this.motifs.get(motif.motif) ?? this.#add(motif.motif);
      showPaths(footprints, motif.footprint);
      showPaths(lines, motif.line);
    }
    for (const number of left) {
      this.motifs.get(number).group.remove();
      this.motifs.delete(number);
    }
  }

  #add(number) {
    const footprints = shape("g", { class: "drawn-footprints" }), lines = shape("g", { class: "drawn-lines" });
    const group = shape("g", { class: number === this.marked ? "drawn-chosen" : null, "data-drawn": number }, footprints, lines);
    this.part.before(group);
    const motif = { group, footprints, lines };
    this.motifs.set(number, motif);
    return motif;
  }
}

// A browser fills one very long path far more slowly than the same in pieces:
// 5,000 outlines take 27 times as long in one as by fifties.
const together = 50;

/** showPaths draws a path in pieces of so many subpaths. */
function showPaths(group, d) {
  const subpaths = d ? d.slice(1).split("M") : [], pieces = [];
  for (let i = 0; i < subpaths.length; i += together) pieces.push("M" + subpaths.slice(i, i + together).join("M"));
  keep(group, pieces, () => shape("path"), (path, piece) => put(path, "d", piece));
}

/** beyond is a frame far round a drawing, to cover what lies outside of something. */
function beyond([x0, y0, x1, y1]) {
  const far = 4 * (x1 - x0 + y1 - y0);
  return `M${x0 - far} ${y0 - far}H${x1 + far}V${y1 + far}H${x0 - far}Z`;
}

/** margin is the paper seen round a wrap, in millimetres. */
export const margin = 5;

/** viewOf returns what of a drawing is seen when all of it is: x, y, width and height, y down. */
export function viewOf([x0, y0, x1, y1], air = margin) {
  return { x: x0 - air, y: -y1 - air, width: x1 - x0 + 2 * air, height: y1 - y0 + 2 * air };
}
