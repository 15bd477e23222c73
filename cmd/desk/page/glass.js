// The glass, turned under mouse, finger and keys. At rest it is the engine's own picture.

import { el, say } from "./dom.js";
import { Late } from "./late.js";
import { put, shape } from "./shapes.js";
import { keptOf } from "./silhouette.js";
import { ringKeys, showRings, toggleFinding } from "./rings.js";
import { follow } from "./slow.js";
import { Turning } from "./turning.js";
import { tilts, Vessel } from "./vessel.js";

const step = 15; // degrees of a press on a button
const rest = 60; // ms without turning after which the look is told to the rest of the page

/** mount fills root and follows the store. */
export function mount(root, store) {
  new Glass(root, store);
}

class Glass {
  constructor(root, store) {
    this.store = store;
    this.look = { ...store.state.look };
    this.#fill(root);
    this.vessel = new Vessel(this.canvas);
    this.turning = new Turning(this.stand, store, this.vessel, {
      look: () => this.look,
      turn: (by, down) => this.#turn(by, down),
      settled: () => this.#tell(),
      place: (x, y) => this.#place(x, y),
      finding: (letter) => toggleFinding(store, letter),
    });
    this.canvas.addEventListener("keydown", (event) => this.#key(event));
    ringKeys(this.rings, store);
    new ResizeObserver(([{ contentRect }]) => {
      this.vessel.size = contentRect;
      this.#soon();
    }).observe(this.canvas);
    this.night = window.matchMedia("(prefers-color-scheme: dark)");
    this.night.addEventListener("change", () => {
      this.inks = null;
      this.#clip();
      this.#soon();
    });
    store.subscribe((state) => this.#show(state));
    follow(store, "picture", (state) => this.#question(state), (answer, state, how) => this.#settle(answer, how));
  }

  #fill(root) {
    const button = (words, press) => el("button", { type: "button", onclick: press }, words);
    this.tilts = [button("From above", () => this.#press(0, 7)), button("From the side", () => this.#press(0, -7))];
    this.canvas = el("canvas", {
      tabindex: 0, role: "slider", "aria-label": "The glass, turned", "aria-describedby": "glass-keys",
      "aria-valuemin": 0, "aria-valuemax": 360, "aria-valuenow": 0,
    });
    this.picture = el("img", { alt: "", class: "at-rest", draggable: "false" });
    this.rings = shape("g", { transform: "scale(1 -1)" });
    this.over = shape("svg", { class: "over" }, this.rings);
    this.stand = el("div", { class: "vessel" }, this.canvas, this.picture, this.over);
    const note = el("p", { class: "of-before", role: "status", hidden: true });
    this.late = new Late(root, note);
    root.classList.add("glass");
    root.append(
      this.stand,
      el("div", { class: "drawn-below" }, el("div", { class: "turns" },
        button("Turn left", () => this.#press(step, 0)), button("Turn right", () => this.#press(-step, 0)),
        this.tilts), note),
      el("p", { id: "glass-keys", class: "unseen" },
        "Left and right turn the glass, up and down look at it from above or from the side, Home goes back to repeat 1."));
  }

  #show(state) {
    this.late.follow(state);
    const glass = state.answer?.glass;
    if (!glass) return;
    if (glass !== this.glass || this.below !== (state.answer.face === "base")) {
      this.glass = glass;
      this.vessel.take(glass);
      this.#face(state.answer.face === "base");
      const { x, y, width, height } = this.vessel.view;
      this.stand.style.setProperty("--shape", this.below ? 1 : width / height);
      put(this.over, "viewBox", [x, y, width, height].join(" "));
    }
    const seen = [glass, state.chosen, state.letter];
    if (seen.some((part, i) => part !== this.seen?.[i])) this.#soon();
    this.seen = seen;
  }

  /** face has the glass seen from the side, or its base from below: that is the engine's picture alone. */
  #face(below) {
    if (below === this.below) return;
    this.below = below;
    this.pictured = false;
    this.stand.classList.remove("rests");
    this.stand.classList.toggle("from-below", below);
    for (const button of this.tilts) button.hidden = below;
    say(document.querySelector("#glass-title"), below ? "The glass from below" : "The glass");
  }

  #turn(by, down) {
    const turn = (((this.look.turn + by) % 360) + 360) % 360;
    const tilt = Math.min(Math.max(this.look.tilt + down, tilts.least), tilts.most);
    if (turn === this.look.turn && tilt === this.look.tilt) return; // as a swipe straight up: nothing turns
    Object.assign(this.look, { turn, tilt });
    if (!this.below) this.stand.classList.remove("rests");
    this.#soon();
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.#tell(), rest);
  }

  #press(by, down) {
    this.#turn(by, down);
    this.#tell();
  }

  /** tell makes the look known: the picture is asked for from here. */
  #tell() {
    clearTimeout(this.timer);
    const { turn, tilt } = this.look, known = this.store.state.look;
    if (turn !== known.turn || tilt !== known.tilt) this.store.lookFrom(turn, tilt);
    else this.#rest();
  }

