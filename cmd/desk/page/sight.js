// What of a drawing is seen: all of it, or a part that is closer.

import { put } from "./shapes.js";

const closest = 24;

/** Sight keeps what an SVG element shows of a drawing. */
export class Sight {
  /** @param changed is called when another part is seen */
  constructor(svg, changed) {
    this.svg = svg;
    this.changed = changed;
    this.scale = 1;
    this.size = { width: 0, height: 0 };
    new ResizeObserver(([{ contentRect }]) => {
      this.size = contentRect;
      this.#seen();
    }).observe(svg);
  }

  /** over says what all of it is. What is seen closer stays so. */
  over(all) {
    const same = this.all && ["x", "y", "width", "height"].every((key) => Math.abs(this.all[key] - all[key]) < 1e-6);
    if (same) return;
    this.middle ??= { x: all.x + all.width / 2, y: all.y + all.height / 2 };
    this.all = all;
    this.#show();
  }

  get closer() {
    return this.scale > 1.001;
  }

  /** perMillimetre returns how many pixels a millimetre is. */
  get perMillimetre() {
    const { width, height } = this.size, { all, scale } = this;
    return all ? Math.min(width / all.width, height / all.height) * scale || 1 : 1;
  }

  /** at returns the place of the drawing, y up, that is under a place on the screen. */
  at(clientX, clientY) {
    const m = this.#toScreen(), x = clientX - m.e, y = clientY - m.f;
    return [x / m.a, -y / m.d];
  }

  /** sees reports whether a place, y up, is in sight, with room for a finger round it. */
  sees([x, y]) {
    // Where the element is not of the drawing's shape, more than its view box is in sight.
    const per = this.perMillimetre, air = 12 / per, width = this.size.width / per, height = this.size.height / per;
    return Math.abs(x - this.middle.x) < width / 2 - air && Math.abs(-y - this.middle.y) < height / 2 - air;
  }

  /** magnify goes closer by a factor. What lies at the place stays where it is seen. */
  magnify(factor, [x, y] = [this.middle.x, -this.middle.y]) {
    const scale = Math.min(Math.max(this.scale * factor, 1), closest), by = this.scale / scale;
    this.scale = scale;
    this.middle = { x: x + (this.middle.x - x) * by, y: -y + (this.middle.y + y) * by };
    this.#show();
  }

  whole() {
    this.scale = 1;
    this.#show();
  }

  /** move carries the drawing along by pixels. */
  move(dx, dy) {
    const per = this.perMillimetre;
    this.middle = { x: this.middle.x - dx / per, y: this.middle.y - dy / per };
    this.#show();
  }

  /** reach brings a place into sight. */
  reach([x, y]) {
    if (!this.closer) return;
    const w = this.all.width / this.scale, h = this.all.height / this.scale;
    if (Math.abs(x - this.middle.x) < 0.45 * w && Math.abs(-y - this.middle.y) < 0.45 * h) return;
    this.middle = { x, y: -y };
    this.#show();
  }

  #show() {
    const { x, y } = this.all;
    const width = this.all.width / this.scale, height = this.all.height / this.scale;
    const within = (middle, from, all, part) => Math.min(Math.max(middle, from + part / 2), from + all - part / 2);
    this.middle = { x: within(this.middle.x, x, this.all.width, width), y: within(this.middle.y, y, this.all.height, height) };
    put(this.svg, "viewBox", [this.middle.x - width / 2, this.middle.y - height / 2, width, height].join(" "));
    this.svg.style.setProperty("--shape", `${this.all.width} / ${this.all.height}`);
    this.#seen();
  }

  #seen() {
    if (this.all) this.changed();
  }

  // The page may have been scrolled since, so this is asked each time.
  #toScreen() {
    return this.svg.getScreenCTM() ?? { a: 1, d: 1, e: 0, f: 0 };
  }
}
