// The glass as it is turned: a plain projection of its profile and its grooves onto a canvas.
// It stands upright: widths and heights are true, and a level circle is an ellipse.

import { radiusAt } from "./shapes.js";

const right = Math.PI / 2;

// Outlines in one path: a browser fills 5,000 of them by fifties 27 times as fast as all in one.
const together = 50;

/** tilts is how far down the eye may look, in degrees. */
export const tilts = { least: 0, most: 20 };

/** Vessel draws a glass, and says which place of it is under a place of the drawing. */
export class Vessel {
  constructor(canvas) {
    this.canvas = canvas;
    this.pen = canvas.getContext("2d");
    this.size = { width: 0, height: 0 }; // at which the canvas is shown, in pixels of the page
  }

  /** take takes a glass as the engine gives it, and gets it ready for turning. */
  take(glass) {
    this.glass = glass;
    this.every = (2 * Math.PI * glass.period) / glass.repeats;
    this.copies = Math.round(glass.repeats / glass.period);
    this.motifs = glass.motifs.map(({ motif, cuts }) => ({ motif, ...outlines(cuts) }));
    const widest = Math.max(...glass.profile.map(([r]) => r)), rim = glass.profile.at(-1)[1];
    const air = widest * 0.12, down = Math.tan((tilts.most * Math.PI) / 180);
    const [foot, lip] = [glass.profile[0][0] * down, glass.profile.at(-1)[0] * down];
    this.view = { x: -widest - air, y: -rim - lip - air, width: 2 * (widest + air), height: rim + lip + foot + 2 * air };
    // The outside, by height, for what is under a finger.
    this.radii = glass.profile.slice().sort((a, b) => a[1] - b[1]);
  }

  /** fit takes the size at which the canvas is shown. */
  fit() {
    const dots = window.devicePixelRatio || 1;
    const width = Math.round(this.size.width * dots), height = Math.round(this.size.height * dots);
    if (this.canvas.width !== width || this.canvas.height !== height) Object.assign(this.canvas, { width, height });
    this.per = Math.min(width / this.view.width, height / this.view.height);
    this.left = (width - this.view.width * this.per) / 2 - this.view.x * this.per;
    this.top = (height - this.view.height * this.per) / 2 - this.view.y * this.per;
  }

  /** at returns where a place of the glass is seen, in millimetres, y up, and whether it is on the near side. */
  at(theta, z, { turn, tilt }) {
    const angle = ((theta - turn) * Math.PI) / 180, r = this.radius(z);
    return { x: r * Math.sin(angle), y: z - Math.tan((tilt * Math.PI) / 180) * r * Math.cos(angle), near: Math.cos(angle) >= 0 };
  }

  /** under returns the place of the near side, [theta in degrees, height], that is seen at x, y. */
  under([x, y], { turn, tilt }) {
    const down = Math.tan((tilt * Math.PI) / 180);
    let z = y, angle = 0;
    for (let i = 0; i < 6; i++) {
      const r = this.radius(z);
      angle = Math.asin(Math.min(Math.max(x / r, -0.995), 0.995));
      z = y + down * r * Math.cos(angle);
    }
    return [turn + (angle * 180) / Math.PI, z];
  }

  radius(z) {
    return radiusAt(this.radii, z);
  }

  /** draw draws the glass as it is looked at. */
  draw({ turn, tilt }, chosen, inks) {
    if (!this.glass) return;
    this.fit();
    const { pen } = this, down = Math.tan((tilt * Math.PI) / 180), facing = (turn * Math.PI) / 180;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, this.canvas.width, this.canvas.height);
    pen.setTransform(this.per, 0, 0, this.per, this.left, this.top);
    pen.lineJoin = "round";
    this.#body(down, inks);
    pen.save();
    pen.clip(this.#silhouette(down)); // what was dragged over the rim is not on the glass
    pen.fillStyle = inks.far;
    this.#grooves(() => true, facing + Math.PI, -down, -1);
    this.#inside(down, inks);
    pen.fillStyle = inks.near;
    this.#grooves((motif) => motif !== chosen, facing, down, 1);
    pen.fillStyle = inks.chosen;
    this.#grooves((motif) => motif === chosen, facing, down, 1);
    pen.restore();
    this.#edges(down, inks);
  }