  #question({ text, blank, look, answer }) {
    const below = answer.face === "base";
    return { job: text, blank, turn: look.turn, tilt: look.tilt, findings: below, base: below };
  }

  /** settle shows the engine's picture of what is seen now; null while there is none. */
  async #settle(answer) {
    this.token = null;
    this.pictured = false;
    if (!this.below) this.stand.classList.remove("rests");
    if (!answer?.svg) return;
    const token = (this.token = {});
    const address = URL.createObjectURL(new Blob([answer.svg], { type: "image/svg+xml" }));
    this.picture.src = address;
    await this.picture.decode().catch(() => {});
    URL.revokeObjectURL(address);
    if (token !== this.token || !this.picture.naturalWidth) return;
    if (this.below) return this.#fromBelow();
    const { view } = this.vessel, [x0, y0, x1, y1] = answer.box;
    const share = { left: (x0 - view.x) / view.width, top: (-y1 - view.y) / view.height, width: (x1 - x0) / view.width, height: (y1 - y0) / view.height };
    for (const [side, part] of Object.entries(share)) this.picture.style.setProperty(side, `${part * 100}%`);
    this.box = answer.box;
    this.#clip();
    this.pictured = true;
    this.#rest();
  }

  /** fromBelow shows the picture of the base, which is all there is to see then. */
  #fromBelow() {
    for (const [side, part] of Object.entries({ left: "0", top: "0", width: "100%", height: "100%", "clip-path": "none" })) {
      this.picture.style.setProperty(side, part);
    }
    this.box = null;
    this.stand.classList.add("rests");
  }

  /** clip leaves of the picture what lies on the glass; by night also its shadow goes, which is drawn for a bright ground. */
  #clip() {
    if (this.box) this.picture.style.setProperty("clip-path", keptOf(this.glass.profile, this.look.tilt, this.box, this.night.matches));
  }

  /** rest shows the picture, if it is of the look that the glass has now. */
  #rest() {
    const { look } = this.store.state;
    if (this.pictured && look.turn === this.look.turn && look.tilt === this.look.tilt) this.stand.classList.add("rests");
  }

  /** soon draws once before the next frame, however often it is called. */
  #soon() {
    this.frame ??= requestAnimationFrame(() => {
      this.frame = null;
      this.#draw();
    });
  }

  #draw() {
    const { state } = this.store, { turn } = this.look;
    if (!this.glass) return;
    this.inks ??= inksOf(this.stand);
    this.vessel.draw(this.look, state.chosen, this.inks);
    const per = this.vessel.size.width / this.vessel.view.width || 1;
    const seen = this.glass.rings.map(({ letter, theta, height }) => ({ letter, ...this.vessel.at(theta, height, this.look) }));
    showRings(this.rings, seen, state, per);
    seen.forEach(({ near }, i) => this.rings.children[i]?.classList.toggle("behind", !near));
    put(this.canvas, "aria-valuenow", Math.round(turn));
    put(this.canvas, "aria-valuetext", `turned ${Math.round(turn)}°, seen from ${Math.round(this.look.tilt)}° above`);
  }

  /** place returns where on the drawing a place of the screen is, in millimetres, y up. */
  #place(clientX, clientY) {
    const box = this.canvas.getBoundingClientRect(), { view } = this.vessel;
    return [view.x + ((clientX - box.left) / box.width) * view.width, -(view.y + ((clientY - box.top) / box.height) * view.height)];
  }

  #key(event) {
    const by = event.shiftKey ? 1 : 5;
    const ways = { ArrowLeft: [by, 0], ArrowRight: [-by, 0], ArrowUp: [0, 2], ArrowDown: [0, -2], Home: [-this.look.turn, 0] };
    if (!ways[event.key] || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    this.#turn(...ways[event.key]);
  }
}

function inksOf(node) {
  const style = getComputedStyle(node), ink = (name) => style.getPropertyValue(`--${name}`).trim();
  return {
    body: ["body-edge", "body-near", "body-middle", "body-near", "body-edge"].map(ink),
    far: ink("groove-far"), near: ink("groove-near"), chosen: ink("groove-mine"), edge: ink("glass-edge"), hair: ink("glass-hair"),
  };
}