  /** grooves fills the outlines on the side that faces an angle; sign turns the far side's right and left about. */
  #grooves(which, facing, down, sign) {
    const { pen } = this;
    let added = 0;
    pen.beginPath();
    for (const { motif, places, ends, middles } of this.motifs) {
      if (!which(motif)) continue;
      for (let copy = 0; copy < this.copies; copy++) {
        for (let i = 0; i < ends.length; i++) {
          const off = copy * this.every - facing, middle = middles[i] + off;
          const whole = Math.round(middle / (2 * Math.PI)) * 2 * Math.PI;
          if (Math.abs(middle - whole) > 2) continue;
          outline(pen, places, i ? ends[i - 1] : 0, ends[i], off - whole, down, sign);
          if (++added % together) continue;
          pen.fill();
          pen.beginPath();
        }
      }
    }
    pen.fill();
  }

  #body(down, inks) {
    const { pen, view } = this, tone = pen.createLinearGradient(view.x, 0, view.x + view.width, 0);
    inks.body.forEach((ink, i) => tone.addColorStop(i / (inks.body.length - 1), ink));
    pen.fillStyle = tone;
    pen.fill(this.#silhouette(down));
  }

  #silhouette(down) {
    const path = new Path2D(), { profile } = this.glass, [r0, z0] = profile[0], [r1, z1] = profile.at(-1);
    path.moveTo(-r0, -z0);
    path.ellipse(0, -z0, r0, Math.max(r0 * down, 0.01), 0, Math.PI, 0, true);
    for (const [r, z] of profile) path.lineTo(r, -z);
    path.ellipse(0, -z1, r1, Math.max(r1 * down, 0.01), 0, 0, Math.PI, true);
    for (const [r, z] of profile.slice().reverse()) path.lineTo(-r, -z);
    return path;
  }

  #inside(down, inks) {
    const { pen } = this, { inside } = this.glass;
    if (!inside.length) return;
    const path = new Path2D();
    for (const side of [-1, 1]) inside.forEach(([r, z], i) => path[i ? "lineTo" : "moveTo"](side * r, -z));
    pen.strokeStyle = inks.hair;
    pen.lineWidth = 0.8 / this.per;
    pen.stroke(path);
  }

  #edges(down, inks) {
    const { pen } = this, { profile, inside } = this.glass, [r, z] = profile.at(-1);
    const rim = new Path2D();
    rim.ellipse(0, -z, r, Math.max(r * down, 0.01), 0, 0, 2 * Math.PI);
    const lip = inside.length ? inside.at(-1)[0] : 0;
    if (lip > 0) {
      rim.moveTo(lip, -z);
      rim.ellipse(0, -z, lip, Math.max(lip * down, 0.01), 0, 0, 2 * Math.PI);
    }
    pen.strokeStyle = inks.edge;
    pen.lineWidth = 1.4 / this.per * (window.devicePixelRatio || 1);
    pen.stroke(rim);
    pen.stroke(this.#silhouette(down));
  }
}

/** outlines packs cuts: places as angle (radians), height and radius, where each outline ends, and its middle angle. */
function outlines(cuts) {
  const places = new Float32Array(3 * cuts.reduce((sum, cut) => sum + cut.length, 0));
  const ends = [], middles = [];
  let n = 0, low = Infinity, high = -Infinity, left = Infinity, rightmost = -Infinity;
  for (const cut of cuts) {
    let from = Infinity, to = -Infinity;
    for (const [theta, z, r] of cut) {
      const angle = (theta * Math.PI) / 180;
      places.set([angle, z, r], n);
      n += 3;
      [from, to, low, high] = [Math.min(from, angle), Math.max(to, angle), Math.min(low, z), Math.max(high, z)];
    }
    ends.push(n);
    middles.push((from + to) / 2);
    [left, rightmost] = [Math.min(left, from), Math.max(rightmost, to)];
  }
  const degrees = (x) => (x * 180) / Math.PI;
  return { places, ends, middles, span: { left: degrees(left), right: degrees(rightmost), low, high } };
}

/** outline adds one outline, folded at the edge of the glass. */
function outline(path, places, from, to, off, down, sign) {
  let seen = false;
  for (let i = from; i < to && !seen; i += 3) seen = Math.abs(places[i] + off) < right;
  if (!seen) return;
  for (let i = from; i < to; i += 3) {
    const angle = Math.min(Math.max(places[i] + off, -right), right), r = places[i + 2];
    const x = sign * r * Math.sin(angle), y = down * r * Math.cos(angle) - places[i + 1];
    if (i === from) path.moveTo(x, y);
    else path.lineTo(x, y);
  }
  path.closePath();
}
